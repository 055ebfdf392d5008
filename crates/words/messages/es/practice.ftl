### Palabras de tautline: práctica; líneas con sus respuestas, calificaciones, ejercicios, el papel de quien enseña.

## Help
help-practice = Practicar hasta que todos lean igual: líneas con sus respuestas, calificaciones, ejercicios, papel para un grupo
help-practice-line = Una línea de práctica por leer, dibujada a escala, con sus respuestas o sin ellas
help-practice-grade = Poner hojas junto a las respuestas, intercepción por intercepción
help-practice-drill = Aritmética a mano, dónde empiezan las líneas, qué está dentro o fuera; con la solución
help-practice-set = Varias líneas en papel, con las respuestas aparte
help-practice-class = Calificar un grupo: lugares, empates, equipos, qué errores costaron cuánto
help-practice-level = Qué tan difícil, de 1 (arbustos enteros, suelo despejado) a 5 (traslapes, madera muerta, pendientes) (1)
help-practice-number = El número de la línea; el mismo número es la misma línea (1)
help-practice-length = Cuánto mide la línea (50 ft, o 15 m)
help-practice-tape = Cómo está numerada la cinta: ft-in, decimal-ft o metric (ft-in)
help-practice-key = Mostrar las respuestas
help-practice-drawing = Escribir la línea como página para mirar o imprimir
help-practice-sheets = Tablas de hojas: name, line, species, start, stop (o length), percent; group y date si se quiere
help-practice-tolerance = Cuánto puede desviarse un borde y seguir bien (dos divisiones)
help-practice-bands = Puntos por la cobertura según los puntos porcentuales de diferencia con las respuestas, como 1=10,2=7,4=4
help-practice-marks = Puntos por bordes, especies y aritmética, como 20,10,10
help-practice-real = Tabla de lo que leyeron expertos en líneas reales, en lugar de líneas de práctica
help-practice-again = Tabla de lo que leyeron expertos en las mismas líneas más tarde ese día
help-practice-best = Cuántos aprendices de un equipo cuentan (3)
help-practice-kind = Qué se practica: add, feet-to-inches, subtract, whole, line-starts, in-or-out o sight (whole)
help-practice-solution = Mostrar la solución
help-practice-answer = Su respuesta, para revisarla: un número; longitudes, o “in” y “out”, separadas por comas
help-practice-lines = Cuántas líneas distintas (6)
help-practice-page = Escribir una página para mirar o imprimir
help-practice-forget = Eliminar al terminar las tablas de hojas: la lista del grupo desaparece

## The line
practice-title = Línea de práctica { $line }
practice-line-about = { $length } de cinta, nivel { $level }. Reglas: { $protocol }.
practice-line-slope = El terreno sube { $slope } %. La cinta lo sigue y se lee tal como queda; la cobertura en por ciento es la misma que en el plano.
practice-made-up = Una línea inventada en el matorral de desierto salino de Hollow Flat. No es un lugar real ni un ejercicio oficial.
practice-drawing-title = Línea de práctica { $line }, vista en vertical desde arriba
practice-drawing-about = Una cinta de { $length } en franjas de izquierda a derecha, con arbustos de { $species } especies al lado y por encima, y, en la medida de su nivel, también partes muertas, gramíneas, flores, hojarasca y roca. Las respuestas dicen dónde empieza y termina la copa; este texto no.
practice-edge = Lea a lo largo de la línea oscura, el borde de la cinta. Los contornos punteados quedan bajo otra copa.
practice-key-title = Respuestas de la línea { $line }
practice-key-cover = Copa { $canopy } de la línea; suma de especies { $sum }.
practice-grass = gramíneas
practice-flower = flores
practice-stalks = tallos florales
practice-litter = hojarasca
practice-rock = roca
practice-dead = muerta

