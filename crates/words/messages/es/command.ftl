### Palabras de tautline: la orden.

## Help
help-tautline = Cobertura a lo largo de una cinta tensa: de las lecturas de línea a la cobertura, un error honesto y un veredicto.
help-cover = La cobertura de cada línea
help-assess = La cobertura de cada sitio, cuán segura es, y el veredicto sobre una meta
help-check = Revisar lecturas en busca de descuidos: lo que hay que resolver, lo que conviene mirar
help-check-csv = Imprimir una tabla de hallazgos, lista para firmarse y volver a leerse
help-sheet = Imprimir lo leído como hoja tecleada, lista para seguir tecleando (docs/typed-sheet.md)
help-sites = Cobertura de copa de muchos sitios, una fila cada uno: cuán segura es, y los veredictos
help-demo = Escribir una demostración: un sitio inventado con sus lecturas, y la verdad detrás de ellas
help-completions = Imprimir las terminaciones para un intérprete de órdenes
help-man = Imprimir la página de manual
help-protocols = Listar los protocolos que vienen con tautline, con sus fuentes
help-files = Archivos o carpetas con lecturas, líneas, plantas, estratos, metas y protocolos; “-” lee la entrada estándar
help-json = Imprimir datos como JSON (descrito en docs/json.md)
help-csv = Imprimir datos como texto delimitado
help-explain = Imprimir cómo salió cada cifra, hasta las lecturas
help-work = Imprimir las cuentas como se hacen en papel
help-gaps = Imprimir los claros entre las plantas que cuentan, uno por uno y por clase
help-protocol = El protocolo con que se leyeron las líneas: un archivo, o el nombre de uno incluido
help-gap-rule = Otro límite de claro, más grueso, como “4 in”
help-gap-classes = Dónde empiezan las clases de claros, como “25, 50, 100, 200 cm” (las de siempre)
help-count = Lo que cuenta: formas de crecimiento o claves de plantas, con comas; “woody” para las leñosas
help-line-length = Longitud de las líneas que no la indican, como “65 ft”
help-unit = Lo que significan los números sin unidad: in, cm, m, “decimal ft”, “ft-in”
help-decimal = El signo decimal: point o comma
help-site = El sitio, para archivos sin esa columna
help-year = Un solo año
help-confidence = Confianza de intervalos y veredictos, en por ciento
help-method = Método de intervalo: logit-t-effective (el de siempre), logit-t, student-t o bca
help-by = También cada especie, forma o grupo
help-goal = La meta, como “at least 15 %” o “shrub: 15..25 %”
help-report = Escribir el informe de los sitios en este archivo: .html, .txt o .pdf
help-report-of = Escribir el informe de todos los sitios, o uno por sitio, como página, texto o PDF; o comparar uno con las lecturas
help-report-into = El archivo por escribir (.html, .txt, .pdf), o una carpeta para un informe por sitio
help-report-as = En una carpeta: html (lo normal), text o pdf
help-report-for = Para quién: specialist (todo, lo normal), landowner, board o class; las cifras son las mismas
help-report-template = Para PDF: una carpeta cuyos archivos sustituyen a los que vienen con tautline (docs/print.md)
help-report-paper = Para PDF: a4 (lo normal) o letter
help-report-day = Para PDF: el día que el archivo da como suyo; si no se da, el último día de lectura
help-report-archival = Para PDF: para guardar, como PDF/A-2a
help-report-resume = En una carpeta: dejar como está cada informe que saldría igual
help-report-verify = Decir si las lecturas detrás de este informe siguen como cuando se escribió
help-claim = De qué trata la afirmación: site (las líneas o parcelas son las unidades) o plot (cada una por sí sola)
help-on-the-level = Clases de claros y plantas por superficie en el plano horizontal, según la pendiente de cada línea, y no sobre el terreno (la cobertura no lo necesita)
help-use-partly-read = Tomar la parte leída de las líneas leídas en parte
help-where-present = Cobertura donde hay arbustos, en por ciento, para sitios en que no se halló nada
help-demo-folder = La carpeta por escribir; no debe tener ya una demostración
help-seed = Otra semilla da otra demostración
help-shell = El intérprete de órdenes
help-language = El idioma de lo que se imprime y escribe: en, es, o con región, como es-MX
help-exit =
    Estado de salida:
      0  todo bien
      1  hay algo que resolver; lo demás se calculó
      2  no se entendió la llamada
      3  no se pudo calcular nada
      4  no se pudo leer o escribir un archivo

