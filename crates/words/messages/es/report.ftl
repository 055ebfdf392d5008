### Palabras de tautline: informe.

report-title = Cobertura de arbustos a lo largo de la cinta
report-about =
    La copa se leyó a lo largo de cintas rectas. La cobertura es la parte de la cinta bajo copa viva de las plantas que cuentan.
    Las líneas leídas representan al sitio, así que cada cifra lleva el error de no haber leído otras.
report-skip = Ir al informe
report-nothing = No se pudo calcular ninguna línea, así que no hay nada que informar.
report-no-lines = No se pudo calcular ninguna línea de este sitio; abajo está lo que hay que resolver.
report-no-goal = No se fijó ninguna meta para este sitio, así que no hay veredicto.
report-no-goal-short = sin meta

## First page
report-sites = Sitios y veredictos
report-sites-table = Cobertura de copa y veredicto de cada sitio
report-column-site = sitio
report-column-verdict = veredicto
report-column-to-settle = por resolver
report-short = { $what }, { $goal }: { $verdict }
report-parts-of = Partes del informe de { $site }

## What was read
report-fact-read = Leído
report-fact-lines = Líneas
report-fact-lines-said = { $planned ->
    [0] { $used } en las cifras
   *[other] { $used } en las cifras, { $planned } planeadas
}
report-basis-lines = { $lines ->
    [one] una línea
   *[other] { $lines } líneas
}
report-fact-readers = Leyeron
report-fact-recorders = Anotaron
report-fact-noted = Anotado ese día
report-rules = Reglas de la lectura

## What was asked
report-goal = Se preguntó: { $what }, { $goal }
report-promised = Prometido de antemano: “{ $name }”
report-goal-source = La meta viene de: { $source }

## Headings
report-figures = Todas las cifras
report-figures-table = Cifras del sitio con su error
report-lines = Las líneas
report-lines-table = Cobertura de cada línea
report-species = Especies y formas de crecimiento
report-species-table = Cobertura viva de cada especie
report-forms-table = Cobertura viva de cada forma de crecimiento, el traslape dentro de una forma contado una vez
report-groups-table = Cobertura viva de cada grupo, el traslape dentro de un grupo contado una vez
report-species-by-line = Cobertura viva de cada especie, línea por línea
report-composition-about = La composición es la cobertura de lo que cuenta sobre la suma de coberturas de todo lo que cuenta. Una especie que no cuenta se muestra y no entra en ninguna otra cifra.
report-gaps = Claros entre arbustos
report-gaps-table = Claros entre arbustos según su longitud, todas las líneas juntas
report-gaps-about = Todas las líneas juntas. En estos claros puede haber gramíneas y hierbas. Uno que corta el final de la línea mide al menos eso.
report-gaps-axis = parte de las líneas, %
report-gaps-none = Los claros no se pueden mostrar: solo se anotaron longitudes, o las líneas se ordenaron en clases distintas.
report-heights = Alturas
report-heights-table = Altura media de las plantas vivas: la media de las medias de las líneas
report-heights-none = No se anotaron alturas.
report-density = Plantas por superficie
report-density-table = Plantas por superficie, según el mayor ancho de cada planta en ángulo recto con la línea
report-density-none = Los anchos con que se calculan las plantas por superficie no se anotaron, o no todos.
report-years = Años lado a lado
report-years-table = Cobertura de copa de cada año, cada uno con su protocolo
report-years-no-claim = Cada año va con su protocolo, sus líneas y su error. Puestos lado a lado no afirman que la cobertura cambió.
report-years-unlike = Los años se leyeron con reglas distintas; difieren en: { $rules }. Las reglas solas pueden mover la cifra más que los años.
report-findings = Revisiones
report-looked-for = Se revisaron las lecturas en busca de { $kinds } clases de descuidos y rarezas.
report-excerpt = La fila como se escribió
report-beside = Lo que pesa sobre esta cifra
report-more-to-look-at = { $count } cosas por mirar, en la lista de revisiones
report-reading-findings = Hallado al leer, aparte de los sitios de arriba
report-work = El cálculo paso a paso
report-work-site = De las líneas al sitio
report-work-overlap = Las líneas una por una, como en papel: los tramos son los ya unidos, con el traslape contado una vez y los claros bajo la regla cerrados.
report-work-readings = Las lecturas de esta línea, como se escribieron
report-methods = Métodos
report-readings = Apéndice: cada lectura, como se escribió
report-readings-about = Cada fila nombra la fila de su archivo. También está aquí la lectura que no entró en ninguna cifra.
report-cautions = Antes de usar esto
report-files = Archivos que se leyeron

