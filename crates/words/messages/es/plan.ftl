### Palabras de tautline: cuántas líneas, y dónde.

## Help
help-plan = Cuántas líneas, de qué longitud, y dónde van
help-plan-effort = Cuántas líneas pide una meta, un ancho, un cambio o una tendencia; de qué longitud convienen
help-plan-lines = Trazar líneas en un sitio, para un receptor GPS y una brújula
help-pilot = Lecturas de un piloto en un sitio; se toma el último año
help-plan-confidence = Confianza de intervalos y veredictos en por ciento; lo que falta es de la falsa alarma de cambio
help-cover-foreseen = Cobertura que prevé, en por ciento
help-spread = Desviación estándar de la cobertura de las líneas que prevé, en por ciento del terreno
help-half-width = Hasta dónde puede llegar un intervalo a cada lado, en por ciento del terreno
help-effort-change = Un cambio entre dos visitas que debe verse, en por ciento del terreno
help-effort-trend = Una tendencia que debe verse, en por ciento del terreno al año
help-visits = Visitas anuales para una tendencia (5)
help-correlation = Correlación de las lecturas de una línea permanente en dos visitas (0.5)
help-between-years = Cuánto mueven los años buenos y malos a todas las líneas juntas, como desviación estándar en por ciento del terreno
help-effort-power = Probabilidad con que debe lograrse el plan, en por ciento (80)
help-effort-lines = Lo que mostrarían tantas líneas
help-room = Cuántas líneas cabrían lado a lado en el sitio, si es pequeño
help-walk = Minutos para caminar a la línea siguiente
help-lay = Minutos para tender la cinta y recogerla
help-read = Minutos para leer un metro
help-budget = Minutos que hay para todas las líneas; dice qué muestran (con --walk, --lay, --read)
help-lengths-figure = Dibujar en este archivo longitud frente a número, como SVG
help-simulate = Sortear 10 000 muestreos uno por uno para ver un cambio: de líneas normales, y de un matorral disparejo con la misma cobertura y variación
help-stratum = Un estrato con sus hectáreas y la desviación de sus líneas, y lo que cuesta una línea, como “flat: 12, 5” o “draw: 3, 9, 1.5”; se puede repetir
help-least = Mínimo de líneas en cada estrato (2)
help-plan-sequential = Un plan que puede parar tras cualquier línea, con sus errores acotados por más veces que se mire
help-sequential-lines = Primera y última mirada, como “5 to 30”, o “6 to 18 by 3” por tandas
help-sequential-confidence = Confianza de todo el plan en por ciento (90)
help-sequential = El plan secuencial con que se leyeron estas líneas, como “5 to 30”; las líneas se toman en el orden de sus nombres
help-batch = Líneas que se leen antes de la mirada siguiente de un plan secuencial; la caminata se ordena solo dentro de una tanda
help-walk-from = Dónde empieza la caminata, como “42.3,-113.7” o “12 N 278494 4687150”
help-plan-packet = Trazar líneas y hacer el paquete que lleva una cuadrilla, como una página para imprimir
help-packet-plants = Tablas con las plantas que se pueden encontrar
help-packet-sites = Tablas que dicen de quién es la tierra de un sitio y cuánto de sus lugares se dice (docs/files.md)
help-packet-full = Decir en las fichas dónde están las líneas, diga lo que diga el ajuste del sitio
help-packet-permissions = Tablas de líneas que dicen quién dio permiso para entrar, y hasta cuándo
help-packet-protocol = El protocolo con que se leen las líneas: un archivo, o el nombre de uno que viene con tautline
help-packet-unit = La unidad en que se lee la cinta (m)
help-cautions = Las precauciones de su propia oficina, una por renglón, en lugar de las nuestras
help-paper = Papel en que se imprime: a4 (lo normal) o letter
help-plan-benchmarks = Números publicados con que se compara la cobertura, junto a su propio modo de leer
help-benchmark-key = Solo aquellos cuyo nombre o plantas contengan esto
help-benchmark-protocol = El protocolo con que lee: un archivo, o el nombre de uno que viene con tautline
help-benchmark-scale = El terreno del que habla: stand (un matorral, lo normal), nest (alrededor de un nido) o landscape (un paisaje)
help-benchmark-own = Sus propios números, en un archivo como el que muestra docs/plan.md
help-boundary = El lindero del sitio con sus estratos: GeoJSON, GPX, KML, KMZ, GeoPackage o un shapefile (.shp con su .prj, o .zip)
help-keep-out = Lo que se evita, como “roads.kml, 15 m”: un archivo y a qué distancia mantenerse; se puede repetir
help-there = Líneas que ya están ahí y se quedan; se puede repetir
help-stratum-from = El campo en que está el nombre de un estrato (stratum)
help-take-in = Tomar en el trazado las líneas que ya están ahí, para leerlas otra vez
help-judged = Por qué se eligió esta área, donde fue por juicio, como un área clave
help-datum = El datum de los archivos que no nombran ninguno, y de --from: WGS84, NAD83, NAD27 o “NAD27 UTM 12 N”
help-lines = Líneas por trazar; parcelas, si se da --spokes
help-length = Longitud de cada línea, como “50 m” o “100 ft”
help-reserve = Líneas de reserva, en orden, para las que no se puedan leer (la mitad que líneas)
help-design = Cómo se sortean los puntos: balanced (lo normal), random o systematic
help-bearing = Hacia dónde van las líneas: random (lo normal), grados desde el norte verdadero, o “across 40” para ángulo recto con 40°
help-edge = Donde una línea saldría de su estrato: turn para girarla (lo normal) o redraw para sortearla otra vez
help-apart = A qué distancia quedan las líneas unas de otras (la longitud de la línea)
help-spokes = Tantas líneas desde cada punto, como radios de una parcela
help-offset = A qué distancia del centro de una parcela empiezan sus líneas (5 m)
help-date = La fecha para la que se ajusta la brújula, como 2026-06-01
help-elevation = Altitud del sitio en metros, para la brújula (0)
help-layout-seed = Otra semilla da otro trazado (1)
help-site-name = El nombre del sitio
help-into = Escribir lines.csv, layout.gpx y layout.geojson en esta carpeta