## Refusals
built-without-pdf = Este tautline se construyó sin PDF. “cargo build --release --package tautline-cli --features pdf” lo construye con él; .html y .txt no necesitan más.
option-not-a-day = “{ $found }” no es un día. Escríbalo como 2026-06-03.
verify-no-print = { $file } no lleva ninguna huella de lecturas. La llevan los informes escritos por tautline report y tautline assess.
language-unknown = “{ $found }” no es un idioma que tautline tenga. Tiene: { $known }.
file-unreadable = No se puede leer { $file }: { $why }.
file-unwritable = No se puede escribir { $file }: { $why }.
no-files-in-folder = { $file } no tiene ningún archivo que se lea (.csv, .tsv, .txt, .sheet, .toml).
option-not-a-unit = “{ $found }” no es una unidad. Servirían in, cm, m, ft, “decimal ft” o “ft-in”.
option-not-a-number = “{ $found }” no es un número para { $option }.
option-confidence = La confianza debe estar entre 50 y 99,9 %, no { $found }.
option-not-counted = “{ $found }” no es ni una forma de crecimiento ni una clave de planta.
verdicts-in-all = En total: { $met } cumplidas, { $not-met } no cumplidas, { $not-yet-shown } aún no demostradas.
held-in-trials = “Ensayos”: donde hay pocas líneas o intercepciones, cuántos de 100 intervalos del 90 % contuvieron la cobertura verdadera en muestreos simulados con tan pocas.
assess-says-more = “Por resolver” y “por mirar” cuentan lo que tautline assess dice de un sitio.
nothing-worked-out = No se pudo calcular nada con lo entregado.
no-lines = No se hallaron líneas.

## Findings
heading-must-settle = Hay que resolver:
heading-have-a-look = Conviene mirar:
heading-note = Para saber:
heading-settled = Resuelto:
heading-next = Qué hacer ahora:
check-counts = { $must ->
    [0] No hay nada que resolver
    [one] Hay que resolver un hallazgo
   *[other] Hay que resolver { $must } hallazgos
}, { $look ->
    [0] no hay nada que mirar
    [one] conviene mirar uno
   *[other] conviene mirar { $look }
}{ $settled ->
    [0] .
   *[other] , { $settled } resueltos por una persona.
}
check-nothing-read = No hay lecturas que revisar.
check-next-settle = Corrija la hoja donde haya algo que resolver. Hasta entonces estas líneas no representan a ningún sitio: { $lines }.
check-next-files = Corrija los archivos donde haya algo que resolver.
check-next-look = Lo que está bien como está se puede firmar: imprima los hallazgos con --csv, conserve las filas que miró, llene “settled by” y “reason”, y entregue la tabla con las lecturas (docs/checks.md).
check-pointer = { $count ->
    [one] Conviene mirar un hallazgo; tautline check lo muestra.
   *[other] Conviene mirar { $count } hallazgos; tautline check los lista.
}
check-settled = { $text } Resuelto por { $by }{ $on }: { $reason }
check-settled-on = {" "}el { $date }
held-lines = { $site }: { $lines }{ $further ->
    [0] {""}
    [one] {" "}y una más
   *[other] {" "}y { $further } más
}
finding-at = { $file }, fila { $row }: { $text }
finding-at-character = { $file }, fila { $row }, carácter { $character }: { $text }
finding-and-more = { $text } Lo mismo se encontró { $count ->
    [one] una vez
   *[other] { $count } veces
} más, en las filas { $rows }{ $further ->
    [0] .
    [one] {" "}y un tramo más de filas.
   *[other] {" "}y { $further } tramos más de filas.
}
finding-at-column = { $file }, fila { $row }, { $column }: { $text }