## A verdict for anybody
report-comes-to = En las líneas leídas, la cifra de { $what } es { $value }.
report-comes-between = Con lo anotado, la cifra de { $what } solo se puede situar entre { $low } y { $high } en las líneas leídas.
    .alike = Con lo anotado, la cifra de { $what } es { $low } en las líneas leídas, según las cifras mostradas.
report-lies-between = Otras líneas habrían dado otra cifra; contando con eso, queda entre { $low } y { $high }, con una confianza del { $confidence }.
    .alike = Otras líneas habrían dado otra cifra; contando con eso, es de { $low }, según las cifras mostradas, con una confianza del { $confidence }.
report-is-or-more = Otras líneas habrían dado otra cifra; contando con eso, es de { $lower } o más, con una confianza del { $confidence }.
report-is-or-less = Otras líneas habrían dado otra cifra; contando con eso, es de { $upper } o menos, con una confianza del { $confidence }.
report-is-within = Otras líneas habrían dado otra cifra; contando con eso, es de { $lower } o más y de { $upper } o menos, cada cosa con una confianza del { $confidence }.
report-may-be-either = Otras líneas habrían dado otra cifra; contando con eso, puede bajar hasta { $lower } o subir hasta { $upper } (cada cota con una confianza del { $confidence }), así que la meta puede estar cumplida o no.

## A verdict for a specialist
report-specialist = Estimación { $value }, EE { $se }, { $df } gl; { $estimator } ({ $source }), { $method }; { $bounds }.
report-lower-bound = cota inferior unilateral del { $confidence }: { $lower }
report-upper-bound = cota superior unilateral del { $confidence }: { $upper }
report-both-bounds = cotas unilaterales del { $confidence }: { $lower } y { $upper }

## Pictures
report-picture-goal = { $what } frente a la meta
report-picture-goal-said = { $figure }. La meta es { $goal }. Veredicto: { $verdict }.
report-picture-figures = Cobertura con su intervalo
report-picture-line = Línea { $line }, dibujada a escala
report-picture-line-said = La cinta de la línea { $line } mide { $length }; copa sobre ella: { $cover }.
report-picture-line-canopy = Hay copa de { $stretches }.
report-picture-line-closed = Claros cerrados por la regla: { $count }, en total { $length }.
report-picture-marks = Lo que significan las marcas sobre las cintas
report-marks-said = Signos de copa viva, claros cerrados, copa muerta y copa contada, cada uno con sus palabras.
report-row-at-least = { $value }, al menos { $bound }
report-row-at-most = { $value }, a lo sumo { $bound }
report-row-between = { $value }, de { $low } a { $high }
    .alike = { $value }
report-row-no-bound = { $value }; sin cota, pues { $reason }
report-goal-mark = meta: { $goal }
report-axis = por ciento de la línea
report-mark-estimate = estimación
report-mark-between = conocida solo entre estas
report-mark-lines = cada línea
report-mark-one-sided = cota unilateral, { $confidence }
report-mark-bounds = cotas unilaterales a ambos lados, { $confidence } cada una
report-mark-interval = intervalo bilateral, { $confidence }
report-mark-met = cumple la meta
report-mark-live = copa viva
report-mark-closed = claro cerrado por la regla
report-mark-dead = copa muerta
report-mark-canopy = copa contada, traslape una vez
report-mark-unread = no leído
report-mark-unplaced = longitud sin lugar
report-lengths-only = Solo se anotaron longitudes; no tienen lugar en la cinta.
report-between-species = entre especies
report-line-name = Línea { $line }

