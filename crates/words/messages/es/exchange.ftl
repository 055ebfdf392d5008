### Palabras de tautline: archivos que entran y salen.

same-file-twice = { $file } tiene los mismos bytes que { $same }. No agrega nada.
file-empty = { $file } está vacío.
file-not-text = { $file } no es texto. Serviría texto delimitado o una hoja tecleada, en UTF-8, UTF-16 o Windows-1252; una hoja de cálculo se guarda como CSV.
workbook-old-or-locked = { $file } es una hoja de cálculo de una clase antigua, o está cerrada con contraseña. Ábrala y guárdela como XLSX u ODS sin contraseña.
workbook-damaged = { $file } parece una hoja de cálculo, pero no se puede leer como tal; lo más probable es que se cortara al copiarla. Cópiela otra vez, o ábrala y guárdela de nuevo.
workbook-too-wide = { $file } tiene celdas muy a la derecha de cualquier tabla. Borre lo que haya ahí, o guarde como CSV la hoja de las lecturas.
workbook-not-understood = { $file }: ninguna hoja tiene encabezados que se entiendan ({ $found }). Una tabla de lecturas tiene “line”, “species” y “start” y “stop”, o “length”; docs/files.md los lista todos.
sheets-left-out = { $file }: estas hojas no tienen encabezados que se entiendan y quedaron fuera: { $found }.
rows-above-headings = Lo que está arriba de los encabezados no se lee: { $found }.
day-was-a-fraction = La hoja de cálculo había hecho de esta celda el día { $found }; se lee como { $read }. Mire el papel, y dé a la columna formato de texto.
day-not-a-length = La hoja de cálculo hizo el día { $found } de lo que se tecleó aquí, algo como 10-5 o 1/3. Dé a la columna formato de texto y tecléelo otra vez.
day-was-a-name = La hoja de cálculo hizo el día { $found } del nombre o la clave que se tecleó aquí, algo como 3-1 o MAR4, y lo que era se perdió. La fila se aparta. Dé a la columna formato de texto y tecléelo otra vez.
packed-damaged = { $file } es un archivo comprimido que no se puede abrir; lo más probable es que se cortara al copiarlo. Cópielo otra vez.
packed-locked = { $file } está comprimido con contraseña o de un modo que aquí no se conoce. Comprímalo otra vez sin eso.
packed-too-large = { $file } sería, ya descomprimido, más grande de lo que son nunca unas lecturas (1 GB en total, 256 MB por archivo dentro de él, 12 millones de celdas). No se lee. Divídalo por sitio o por año.
packed-without-tables = { $file } no contiene ningún archivo que se pueda leer. Servirían CSV, TSV, TXT, XLSX, ODS, hojas tecleadas y protocolos.
packed-left-out = { $file }: estos archivos que contiene son de otra clase y quedaron fuera: { $found }.
file-too-large = { $file } pasa de 256 MB, más de lo que ocupan unas lecturas. Divídalo por sitio o por año.
protocol-too-large = { $file } es más grande que cualquier protocolo; no se lee.
row-beyond-reading = Desde aquí no hay salto de renglón en más de un millón de caracteres, así que esto no es una tabla de lecturas. El archivo no se lee.
too-many-columns = Esta fila tiene más de { $most } columnas, así que no es el encabezado de unas lecturas. El archivo no se lee.
file-cut-off = El archivo se corta aquí, a mitad de un carácter, así que puede faltar algo. Cópielo o guárdelo otra vez.
file-read-as-windows-1252 = Desde aquí el archivo no es UTF-8, así que se leyó como Windows-1252. Mire los nombres con acentos; guardarlo como UTF-8 lo resuelve.
headings-not-understood = { $file }: no se entienden los encabezados ({ $found }). Una tabla de lecturas tiene “line”, “species” y “start” y “stop”, o “length”; docs/files.md los lista todos.
cell-empty = “{ $column }” está vacío.
site-missing = ¿Qué sitio? Llene la columna “site” o use --site.
plant-listed-twice = { $found } está dos veces en la lista de plantas. Se usa la primera.
form-not-known = “{ $found }” no es una forma de crecimiento. Servirían tree, shrub, subshrub, succulent, vine, grass, forb, crust u other.
nest-not-known = “{ $found }” no dice ni yes ni no; se toma que el sitio tiene un nido mientras no lo diga.
places-not-known = “{ $found }” no dice cuánto se da a conocer de los lugares del sitio: exact, withheld o blurred 5 km. Se reservan mientras no lo diga.
site-differs = Dos filas dicen cosas distintas del sitio “{ $found }”; sus lugares se reservan hasta que coincidan.
position-not-understood = “{ $found }” no es una posición: latitud y longitud en grados decimales (WGS 84), las dos, como 38.512 y -113.204. La línea se guarda sin ella.
end-without-start = El final de la línea tiene posición y su comienzo no. La línea se guarda sin ninguna de las dos.
place-differs = La línea { $line } de { $site } está en otro lugar del que dice una fila anterior; se guarda el anterior.
area-no-unit = “{ $found }” no tiene una unidad conocida. Pruebe “area (ha)” como encabezado; también sirven acres, m2 y km2.
area-not-a-number = “{ $found }” no es una superficie mayor que cero.
date-not-understood = “{ $found }” no es una fecha de la forma 2026-06-09. Día y mes en otro orden no se pueden distinguir: titule la columna “date (d/m/y)” o “date (m/d/y)”, según sea, con el año en cuatro cifras.
outcome-not-known = “{ $found }” no es un resultado. Servirían read, nothing found, not read o partly read.
read-to-missing = Leída en parte, ¿pero hasta dónde? Llene “read to”.
row-says-nothing = Esta fila no tiene especie, ni números, ni resultado. Para una línea vacía escriba “nothing found” en “outcome”.
state-not-known = “{ $found }” no es live ni dead.
start-missing = Hay un final pero no un comienzo.
stop-missing = Hay un comienzo pero no un final.
start-and-stop-missing = Hay una especie pero no comienzo ni final, ni longitud.
stop-before-start = El final { $stop } está antes del comienzo { $start }. ¿Cambiados, o un descuido del lápiz? La fila se aparta.
zero-length = Comienzo y final son ambos { $start }, así que no hay nada entre ellos. La fila se aparta.
length-zero = Esta longitud es cero, así que no hay nada sobre la línea. La fila se aparta.
start-stop-length-disagree = Comienzo y final distan { $between }, y la longitud dice { $length }. ¿Cuál es la buena? Hasta que se resuelva, la línea queda fuera.
positions-and-lengths-mixed = { $site }, línea { $line }: unas filas tienen posiciones y otras solo longitudes. Una línea es lo uno o lo otro; queda fuera hasta que se resuelva.
line-length-differs = { $site }, línea { $line } mide { $first } en otra parte y { $found } aquí. Hasta que se resuelva no representa a ningún sitio.
protocol-not-known = “{ $found }” no es un protocolo entregado ni uno que venga con tautline.
length-rounded = “{ $text }” no es entero en nanómetros y se redondeó una vez.

