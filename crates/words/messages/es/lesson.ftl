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