## Tables
column-site = sitio
column-year = año
column-lines = líneas
column-verdict = veredicto
column-held = ensayos
column-to-settle = por resolver
column-to-look-at = por mirar
column-line = línea
column-length = longitud
column-stratum = estrato
column-date = fecha
column-reader = leyó
column-canopy = copa
column-sum = suma
column-dead = muerta
column-closed = cerrado
column-recorded = anotado
column-what = qué
column-cover = estimación
column-se = EE
column-interval = intervalo del { $confidence }
column-n = n
column-share = parte de la línea
column-truth = cobertura verdadera
column-caught = el intervalo
caught = la contuvo
missed = no la contuvo
title-truth = { $site }: cobertura de copa según lo leído, y según es con la misma regla
column-composition = composición por cobertura
of-the-sum = { $share } de la suma
positions = posiciones
lengths-only = solo longitudes
nothing-found-on-line = nada hallado
to-settle = { $recorded }, por resolver
closed-count = { $count } · { $length }
between-ends = de { $low } a { $high }
    .alike = { $low }
title-site = { $site }
title-site-year = { $site }, { $year }
title-site-plot = { $site }, parcela { $plot }
title-protocol = Protocolo: { $name } ({ $fingerprint })
title-no-protocol = No se entregó ningún protocolo.
title-assumed = Donde calla, se tomó esto:
assumed = { $rule }: { $taken }
title-gap-rule = Regla de claros: { $limit }
units-plots = { $lines } líneas en { $units } parcelas
units-lines = { $lines ->
    [one] una línea
   *[other] { $lines } líneas
}
worth-effective = { $lines } líneas en { $plots } parcelas valen como unas { $effective } líneas puestas por separado.
demo-written = Demostración escrita en { $folder }: un sitio inventado con gente inventada. Empiece por { $readme }.
truth-is-in = Lo que de verdad crece allí está en { $file }.
report-written = Informe escrito en { $file }.
progress-reading = leyendo archivos
progress-working = calculando

## Figures
canopy-cover = cobertura de copa
sum-of-species = suma de especies
dead-canopy = copa muerta
unnamed-plants = plantas sin nombre
cover-of = cobertura de { $what }
height-of = altura media de { $what }
density-of = { $what }, plantas por superficie
plants = plantas
at-least = al menos { $value }
at-most = a lo sumo { $value }
between = de { $low } a { $high }
    .alike = { $low }
live = viva
dead = muerta
tree = árbol
shrub = arbusto
subshrub = subarbusto
succulent = suculenta
vine = trepadora
grass = gramínea
forb = hierba
crust = costra
other = otra

## Verdicts
verdict-met = La meta de { $what }, { $goal }, está cumplida.
verdict-not-met = La meta de { $what }, { $goal }, no está cumplida.
verdict-not-yet-shown = Las lecturas aún no demuestran si la meta de { $what }, { $goal }, está cumplida.
verdict-why-at-least = Es de { $lower } o más, con una confianza del { $confidence }; y es de { $upper } o menos, con una confianza del { $confidence }.
verdict-bounds-zeros = No se halló nada en { $lines } líneas: con una confianza del { $confidence }, a lo sumo el { $share } de las líneas encuentra algo, y la cobertura es a lo sumo { $upper } con la que se indicó para las líneas que sí lo encuentran.
verdict-zeros = No se halló nada en { $lines } líneas: con una confianza del { $confidence }, a lo sumo el { $share } de tales líneas encuentra algo. Eso aún no dice nada de la cobertura donde sí hay arbustos.
verdict-zeros-option = La cobertura de las líneas que sí encuentran algo, indicada con --where-present, acotaría la cobertura del sitio.
verdict-no-figure = Nadie anotó { $what }, así que no hay veredicto.
verdict-no-bound = No tiene cota: { $reason }.
verdict-specialist = Estimación { $value } (EE { $se }, { $df } gl; { $estimator }, { $method }); cotas unilaterales del { $confidence }: { $lower } y { $upper }.
verdict-more-lines =
    { $more ->
        [one] Más o menos una línea más
       *[other] Unas { $more } líneas más
    } de esta longitud lo resolverían con una probabilidad del { $chance }, si el sitio es como se estimó y varían como las leídas.