length-empty = “{ $column }” está vacío.
length-not-a-number = “{ $text }”: se esperaba un número en el carácter { $at }, donde está “{ $found }”.
length-unknown-unit = “{ $text }”: “{ $found }” en el carácter { $at } no es una unidad. Servirían mm, cm, m, in y ft.
length-no-unit = “{ $text }” no tiene unidad. Désela a la columna, como “{ $column } (in)”, o use --unit.
length-negative = “{ $text }” está bajo cero.
length-feet-or-inches = “{ $text }” podría ser pies decimales o pies y pulgadas. Diga “decimal ft” en el encabezado, o escriba 5 ft 11 in.
length-which-of-feet-and-inches = “{ $text }”: ¿pies o pulgadas? Escriba 5-0 o 0-5.
length-units-out-of-order = “{ $text }”: en el carácter { $at } debe seguir la unidad menor de la misma clase, como 5 ft 3 in o 3 m 20 cm.
length-part-too-large = “{ $text }”: en el carácter { $at } la parte menor es tan grande como una de la unidad mayor.
length-bad-fraction = “{ $text }”: la fracción en el carácter { $at } no lo es.
length-other-decimal-mark = “{ $text }”: el signo decimal en el carácter { $at } no es el de este archivo. Use el del archivo, o --decimal.
length-too-long = “{ $text }” es más largo que cualquier cinta.

