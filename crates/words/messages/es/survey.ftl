### Palabras de tautline: lecturas, líneas, sitios, veredictos.

per-cent = { $figure } %

## Verdicts
met = cumplida
not-met = no cumplida
not-yet-shown = aún no demostrada

## Lines
line-not-read = { $site }, línea { $line }: no se leyó. Queda fuera; no cuenta como cero.
slope-missing = { $site }, línea { $line } no tiene pendiente, así que sus claros y sus plantas por superficie quedan medidos sobre el terreno. Serviría una columna “slope (%)” en la tabla de líneas.
nothing-found-bounds = { $site }: no se halló nada en { $lines } líneas. Con una confianza del { $confidence }, a lo sumo el { $share } de tales líneas encuentra algo; la cobertura donde lo hay, indicada con --where-present, acotaría la cobertura del sitio.
nothing-found-and-stated = { $site }: no se halló nada en { $lines } líneas. Con una confianza del { $confidence }, a lo sumo el { $share } de tales líneas encuentra algo, y la cobertura es a lo sumo { $upper } con el { $stated } que se indicó para las líneas que sí lo encuentran.
few-lines-or-intercepts = { $site }, { $what }: descansa en { $lines ->
    [one] una línea
   *[other] { $lines } líneas
} y { $intercepts ->
    [one] una intercepción
   *[other] { $intercepts } intercepciones
}. En muestreos simulados con tan pocas, los intervalos del 90 % contuvieron la cobertura verdadera de { $lowest } a { $highest } veces de cada 100.
    .alike = { $site }, { $what }: descansa en { $lines ->
        [one] una línea
       *[other] { $lines } líneas
    } y { $intercepts ->
        [one] una intercepción
       *[other] { $intercepts } intercepciones
    }. En muestreos simulados con tan pocas, los intervalos del 90 % contuvieron la cobertura verdadera { $lowest } veces de cada 100.
widths-missing = No se pueden calcular las plantas por superficie de { $what }: hace falta el ancho de cada planta viva, y faltan algunos en { $lines }.
line-partly-read = { $site }, línea { $line }: leída solo hasta { $to } de { $length }. Queda fuera de la estimación; --use-partly-read toma la parte que se leyó.
line-read-again = { $site }, línea { $line } se leyó más de una vez en { $year }: se usa la lectura de { $used }; la de { $other } se guarda para comparar.
finer-than-recorded = { $site }, línea { $line }: una regla de claros de { $asked } es más fina que los { $recorded } con que se leyó. Claros tan pequeños nunca se anotaron, así que no se puede calcular.
lengths-cannot-be-re-ruled = { $site }, línea { $line }: solo se anotaron longitudes, así que nunca se podrá llevar a otra regla de claros. Con una de { $asked } su cobertura podría estar en cualquier punto de { $low } a { $high }.
lengths-only-overlap-unknown = { $site }, línea { $line }: solo longitudes. No se puede saber cuánto se traslapan sus especies, así que la cobertura de copa se da con una cifra baja y una alta.
plant-marks-missing = { $site }, línea { $line }: la regla de claros termina en cada planta y las plantas no se marcaron, así que con otro límite la cobertura queda entre una cifra baja y una alta.
rows-set-aside = { $site }, línea { $line }: { $rows ->
    [one] se apartó una fila
   *[other] se apartaron { $rows } filas
}, así que su cobertura no está completa.
line-left-out = { $site }, línea { $line } queda fuera de las cifras del sitio hasta que eso se resuelva.

