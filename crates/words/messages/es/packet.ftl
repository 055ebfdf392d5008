### Palabras de tautline: el paquete que lleva una cuadrilla.

packet-title = Líneas para { $site }
packet-about = { $lines } líneas de { $length } por leer, { $reserve } de reserva. Sorteadas con la semilla { $seed }.
packet-map = Mapa del sitio y sus líneas
packet-map-said = El lindero de { $site } con { $lines } líneas a escala, con el norte arriba. Se caminan en este orden: { $order }.
packet-lines = Dónde están las líneas
packet-slope = Las longitudes van a lo largo de la cinta, bien tensa y cerca del suelo. En una pendiente la cinta sigue la pendiente; la cobertura es la misma parte de ella que en el plano.
heading-walk = Por leer, en el orden de la caminata:
column-start-utm = comienzo (UTM, WGS 84)
map-north = N
map-line = línea; el cuadro es el cero de la cinta
map-reserve = de reserva
map-keep-out = no entrar
map-way = camino entre líneas

## The protocol
packet-protocol = Cómo se lee una línea
packet-no-protocol = No se entregó ningún protocolo. Anote con qué reglas lee; un número sin ellas no se puede comparar con nada.
packet-protocol-name = Protocolo: { $name } (huella { $print }; { $source }).
packet-gap = Siga leyendo por encima de un claro menor que { $limit }; donde el claro es mayor, escriba un comienzo nuevo.
packet-gap-bridged = Siga leyendo por encima de estos cuando son menores: { $cases }.
packet-gap-breaks = Estos siempre terminan un tramo: { $cases }.
packet-every-edge = Escriba cada borde; no se cierra ningún claro.
packet-dead-left-out = No anote la copa muerta.
packet-dead-apart = Anote la copa muerta y márquela como muerta.
packet-dead-joins = Anote la copa muerta y márquela como muerta; un tramo muerto corto que toca copa viva se le une al calcular la cobertura.
packet-dead-counts = La copa muerta cuenta como viva; márquela como muerta de todos modos.
packet-side-left = Lea el borde izquierdo de la cinta, mirando desde su cero.
packet-side-right = Lea el borde derecho de la cinta, mirando desde su cero.
packet-side-open = Lea un mismo borde de la cinta de principio a fin. Cuál, queda abierto: acuérdenlo antes de la primera línea y anótenlo.
packet-shortest = No anote un tramo menor que { $length }.
packet-finest = Lea hasta { $length }.
packet-window = Cuándo leer: { $said }
packet-alive = Viva sin hojas: { $said }
packet-stalks = Tallos florales: { $said }
packet-tape = La cinta: { $said }
packet-wind = Viento: { $said }
packet-heights = Alturas: { $said }
packet-plants = Plantas que se pueden encontrar
packet-plant-code = clave
packet-plant-name = nombre
packet-plant-common = nombre común
packet-plant-form = forma de crecimiento
packet-plant-counted = cuenta
packet-plant-features = rasgos que la distinguen
packet-yes = sí
packet-no = no

## Sheets
sheet-title = Línea { $line }
sheet-spare = Hoja de repuesto
sheet-site = Sitio
sheet-stratum = Estrato
sheet-length = Longitud
sheet-line = Línea
sheet-why = En lugar de cuál, y por qué
sheet-true = Rumbo verdadero
sheet-compass = Brújula
sheet-start = Comienzo
sheet-protocol = Protocolo
sheet-date = Fecha
sheet-reader = Leyó
sheet-recorder = Anotó
sheet-time = De – a (hora)
sheet-weather = Viento, etapa de crecimiento
sheet-readings = Lecturas
sheet-from = comienzo
sheet-to = final
sheet-species = especie
sheet-dead = muerta
sheet-height = altura
sheet-fractions = Todas las longitudes y alturas van en { $unit }: el número entero antes de la marca, la fracción (como 5/8) después.
sheet-decimals = Todas las longitudes y alturas van en { $unit }: el número entero antes de la marca, los decimales después.
sheet-nothing = Si no se encuentra nada, escriba “nada” en la primera fila (se teclea “nothing”).

## Cards
packet-equipment = Equipo
equipment-tape = cinta, comprobada contra una longitud conocida, y una de repuesto
equipment-stakes = estacas con tapa, dos por línea, y algunas más
equipment-pins = manija de tensión o resorte, pinzas
equipment-hammer = martillo, guantes, protección para los ojos
equipment-plumb = plomada, o vara con nivel
equipment-compass = brújula, con la declinación ajustada o no, según se acordó
equipment-gps = receptor GPS con layout.gpx, y este mapa en papel
equipment-sheets = estas hojas, lápices, tabla, hoja de repuesto
equipment-plants = lista de plantas, bolsas y etiquetas para lo que nadie conoce
equipment-camera = cámara, pizarra con sitio, línea y fecha
equipment-water = agua, protección para el sol y la lluvia, botiquín
equipment-radio = radio o mensajero satelital, a quién se llama y cuándo
packet-stakes = Estacas
packet-stakes-said = Salen { $stakes } estacas. Pregunte antes de cavar o clavar. Anote lo que se quedó y lo que volvió.
stake-end = extremo
stake-zero = cero
stake-far = extremo lejano
stake-kind = clase
stake-capped = con tapa
stake-out = clavada (fecha)
stake-back = retirada (fecha)
packet-photos = Puntos de foto
packet-photos-said = Dos vistas generales y una de cerca de cada línea, cada vez desde los mismos lugares y a la misma altura (práctica común).
photo-from = desde
photo-toward = hacia
photo-number = número
photo-time = hora
photo-note = altura, lente, nota
photo-degrees = { $degrees }° verdaderos
photo-down = hacia abajo en la cinta, un metro cuadrado
packet-again = Para hallar las líneas otra vez
again-withheld = Reservado, según el ajuste del sitio
again-zero = Cero
again-end = Extremo lejano
again-bearing = Rumbo: verdadero · de brújula en la fecha del paquete
again-witness = Testigo 1: qué es, distancia y rumbo al cero
again-witness-two = Testigo 2
again-way-in = Cómo llegar
again-permission = Permiso para entrar: quién lo dio, hasta cuándo
again-stakes = Estacas: tipo, qué tan hondas, tapa

## A quién llamar
packet-calls = A quién llamar
packet-calls-said = Complételo antes de que alguien salga; donde no hay señal, acuerde quién va a buscar y cuándo. En una emergencia va primero el número local.
call-emergency = Emergencia, clínica más cercana
call-back-by = Quién sabe dónde estamos; vuelta antes de
call-office = Oficina, canal de radio
call-owner = Dueño o encargado del terreno
call-before-stakes = Líneas enterradas, antes de clavar estacas
call-way-out = Salida, punto de encuentro
packet-pdf-written = El paquete es { $file }, { $pages } { $pages ->
    [one] página
   *[other] páginas
}.
walk-length = El recorrido de línea a línea suma { $metres } m, como si el terreno fuera plano. Rodea donde no se entra, salvo lo que se puede cruzar, como los caminos.
walk-leg = de { $from } a { $to }
walk-leg-first = de donde empieza el recorrido a { $to }
walk-over-kept-out = Aquí no se encontró un paso que rodee donde no se entra, y el mapa va en línea recta: { $legs }. Busque un paso en el terreno.
walk-over-outside = Aquí no se encontró un paso por el terreno propio del sitio: { $legs }. Pregunte de quién es el terreno que queda en medio.
