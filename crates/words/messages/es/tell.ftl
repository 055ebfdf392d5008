### Palabras de tautline: fotos y lugares en los informes.

report-photos = Fotos, año por año
report-photos-line = Línea { $line }, { $shows }
report-photos-site = El sitio, { $shows }
report-photos-met = Encontrado en las visitas de este año
report-photos-places = Dónde se tomaron estas fotos se reserva, como dice la configuración del sitio. Lo que se ve en una puede delatar el lugar de todos modos: mire cada una antes de entregarla.
report-photo-said = { $view }, fotografiado el { $day }
report-photo-place = tomada en { $latitude } { $longitude } (latitud, longitud, WGS 84)
report-photo-bearing = mirando a { $degrees }° del norte verdadero
report-photo-lacking = la imagen misma no está en esta copia del cuaderno
report-photo-too-large = la imagen es demasiado grande para estar aquí con las demás; una de 1600 píxeles de ancho o menos serviría
report-photo-damaged = la imagen está dañada y no se puede mostrar
help-report-full = decir todos los lugares como son, y avisar en el informe que no es para entregar a otros
report-finding-kept-back = No se entiende una celda que debería decir dónde está una línea de este sitio. Lo que contiene se reserva, como dice la configuración del sitio.

## Dónde están las líneas
report-map = Dónde están las líneas
report-map-said = Las líneas de { $site } a escala, con el norte arriba: { $lines }. Una línea cuyo final no se anotó es solo el cuadrado de su cero.
report-map-table = Dónde empieza y termina cada línea (grados, WGS 84)
report-column-end = final (latitud, longitud)
report-map-withheld = Dónde están las líneas se anotó y se reserva, como dice la configuración del sitio. Pregunte a quien cuida del sitio.
report-map-blurred = Dónde están las líneas no se dice con más detalle que un cuadrado de { $width } km de ancho, como dice la configuración del sitio. El centro del cuadrado (latitud, longitud, WGS 84): { $middle }. Una línea puede empezar hasta a { $metres } m de allí.
holds-exact-places = Contiene lugares exactos que la configuración del sitio reserva: no es para entregar a otros.

## Planillas de las que nadie sabe cómo se leyeron
rule-unknown = lo que no se sabe
rule-gap-limit-unknown-up-to = hasta cuánto pudo llegar una regla de claros desconocida
rule-unknown-gap = Ya nadie sabe qué claros se leyeron como copa bajo “{ $protocol }”. Cada cifra se muestra entre todos los bordes como se anotaron y todos los claros de hasta { $most } cerrados: sea cual fuera la regla, está entre ambos.
rule-unknown-gap-closed = Ya nadie sabe qué claros de hasta { $most } se leyeron como copa bajo “{ $protocol }”. Aquí todos los claros de hasta { $limit } se leen como copa, lo que da lo mismo sea cual fuera la regla.
brought-to-widest = Se llevaron a la regla más amplia con la que pudo leerse cualquiera de ellas: claros de hasta { $limit } cerrados, también los que los manuales dejan abiertos; lo que cuenta en todas ellas.
finer-than-it-may-have-been = { $site }, línea { $line }: una regla de claros de { $asked } es más fina que { $most }, que nadie puede descartar para esta línea. Huecos tan pequeños quizá nunca se anotaron, así que no se puede calcular. Sin --gap-rule las cifras se muestran entre ambos extremos.
rule-unknown-dead = Ya nadie sabe si la copa muerta se contó bajo “{ $protocol }”. Cada cifra se muestra entre la copa muerta marcada sin contar y contada. La copa muerta anotada sin marca no se distingue de la viva.
rule-unknown-cover = Ya nadie sabe qué significado de cobertura se usó en “{ $protocol }”: el contorno, las hojas y ramas mismas, o el suelo. Ninguna aritmética los distingue, así que estas cifras valen por sí solas.
protocols-apart-unknown = Estas lecturas no se pueden poner lado a lado: ya nadie sabe qué regla tenían algunas de ellas para { $rules }, y ninguna aritmética lo deshace. Cada año vale por sí solo.
methods-gap-unknown = Ya no se sabe qué claros se leyeron como copa. Las cifras están entre todos los bordes como se anotaron y todos los claros de hasta { $most } cerrados, también los que los manuales dejan abiertos.
methods-dead-unknown = Ya no se sabe si se contó la copa muerta. Las cifras están entre la copa muerta marcada sin contar y contada.
report-curve-said-unknown = Con todos los claros menores de { $recorded } cerrados, sea cual fuera la regla con que se leyeron las líneas, la cobertura de copa es de { $cover }; cerrar claros de hasta { $widest } la llevaría a { $most } en las mismas líneas. Una regla más fina no se puede calcular: nadie sabe qué claros tan pequeños se anotaron.
report-curve-dead-unknown = Ya nadie sabe si en estas líneas se contó la copa muerta, así que no hay una sola curva.
report-next-visit-agree = Para seguir el cambio, acuerden primero reglas y anótenlas como protocolo, pues ya nadie sabe con cuáles se leyeron estas líneas. Después lean las mismas líneas otra vez en la misma época del año ({ $day } fue el último día de lectura) y en la misma etapa de crecimiento.
report-next-visit-agree-undated = Para seguir el cambio, acuerden primero reglas y anótenlas como protocolo, pues ya nadie sabe con cuáles se leyeron estas líneas. Después lean las mismas líneas otra vez en la misma época del año y en la misma etapa de crecimiento, y anoten el día.
packet-gap-unknown = La regla de claros de este protocolo no se conoce. No se pueden leer líneas con ella: elija una regla y anótela.

## Exportaciones
export-column-gap-limit-high-m = Lo más amplio que pudo ser el límite de claros, donde ya nadie lo sabe; el límite de al lado es entonces el menor
help-export-publisher = quién entrega los datos, para la descripción de un paquete de datos o un archivo Darwin Core