goal-no-relation = “{ $found }” no es una meta. Pruebe “at least 15 %”, “at most 10 %” o “15..25 %”, con una especie o forma de crecimiento y dos puntos delante si no trata de la cobertura de copa.
goal-not-a-percentage = “{ $found }” no es un porcentaje.
goal-not-a-length = “{ $found }” no es una altura con su unidad.
goal-confidence = “{ $found }” no es una confianza entre 50 y 99,9 %. La meta se aparta hasta que lo sea.
goal-low-above-high = “{ $found }”: el extremo bajo está por encima del alto.

protocol-not-toml = No se puede leer este archivo de protocolo: { $found }.
protocol-unknown-rule = “{ $found }” no es una regla de un protocolo. Lo son: { $accepted }.
protocol-unknown-word = { $rule } = “{ $found }” no se entiende. Serviría una de estas: { $accepted }.
protocol-not-text = { $rule } = { $found } debería ser texto entre comillas.
protocol-not-a-length = { $rule } = “{ $found }” no es una longitud con su unidad.

protocol-rule-misspelt = “{ $found }” no es una regla de un protocolo. ¿Se quiso decir “{ $near }”?
protocol-without-name = Este protocolo no tiene nombre. Déle una descripción sencilla: name = "copa viva, claros menores de 2 in cerrados".
protocol-not-true-or-false = { $rule } = { $found } debería ser true o false, sin comillas.
protocol-not-a-list = { $rule } = { $found } debería ser una lista de textos, como ["shrub", "subshrub"].
protocol-not-a-section = { $rule } debería ser una sección propia: una fila [{ $rule }] con sus reglas debajo.

heading-twice = “{ $found }” nombra la misma columna que un encabezado anterior. Se usa el primero; dé otro nombre al otro o quítelo.
row-too-long = Esta fila tiene { $found } celdas bajo { $headings } encabezados, así que sus celdas no se pueden distinguir y se aparta. Si tiene comas decimales, separe las celdas con punto y coma o ponga los números entre comillas.
cell-over-several-rows = Una celda ocupa varias filas; lo más probable es que unas comillas que se abren aquí nunca se cierren. Estas filas se apartan.
unit-not-known = “{ $found }” no es una unidad. Servirían mm, cm, m, in, ft, decimal ft o ft-in.
stratum-listed-twice = { $found } está dos veces en la tabla de estratos. Se usa la primera superficie.
slope-not-understood = “{ $found }” no es una pendiente. Encabece la columna “slope (%)” o “slope (deg)”, o escriba 12 % o 7°.
permission-until-not-understood = “{ $found }” no es un día. Escriba primero el año, como 2027-03-31. El permiso de esta fila no se guarda.
permission-from-missing = Hay un día hasta el que vale el permiso, y nadie que lo haya dado. Escriba quién lo dio en “permission from”. El permiso de esta fila no se guarda.
permission-differs = { $site }, línea { $line } tiene en otra parte otro permiso que el de “{ $found }”. Se usa el primero.
slope-differs = { $site }, línea { $line } tiene en otra parte otra pendiente que { $found }. Se usa la primera.
plan-differs = { $site }, línea { $line } está en { $first } en otra parte y en { $found } aquí. Hasta que se resuelva no representa a ningún sitio.
visit-in-two-files = { $site }, línea { $line }: esta lectura también está en { $first }. Solo se usan las filas de ese archivo; quite uno de los archivos, o distinga las lecturas por fecha, lector o pasada.
not-read-but-readings = { $site }, línea { $line } figura como no leída, y hay lecturas de ella. Queda fuera hasta que se resuelva.
nothing-found-but-readings = { $site }, línea { $line } figura sin nada, y hay lecturas de ella. Queda fuera hasta que se resuelva.
read-but-no-readings = { $site }, línea { $line }: no se pudo usar ninguna lectura de ella. Si no crecía nada en ella, escriba “nothing found” (en una tabla, en “outcome”); hasta entonces queda fuera y no es un cero.
outcomes-differ = “{ $found }” no es lo que dice otra fila de esta lectura. Se usa la primera.
length-of-what = ¿Es la longitud de las líneas o de lo leído en ellas? Encabécela “line length”, o agregue una columna “species”.
columns-not-used = Con estas columnas no se hace nada: { $found }.

