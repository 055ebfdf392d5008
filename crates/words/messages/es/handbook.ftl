## El manual del método, en la terminal y en la aplicación
help-explain-page = Imprimir una página del manual del método, o buscar páginas por palabras
help-explain-words = El nombre de una página, como “verdict”, o palabras que se buscan (en inglés); sin nada se listan todas las páginas
handbook-not-found = Ninguna página del manual tiene “{ $words }”. “tautline explain” lista todas las páginas.
handbook-how = “tautline explain NOMBRE” imprime una página.
handbook-english = Por ahora el manual está escrito solo en inglés.

## Qué significan las palabras de un informe, cada una con los rótulos de su dibujo
meanings = Qué significan las palabras
meanings-jump = ¿Qué significan estas palabras?
meaning-more = Más en el manual del método (en inglés), página “{ $page }”.
meaning-picture-title = Qué significa “{ $term }”

meaning-cover-term = Cobertura
meaning-cover-is = La parte de la cinta que tiene arbusto vivo encima, vista desde arriba en vertical. Donde dos copas se traslapan, la cinta debajo de ellas cuenta una sola vez.
meaning-cover-is-not = Es el contorno de los arbustos, con sus pequeños claros: solo las hojas darían menos. No dice nada de pastos ni de suelo desnudo, ni de cómo están los arbustos.
meaning-cover-picture = Tres copas sobre una cinta, dos de ellas traslapadas; abajo, la misma copa junta a la izquierda llena 44 de 100 partes de la cinta.
meaning-cover-on-the-tape = Copas sobre la cinta
meaning-cover-together = Lo mismo, junto: la cobertura

meaning-gap-rule-term = Regla de claros
meaning-gap-rule-is = Qué tan pequeño puede ser un claro dentro de un arbusto para leerse todavía como arbusto. Más corto que la regla: es copa. Tan largo como la regla o más: la copa termina ahí y vuelve a empezar.
meaning-gap-rule-is-not = Es una elección, no un hecho de la naturaleza, y mueve la cobertura más que la mayoría de los años. Por eso nunca se comparan sin más cifras leídas con reglas distintas.
meaning-gap-rule-picture = Tres trozos de copa sobre una cinta. El primer claro es más corto que la regla y se anota como copa; el segundo es más largo y queda abierto.
meaning-gap-rule-rule = El largo de la regla
meaning-gap-rule-seen = Como está sobre la cinta
meaning-gap-rule-written = Como se lee

meaning-sum-of-species-term = Suma de especies
meaning-sum-of-species-is = La cobertura propia de cada especie, sumada. La cinta bajo dos especies cuenta dos veces, así que la suma puede pasar de 100 %.
meaning-sum-of-species-is-not = No es la cobertura de copa, que cuenta el traslape una sola vez. A las dos se les dice a veces “cobertura total”: una meta tiene que decir a cuál se refiere.
meaning-sum-of-species-picture = Dos especies se traslapan sobre una cinta. Contadas una vez llenan 65 de 100 partes; sumadas, 80.
meaning-sum-of-species-one = Una especie
meaning-sum-of-species-other = Otra, en parte sobre la misma cinta
meaning-sum-of-species-once = Cobertura de copa: el traslape, una vez
meaning-sum-of-species-twice = Suma de especies: el traslape, dos veces

meaning-interval-term = Intervalo
meaning-interval-is = Otras líneas en el mismo sitio habrían dado otra cifra. El intervalo dice qué coberturas de todo el sitio concuerdan con las líneas leídas. Hecho al 90 %, nueve de diez levantamientos así dan uno que contiene la cobertura propia del sitio.
meaning-interval-is-not = No es el rango en que caen las líneas una por una. Solo contiene el azar: el hábito de un lector, otra regla o una cinta floja no están en él.
meaning-interval-picture = Diez intervalos de diez levantamientos junto a una línea que es la cobertura propia del sitio: nueve la cruzan; uno, en trazos, no.
meaning-interval-own = La cobertura propia del sitio, que nadie conoce
meaning-interval-surveys = Diez levantamientos al 90 %: nueve la contienen, uno no

meaning-verdict-term = Veredicto
meaning-verdict-is = Se dice que la meta está cumplida o no cumplida solo donde las lecturas lo demuestran, con la confianza pedida. Todo lo demás aún no está demostrado: las líneas concuerdan con un sitio a cualquiera de los dos lados de la meta.
meaning-verdict-is-not = Que aún no esté demostrado no es un fracaso ni un empate; dice que hacen falta más líneas, y cuántas. Ningún veredicto dice por qué la cobertura es la que es ni qué debe hacerse: eso lo deciden las personas.
meaning-verdict-picture = Tres cifras con sus límites junto a una meta: la que está toda más allá la cumple; la que la cruza aún no está demostrada; la que queda toda por debajo no la cumple.
meaning-verdict-goal = La meta, y el lado que la cumple
meaning-verdict-met = Cumplida
meaning-verdict-open = Aún no demostrada
meaning-verdict-not-met = No cumplida

meaning-smallest-change-term = El menor cambio
meaning-smallest-change-is = Todo levantamiento tiene un cambio tan pequeño que casi siempre se le escaparía. Este es el cambio que estas líneas habrían mostrado cuatro de cada cinco veces.
meaning-smallest-change-is-not = “No se muestra ningún cambio” no dice que nada haya cambiado: puede haber cambiado algo menor que esto. Más líneas, o las mismas líneas estacadas otra vez, muestran cambios menores.
meaning-smallest-change-picture = Una escala con ningún cambio en el medio. La parte rayada a su alrededor casi siempre se escaparía; más allá, a cada lado, los cambios casi siempre se mostrarían.
meaning-smallest-change-none = Ningún cambio
meaning-smallest-change-missed = Casi siempre se escaparía
meaning-smallest-change-shown = Casi siempre se mostraría

meaning-trend-term = Tendencia
meaning-trend-is = Lo que queda cuando se quita el vaivén de los años sueltos: tantos puntos de cobertura por año. La muestra son los años, porque todas las líneas comparten uno seco; seis años de treinta líneas son seis años.
meaning-trend-is-not = No sabe de lluvias, fuegos ni pastoreo por venir, y no dice por qué. Con pocos años, hasta una subida pareja puede ser azar.
meaning-trend-picture = Siete años, cada uno un punto más alto o más bajo que el anterior, alrededor de una recta que sube.
meaning-trend-years = Un año, todas las líneas juntas
meaning-trend-line = La tendencia

## El manual en la aplicación
handbook-about = Qué es cada cifra, su fórmula y su fuente, un ejemplo que se puede calcular a mano, y cuándo no confiar en ella.
handbook-find = Buscar en el manual (en inglés)
handbook-found = { $pages ->
    [0] Ninguna página tiene estas palabras.
    [one] Una página
   *[other] { $pages } páginas
}
handbook-fetching = Trayendo el manual …
handbook-missing = No se pudo traer el manual. Abra la aplicación una vez con red, y quedará aquí para siempre.
handbook-all = Todas las páginas
handbook-beside = Las páginas anterior y siguiente
handbook-before = Anterior
handbook-after = Siguiente
handbook-no-page = El manual no tiene ninguna página “{ $page }”.