## Intercepts beside the key
practice-right = bien
practice-start-off = comienzo desviado
practice-stop-off = final desviado
practice-both-off = ambos bordes desviados
practice-other-species = otra especie
practice-in-parts = en partes
practice-as-one = como una
practice-missed = omitida
practice-invented = no está ahí
practice-row-right = { $species } de { $start } a { $stop }: bien.
practice-row-start-off = { $species } de { $start } a { $stop }: su comienzo se leyó en { $read-start }. { $because }
practice-row-stop-off = { $species } de { $start } a { $stop }: su final se leyó en { $read-stop }. { $because }
practice-row-both-off = { $species } de { $start } a { $stop }: leída de { $read-start } a { $read-stop }. { $because }
practice-row-other-species = { $species } de { $start } a { $stop }: escrita como otra especie.
practice-row-in-parts = { $species } de { $start } a { $stop }: según la regla una sola intercepción, escrita en partes. { $because }
practice-row-as-one = { $species } de { $start } a { $stop }: según la regla varias intercepciones, escritas como una. { $because }
practice-row-missed = { $species } de { $start } a { $stop }: no está en la hoja. { $because }
practice-row-invented = { $species } de { $start } a { $stop }: aquí no hay copa que cuente. { $because }
practice-because-dead = Ahí hay madera muerta; con estas reglas no es copa viva.
practice-because-other = Ahí hay { $what }, y eso no cuenta.
practice-because-gap-closed = Un claro de { $gap } queda abierto con estas reglas.
practice-because-gap-left-open = Un claro de { $gap } se lee como copa con estas reglas.
practice-because-overlap = Está encima o debajo de otra especie; cada especie se escribe entera.
practice-because-along = Su longitud está bien; quedó corrida { $by } en la cinta respecto de donde está.

## Marks
practice-sheet-title = { $name }, línea { $line }
practice-sheet-cover = Copa según las filas { $rows }, según las respuestas { $key }: { $off } puntos porcentuales de diferencia.
practice-sums-up = El porcentaje que se calculó, { $stated }, es lo que dan las filas.
practice-sums-up-not = El porcentaje que se calculó, { $stated }, no es lo que dan las filas; dan { $rows }.
practice-marks = Calificación { $all } de { $most }: bordes { $edges }, especies { $species }, cobertura { $cover }, aritmética { $arithmetic }.
practice-example-marks = Estos puntos y bandas son un ejemplo. Teclee los de las reglas del año; aquí no se ofrece la tolerancia oficial de nadie.
practice-lengths-right = { $right } de { $all } longitudes coinciden con las respuestas.
practice-named = Un hábito explicaría { $explained } de las { $faults } filas que difieren: { $mistake }.
practice-alike = La hoja no permite distinguirlo de: { $alike }.
practice-one-expert = Línea { $line }: la leyó un solo experto. Para tener respuestas hacen falta dos o más.
practice-band-narrow = Línea { $line }: una banda de { $band } puntos porcentuales es más angosta que los { $spread } en que difieren los expertos mismos. No se le puede exigir a nadie.
practice-key-moved = Línea { $line }: leída otra vez, la cobertura de los expertos se movió { $off } puntos porcentuales. Pueden haberse movido la cinta o las plantas; mire antes de calificar.

