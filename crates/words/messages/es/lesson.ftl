### Lecciones: una línea leída en la pantalla, ejercicios, y el avance de una lección a otra.

## Avance
help-practice-progress = El avance en el tiempo, según resultados calificados: las lecciones de cada aprendiz en su orden
help-practice-results = Resultados como los escribe practice grade --json o la aplicación: archivos, o carpetas de ellos
help-practice-within = Puntos porcentuales desde la respuesta dentro de los cuales una lección no se marca en la figura (1)
help-practice-learner = Sólo este aprendiz
lesson-progress-title = Avance
lesson-progress-about = Cada lección junto a su respuesta. La cobertura es la que se calculó; si no, la que dan las filas.
lesson-progress-none = Todavía no se ha calificado ninguna lección.
lesson-progress-lessons = { $lessons ->
    [one] Una lección.
   *[other] { $lessons } lecciones.
}
lesson-progress-lessons-from = { $lessons ->
    [one] Una lección.
   *[other] { $lessons } lecciones, de { $from } a { $to }.
}
lesson-progress-ends = { $number ->
    [one] La cobertura quedó a { $first } puntos porcentuales de la respuesta en la primera lección, a { $last } en la última.
   *[other] La cobertura quedó en promedio a { $first } puntos porcentuales de la respuesta en las primeras { $number } lecciones, a { $last } en las últimas { $number }.
}
lesson-progress-levels = No son de un mismo nivel: en una línea más difícil todos quedan más lejos.
lesson-progress-habit = { $lessons ->
    [one] Se nombró en la última lección: { $habit }.
   *[other] Se nombró en { $lessons } lecciones, la última entre ellas: { $habit }.
}
lesson-progress-habit-gone = { $since ->
    [one] Se nombró en { $lessons }, no en la última lección: { $habit }.
   *[other] Se nombró en { $lessons }, no en las últimas { $since } lecciones: { $habit }.
}
lesson-progress-picture = A qué distancia de la respuesta quedó { $name }, lección por lección
lesson-progress-axis = Puntos porcentuales de cobertura desde la respuesta; por encima de cero es de más
lesson-progress-when = línea
lesson-progress-band = la banda
lesson-progress-outside = fuera de la banda
lesson-progress-table = Lecciones de { $name }
lesson-progress-right = { $right } de { $all }
lesson-column-line = línea
lesson-column-day = día
lesson-column-off = puntos de diferencia
lesson-column-right = bien
lesson-column-edges = bordes
lesson-column-species = especies
lesson-column-cover = cobertura
lesson-column-arithmetic = aritmética
lesson-column-marks = puntos
lesson-column-habit = hábito
practice-not-results = Esto no son resultados calificados. Los escribe practice grade --json.
practice-newer-results = Estos resultados son de una versión más nueva. Los lee un tautline más nuevo.
practice-broken-results = Estos resultados están cortados o les falta algo; califique las hojas otra vez.
practice-no-results = No se encontró ninguna lección calificada.
practice-option-within = “{ $found }” no es un número de puntos porcentuales, como 1.5.

## Hojas
practice-sheets-title = Hojas junto a la respuesta
practice-rows-all-right = { $all ->
    [one] La única intercepción está bien.
   *[other] Las { $all } intercepciones están bien.
}
practice-rows-right = { $right } de { $all } intercepciones están bien.
practice-rows-none = En esta línea no hay nada, y nada se escribió: así está bien.
lesson-row-left = { $row ->
    [0] { $name }, línea { $line }: { $why }
   *[other] { $name }, línea { $line }, fila { $row }: { $why }
}
lesson-key-spread = Línea { $line }, leída por { $readers }: la cobertura de la respuesta es { $cover }; quienes la leyeron difieren en { $spread } puntos porcentuales.

## La vista desde arriba
lesson-sight-asked = El borde de una copa está { $height } por encima de la cinta, y la mirada se inclina { $degrees }° respecto a la vertical. ¿Con cuánta diferencia se lee el borde? { $unit ->
    [in] Responda en pulgadas enteras.
   *[other] Responda en centímetros enteros.
}
lesson-sight-solved = { $height } × tan { $degrees }° = { $off } { $unit }. En vertical desde arriba no habría diferencia.
lesson-sight = Por qué se mira en vertical
lesson-sight-about = Una mirada inclinada lee el borde fuera de su lugar; vea cuánto, y calcúlelo.
lesson-sight-what = Incline la mirada y vea dónde se lee el borde. Cuanto más alta la copa, mayor la diferencia.
lesson-sight-question = ¿Con cuánta diferencia?
lesson-lean = Cuánto se inclina la mirada
lesson-degrees = { $degrees }° respecto a la vertical