verdict-more-plots =
    { $more ->
        [one] Más o menos una parcela más
       *[other] Unas { $more } parcelas más
    } de estas líneas lo resolverían con una probabilidad del { $chance }, si el sitio es como se estimó y varían como las leídas.
verdict-no-practical-number = Ningún número práctico de líneas lo resolvería: la estimación queda demasiado cerca de la meta ({ $most } líneas en total no alcanzan una probabilidad del { $chance }).
lines = líneas
plots = parcelas
mean-of-lines = media de las líneas
ratio-of-sums = razón de sumas
mean-of-plots = media de las parcelas
ratio-of-plots = razón entre parcelas
strata-by-area = estratos por superficie
combined-ratio = razón combinada
mean-of-values = media de las medias de línea
paired-difference = diferencia de las mismas líneas
unpaired-difference = diferencia de líneas distintas
paired-and-unpaired = diferencia de las mismas líneas y de otras, ponderada
student-t = t de Student
log-t = log-t
logit-t = logit-t
log-t-effective = log-t, gl efectivos
logit-t-effective = logit-t, gl efectivos
bca = bootstrap BCa
one-line = una línea no muestra variación entre líneas
one-plot = todas las líneas están en una parcela
one-line-in-a-stratum = un estrato tiene una sola línea
nothing-found = no se halló nada en ninguna línea
full-cover = todas las líneas están cubiertas de punta a punta
no-spread = todas las líneas son exactamente iguales
may-pass-the-whole = la cifra puede pasar del 100 %
needs-the-lines = un bootstrap trabaja con las líneas mismas
weights-not-whole = las partes de los estratos no suman el total
too-few-units = un bootstrap necesita tres líneas o más

## Chain
explain-verdict = Meta: { $what } { $goal }. Veredicto: { $verdict }.
explain-bounds = Decidido por las cotas unilaterales del { $confidence }: al menos { $lower }; a lo sumo { $upper }.
explain-bounds-zeros = No se halló nada en ninguna línea; cota unilateral del { $confidence } 1 − (1 − c)^(1/n) para la parte de las líneas, por la cobertura indicada donde la hay: de { $lower } a { $upper }.
explain-no-bounds = No hay cotas.
explain-figure = { $what }: { $value }
explain-high-end = Conocida solo entre dos extremos; el extremo alto da { $value }.
explain-one-sided = Cotas unilaterales del { $confidence }, { $how }: { $low } y { $high }.
explain-two-sided = Intervalo bilateral del { $confidence }, { $how }: de { $low } a { $high }.
    .alike = Intervalo bilateral del { $confidence }, { $how }: { $low } en ambos extremos, según las cifras mostradas.
