# El escritorio: lo que una persona ajusta, pregunta, busca y retira en la aplicación.

## Lo que una persona pidió
line-not-wanted = { $site }, línea { $line } queda fuera, como se pidió.
dead-was-left-out = { $site }, línea { $line }: su protocolo deja fuera el dosel muerto, así que quizá no se anotó. Lo que se pidió del dosel muerto vale solo para lo anotado.

## Ajustes
desk-said = Idioma y unidades
desk-language = Idioma
desk-language-device = el del dispositivo
desk-language-en = English
desk-language-es = Español
desk-lengths = Longitudes calculadas
desk-lengths-as-written = en las unidades de las lecturas
desk-lengths-metric = en metros y centímetros
desk-lengths-feet = en pies y pulgadas
desk-lengths-what = Las lecturas quedan como se escribieron, y cada cinta se lee en sus propias unidades.
desk-letters = Letra
desk-letters-usual = la del navegador

## Qué pasaría si
desk-as-recorded = Todo como en el cuaderno
desk-asked = Según lo pedido:
desk-recorded = En el cuaderno:
desk-asked-nothing = así no se puede calcular ninguna cifra; el informe dice por qué
desk-dead = Dosel muerto
desk-dead-own = como dice el protocolo
desk-dead-counts = cuenta como vivo
desk-dead-apart = aparte del vivo
desk-counts = Qué cuenta
desk-counts-only = Todo lo de una clase y nada más, o planta por planta.
desk-group = grupo { $group }
desk-lines = Líneas que hablan

## Todos los sitios
desk-site-twice = { $count ->
    [one] 1 registro escrito de dos maneras
   *[other] { $count } registros escritos de dos maneras
}

## De dónde viene cada número
desk-numbers = De dónde viene cada número
desk-numbers-what = El año más reciente, según lo pedido arriba. Abra un número para ver de dónde viene: la fórmula con su fuente, las líneas y sus lecturas.

## Historial
desk-history-what = Todo lo que se hizo, lo más reciente primero. Nada se pierde: lo que se retira queda aquí y puede recuperarse.
desk-history-empty = Todavía no se hizo nada.
desk-history-more = Mostrar { $more } más
desk-history-records = { $more ->
    [one] y 1 registro más
   *[other] y { $more } registros más
}
desk-history-of = Historial de { $what }
desk-take-back = Retirar esto
desk-take-back-of = Retirar esto: { $what }, { $time }
desk-taken-back = { $records ->
    [one] Retirado: 1 registro queda como antes.
   *[other] Retirado: { $records } registros quedan como antes.
}
desk-restore = Que esto valga de nuevo
desk-restore-of = Que esto valga de nuevo: { $version }
done-read = líneas leídas
done-photo = fotos
done-log = calibración de lectores
done-edit = editado

## Búsqueda
desk-search-what = Sitios, líneas, lectores, especies, notas, protocolos, metas
desk-search-nothing = Nada en el cuaderno tiene todas estas palabras.
desk-search-found = { $found ->
    [one] Encontrado una vez.
   *[other] Encontrado { $found } veces.
}
desk-search-so-far = Buscando … { $found } hasta ahora.
desk-search-more = { $more } más: escriba otra palabra.
desk-others = Otros registros

## Protocolos y plantas
desk-protocol-read = { $lines ->
    [0] ninguna línea leída con él
    [one] 1 línea leída con él
   *[other] { $lines } líneas leídas con él
}
desk-protocol-new = Un protocolo nuevo
desk-protocol-name = Nombre
desk-protocol-source = De dónde vienen las reglas
desk-protocol-no-name = Dé un nombre al protocolo.
desk-protocol-same = Se guarda como revisión de este protocolo.
desk-protocol-another = Se guarda como otro protocolo, porque una regla difiere. Las líneas quedan con las reglas con que se leyeron.
desk-left-open = abierto
desk-rule-shortest = el dosel más corto que se lee
desk-rule-division = división más fina
desk-rule-overlap = donde dos especies se superponen
desk-rule-side = borde de la cinta, visto desde su cero
desk-cover-foliar = el follaje mismo, sin aberturas pequeñas
desk-cover-basal = al nivel del suelo
desk-dead-left-out = no se lee
desk-dead-short = una parte corta que toca dosel vivo se lee como viva
desk-overlap-each = cada especie completa
desk-overlap-once = una vez, bajo la especie de arriba
desk-side-left = izquierdo
desk-side-right = derecho
desk-counts-open = Sin marca ni código queda abierto; entonces cuentan árboles, arbustos y subarbustos.
desk-counts-also = También estos códigos
desk-counts-except = No estos códigos
desk-plants = Plantas
desk-plants-count = { $plants ->
    [one] 1 planta
   *[other] { $plants } plantas
}
desk-plants-what = El código es lo que se escribe en las planillas. La forma de crecimiento decide qué es leñoso; los grupos son suyos.
desk-plants-find = Buscar una planta
desk-plant-new = Agregar una planta
desk-plant-code = Código
desk-plant-name = Nombre científico
desk-plant-common = Nombre común
desk-plant-form = Forma de crecimiento
desk-plant-groups = Grupos, con comas
desk-plant-features = Rasgos que la distinguen de otras parecidas
desk-plant-remove = Quitarla de la lista
desk-plant-no-code = Dé un código a la planta.
desk-plant-twice = { $code } ya está en la lista. Cambie esa planta.