## Refusals
boundary-refused = { $file }: { $why }
boundary-no-area = No hay superficie en la que quepan líneas.
boundary-not-on-earth = Elemento { $part }: { $longitude }, { $latitude } no es un lugar de la tierra. En grados se escribe primero la longitud; en UTM, la coordenada este.
boundary-too-few-points = Elemento { $part }: un anillo cerca de longitud { $longitude }, latitud { $latitude } tiene menos de tres esquinas.
boundary-ring-no-area = Elemento { $part }: un anillo cerca de longitud { $longitude }, latitud { $latitude } está sobre una recta.
boundary-meets-itself = Elemento { $part }: el contorno se toca a sí mismo en el lado que empieza en longitud { $longitude }, latitud { $latitude }, de un modo que no se puede separar.
boundary-too-far = Elemento { $part }: longitud { $longitude }, latitud { $latitude } está a más de 500 km del centro del sitio.
boundary-line = Elemento { $part }: una línea que se queda es un LineString de dos puntos.
boundary-stratum = Elemento { $part }: un estrato es un Polygon o MultiPolygon.
boundary-closed = { $file }, elemento { $part }: se cerró un contorno que quedaba abierto, a lo largo de { $metres } m.
boundary-cut-apart = { $file }, elemento { $part }: el contorno se cruza o se toca a sí mismo, primero en el lado que empieza en longitud { $longitude }, latitud { $latitude }. Se separó allí y forma { $polygons ->
    [one] un polígono
   *[other] { $polygons } polígonos
}; lo que rodea dos veces queda fuera. Mire el mapa.
boundary-left-out = { $file }, elemento { $part }: una marca sin uso quedó fuera.
boundary-old-datum = Elemento { $part }: NAD 27 fuera de los Estados Unidos contiguos no se traslada aquí, y una posición antigua puede desviarse hasta 100 m. Guárdelo como WGS 84 en el programa del que viene.
boundary-datum-unused = Cada archivo dice por sí mismo en qué datum está, así que “{ $datum }” no se usó para ninguno. Quite --datum.
boundary-position-error = A causa del datum, las posiciones pueden desviarse unos { $metres } m. Manténgase esa distancia más lejos de los bordes, y de lo que se evita, de lo que le hace falta.
layout-name-taken = Hay dos líneas “{ $line }”. Dé otro nombre a la que ya está ahí.
layout-staked-length = { $line }: sus coordenadas anteriores están a { $metres } m una de otra, y la cinta se dio como { $length }. Tiéndala entre sus estacas y, si su longitud es otra, escríbala en lines.csv.
area-chosen-by-judgement = { $site } es un área que se eligió por juicio ({ $why }). Sus cifras, errores y veredictos hablan solo de esa área; de otro terreno no dicen nada.
option-datum = “{ $found }” no es un datum que se conozca aquí. Lo son WGS84, NAD83 y NAD27, con “UTM 12 N” detrás si los números son metros.
boundary-taken-once = { $file }, elemento { $part }: { $points ->
    [one] una esquina dada dos veces se tomó una vez.
   *[other] { $points } esquinas dadas dos veces se tomaron una vez.
}
layout-too-few = Cada estrato necesita dos líneas para su propio error: { $least } líneas o más.
declination-date = El modelo magnético no llega a esa fecha. Serviría una fecha de 2020 a 2029.
declination-height = El modelo magnético no llega a esa altitud. Dé metros sobre el mar.
option-bearing = “{ $found }” no es un rumbo. Servirían “random”, grados de 0 a 360, o “across 40”.
option-date = “{ $found }” no es una fecha. Escríbala como 2026-06-01.
effort-nothing-foreseen = Entregue las lecturas de un piloto, o dé --cover y --spread.
effort-nothing-asked = No se preguntó nada. Dé --half-width, --goal, --change, --trend o --lines.
effort-no-spread = Unas líneas que no varían no dicen nada de cuántas hacen falta. Dé --spread.
effort-goal = “{ $goal }” no trata de la cobertura de copa, que es para lo que sirve este plan. Serviría “at least 15 %”.
effort-power = --power va de 50 a menos de 100 %.
effort-budget-cost = Para un presupuesto en minutos hace falta lo que cuesta una línea: dé --walk, --lay y --read.
effort-budget = Ese presupuesto alcanza para menos de dos líneas, o para más de diez mil.
effort-simulate = Para simular hacen falta un cambio que deba verse (--change) y un número práctico de líneas.
effort-strata = Con estratos, dé --lines (al menos la suma de los mínimos de todos los estratos) o --half-width.
option-stratum = “{ $found }” no es un estrato. Serviría “flat: 12, 5”: nombre, hectáreas, desviación de sus líneas en por ciento del terreno.
option-sequential = “{ $found }” no es un plan secuencial. Servirían “5 to 30” o “6 to 18 by 3”, de dos líneas a 200.
effort-several-sites = Estas lecturas son de varios sitios. Nombre uno con --site.
effort-no-pilot = Con estas lecturas no se pudo calcular una cobertura con error, así que no dicen nada de cómo varían las líneas.