explain-student-t = estimación ± t · EE con t({ $probability }, { $df }) = { $t } (Cochran 1977, 2.8)
explain-logit-t = logit p ± t · EE / (p (1 − p)) con t({ $probability }, { $df }) = { $t }, de vuelta (Korn y Graubard 1998)
explain-logit-t-effective = logit p ± t · EE / (p (1 − p)) con t({ $probability }, { $df }) = { $t }, de vuelta; gl efectivos de 2 / (2/{ $own } + u²), u = EE (1 − 2p) / (p (1 − p)), pues el error de una cobertura pequeña vacila con ella (docs/intervals.md)
explain-log-t-effective = ln de la estimación ± t · EE / estimación con t({ $probability }, { $df }) = { $t }, de vuelta; gl efectivos de 2 / (2/{ $own } + u²), u = EE / estimación (docs/intervals.md)
explain-log-t = ln de la estimación ± t · EE / estimación con t({ $probability }, { $df }) = { $t }, de vuelta
explain-bca = Bootstrap BCa de las líneas: todas las extracciones posibles, o 10 000 sembradas por los datos cuando son demasiadas (Efron 1987)
explain-mean-of-lines = Media de { $n } líneas, todas de una longitud: ({ $shares }) / { $n } = { $value } ({ $source })
explain-ratio-of-sums = { $n } líneas de distinta longitud: { $intercept } m / { $length } m = { $value } ({ $source })
explain-mean-of-plots = { $n } líneas en { $units } parcelas, la parcela es la unidad: { $intercept } m / { $length } m = { $value } ({ $source })
explain-ratio-of-plots = { $n } líneas en { $units } parcelas, la parcela es la unidad: { $intercept } m / { $length } m = { $value } ({ $source })
explain-mean-of-values = Media de { $n } medias de línea: { $value } ({ $source })
explain-strata-by-area = Estratos ponderados por su superficie: { $value } ({ $source })
explain-stratum = Estrato { $stratum }, { $weight } de la superficie: { $value }
explain-error = EE { $se }, { $df } grados de libertad
explain-no-error = Sin error: { $reason }
explain-line = Línea { $line }: { $intercept } de { $length } = { $cover }
explain-line-between = Línea { $line }: de { $intercept } a { $high } de { $length } = de { $cover } a { $high-cover }
explain-closed = cerrado por la regla: { $species } de { $start } a { $stop }, { $gap } ({ $why })
explain-reading = { $file } fila { $row }: { $species } { $state } { $reading }
explain-edges = de { $start } a { $stop } = { $length }
explain-length = { $length }
closed-gap = claro
closed-dead = tramo muerto corto
closed-line-end = final de la línea
closed-between = entre especies

## Gaps
gaps-title = Línea { $line }: claros entre las plantas que cuentan
gaps-not-known = Solo se anotaron longitudes, así que sus claros no se pueden conocer.
gap-between = de { $start } a { $stop } ({ $length })
gap-cut-off = de { $start } a { $stop } ({ $length } o más, cortado por el final de la línea)
gaps-along = Son claros entre los arbustos leídos, medidos sobre el terreno; las referencias que cuentan todas las plantas no les corresponden.
gaps-level = Son claros entre los arbustos leídos, con su clase según la longitud en el plano horizontal; las referencias que cuentan todas las plantas no les corresponden.

## On paper
work-title = Línea { $line }: { $what }
work-group = { $terms } = { $sum }
work-total = juntos: { $sums } = { $total } { $unit }
work-line = línea: { $given }
work-conversion = línea: { $given } × { $factor } = { $line } { $unit }
work-quotient = { $total } ÷ { $line } = { $quotient }, es decir { $percent }, redondeado al final
work-overlap = el traslape contado una vez; los tramos son los ya unidos, con los claros bajo la regla cerrados
metres = { $figure } m
per-hectare = { $figure } por ha
from-memory = De memoria: la fuente no estaba a mano cuando se escribieron las reglas.

## Reports
reports-written = { $written ->
    [one] Un informe escrito
   *[other] { $written } informes escritos
}{ $pages ->
    [0] {""}
    [one] {", "}una página
   *[other] {", "}{ $pages } páginas
}{ $kept ->
    [0] {""}
   *[other] {", "}{ $kept } dejados como estaban
}: { $folder }.
progress-reports = escribiendo informes
verify-stands = { $site }, { $year }: las lecturas siguen como cuando se escribió el informe.
verify-stands-undated = { $site }, sin fecha: las lecturas siguen como cuando se escribió el informe.
verify-differs = Lecturas { $print } …: nada de aquí es así ahora. Se corrigieron desde entonces, o son de otros archivos; el informe nombra el sitio junto a este número.