## Mistakes
mistake-closes-gaps = se cerraron claros que las reglas dejan abiertos
mistake-leaves-gaps-open = se dejaron abiertos claros que las reglas leen como copa
mistake-counts-dead = se contó madera muerta como viva
mistake-counts-grass = se leyeron gramíneas como copa
mistake-counts-flowers = se leyeron flores como copa
mistake-counts-stalks = se leyeron tallos florales como copa
mistake-counts-litter = se leyó hojarasca como copa
mistake-counts-rock = se leyó roca como copa
mistake-from-far-end = la cinta se leyó desde su extremo lejano
mistake-other-edge = la cinta se leyó por su otro borde
mistake-tape-off = todo se leyó más adelante en la cinta, o más atrás, por una misma longitud
mistake-wider = los bordes se vieron demasiado afuera
mistake-narrower = los bordes se vieron demasiado adentro
mistake-misses-overlap = donde se traslapan dos especies, solo se escribió la de arriba
mistake-confuses = una especie se escribió como otra
mistake-from-beside = el ojo estaba a un lado de la cinta, no en vertical sobre ella
mistake-from-behind = el ojo estaba detrás o delante del borde, no en vertical sobre él
mistake-whole-crown = se escribió el ancho entero de copas que solo cuelgan sobre la cinta
mistake-drops-last-digit = se omitió la última cifra
mistake-inches-as-tenths = se escribieron pulgadas como décimas de pie
mistake-rounds = las lecturas se redondearon demasiado
mistake-leaves-out-small = se omitieron intercepciones pequeñas

## Parallax
practice-sight-title = Por qué se mira en vertical
practice-sight-about = Un borde de copa sobre la cinta, visto en vertical desde arriba y desde un ojo que se inclina.
practice-sight-height = a { $height } de altura
practice-sight-angle = a { $degrees }° de la vertical
practice-sight-right = en vertical
practice-sight-off = Un borde a { $height } sobre la cinta se lee desviado { $off } desde un ojo inclinado { $degrees }°: { $height } × tan { $degrees }°.

## Drills
practice-drill-add = Sume estas intercepciones, en pulgadas.
practice-drill-feet-to-inches = Pase cada una a pulgadas y súmelas.
practice-drill-subtract = Cada intercepción se da por su comienzo y su final. Halle las longitudes y súmelas, en pulgadas.
practice-drill-whole = ¿Cuánto de una línea de { $line } cubren estas intercepciones? Por ciento, con un decimal.
practice-drill-right = Bien.
practice-drill-wrong = Esta vez no. --solution muestra el camino, renglón por renglón.
practice-solution = Solución

## A class
practice-class-title = Grupo
practice-groups-title = Equipos
practice-mistakes-title = Qué costó puntos
practice-mistakes-about = Cada hábito que se nombró, en cuántas hojas, y los puntos que perdieron esas hojas en total.
practice-column-place = lugar
practice-column-name = nombre
practice-column-group = equipo
practice-column-lines = línea por línea
practice-column-marks = puntos
practice-column-best = mejores { $best }
practice-column-all = todos
practice-column-mistake = hábito
practice-column-sheets = hojas
practice-column-lost = puntos perdidos
practice-column-species = especie
practice-column-start = comienzo
practice-column-stop = final
practice-column-length = longitud
practice-tied = empatado
practice-no-sheets = No se pudo calificar ninguna hoja.
practice-line-unknown = “{ $found }” no es una línea de práctica. Las líneas se llaman por nivel y número, como 3-17; las líneas reales necesitan --experts.
practice-columns = La tabla necesita las columnas name, line y species, y start y stop, o length.
practice-cell-length = “{ $found }” no es una longitud. Escríbala como 5'3", 10.5 in, 3.2 m, o ponga la unidad en el encabezado.
practice-cell-edges = El final debe quedar más allá del comienzo.
practice-cell-date = “{ $found }” no es una fecha. Escríbala como 2026-06-01.
practice-option-bands = No se entiende “{ $found }”. Primero la más angosta, como 1=10,2=7,4=4.
practice-option-marks = No se entiende “{ $found }”. Tres números, como 20,10,10.
practice-option-level = “{ $found }” no es un nivel. Los niveles van de 1 a 5.
practice-written = Escrito en { $file }.
practice-not-forgotten = No se quitó ninguna hoja, pues no se leyeron todas sus filas.
practice-forgotten = { $file } se eliminó. No se guardó nada más del grupo.