## A layout
title-layout = Líneas para { $site }
the-site = el sitio
layout-stratum = { $name }: { $hectares } ha, { $placed } de { $wanted } trazadas
heading-lines = Por leer:
heading-reserve = De reserva, para tomarlas en este orden cuando una de arriba no se pueda leer (anote por qué):
column-start = comienzo (latitud, longitud)
column-end = final
column-true = verdadero
column-compass = brújula
design-balanced = equilibrados en el espacio
design-random = al azar
design-systematic = en una malla con comienzo al azar
layout-drawn = Puntos sorteados { $design }, semilla { $seed }: la misma llamada los sortea igual. Las líneas de puntos distintos quedan a { $apart } m.
layout-edge-turn = Una línea que saldría de su estrato se giró en su comienzo. El terreno a menos de una línea del borde se lee aún un poco menos que el resto (docs/plan.md).
layout-edge-redraw = Una línea que saldría de su estrato se sorteó otra vez. El terreno a menos de una línea del borde se lee menos que el resto (docs/plan.md).
layout-given-up = Puntos abandonados: { $edge } en el borde, { $kept } en lo que se evita, { $near } demasiado cerca de otra línea.
layout-no-room = No cupieron todas las líneas. Líneas más cortas, menos distancia o un margen menor harían sitio.
packet-written = El paquete es { $file }: ábralo en un navegador e imprímalo.
packet-unit = “{ $found }” no es la unidad de una cinta. Servirían m, cm, ft o in.
layout-written = Escrito en { $folder }: lines.csv, layout.gpx, layout.geojson, y la reserva en una carpeta propia.
declination = El { $date } una brújula apunta { $degrees }° al { $side } del norte verdadero (cambia { $yearly }° al año, con { $uncertainty }° de más o de menos). “verdadero” es desde el norte verdadero; ajuste una brújula sin corrección a “brújula”.
declination-weak = El campo magnético es débil aquí: no confíe en una brújula.
declination-no-date = Los rumbos son desde el norte verdadero. Con --date se imprimen al lado los de brújula.
east = este
west = oeste
heading-cautions = Antes de ir (primero las normas locales y la gente con licencia):
caution-permission = Pida permiso para entrar, y deje los portones como los halló.
caution-stakes = Llame antes de cavar o clavar estacas. Cúbralas: hieren al ganado, las llantas y los pies.
caution-weather = Calor, rayos, fuego: sepa cuándo se da la vuelta.
caution-alone = No vaya sin decirle a alguien dónde y hasta cuándo.
caution-animals = Víboras y garrapatas; nidos en su temporada; botas y equipo limpios contra las malezas.
caution-line = Camine solo por un lado de la línea, y no sobre ella antes de leerla.