## Checks
the-reader = quien leyó
fits-another-unit = { $site }, línea { $line }: una intercepción termina en { $stop }, más allá de la cinta de { $length }; leídos como { $fits } en vez de { $written }, los mismos números caben en ella. Escriba la unidad con que se leyó la línea.
wholly-beyond-the-tape = { $site }, línea { $line }: una intercepción termina en { $stop } y queda entera más allá de la cinta de { $length }. ¿Se leyó pasada la estaca o pertenece a otra línea?
beyond-the-tape = { $site }, línea { $line }: una intercepción termina en { $stop }, más allá de la cinta de { $length }. Solo cuenta la parte sobre la línea. Compárela con la hoja.
wholly-past-the-mark = { $site }, línea { $line }: se leyó hasta { $mark }, y una intercepción de { $start } a { $stop } queda más allá. Corrija “read to” o la fila.
past-the-mark = { $site }, línea { $line }: se leyó hasta { $mark }, y una intercepción sigue hasta { $stop }. Solo cuenta la parte hasta la marca.
mark-beyond-the-tape = { $site }, línea { $line }: se leyó hasta { $mark }, y la cinta mide { $length }. Corrija lo que esté mal.
line-length-missing = { $site }, línea { $line }: ¿cuánto mide la línea? Dé una columna “line length”, una tabla de líneas o --line-length.
lengths-pass-the-line = { $site }, línea { $line }: las longitudes de { $species } suman { $sum }, más que los { $read } que se leyeron. Compárelas, y su unidad, con la hoja.
tape-read-backwards = { $site }, línea { $line }: las { $count } filas tienen el final antes del comienzo. ¿Se leyó la cinta desde el otro extremo? Escriba el número menor en “start” y el mayor en “stop”.
tape-laid-the-other-way = { $site }, línea { $line }: su copa coincide con la del { $date } en el { $mirrored } de su longitud si se invierte de punta a punta, y en el { $read } tal como está. ¿Estaba el cero en la otra estaca?
overlap-within-species = { $site }, línea { $line }: { $species } de { $start } a { $stop } se traslapa con { $species } que llega a { $reached }. Lo que comparten cuenta una vez. Compare ambas filas con la hoja.
row-written-twice = { $site }, línea { $line }: { $species } de { $start } a { $stop } está escrito dos veces. Cuenta una vez. Quite una fila.
positions-out-of-order = { $site }, línea { $line }: { $count ->
    [one] una fila empieza
   *[other] { $count } filas empiezan
} antes que una fila anterior de la misma especie; la primera, { $species } en { $start }. ¿Un descuido, o filas de otra línea?
positions-fall = { $site }, línea { $line }: cada fila empieza antes que la de arriba, como si se hubiera caminado desde el otro extremo. ¿Estaba el cero en su estaca?
gaps-under-the-rule = { $site } { $year }: { $reader } anotó { $count ->
    [one] un claro
   *[other] { $count } claros
} por debajo de la regla de { $limit } como cortes, en { $lines ->
    [one] una línea
   *[other] { $lines } líneas
}. Se leen como copa, así que ninguna cifra cambia. Si no fue a propósito, acuerde la regla con quien lee.
feet-and-inches-suspected = { $site }: los decimales de pie nunca pasan de ,11 en { $edges } bordes de { $lines }, como en { $example }. Por azar eso ocurre menos de una vez en { $odds }. Si son pies y pulgadas, encabece las columnas con “ft-in”.
digits-heap = Las últimas cifras de { $reader } se amontonan: { $most } de { $edges } bordes { $places ->
    [10] terminan en { $digit }
   *[other] caen en la misma de cada { $places } divisiones (la número { $digit })
}, cuando lo parejo sería { $even }. Por azar eso ocurre menos de una vez en { $odds } (ji cuadrado { $statistic }, { $df } gl). La cobertura apenas cambia, pero así se nota a quien está cansado o estima a ojo: hable con esa persona.
line-read-twice = { $site }, línea { $line } se leyó más de una vez el mismo día (por { $readers }), y nada dice qué lectura la representa. Escriba 1, 2 en “pass”.
reading-written-twice = { $site }, línea { $line }: todas las filas son iguales que en { $others }. ¿Una hoja capturada dos veces con dos nombres?
a-line = { $site }, línea { $line }
a-line-on = { $site }, línea { $line } ({ $date })
line-far-from-others = { $site }, línea { $line }: una cobertura de { $cover } queda lejos de { $median }, el centro de las { $lines } líneas leídas allí: { $distance } desviaciones medianas, cuando un sitio de cada cien pasa por sí solo de { $limit }. ¿Un descuido, o un lugar distinto?
species-misspelt = { $species } no está en la lista de plantas ({ $count ->
    [one] una fila
   *[other] { $count } filas
}). ¿Se quiso decir { $near }? Cuenta como está escrito; corríjalo o agréguelo a la lista.
species-not-listed = { $species } no está en la lista de plantas ({ $count ->
    [one] una fila
   *[other] { $count } filas
}). Cuenta, puesto que se anotó; agréguelo a la lista.
species-new-to-site = { $site }: { $species } no estaba en ninguna visita anterior y aparece en { $year } en la línea { $line }. ¿Nueva, pasada por alto antes, o un descuido en la clave?
line-planned-without-record = { $site }, línea { $line } está planeada y no tiene registro de { $year }. ¿Se leyó? Las líneas sin registro no son ceros.
date-missing = { $site }: { $count ->
    [one] una lectura no tiene
   *[other] { $count } lecturas no tienen
} fecha (línea { $lines }). Sin ella no pertenecen a ningún año.
observer-missing = { $site }: { $count ->
    [one] una lectura no nombra
   *[other] { $count } lecturas no nombran
} a quien leyó (línea { $lines }). Sin nombres no se puede comparar a quienes leen.
outside-the-reading-window = { $site }: línea { $lines } leída el { $date }, fuera de la ventana de su protocolo ({ $window }). Las hojas y los tallos florales pueden diferir; dígalo en el informe.
permission-needed = hace falta; nadie lo ha dado todavía
permission-given = { $from }
permission-given-until = { $from }, hasta el { $until }
permission-missing = { $site }: línea { $lines } leída sin que se anotara un permiso para entrar. Pídalo antes de la próxima visita, y escriba quién lo dio y hasta cuándo.
permission-ended = { $site }: línea { $lines } leída el { $date }, después del { $until }, último día del permiso para entrar. Pídalo de nuevo antes de la próxima visita.
settles-nothing = “{ $code }” ({ $site }, línea { $line }) no resuelve nada: allí no hay tal hallazgo. Quite la fila o corríjala.
needs-correction = “{ $code }” ({ $site }, línea { $line }) no se puede resolver de palabra, pues parte de la lectura no se puede usar como está. Corrija la hoja.