## Tables
report-column-df = gl
report-column-plot = parcela
report-column-closed = claros cerrados
report-column-class = longitud del claro
report-column-count = claros
report-column-cut-off = cortados por el final de la línea
report-column-share = parte de las líneas
report-column-cover = cobertura
report-column-composition = composición
report-column-met-on = hallada en
report-column-height = altura
report-column-density = plantas por superficie
report-column-year = año
report-column-protocol = protocolo
report-column-row = fila
report-column-species = especie
report-column-start = comienzo
report-column-stop = final
report-column-width = ancho
report-column-state = estado
report-column-plant = planta
report-column-note = nota
report-protocol-short = { $name } ({ $fingerprint })
report-undated = sin fecha
report-pass = pasada { $pass }
report-not-read = no leída
report-of-length = { $read } de { $length }
report-lines-of = { $all ->
    [one] { $lines } de una línea
   *[other] { $lines } de { $all } líneas
}
report-not-counted = { $species } (no cuenta)
# no-break spaces: a range stays in one row
report-from-to = { $low }{"\u00A0"}a{"\u00A0"}{ $high }
    .alike = { $low }
report-over = más de { $low }
report-none = –

## Foot
report-caution-advice = Esta hoja aconseja; las personas deciden. Una cifra de cobertura sola no dice si la tierra está en buen estado.
report-caution-rule = Una cifra leída con unas reglas no se puede poner junto a otra leída con otras: las reglas solas pueden moverla más que la mayoría de los años.
report-caution-local = Las normas locales, los acuerdos sobre la tierra y la práctica con licencia van antes que todo lo de aquí.
report-file = { $name }, su SHA-256 empieza por { $sha }
report-fingerprint = Huella de los datos: { $print } (SHA-256 de los SHA-256 de los archivos, ordenados, uno por renglón). Los mismos archivos y las mismas preguntas dan la misma hoja.
report-sheet-foot = { $title } · datos { $print }
report-sheet-of = {" "}de{" "}

## Cover against the gap rule
report-curve = Cobertura según la regla de claros
report-curve-none = Algunas líneas no se pueden calcular con otra regla de claros (longitudes sin posiciones, o plantas sin marcas), así que no hay curva.
report-curve-said = Leída cerrando los claros menores que { $recorded }, la cobertura de copa es { $cover }; cerrar claros de hasta { $widest } la haría { $most } en las mismas líneas. Una regla más fina no se puede calcular: claros tan pequeños nunca se anotaron.
report-curve-limit = claros cerrados hasta ({ $unit })
report-curve-cover = cobertura de copa (%)
report-curve-recorded = regla de la lectura
report-curve-unknown = más fino que lo leído

## What changed, what comes next
report-changed = Qué cambió
report-first-visit = Entre estas lecturas no hay un año anterior, así que no hay con qué comparar este.
report-next = Qué sigue
report-next-settle = Primero, resuelva lo que hay que resolver: { $count ->
    [one] hay una cosa
   *[other] hay { $count } cosas
} en la lista de lo que pesa sobre esta cifra.
report-next-lines = Lea { $more ->
    [one] una línea más
   *[other] { $more } líneas más
} de esta longitud con las mismas reglas, si la meta tiene que quedar resuelta.
report-next-plots = Lea { $more ->
    [one] una parcela más
   *[other] { $more } parcelas más
} de tales líneas con las mismas reglas, si la meta tiene que quedar resuelta.
report-next-visit = Para seguir el cambio, vuelva a leer las mismas líneas con las mismas reglas, en la misma época del año (el último día de lectura fue el { $day }) y en la misma etapa de crecimiento.
report-next-visit-undated = Para seguir el cambio, vuelva a leer las mismas líneas con las mismas reglas, en la misma época del año y en la misma etapa de crecimiento, y anote el día.
report-prints = Para reconocer las lecturas
report-print = { $title }: { $print }

## Typesetting
template-wrong = La plantilla { $file } falla en la fila { $row }, columna { $column }: { $said }.{ $hint }
template-nowhere = El informe no se puede componer: { $said }.{ $hint }
template-hint = {" "}{ $hint }.
template-too-large = { $file } pasa de { $most } MB y no se lee como parte de una plantilla.
report-made = De qué está hecho
report-files-others = { $files ->
    [one] y uno más, en el que no está ninguna lectura de este informe.
   *[other] y { $files } más, en los que no está ninguna lectura de este informe.
}