## Práctica en la pantalla
lesson-practice = Práctica
lesson-practice-about = Lea líneas inventadas hasta leer como la respuesta. Todo funciona sin red.
lesson-name = Su nombre, el que usted elija
lesson-name-about = Se queda en este dispositivo y sólo figura en sus resultados. La práctica nunca entra en el cuaderno ni se comparte con él.
lesson-nobody = sin nombre
lesson-coach = Para quien entrena
lesson-read = Una línea para leer
lesson-read-about = Recorra una línea vista desde arriba, marque dónde empieza y termina la copa, y véala junto a su respuesta.
lesson-arithmetic = Aritmética a mano
lesson-arithmetic-about = Sumar, pasar pies a pulgadas, restar, calcular el por ciento; con la solución renglón por renglón.
lesson-starts = Dónde empiezan las líneas
lesson-starts-about = Pasos iguales a lo largo de una línea base desde un comienzo al azar.
lesson-in-or-out = Dentro o fuera
lesson-in-or-out-about = ¿Pasa la copa de una planta del borde de la cinta?
lesson-progress-title-about = Sus lecciones en su orden: a qué distancia de la respuesta, puntos por parte, hábitos.
lesson-paper = Papel para un grupo
lesson-paper-about = Líneas distintas, hojas, recuento, inconformidades, letreros; las respuestas aparte.
lesson-paper-what = Elija cómo serán las líneas. Cada una tiene su número, contado a partir del primero.
lesson-class = Calificar un grupo
lesson-class-about = Hojas escritas con rapidez, respuestas acordadas por expertos, lugares, y qué hábitos costaron puntos.
lesson-class-what = Escriba las hojas, o tome tablas de ellas. Las líneas de práctica se llaman por nivel y número, como 3-17; cualquier otro nombre es una línea real, y su respuesta es lo que leyeron en ella los expertos.

## Qué línea
lesson-level = Dificultad
lesson-level-1 = 1: arbustos enteros de dos especies, suelo despejado
lesson-level-2 = 2: huecos menores y mayores que la regla del hueco, pasto
lesson-level-3 = 3: partes muertas, arbustos muertos, mantillo, roca
lesson-level-4 = 4: superposición, copas salientes, pequeños bajo grandes, flores, tallos
lesson-level-5 = 5: cuatro especies, pendiente, vecinos más cerca que la regla del hueco
lesson-tape = Números de la cinta
lesson-tape-ft-in = pies y pulgadas, a la media pulgada
lesson-tape-decimal-ft = pies en décimas y centésimas
lesson-tape-metric = metros y centímetros
lesson-length = Longitud de la línea
lesson-rules = Reglas con que se lee
lesson-number = Número de la línea; el mismo número es la misma línea
lesson-way = Cómo la anota
lesson-way-picture = poner los bordes en la imagen
lesson-way-sheet = escribir comienzos y finales, como en una hoja
lesson-read-what = La línea está dibujada a escala, vista en vertical desde arriba. Todo en ella es inventado.
lesson-begin = Empezar
lesson-year = Bandas y puntos
lesson-year-bands = Puntos por cobertura según los puntos porcentuales de diferencia
lesson-year-marks = Puntos por bordes, especies y aritmética
lesson-year-tolerance = Cuánto puede apartarse un borde y seguir bien (dos divisiones de la cinta)

## Leerla
lesson-about = Nivel { $level }. Reglas: { $protocol }.
lesson-meaning = Qué significan las marcas
lesson-piece = Línea de práctica { $line }, vista en vertical desde arriba: tramo { $piece } de { $pieces }
lesson-walk = Lugar en la cinta
lesson-walk-look = La línea, vista en vertical desde arriba
lesson-how = Cómo poner los bordes
lesson-walk-how = Deslice la imagen; toque donde hay un borde, y luego arrastre el asa o avance una división. Con el teclado: las flechas avanzan, con Mayús más lejos, Intro fija, 1 a 4 eligen la especie, Retroceso deshace.
lesson-at = { $place } · { $species }
lesson-at-open = { $place } · { $species } desde { $since }
lesson-at-held = { $place } · { $species }, se está moviendo este borde
lesson-species = Especie
lesson-steps = Avanzar por la cinta
lesson-far-back = más atrás
lesson-back = una división atrás
lesson-on = una división adelante
lesson-far-on = más adelante
lesson-start-here = Empieza aquí
lesson-stop-here = Termina aquí
lesson-put-down = Ponerlo aquí
lesson-started = Empieza en { $place }.
lesson-stopped = { $species } { $start } a { $stop }
lesson-no-length = El final debe quedar más allá de su comienzo.
lesson-undo = Deshacer
lesson-undone = Deshecho.
lesson-leave = Dejarlo
lesson-larger = Más grande
lesson-move-start = Mover comienzo
lesson-move-stop = Mover final
lesson-take-away = Quitar
lesson-lengths-only = sólo longitudes, sin comienzos ni finales
lesson-hint-inches = Un número solo son pulgadas, como 40 1/2; también se entiende 3'4".
lesson-hint-decimal-feet = Un número solo son pies en décimas y centésimas, como 3.38.
lesson-hint-metres = Un número solo son metros, como 1.03; también se entiende 103 cm.
lesson-row = Fila
lesson-cell = { $column }, fila { $row }
lesson-percent = Por ciento de la línea, calculado a mano
lesson-percent-about = Puede quedar vacío; entonces no hay puntos por aritmética.
lesson-hand-in = Entregar
lesson-another-choice = Elegir otra línea

