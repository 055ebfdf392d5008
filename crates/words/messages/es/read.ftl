### Palabras de tautline: leer una línea junto a la cinta.

read-lines = Leer
read-going-on = Seguir con
read-draft = { $site }, línea { $line }: { $rows ->
    [0] aún nada
    [one] 1 fila
   *[other] { $rows } filas
}
read-planned = { $site }, línea { $line }
read-waiting = { $lines ->
    [one] Una línea planeada no se ha leído
   *[other] { $lines } líneas planeadas no se han leído
} este año
read-more-planned = { $more } más: prepárelas abajo.
read-set-up = Preparar una línea
read-site = Sitio
read-line = Línea
read-tape-length = Longitud de la cinta, como 65 ft o 20 m
read-unit = Los números de la cinta están en
read-unit-in = pulgadas
read-unit-ft = pies
read-unit-m = metros
read-unit-dm = decímetros
read-unit-cm = centímetros
read-unit-mm = milímetros
read-unit-decimal-ft = pies, décimas y centésimas
read-unit-ft-in = pies y pulgadas
read-protocol = Protocolo
read-protocol-none = ninguno nombrado
read-reader = Quién lee la cinta
read-recorder = Quién anota
read-date = Día
read-second-reader = Una segunda lectura: quien lee no ha visto la primera
read-permission = ¿Tiene permiso para estar en esta tierra? Si no se le preguntó a nadie, pregunte antes de seguir. De un modo u otro puede leer la línea.
read-begin = Empezar en la estaca del cero
read-name-the-line = Nombre el sitio y la línea.
read-length-not-read = “{ $found }” no es una longitud. Escríbala como 65 ft o 20 m, o déjela vacía.
read-date-not-read = “{ $found }” no es un día. Escríbalo como 2026-06-09.
read-unknown = Esta línea ya no es un borrador: se cerró o se desechó.
read-back = Líneas
read-heading = { $site }, línea { $line }
read-kept = guardado
read-keeping = guardando…
read-tape = La cinta
read-tape-shows = { $rows ->
    [0] Aún no se ha leído nada en ella.
    [one] Se ha leído un tramo en ella.
   *[other] Se han leído { $rows } tramos en ella.
} Las filas de abajo dicen cuáles.
read-rows = Filas
read-start = Comienzo
read-stop = Final
read-nothing-yet = Aún no se ha escrito nada.
read-dead = muerta
read-row-height = altura { $value }
read-row-width = ancho { $value }
read-row-note = { $value }
read-row-plant = planta { $value }
read-row-removed = quitada
read-expects-species = ¿Qué especie sigue?
read-expects-start = { $species } empieza en
read-expects-stop = { $species } desde { $start } termina en
read-expects-length = { $species } mide
read-expects-correct-start = { $row }: empieza en
read-expects-correct-stop = { $row }: termina en
read-expects-correct-length = { $row }: mide
read-expects-height = { $row }: altura de la planta
read-expects-width = { $row }: mayor ancho de la planta
read-expects-split-stop = { $row }: la primera parte termina en
read-expects-split-start = { $row }: la segunda parte empieza en
read-expects-read-to = La línea se leyó hasta
read-species = Especie
read-other-species = otras…
read-find-species = Parte de una clave o de un nombre
read-new-plant = planta nueva
read-keep-name = Guardar “{ $name }” como planta sin nombre
read-working-name = planta nueva { $number }
read-is-now = “{ $name }” es
read-pad = Números
read-feet = ft –
read-erase = borrar
read-undo = deshacer
read-redo = rehacer
read-start-done = empieza aquí
read-stop-done = termina aquí
read-done = listo
read-swap = Intercambiar
read-join = Unir
read-remove = Quitar
read-put-back = Volver a poner
read-mend = Corregir
read-use-species = Era { $species }
read-leave-so = Dejarlo así
read-correct-start = Comienzo…
read-correct-stop = Final…
read-correct-length = Longitud…
read-make-dead = Muerta
read-make-live = Viva
read-insert = Insertar una antes
read-split = Partir…
read-join-before = Unir con la fila anterior
read-same-plant = La misma planta que la fila anterior
read-height = Altura…
read-width = Ancho…
read-species-of-row = Especie
read-note = Observación
read-more = Más…
read-rules = Reglas
read-keys = Volver a las teclas
read-close-look = Cerrar…
read-nothing = No hay nada en esta línea
read-partly = Leída solo hasta…
read-whole = Leída de punta a punta
read-lengths-only = Longitudes sin posiciones
read-leave-entry = Dejar lo que se está tecleando
read-why-not = Por qué no se leyó
read-not-read = No leída
read-wind = Viento
read-growth-stage = Etapa de crecimiento
read-departure = En qué se apartó del protocolo
read-remarks = Observaciones sobre la línea
read-discard = Desechar este borrador
read-discard-sure = Sí, desecharlo: no se guarda nada de él
read-told-nothing = No hay nada en esta línea.
read-told-to = Leída hasta { $mark }.
read-told-not-read = No leída. { $why }
read-before-closing = Conviene mirarlo antes de sacar la estaca
read-under-way = Aún se está tecleando algo: termínelo o déjelo.
read-nothing-written = No hay nada escrito. Si no hay nada en esta línea, dígalo en “Más”.
read-close-rows = { $rows ->
    [0] Ninguna fila
    [one] 1 fila
   *[other] { $rows } filas
}. ¿Se llegó a la estaca del final?
read-close = Cerrar la línea
read-again-what = Usted ya leyó esta línea este día, y esa lectura está guardada. ¿Es esta una corrección de ella, o leyó la línea otra vez?
read-again-corrects = Corrige la primera
read-again-another = La leímos otra vez
read-without-protocol = Para esta línea no se nombró ningún protocolo.
rule-drawn-gap-joined = Un claro menor que { $limit }: siga leyendo como copa.
rule-drawn-gap-breaks = Un claro mayor que { $limit }: termine, y empiece otra vez.
rule-drawn-dead-apart = Una parte muerta: escrita aparte, como muerta.
rule-drawn-dead-left-out = Una parte muerta: se omite.
rule-drawn-dead-counts = Una parte muerta: leída como viva.
rule-drawn-dead-short = Una parte muerta menor que la regla de claros que toca copa viva: leída como viva.
rule-drawn-overhang = Se lee la copa que cuelga sobre el borde, dondequiera que esté su raíz.
rule-drawn-under-the-line = Con la raíz bajo la cinta y la copa a un lado: no se lee.
rule-drawn-two-species = Dos especies se traslapan: cada una se escribe entera.
rule-drawn-two-species-once = Dos especies se traslapan: la cinta se escribe una vez, con la de arriba.
read-rule-window = Cuándo se leen las líneas
read-rule-alive = Viva sin hojas
read-rule-stalks = Tallos florales
read-rule-tape = La cinta
read-rule-wind = Viento
read-rule-heights = Alturas
read-rule-open = Quedó abierto, se toma así
read-closed = { $site }, línea { $line } está guardada
read-line-not-read = La línea no se leyó.
read-line-cover = Esta línea: cobertura { $cover }.
read-last-time = La vez anterior, { $date }: cobertura { $cover }.
read-last-time-unlike = La vez anterior, { $date }, con otras reglas: cobertura { $cover }. Las dos no se pueden comparar tal como están.
read-site-cover = El sitio hasta ahora, { $lines ->
    [one] 1 línea
   *[other] { $lines } líneas
}: cobertura { $cover }, entre { $low } y { $high }.
    .alike = El sitio hasta ahora, { $lines ->
        [one] 1 línea
       *[other] { $lines } líneas
    }: cobertura { $cover }, según las cifras mostradas.
