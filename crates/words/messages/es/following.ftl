### Palabras de tautline: lo que se sigue, en páginas y pantallas.

## Pages
follow-parts-of = Partes: { $title }
follow-checks = Cómo se calculó, y pruebas que no piden una curva de campana
follow-sources-about = Cuánto de lo que varía son lectores, líneas, parcelas, sitios y años, y qué haría más segura la media.
follow-sources-of = La media de { $year }
follow-sources-parts = Lo que varía
follow-sources-picture = Cuánto de lo que varía es cada parte
follow-sources-axis = parte de toda la varianza, %
help-sources-report = Escribir la página de dónde viene la duda, como HTML

## Change
pairing-lost = Las líneas del mismo nombre se tomaron como nuevas: un error estándar de { $own }. Como las mismas líneas sería de { $same }; para estar igual de seguro hacen falta { $times } veces más nuevas.
pairing-lost-nothing = Las líneas del mismo nombre se tomaron como nuevas, lo que aquí no costó nada: un error estándar de { $own }, y de { $same } como las mismas líneas.