## Paper
practice-set-title = Líneas de práctica
practice-set-about = Imprima las líneas y guarde las respuestas. En papel una franja está a escala según su propia regla; no le ponga al lado nada que no sea la página misma.
practice-set-keys = Respuestas: guardarlas aparte
practice-set-sheet = Hoja para la línea { $line }
practice-set-name = Nombre
practice-set-total = Total
practice-set-percent = Por ciento de la línea
practice-set-tally = Recuento
practice-set-protests = Inconformidades
practice-set-protest-columns = hora, quién, línea, fila, qué, decisión y por qué, quién decidió
practice-set-placard = Línea { $line }
practice-set-placard-about = No toque ni mueva la cinta. Mire antes de meter la mano bajo un arbusto. Lea por el borde marcado, en vertical desde arriba.
practice-set-cautions = Recorra antes el sitio: calor, rayos, víboras, garrapatas, suelo disparejo, caminos. Van primero las normas locales y la palabra del dueño de la tierra.
practice-cost-title = Lo que costaría cada hábito en esta línea
practice-to-print = para imprimir

## Dónde empiezan las líneas, dentro o fuera
practice-starts-title = Dónde empiezan las líneas
practice-starts-asked = A lo largo de una línea base de { $baseline } empiezan { $lines } líneas a pasos iguales desde un comienzo al azar; salió { $first }. ¿Dónde empieza cada línea?
practice-starts-solved = Un paso es { $baseline } entre { $lines }, { $step }. Las líneas empiezan en { $starts }.
practice-in-or-out-title = Dentro o fuera
practice-in-or-out-asked = Una planta está dentro si su copa pasa del borde de la cinta; la que sólo lo toca está fuera. ¿Cuáles están dentro?
practice-in-or-out-drawn = Una planta está dentro si su copa pasa de la línea oscura, el borde de la cinta; la que sólo lo toca está fuera. Escriba dentro o fuera para cada una.
practice-in = dentro
practice-out = fuera
practice-to-the-left = { $length } a la izquierda
practice-to-the-right = { $length } a la derecha
practice-column-line = línea
practice-column-plant = planta
practice-column-along = centro a lo largo de la cinta
practice-column-aside = centro desde el borde
practice-column-radius = radio de la copa
practice-column-in-or-out = dentro o fuera
practice-place-right = { $some } de { $all } están bien.
practice-place-wrong = Mire otra vez { $numbers }.
practice-answer-starts = “{ $found }” no son longitudes separadas por comas, como “7 m, 23 m, 39 m”.
practice-answer-in-or-out = “{ $found }” no son “in” y “out” separados por comas, en el orden de las plantas.

## Protests
help-practice-protests = Una tabla de inconformidades: raised by (quién), line (línea), row (fila), about (qué), decided (open, upheld, turned down), why (por qué), decided by (quién decidió)
protests-columns = Una tabla de inconformidades necesita las columnas “raised by” y “about”; “line”, “row”, “decided”, “why” y “decided by” las acompañan.
protests-decision = “{ $found }” no es una decisión. Valen “open”, “upheld” o “turned down”; la inconformidad queda abierta.
protests-open = { $protests ->
        [one] Una inconformidad sigue abierta
       *[other] { $protests } inconformidades siguen abiertas
    }: los lugares aún pueden cambiar.
protests-strange-lines = Nadie entregó las líneas que nombran estas inconformidades: { $lines }.
protest-open = abierta
protest-upheld = aceptada
protest-turned-down = rechazada
protest-by = quién
protest-line = línea
protest-row = fila
protest-about = qué
protest-decided = decisión
protest-why = por qué
protest-judge = quién decidió
protests-about = De quien aprende o de un equipo, sobre una fila de una hoja o de la clave. Una decisión no cambia puntos por sí sola: corrija la hoja o la clave y califique otra vez. La lista se va cuando se va la lista de la clase.
protests-more = Otra inconformidad
protests-out = Entregar las inconformidades como tabla
protests-take-away = Quitar esta inconformidad