finding-not-known = “{ $found }” no es un hallazgo que se pueda resolver; docs/checks.md los lista.
reason-missing = ¿Por qué está bien? Llene “reason”.
settled-where = ¿Dónde? Llene “site” y “line”, o “file” y “row”, como los imprime tautline check --csv.
row-not-a-number = “{ $found }” no es el número de una fila.

## Typed sheets
sheet-before-first-line = “{ $found }” está antes de la primera línea, así que no pertenece a ninguna. Empiece una línea encima, como “Line 1, 65 ft”.
sheet-row-not-understood = “{ $found }” no es ni una fila de cabecera, como “Date: 2026-06-09”, ni una línea, como “Line 1, 65 ft”. No se hace nada con ella; un # delante la vuelve comentario.
sheet-no-numbers = “{ $found }” no tiene números detrás. Escriba dónde empieza y termina, como 12-14, o póngalo entre paréntesis si es una observación.
sheet-number-missing = Aquí se esperaba un número, y está “{ $found }”. Escriba ambos extremos, como 12-14, o solo una longitud.
sheet-number-missing-at-end = La fila termina donde se esperaba un número. Escriba ambos extremos, como 12-14, o solo una longitud.
sheet-letter-for-digit = Aquí hay una letra entre las cifras: “{ $found }”. Si se quiso decir { $near }, teclee la cifra.
sheet-space-missing = ¿Es “{ $found }” un número aparte? Ponga un espacio delante.
sheet-word-not-understood = Aquí no se entiende “{ $found }”. Detrás de un número puede ir d de muerta, h 40 cm de altura, w 30 cm de ancho, #2 de planta, o una observación entre paréntesis.
sheet-character = Aquí no se entiende “{ $found }”. Ponga un espacio entre dos números y una observación entre paréntesis.
sheet-mark-before-number = “{ $found }” habla del número de antes, y no hay ninguno en esta fila. Para una fila entera ponga d detrás de la especie: ATCA d 12-14.
sheet-mark-twice = “{ $found }” dice por segunda vez lo ya dicho. Se usa lo primero.
sheet-dash-without-start = No hay comienzo delante del guion. Escriba ambos extremos, como 12-14.
sheet-too-many-dashes = ¿Qué números van juntos? Escriba cada tramo como comienzo-final con un espacio entre dos tramos: 12-14 20-23. En pies y pulgadas escriba 5-3 to 6-2.
sheet-dash-or-fraction = ¿De uno a otro, o una fracción? Una fracción lleva un espacio delante y no guion: 10 1/2.
sheet-bracket-open = Aquí se abre un paréntesis que nunca se cierra.
sheet-plant-missing = ¿Qué planta? Escriba su marca justo detrás del #, como #2.
sheet-decimal-mark = “{ $found }” no es el signo decimal de esta hoja. Los números se separan con espacios; para comas decimales escriba “Decimal: comma” en la cabecera, o use --decimal.
sheet-decimal-mark-not-clear = “{ $found }”: una hoja tiene un solo signo decimal. Escriba “Decimal: comma” o “Decimal: point” una vez.
sheet-no-unit = ¿“{ $text }” de qué? Escriba “Unit: in” en la cabecera, o cm, m, ft, decimal ft o ft-in; o use --unit. Los demás números de la hoja también la esperan.
sheet-tape-no-unit = ¿“{ $text }” de qué? La longitud de la cinta necesita su propia unidad, como 65 ft.
sheet-feet-or-inches = “{ $text }” podría ser pies decimales o pies y pulgadas. Escriba “Unit: decimal ft” o “Unit: ft-in” en la cabecera.
sheet-line-without-name = ¿Qué línea? Escriba su nombre detrás de la palabra, como “Line 1, 65 ft”.
sheet-line-item = “{ $found }” no se entiende en la fila de una línea. Detrás de su nombre puede ir una longitud con su unidad, stratum, plot, slope o pass con un nombre, y nothing, not read, read to 24 m, planned o continued, con comas.
sheet-line-twice = La línea { $found } con esta fecha, lector y pasada ya está más arriba, así que las filas de abajo no se leen. Si es el resto de esa línea, escriba “continued” detrás de su nombre; si es una segunda lectura, déle una pasada.
sheet-key-not-here = “{ $found }” no puede ir en una cabecera. Las lecturas van bajo su línea: una especie y sus números.
sheet-species-or-remark = ¿Es “{ $found }” una especie o una observación? Para una especie quite los dos puntos; una observación con un número va entre paréntesis, o en la cabecera sobre la línea.
sheet-species-above = ¿De qué especie es esta fila? La fila de arriba no se pudo leer; escriba la especie delante.
sheet-key-misspelt = ¿Se quiso decir “{ $key }” con “{ $found }”? Se guarda como observación.
sheet-holds-no-plants = La lista de plantas ({ $count }) no forma parte de una hoja tecleada; conserve su propio archivo.
sheet-holds-no-strata = Las superficies de los estratos ({ $count }) no forman parte de una hoja tecleada; conserve su propio archivo.
sheet-holds-no-protocols = La hoja nombra sus protocolos ({ $count }) y no contiene sus reglas; conserve sus propios archivos.
sheet-holds-no-set-aside = { $site }, línea { $line }: lo que no se pudo leer ({ $found }) no está en la hoja impresa aquí.
sheet-protocol-not-clear = { $site }, línea { $line }: el nombre “{ $found }” corresponde a más de un protocolo, así que la hoja no puede decir cuál.
sheet-cannot-say = { $site }, línea { $line }: “{ $found }” no se puede escribir en una hoja tecleada y se omite.