read-site-cover-alone = El sitio hasta ahora, { $lines ->
    [one] 1 línea
   *[other] { $lines } líneas
}: cobertura { $cover }; aún no se puede dar un intervalo.
read-left = Planeadas y aún no leídas: { $lines }.
read-next-line = Línea siguiente
read-to-site = Al sitio
tailgate-covers = { $first } tiene cobertura { $cover }; { $second }, { $other }. Aquí es donde más difieren:
tailgate-alike = { $first } y { $second } leyeron la misma copa: cobertura { $cover }.
tailgate-stretch = De { $start } a { $stop } { $has } tiene copa y { $lacks } no. Miren { $rule }.
apart-gap = qué tan largo es el claro que termina la copa, y dónde se mide
apart-dead = qué cuenta como vivo
apart-counts = qué plantas cuentan
apart-edge = dónde termina una copa, en vertical sobre el borde de la cinta
apart-plant = si esta planta llega al borde de la cinta
tailgate-heading = ¿Leen igual?
tailgate-swap = Esta fue la primera línea del día. Antes de la siguiente, cambien de puesto: { $second } la lee otra vez sin ver estas filas, y verán en qué difieren.
tailgate-begin = Cambiar de puesto y leerla otra vez
tailgate-agreed = Lo que acordaron
tailgate-keep = Anotarlo
tailgate-kept = Queda con la segunda lectura.
read-stake-noted = El lugar de la estaca del cero se anotó el { $date }.
read-stake-find = Buscar la estaca del cero
read-stake-waiting = Esperando la posición del dispositivo…
read-stake-no-position = El dispositivo no da ninguna posición. Guíese por la descripción de la estaca, sus fotos y la brújula.
read-stake-way = A { $metres } m hacia el { $way }, rumbo verdadero { $bearing }°. Las posiciones pueden desviarse { $off } m.
read-stake-near = Está a menos de { $off } m; las posiciones no dicen más que eso. Busque a su alrededor.
read-stake-note = Anotar dónde está la estaca del cero
read-stake-where = Párese junto a ella. El lugar se guarda con la lectura y no sale en los informes.
way-north = norte
way-north-east = noreste
way-east = este
way-south-east = sureste
way-south = sur
way-south-west = suroeste
way-west = oeste
way-north-west = noroeste
read-type-again = Teclear la hoja por segunda vez
read-twice = { $alike ->
    [one] 1 fila igual
   *[other] { $alike } filas iguales
}, { $differ ->
    [0] ninguna difiere
    [one] 1 difiere
   *[other] { $differ } difieren
}
read-first-typing = Primer tecleo
read-second-typing = Este tecleo
read-to-first-typing = Corregir el primer tecleo
read-stake-placed = El cuaderno tiene el lugar del cero de esta línea; se toma como bueno a { $metres } m.
read-unnamed = { $plants ->
    [one] Una planta espera su nombre
   *[other] { $plants } plantas esperan su nombre
}
read-unnamed-is = «{ $name }», { $rows ->
    [one] 1 fila
   *[other] { $rows } filas
}, es
read-named = «{ $name }» es { $species }.