## Junto a la respuesta
lesson-beside = Lo que usted leyó, y la respuesta
lesson-beside-about = Arriba del suelo lo que se escribió, abajo la respuesta.
lesson-look-again = Nadie lee como la respuesta desde el principio. Mire en la imagen de abajo cada fila que difiere, y lea la misma línea otra vez.
lesson-next = Otra línea
lesson-again = La misma línea otra vez

## Ejercicios
lesson-kind = Qué se practica
lesson-kind-add = sumar
lesson-kind-feet-to-inches = pies a pulgadas
lesson-kind-subtract = restar
lesson-kind-whole = todo junto
lesson-answer = Su respuesta
lesson-check = Revisar
lesson-solve = Ver la solución
lesson-next-exercise = Otro ejercicio
lesson-drill-wrong = Esta vez no. Mírelo otra vez, o vea la solución.
lesson-start-of = Comienzo de la línea { $line }
lesson-plant = Planta { $number }

## Resultados
lesson-results = Resultados como archivos
lesson-results-about = Se quedan en este dispositivo hasta que usted los quite. “tautline practice progress” lee los mismos archivos.
lesson-results-of-others = Ver también resultados de archivos; no se guardan
lesson-results-out = Entregar como archivo
lesson-forget-lessons = Quitar todas las lecciones
lesson-forget-sure = Sí, quitarlo todo

## La mesa de quien entrena
lesson-lines = Cuántas líneas
lesson-make = Dibujarlas
lesson-drawing = Dibujando: { $done } de { $all } líneas.
lesson-stop = Parar
lesson-print = Imprimir
lesson-as-file = Como archivo
lesson-laid = { $length } de cinta, { $tape }; { $protocol }
lesson-laid-about = Todas las líneas del día se tienden igual.
lesson-best = Cuántos aprendices de un equipo cuentan
lesson-sheets = Hojas
lesson-sheet = La hoja abierta
lesson-sheets-whose = De quién son las hojas
lesson-sheets-learners = de aprendices ({ $sheets })
lesson-sheets-experts = de expertos ({ $sheets })
lesson-sheets-again = de expertos, leídas otra vez ({ $sheets })
lesson-sheets-experts-about = Dos o más que leyeron la misma línea real hacen su respuesta: la cobertura media, y las filas del primero.
lesson-sheet-of = { $name }, línea { $line }, { $rows ->
    [one] una fila
   *[other] { $rows } filas
}
lesson-sheet-more = Una hoja más
lesson-sheet-next = Hoja siguiente
lesson-sheet-enter = Intro pasa a la celda siguiente, y desde una última fila vacía a la hoja siguiente.
lesson-group = Grupo o equipo
lesson-line = Línea
lesson-tables = Tablas de hojas
lesson-tables-about = Las mismas tablas que lee el comando: name, group, line, species, start, stop o length, percent.
lesson-tables-in = Tomar tablas
lesson-tables-out = Entregar como tabla
lesson-mark = Calificarlas
lesson-marking = Calificando: { $done ->
    [one] una hoja lista
   *[other] { $done } hojas listas
}.
lesson-forget-class = Quitar la lista del grupo
lesson-forgotten = La lista del grupo se quitó; no se guardó nada de ella en otra parte.

## Qué hacer con un hábito
lesson-advice-gaps = La próxima vez, ponga la longitud de la regla en cada hueco antes de anotar.
lesson-advice-dead = La próxima vez, busque hojas o yemas vivas; lo que no las tiene queda fuera de la hoja.
lesson-advice-others = La próxima vez, pase por alto lo que no es copa de un arbusto que cuenta.
lesson-advice-tape = La próxima vez, halle el cero y el borde que se lee antes de la primera intercepción.
lesson-advice-sight = La próxima vez, ponga el ojo en vertical sobre el borde; una plomada lo muestra.
lesson-advice-overlap = La próxima vez, anote los dos completos donde uno queda sobre otro.
lesson-advice-species = La próxima vez, mire otra vez las hojas y los tallos antes de nombrarla.
lesson-advice-crown = La próxima vez, anote sólo lo que queda sobre el borde de la cinta.
lesson-advice-numbers = La próxima vez, lea la cinta hasta su última división y diga el número en voz alta.
lesson-advice-small = La próxima vez, vaya despacio: lo que cubre una división también es una intercepción.
