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

## In the app
follow-all-sites = Todos los sitios a lo largo de los años
follow-what = Qué se pregunta
follow-two-visits = qué cambió entre dos visitas
follow-all-visits = la tendencia en todas las visitas
follow-earlier-visit = Visita anterior
follow-later-visit = Visita posterior
follow-ask-more = Preguntar más de cerca
follow-by = Separar por
follow-by-nothing = nada
follow-by-species = especie
follow-by-form = forma de crecimiento
follow-by-group = grupo de la lista de plantas
follow-matters = El cambio que importa, en puntos de cobertura
follow-chance = Probabilidad de ver un cambio
follow-untreated = Un vecino que quedó sin tratar
follow-untreated-what = Su cambio en los mismos años se descuenta, para que un año seco no se tome por el tratamiento.
follow-new-lines = las líneas del mismo nombre son nuevas: se perdieron las estacas
follow-points-not-read = Puntos de cobertura, como 5 o 2.5, mayores que 0 y de 100 como mucho.
follow-one-year = Este sitio se leyó en un solo año. Un cambio necesita dos; una tendencia, cuatro.
follow-working = Calculando …
follow-stop = Parar aquí
follow-take-page = La página como archivo
follow-file-change = cambio
follow-file-trend = tendencia
follow-file-readers = lectores lado a lado
follow-file-sources = de dónde viene la duda
follow-so-many = { $sites ->
    [one] 1 sitio se leyó en suficientes años
   *[other] { $sites } sitios se leyeron en suficientes años
}
follow-no-site = Ningún sitio se leyó en los años por los que se pregunta.
follow-too-many = Tantos sitios no caben aquí en una página: la escribe el comando.
follow-onward = Más allá
follow-to-site = El informe del sitio
follow-to-all = Todos los sitios a lo largo de los años
follow-to-agree = Lectores lado a lado
follow-agree-screen = Lectores lado a lado
follow-agree-parts = Lectores
follow-agree-readers = Las mismas líneas
follow-agree-log = Registro y constancias
follow-agree-sources = De dónde viene la duda
follow-agree-what = Líneas que dos personas leyeron el mismo año, lado a lado. No es culpa de nadie: quién tiene razón lo dicen las reglas y la planta.
follow-agree-how = Que otra persona lea una línea sin ver la primera hoja: en la pantalla de líneas, «un segundo lector de la misma línea». Las líneas de práctica y de calibración cuentan como cualquier otra.
follow-against = Comparar con
follow-first-pass = quien leyó primero
follow-which = Dónde y cuándo
follow-all-places = en todas partes
follow-more-pairs = { $more } pares de lectores más: elija un lugar arriba.
follow-tolerance = La tolerancia de su oficina, en puntos de cobertura
follow-log-heading = Al registro
follow-log-what = Lo que se muestra arriba se juzga con la tolerancia y se guarda en este cuaderno: quién, junto a quién, qué día y en qué líneas. Lo mínimo son tres líneas con su día.
follow-judge = Juzgado por
follow-log-write = Escribirlo en el registro
follow-to-log = Abrir el registro
follow-log-needs-tolerance = Una calibración se juzga con la tolerancia de su oficina: escríbala arriba, por ejemplo 3.
follow-log-known = Nada nuevo para el registro.
follow-logged = { $records ->
    [one] Una calibración está en el registro.
   *[other] { $records } calibraciones están en el registro.
}
follow-log-empty = El registro está vacío. En «Las mismas líneas» se escribe en él a qué llegaron los lectores.
follow-span = Días que dura una calibración en su oficina
follow-span-what = No hay ninguno por omisión. Sin ese plazo no le toca a quien ya pasó una vez.
follow-span-not-read = Un número entero de días.
follow-due = Le toca.
follow-in-time = Dentro del plazo.
follow-all-readers = todos los lectores
follow-certificates = Constancias para imprimir y firmar
follow-print = Imprimir
follow-sources-what = Cuánto de lo que varía son líneas, lectores y años, y si una hora rinde más en otra línea o en un día de calibración.
follow-year = Lecturas de
follow-all-years = todos los años
follow-costs = Lo que le cuesta cada cosa
follow-costs-what = En minutos de una cuadrilla. Los campos vacíos cuentan como nada; sin ninguno, va primero lo que más ayuda de una vez.
follow-cost-walk = Caminar a la siguiente línea
follow-cost-lay = Tender la cinta y recogerla
follow-cost-read = Leer un metro
follow-cost-travel = Llegar a otro sitio
follow-cost-day = Un día de calibración, de cada lector (480)
follow-minutes-not-read = Minutos como número, por ejemplo 12.