## Effort
title-effort = Cuántas líneas
effort-from-pilot = Piloto en { $site }: { $lines } líneas, cobertura { $cover }, desviación estándar de las líneas { $spread }.
effort-foreseen = Previsto: cobertura { $cover }, desviación estándar de las líneas { $spread }.
effort-sure = Con una confianza del { $confidence } y una probabilidad de lograrlo del { $power }.
column-question = pregunta
column-lines-needed = líneas
column-shows = su número muestra
column-chance = su probabilidad
no-practical-number = más de 200
question-verdict = veredicto sobre { $goal }
question-half-width = intervalo de ± { $wanted }
question-width-alone = intervalo, ±
question-permanent = cambio de { $wanted }, líneas con estacas (correlación { $correlation }), en cada visita
question-permanent-alone = menor cambio, líneas con estacas (correlación { $correlation })
question-temporary = cambio de { $wanted }, líneas nuevas, en cada visita
question-temporary-alone = menor cambio, líneas nuevas
question-trend = tendencia de { $wanted } al año en { $visits } visitas anuales, líneas con estacas, en cada visita
effort-normal = Estos números toman las líneas como de reparto normal. Con pocas líneas, muchos ceros o arbustos en manchas son demasiado benévolos: agregue algunas.
effort-pilot-unsure = La desviación estándar de un piloto pequeño es ella misma insegura; leer unas líneas más que estas cuesta poco.
effort-trend = La tendencia se juzga por las medias de los años. Los años buenos y malos cuentan solo lo que diga --between-years.
title-lengths = Longitud frente a número
column-length-m = longitud (m)
column-minutes = minutos
column-remark = observación
cheapest = la más barata
cheapest-beyond-pilot = la más barata, más allá de la longitud del piloto
beyond-pilot = más allá de la longitud del piloto
lengths-sure = Sorteando otra vez las líneas del piloto, ocho de cada diez veces la longitud más barata quedó de { $low } a { $high } m; en { $nearly } de ellas la de arriba costó a lo sumo una décima más que la más barata.
lengths-fall = La varianza cae con la longitud elevada a { $fall } (1: cada metro dice algo nuevo; 0: una línea más larga no dice nada nuevo).
lengths-unknown = Para longitud frente a número hace falta un piloto de dos líneas de una misma longitud o más, con comienzos y finales, y una meta o --half-width.
costs-cheapest = { $lines } líneas de { $length } m: { $minutes } minutos
costs-likely = Sorteando otra vez las líneas del piloto, ocho de cada diez veces la longitud más barata quedó de { $low } a { $high } m.

## Simulated
title-simulated = El mismo cambio, muestreo por muestreo
simulated-normal = De { $surveys } muestreos de { $lines } líneas con estacas, sorteados de líneas normales, lo muestra el { $chance } (error de Monte Carlo { $error }); la fórmula cerrada dice { $closed }.
simulated-stand = Sorteados de un matorral inventado con manchas de unas { $clump } plantas, lo muestra el { $chance } (error { $error }), donde la fórmula cerrada para líneas que varían lo mismo dice { $closed }. Allí las líneas de { $length } m tienen cobertura { $cover }, desviación estándar { $deviation }, y el { $bare } de ellas no tiene ningún arbusto; la cobertura cambia { $change }, por línea con una desviación estándar de { $differences }, pues las plantas llegan o se van una por una.