## Protocols
protocols-differ = Estas líneas se leyeron con protocolos distintos ({ $protocols }). Difieren en: { $rules }.
protocols-apart = Ningún cálculo reúne estas lecturas (difieren { $rules }), así que no hay estimación de todas. Leídas de una manera pueden diferir hasta 2,6 veces de la otra (Wambolt et al. 2006).
brought-to-common-ground = Se llevaron a la regla más gruesa que comparten: claros de hasta { $limit }, lo que cuenta en todos.
rest-could-matter = Lo demás en que difiere la regla de claros podría mover la cobertura media de las líneas entre { $low } y { $high }.
    .alike = Lo demás en que difiere la regla de claros deja la cobertura media de las líneas en { $low }, según las cifras mostradas.
rest-not-computable = Estas diferencias no se pueden calcular con las lecturas: { $rules }. En el mismo terreno, dos maneras de leer han salido hasta 2,6 veces distintas (Wambolt et al. 2006).
strata-without-area = { $site }: no se conoce la superficie de { $strata }, así que las líneas se toman como una sola muestra. Dé una tabla de estratos con “stratum” y “area (ha)”.
stratum-not-read = { $site }: no se leyó ninguna línea en { $strata }. La cifra habla solo de los otros estratos.

## Rules of a protocol
rule-cover = significado de cobertura
rule-counts = lo que cuenta
rule-dead = copa muerta
rule-gap-limit = límite de claro
rule-gap-equal = un claro igual al límite
rule-gap-two-plants = un claro entre dos plantas de una especie
rule-gap-across-species = un claro en el que está otra especie
rule-gap-between-species = un claro entre dos especies
rule-gap-across-dead = un claro en el que hay madera muerta
rule-gap-line-end = un claro al final de la línea
taken-bridged = se lee como copa
taken-breaks = queda abierto
taken-no-gap-closed = ninguno; cada borde como está escrito
taken-apart = se calcula aparte de lo vivo
taken-canopy-outline = contorno de la copa
taken-woody = árboles, arbustos y subarbustos

## Sources
source-cochran-1977-mean = Cochran 1977, 2.4–2.6
source-cochran-1977-ratio = Cochran 1977, 6.4
source-cochran-1977-clusters = Cochran 1977, 9A.1
source-cochran-1977-strata = Cochran 1977, 5.3–5.4
source-cochran-1977-combined-ratio = Cochran 1977, 6.11
source-cochran-1977-two-ratios = Student 1908; Cochran 1977, 6.18
source-welch-1947 = Welch 1947; Satterthwaite 1946
source-meier-1953 = Graybill y Deal 1959; Meier 1953
rule-shortest = la copa más corta que cuenta
rule-overlap = especies que se solapan
rule-side = lado de la cinta
rule-finest-division = división más fina
rule-reading-window = época de lectura
rule-alive-without-leaves = qué está vivo sin hojas
rule-flower-stalks = tallos florales
rule-tape = la cinta
rule-wind-limit = límite de viento
rule-heights = alturas