## Boundaries
geojson-not-json = La fila { $row }, carácter { $character } no es JSON.
geojson-no-features = “{ $found }” no es un polígono, elemento o colección de elementos GeoJSON.
geojson-buffer = Elemento { $part }: buffer es un número de metros de 0 a 10 000.
geojson-use = Elemento { $part }: “{ $found }” no es un uso. Lo son “stratum”, “keep out” y “line”.
geojson-shape = Elemento { $part }: “{ $found }” no se puede leer. Se pueden polígonos, líneas y puntos, con números como longitud y latitud.
benchmarks-not-read = No se leyó: { $why }
benchmark-cover = { $key }: “{ $found }” no es una cobertura. Servirían “at least 15 %” o “between 15 and 25 %”.
benchmark-scale = { $key }: “{ $found }” no es una escala. Servirían stand, nest o landscape.
benchmark-part = { $key }: no hay nada en { $found }. Un número sin ello no se puede comparar con nada.
boundary-unknown = Esto no es un lindero que se pueda leer. Se pueden GeoJSON, GPX, KML, KMZ, GeoPackage y shapefiles (el .shp con su .prj al lado, o ambos en un .zip), y un texto de esquinas, una por renglón, como «42.3010, -113.7000».
boundary-other-encoding = Desde la fila { $row } esto está escrito en una codificación que no es UTF-8. Guárdelo como UTF-8 en el programa del que viene.
boundary-too-large = Esto es más grande de lo que es nunca un lindero (64 MB). Recorte el sitio en el programa del que viene.
boundary-too-many-corners = Esto tiene más de { $most } esquinas. Recorte el sitio en el programa del que viene.
boundary-outline-too-long = Elemento { $part }: un contorno de más de { $most } esquinas. Simplifíquelo en el programa del que viene; basta una esquina cada pocos metros.
boundary-too-deep = Hay elementos unos dentro de otros a más profundidad que en cualquier lindero.
boundary-not-xml = Fila { $row }, carácter { $character }: esto no es XML bien formado.
boundary-other-xml = “{ $found }” no es GPX ni KML.
boundary-no-number = Elemento { $part }, fila { $row }: longitud y latitud no son números.
boundary-damaged = Este archivo está dañado; lo más probable es que se cortara al copiarlo. Cópielo otra vez.
boundary-not-geopackage = Esto es una base de datos, pero no un GeoPackage.
boundary-packed-without = En este archivo comprimido no hay ningún .shp ni ningún .kml.
boundary-packed-several = En este archivo comprimido hay { $files } shapefiles. Entregue uno a la vez: --boundary para el sitio, --keep-out para caminos y agua.
boundary-nothing = No contiene nada que se pueda usar.
boundary-reference = Está en “{ $found }”, que aquí no se conoce. Se conocen grados o UTM en metros en WGS 84, NAD 83 o NAD 27. Guárdelo como WGS 84 en el programa del que viene.
boundary-no-reference = Nada dice en qué datum está: un shapefile lo dice en un archivo .prj a su lado. Pregunte a quien lo hizo, y dé después --datum WGS84, --datum NAD27 o --datum "NAD27 UTM 12 N". Uno antiguo tomado por uno nuevo puede desviarse hasta 100 m.
map-no-lines = { $file }: { $shapes ->
    [one] se omitió una forma que no es una línea con nombre.
   *[other] se omitieron { $shapes } formas que no son líneas con nombre.
} El terreno y lo que se debe evitar van en un plan: tautline plan lines --boundary.
map-kept-back = { $file }: { $shapes ->
    [one] allí no se dice el lugar de una línea, o es el centro de un cuadrado; se omitió.
   *[other] allí no se dicen los lugares de { $shapes } líneas, o son centros de cuadrados; se omitieron.
}
map-nothing = { $file } no contiene ninguna línea con nombre y lugar. Una línea es un trazo, o una marca en su cero, con el nombre de la línea.
map-no-site = Nada dice de qué sitio son estas líneas. Dígalo con --site.
map-brought-over = { $file }: sus lugares están en { $found } y se pasaron a WGS 84; por ello pueden estar desviados { $metres ->
    [one] un metro
   *[other] { $metres } m
}.
map-other-datum = Sus lugares están en { $found }. Guárdelo en WGS 84 (EPSG:4326) en el programa del que viene.
imported-nothing-read = No se pudo leer nada que un cuaderno guarde, así que no se agregó nada a { $file }.
boundary-crossed = Elemento { $part }: «{ $found }» no dice si se camina a través de él. «yes» y «no» lo dicen.
boundary-typed-row = Renglón { $row }: «{ $found }» no es una esquina. Servirían «42.3010, -113.7000» o «12 N 278494 4687150», o un renglón vacío entre dos contornos.
boundary-typed-grid = Renglón { $row }: «{ $found }» está en otra cuadrícula que las esquinas de arriba. Escriba las esquinas de un contorno todas en grados, o todas en una zona UTM.
boundary-typed-no-datum = Nada dice en qué datum están estas esquinas. Escríbalo en un renglón propio encima de ellas (WGS84, NAD83 o NAD27), o indique --datum WGS84, --datum NAD83 o --datum NAD27. Uno antiguo tomado por uno nuevo puede desviarse hasta 100 m.
row-of-totals = Esta fila resume otras. Se apartó: las sumas se calculan con las lecturas.