## Strata
title-strata = Líneas de cada estrato
column-stratum-name = estrato
column-by-area = por superficie
column-by-spread = por superficie y variación
strata-error = Error estándar de la cobertura del sitio: { $area } por superficie, { $spread } por superficie y variación.

## A sequential plan
title-sequential = Un plan que puede parar tras cualquier línea
sequential-level = Cada mirada usa una confianza del { $level } a cada lado, de modo que todas juntas se equivocan a lo sumo en el { $error } de los muestreos, tanto para cumplida como para no cumplida.
sequential-how = En papel: después de cada mirada calcule la media y la desviación estándar de las líneas hasta ahí. Pare, por cumplida o no cumplida, cuando la media quede más lejos de la meta que “veces” desviaciones estándar; si no, siga leyendo. Tras la última línea el plan termina. Donde la cobertura es baja o los arbustos están en manchas, el papel dice “no cumplida” con demasiada facilidad (en muestreos simulados de tales matorrales, en falso hasta en 29 de 100): deje que la orden lo confirme.
sequential-after = Después: tautline assess … --sequential “{ $plan }”, que juzga al mismo nivel con el intervalo que conviene a la cobertura.
sequential-beforehand = Elija el plan antes de leer la primera línea, y lea las líneas en su orden.
column-times = veces
column-true-cover = si la cobertura es
column-met = cumplida
column-not-met = no cumplida
column-neither = ni una ni otra
column-lines-on-average = líneas en promedio
sequential-normal = Para líneas de reparto normal, 10 000 muestreos cada vez. Los matorrales disparejos salen peor en papel que esto.
standing-no-look = Según el plan secuencial: { $lines } líneas leídas, que no es una de las miradas. Siga leyendo.
standing-go-on = Según el plan secuencial: tras { $lines } líneas no queda demostrado ni lo uno ni lo otro. Siga leyendo.
standing-met = Según el plan secuencial: cumplida, tras { $lines } líneas. Pare; las líneas que se lean después no cuentan para él.
standing-not-met = Según el plan secuencial: no cumplida, tras { $lines } líneas. Pare; las líneas que se lean después no cuentan para él.
standing-end = Según el plan secuencial: las { $lines } líneas están leídas y no queda demostrado ni lo uno ni lo otro. El plan termina aquí.
standing-none = El plan secuencial no puede juzgar esta cifra: está hecho para la cobertura de líneas en un solo estrato.

## Benchmarks
benchmarks-of = { $file }: { $why }
benchmark-none = Ningún número publicado tiene “{ $found }” en su nombre ni en sus plantas. tautline plan benchmarks los lista todos.
benchmark-key = nombre
benchmark-published = como se publicó
benchmark-plants = plantas que cuentan
benchmark-season = temporada
benchmark-region = región
benchmark-source = fuente
benchmark-ground = terreno
scale-stand = un matorral
scale-nest = los pocos metros alrededor de un nido o un arbusto
scale-landscape = un paisaje
benchmark-rule-unsaid = No se vio que la fuente diga cómo se leen los claros y la madera muerta. Dos modos de aplicar el método difirieron hasta { $times } veces en el mismo terreno (Wambolt et al. 2006).
benchmark-rule-unlike = Se leyó con “{ $rule }”, que no es su protocolo. Dos modos de aplicar el método difirieron hasta { $times } veces en el mismo terreno (Wambolt et al. 2006).
benchmark-nest-to-stand = Habla del terreno alrededor de los nidos, donde la cobertura fue de { $least } a { $most } veces la del matorral (Miller et al. 2003).
benchmark-stand-to-nest = Habla de matorrales; alrededor de los nidos la cobertura fue de { $least } a { $most } veces esa (Miller et al. 2003).
benchmark-scale-unlike = Habla de { $theirs }, usted de { $yours }: de lo uno no se sigue nada para lo otro.
benchmark-from-memory = Se conoce de memoria: búsquelo antes de juzgar con él.
benchmark-fits = La escala y la regla son las suyas. Como meta: --goal "{ $goal }"
benchmark-range = de { $low } a { $high }
benchmark-could-be = No corresponde. Leídos a su modo, sus números podrían estar en cualquier punto de { $ranges }. Acuerde la regla con quien fijó la meta antes de juzgar con él.
benchmarks-not-official = Ninguno de estos es una tolerancia oficial, y ninguno se hizo para su terreno. Las plantas que cuentan, la temporada y la región le toca a usted compararlas.
