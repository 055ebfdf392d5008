### Palabras de tautline: cambio entre visitas, acuerdo entre observadores, tendencia.

## Change
points = { $figure } puntos
plus = +{ $figure }
change-matters = Es de { $matters } o más, tanto como lo que importa.
change-too-small-to-matter = Es menor que los { $matters } que importan.
change-may-matter = Si llega a los { $matters } que importan no queda demostrado.
points-up = +{ $figure } puntos
under-a-thousandth = menos de 0,001
change-rose = La cifra de { $what } subió { $change } entre { $from } y { $to }.
change-fell = La cifra de { $what } bajó { $change } entre { $from } y { $to }.
change-not-shown = Las lecturas no demuestran un cambio de { $what } entre { $from } y { $to }.
change-none-that-matters = La cifra de { $what } cambió menos de { $matters } entre { $from } y { $to }, si es que cambió.
change-untold = No se puede decir si la cifra de { $what } cambió entre { $from } y { $to }: { $reason }.
change-from-to = En puntos porcentuales de cobertura el cambio queda entre { $low } y { $high }, con una confianza del { $confidence }.
    .alike = En puntos porcentuales de cobertura el cambio es de { $low }, según las cifras mostradas, con una confianza del { $confidence }.
change-hidden = Eso no equivale a que no haya cambio: podría esconderse uno de hasta { $hidden }; mayor, no, con una confianza del { $confidence }.
change-lines-to-see = { $lines ->
        [one] Más o menos una línea en cada visita mostraría
       *[other] Unas { $lines } líneas en cada visita mostrarían
    } un cambio de { $matters } con una probabilidad del { $chance }, si las líneas siguen variando como estas.
change-seen = Líneas que varían como estas muestran un cambio de { $seen } con una probabilidad del { $chance }; los menores se escapan más a menudo.
change-specialist = Estimación { $value } (EE { $se }, { $df } gl, p = { $p } de que nada cambió; { $design }, { $pairs ->
        [one] una leída dos veces
       *[other] { $pairs } leídas dos veces
    }).
design-paired = las mismas líneas
design-paired-and-unpaired = las mismas líneas y otras
design-unpaired = líneas distintas
pairing-is-worth = Leer otra vez las mismas líneas valió por { $times } veces ese número de líneas nuevas.
pairing-is-worth-nothing = Leer otra vez las mismas líneas no valió nada aquí: unas nuevas habrían dicho lo mismo.
points-of-cover = Los puntos son puntos porcentuales de cobertura: de 16 a 20 % van 4 puntos.

## Untreated neighbour
beyond-more = { $site } ganó { $difference } más, o perdió eso de menos, que { $untreated }.
beyond-less = { $site } ganó { $difference } menos, o perdió eso de más, que { $untreated }.
beyond-not-shown = Las lecturas no demuestran que { $site } cambiara de otro modo que { $untreated }.
beyond-one-of-each = Con un terreno de cada clase, esto dice a lo sumo que cambiaron de modo distinto, no que lo hiciera el tratamiento.
untreated-not-read = { $untreated } no se leyó en ambos años, así que no hay con qué comparar.

## What is unlike
change-between-ends = La cifra de { $what } solo se conoce entre dos extremos en { $lines }, así que su cambio no se puede probar.
unlike-season = Las líneas se leyeron con unos { $days } días de diferencia en la temporada entre { $from } y { $to }. Parte del cambio puede ser la época del año.
unlike-readers = Leyó { $before } en { $from } y { $after } en { $to }. Lo que alguien ve más ancho que otro se suma al cambio, y más líneas no lo reducen. Unas pocas líneas leídas por ambos mostrarían cuánto: tautline agree.
unlike-window = En { $year } se leyeron fuera de la ventana de lectura de su protocolo ({ $window }) estas líneas: { $lines }. Parte de la diferencia con otras visitas puede ser la época del año.
unlike-growth-stage = La etapa de crecimiento no era la misma: { $before } en { $from }, { $after } en { $to }. Parte del cambio pueden ser hojas que aún no habían salido, o que ya habían caído.
trend-unlike-season = En { $years } las líneas se leyeron más de { $days } días antes o después en el año que de costumbre. Parte de la diferencia entre años puede ser la época del año.
trend-unlike-stage = La etapa de crecimiento no fue la misma en todos los años: { $stages }. Parte de la diferencia entre años pueden ser hojas que aún no habían salido, o que ya habían caído.
stage-in-year = { $stage } en { $year }
title-noted = Lo que se anotó junto a las lecturas
noted-about = Sopéselo con las cifras: la lluvia, el pastoreo, el ramoneo, el fuego, los insectos y los tratamientos mueven la cobertura, y dos visitas no dicen cuál de ellos lo hizo.
noted-none = En estas visitas no se anotó nada de lluvia, pastoreo, ramoneo, fuego, insectos ni tratamientos, así que no hay con qué sopesar las cifras.
column-noted = anotado
title-strata-change = Cobertura de copa por estrato
column-of-area = de la superficie
nothing-noted = nada anotado
read-once-left-out = Leídas solo en uno de { $from } y { $to }, y por eso fuera del cambio: { $lines }. Los niveles de cada año sí las usan.
read-once-used = Leídas solo en uno de { $from } y { $to }: { $lines }. Entran en el cambio con el poco peso que merecen las líneas sin pareja.
pairing-in-doubt = La copa de { $lines } no cae en { $to } donde caía en { $from } mejor que en cualquier otra parte de la cinta. ¿Una estaca perdida, o la cinta tendida al revés? --temporary toma todas las líneas como nuevas; para igual seguridad hacen falta { $times } veces más.
tape-lies-off = Línea { $line }: la cinta de { $to } marca { $shift } más que la de { $from }, a juzgar por las plantas que están en ambas. La copa ganada y perdida allí es en parte de la cinta.
no-pair-of-years = Ningún sitio se leyó tanto en { $from } como en { $to }.

## Change, step by step
explain-change = { $what }: { $before } en { $from }, { $after } en { $to }; cambio { $value }
explain-change-design = { $design }: { $pairs } leídas en ambas visitas, { $before } solo en la primera, { $after } solo en la segunda; { $estimator } ({ $source })
explain-change-p = p = { $p }: probabilidad de una diferencia tan lejos de cero si nada cambió (prueba t bilateral)
explain-change-hidden = Ningún cambio mayor que { $hidden }: la mayor de las dos cotas unilaterales (Schuirmann 1987)
explain-signs = Comprobación por signos, contadas todas las maneras: p = { $p } (Fisher 1935, 21)
explain-signs-drawn = Comprobación por signos, sorteadas 9999 maneras: p = { $p } (Fisher 1935, 21)
explain-ranks = Comprobación por rangos con signo: suma sobre cero { $above } de { $lines } líneas que cambiaron, p = { $p } (Wilcoxon 1945)
explain-median-change = Cambio mediano de las líneas { $value }, de { $low } a { $high } con una confianza del { $confidence } (Hodges y Lehmann 1963)
    .alike = Cambio mediano de las líneas { $value }, según las cifras mostradas, con una confianza del { $confidence } (Hodges y Lehmann 1963)
explain-change-line = Línea { $line }: de { $before } a { $after }

## Command
help-change = El cambio de cada sitio entre dos años: cuánto, con qué seguridad, dónde en la cinta
help-from = El año anterior
help-to = El año posterior
help-matters = El cambio que importa, en puntos porcentuales de cobertura, como “5 %”
help-power = La probabilidad con que debería verse un cambio, en por ciento
help-temporary = Las líneas del mismo nombre no son las mismas líneas
help-untreated = Un sitio que quedó sin tratar, para poner a su lado el cambio de los otros
help-picture = Dibujar las líneas de ambos años una sobre otra, como SVG
option-years = Los años deben ser dos, el anterior primero.
title-change = { $site }, de { $from } a { $to }
title-on-the-tape = En la cinta, como partes de la línea
column-change = cambio
column-p = p
column-gained = ganado
column-lost = perdido
column-kept = conservado
column-found-again = hallado otra vez
column-tape-shift = cinta corrida
column-same-line = misma línea
pairing-holds = sí
pairing-doubtful = dudoso
pairing-cant-tell = no se sabe
all-lines-together = todas las líneas
picture-written = { $file } escrito.
picture-of-change = Copa a lo largo de cada línea en ambas visitas
picture-of-change-told = Copa a lo largo de las líneas de { $site } en { $from } y { $to }: lo conservado, lo ganado y lo perdido.
option-not-here = { $option } no tiene sentido aquí.

## Readers side by side
agree-one-line-more = En la única línea que leyeron ambos, { $second } tiene { $difference } más de copa que { $first }.
agree-one-line-less = En la única línea que leyeron ambos, { $second } tiene { $difference } menos de copa que { $first }.
agree-more = En las { $lines } líneas que leyeron ambos, { $second } tiene en promedio { $difference } más de copa que { $first }.
agree-less = En las { $lines } líneas que leyeron ambos, { $second } tiene en promedio { $difference } menos de copa que { $first }.
agree-limits = En el { $share } de tales líneas diferirían de { $low } a { $high } puntos, si las diferencias se reparten como una campana (Bland y Altman 1986).
    .alike = En el { $share } de tales líneas diferirían en { $low } puntos, según las cifras mostradas, si las diferencias se reparten como una campana (Bland y Altman 1986).
agree-bias = La diferencia media queda entre { $low } y { $high } puntos, con una confianza del { $confidence }. Se suma a todo cambio entre sus años, y más líneas no la reducen.
    .alike = La diferencia media es de { $low } puntos, según las cifras mostradas, con una confianza del { $confidence }. Se suma a todo cambio entre sus años, y más líneas no la reducen.
agree-reliability = Acuerdo como correlación intraclase: { $value } (de { $low } a { $high } con una confianza del { $confidence }; forma 2,1 de Shrout y Fleiss 1979; { $readers } lectores, { $lines } líneas). Las líneas parecidas la bajan por fuerza, así que no aprueba ni reprueba a nadie.
    .alike = Acuerdo como correlación intraclase: { $value } (según las cifras mostradas con una confianza del { $confidence }; forma 2,1 de Shrout y Fleiss 1979; { $readers } lectores, { $lines } líneas). Las líneas parecidas la bajan por fuerza, así que no aprueba ni reprueba a nadie.
agree-nobody = Ninguna línea fue leída por dos personas en un mismo año.
habit-closes-gaps = { $second } lee como copa { $gaps } claros que { $first } anotó, de hasta unos { $closed }. Lean la regla de claros en voz alta y midan juntos un claro.
habit-wider = { $second } ve cada borde unos { $way } más afuera. Acuerden cuál es la hoja viva más externa, y párense derechos sobre ella.
habit-narrower = { $second } ve cada borde unos { $way } más adentro. Acuerden cuál es la hoja viva más externa, y párense derechos sobre ella.
habit-tape-off = Lo que lee { $second } queda unos { $way } más adelante en la cinta. Acuerden el cero y qué borde de la cinta se lee.
habit-tape-back = Lo que lee { $second } queda unos { $way } más atrás en la cinta. Acuerden el cero y qué borde de la cinta se lee.
habit-dead-as-live = { $second } anota como vivo el { $share } de lo que { $first } anotó como muerto. Doblen juntos unas ramitas y acuerden qué está vivo.
habit-leaves-out-small = { $second } omite { $plants } plantas que { $first } tiene, de hasta unos { $length } de largo. Acuerden cuál es la copa más corta que cuenta.
habit-none = Ningún hábito explica por sí solo en qué difieren.

## Trend
trend-rises = La cifra de { $what } sube unos { $slope } puntos al año en { $visits } visitas, con una confianza del { $confidence } de que sube.
trend-falls = La cifra de { $what } baja unos { $slope } puntos al año en { $visits } visitas, con una confianza del { $confidence } de que baja.
trend-not-shown = { $visits } visitas no muestran tendencia de { $what }.
trend-too-few-visits = { $what }: { $visits } visitas son muy pocas para distinguir una tendencia del azar, así que no hay p; hacen falta al menos cuatro.
trend-one-year = Ningún sitio se leyó en dos años o más.
trend-unlike-lines = En { $years } no se leyeron las mismas líneas que en { $first }. Parte de la diferencia entre años es de las líneas.
trend-between-ends = { $site }: la cifra de { $what } solo se conoce entre dos extremos en algún año, así que aquí no tiene tendencia.
trend-years-are-the-sample = Todas las líneas de un sitio comparten sus años secos y lluviosos, así que los años son la muestra: el modelo de líneas y años lo sabe (verosimilitud restringida; errores y grados de libertad según Kenward y Roger 1997), y las cifras sin modelo (Theil y Sen; Mann y Kendall) toman el nivel de cada año como un solo valor.
trend-lines-count-alike = En el modelo todas las líneas cuentan igual, estén en el estrato que estén; el nivel de cada año va por superficie.
trend-by-model = Líneas y años juntos: { $slope } puntos al año, entre { $low } y { $high } con una confianza del { $confidence } (EE { $se }, { $df } gl, p = { $p }).
    .alike = Líneas y años juntos: { $slope } puntos al año, según las cifras mostradas, con una confianza del { $confidence } (EE { $se }, { $df } gl, p = { $p }).
trend-no-model = No hay modelo de líneas y años: { $reason }.
trend-no-years = Lo que los años hicieron a todas las líneas por igual no se puede separar de lo que sobra, así que la pendiente del modelo, de { $slope } puntos al año, parece más segura de lo que es, y no lleva p.
trend-swings = Un año típico queda a { $years } puntos de la tendencia, para todas las líneas por igual; las líneas quedan a { $lines } puntos unas de otras; sobran { $left } puntos.
trend-hangs-together = Los años se encadenan de una visita a la siguiente: sin modelo, p = { $plain } como si no lo hicieran, { $p } con la varianza { $times } veces mayor (Hamed y Rao 1998).
fit-one-line = una sola línea no permite distinguir lo que hizo el año de lo que hizo la línea
fit-one-year = todas las lecturas son de un solo año
fit-not-separable = las lecturas no permiten separar las líneas, los años y lo que sobra; servirían líneas leídas otra vez en otros años
fit-nothing-left = las lecturas están exactamente sobre una recta, así que no se puede saber ningún error
fit-no-summit = las lecturas no deciden cuánto varían las líneas y los años
no-years-in-the-model = sin años en el modelo
forecast-met = Si la tendencia siguiera, la cifra de { $what } alcanzaría { $value } (la meta: { $goal }) hacia { $year }: entre { $earliest } y { $latest } con una confianza del { $confidence }.
    .alike = Si la tendencia siguiera, la cifra de { $what } alcanzaría { $value } (la meta: { $goal }) hacia { $year }, dentro de ese año con una confianza del { $confidence }.
forecast-met-or-never = Si la tendencia siguiera, la cifra de { $what } alcanzaría { $value } (la meta: { $goal }) hacia { $year }: no antes de { $earliest }, y quizá nunca, con una confianza del { $confidence }.
forecast-lost = Si la tendencia siguiera, la cifra de { $what } pasaría de { $value }, fuera de la meta ({ $goal }), hacia { $year }: entre { $earliest } y { $latest } con una confianza del { $confidence }.
    .alike = Si la tendencia siguiera, la cifra de { $what } pasaría de { $value }, fuera de la meta ({ $goal }), hacia { $year }, dentro de ese año con una confianza del { $confidence }.
forecast-lost-or-never = Si la tendencia siguiera, la cifra de { $what } pasaría de { $value }, fuera de la meta ({ $goal }), hacia { $year }: no antes de { $earliest }, y quizá nunca, con una confianza del { $confidence }.
forecast-not-by = La tendencia no cruza { $value } hasta { $last }, tantos años adelante como se miró hacia atrás; más allá no dice nada.
forecast-not-shown = Sin una tendencia demostrada, las lecturas no dicen cuándo la cifra de { $what } cruzaría { $value }.
forecast-caution = Los años hablan del nivel de la recta, no de un solo año seco o lluvioso, y ninguna tendencia sabe de la lluvia, el fuego o el pastoreo por venir.
region-by-area = Los { $sites } sitios por superficie: { $slope } puntos al año, entre { $low } y { $high } con una confianza del { $confidence } ({ $df } gl, los años menos dos).
    .alike = Los { $sites } sitios por superficie: { $slope } puntos al año, según las cifras mostradas, con una confianza del { $confidence } ({ $df } gl, los años menos dos).
region-alike = Los { $sites } sitios contados por igual, pues de alguno no se conoce la superficie: { $slope } puntos al año, entre { $low } y { $high } con una confianza del { $confidence } ({ $df } gl, los años menos dos).
    .alike = Los { $sites } sitios contados por igual, pues de alguno no se conoce la superficie: { $slope } puntos al año, según las cifras mostradas, con una confianza del { $confidence } ({ $df } gl, los años menos dos).
region-shares-years = Los sitios comparten sus años secos y lluviosos (un año típico los mueve a todos { $years } puntos), así que más sitios no reducen esa parte del error.
region-shares-all-years = No se puede saber cuánto del vaivén de los años comparten los sitios, así que todo se toma como compartido.
region-drawn = “Acercada” presta a un sitio con pocos datos la fuerza de los otros: se mueve hacia ellos tanto más cuanto mayor es su propio error frente a lo que difieren los sitios (Paule y Mandel 1982; Efron y Morris 1975). Para hablar solo de ese sitio, use su propia pendiente.
title-region = Todos los sitios juntos
column-method = cómo
column-site-share = parte
column-own-slope = propia
column-drawn = acercada
method-model = líneas y años
method-without = sin modelo
method-hanging = años encadenados
too-few-visits = muy pocas visitas
help-agree = Quienes leyeron las mismas líneas, lado a lado: cuánto difieren, en qué plantas y por qué hábito
help-against = Con quién se compara a los otros; si no se nombra a nadie, la primera pasada
help-trend = La tendencia de cada sitio en sus años: pendiente, dirección, cuándo se alcanzaría una meta; y todos los sitios juntos
column-difference = diferencia
column-both-have = ambos tienen
column-missed = omitidas
column-added = agregadas
column-mean-difference = diferencia media
column-slope = puntos al año

## Pages of trends, changes and readers
picture-of-trend = { $what } a lo largo de los años
trend-axis = { $what }, %
trend-axis-years = año
trend-mark-line = una línea, leída una y otra vez
trend-mark-level = el nivel de un año
trend-mark-model = la tendencia, y cuánto puede desviarse
trend-goal = meta: { $goal }
follow-beside = Lo que hay que sopesar al lado
follow-trend-title = Tendencias a lo largo de los años
follow-trend-about = La copa de cada sitio a lo largo de sus años, con un modelo de líneas y años juntos y sin él; cuándo se alcanzaría una meta si la tendencia siguiera; todos los sitios juntos.
follow-levels = El nivel de cada año
follow-levels-table = Nivel de cada año
follow-slopes = Puntos al año
follow-slopes-table = Pendiente, su intervalo y p
follow-sites-table = Pendiente de cada sitio, en puntos al año
column-drawn-se = EE de la acercada
follow-change-title = Cambio entre dos visitas
follow-change-about = Lo que subió, lo que bajó y lo que no se puede saber, entre dos visitas de cada sitio; en la cinta, dónde se conservó, se perdió y se ganó copa.
follow-change-nothing = Ningún sitio se leyó en ambos años.
follow-figures = Cifras
follow-figures-table = Niveles, cambio y su error
follow-agree-title = Lectores lado a lado
follow-agree-about = Quienes leyeron las mismas líneas: cuánto distan sus coberturas, en qué plantas, y qué hábito lo explicaría. No es culpa de nadie: quién tiene razón lo dicen el reglamento y la planta.
follow-agree-pair = { $site } { $year }: { $second } junto a { $first }
follow-agree-lines = Línea por línea
follow-agree-species = Diferencia media de cada especie
follow-agree-only = solo { $reader }
follow-agree-picture = Lo que ven ambos, y lo que ve uno solo
follow-agree-told = Copa a lo largo de cada línea como la leyeron { $first } (arriba) y { $second } (abajo).
follow-agree-certificate = Situación, con sus días
follow-agree-season = { $second } junto a { $first } a lo largo de { $year }
follow-agree-control = Diferencias en el orden del tiempo
help-trend-report = Escribir la página de tendencias, como HTML
help-change-report = Escribir la página de cambios, como HTML
help-agree-report = Escribir la página de lectores, como HTML
page-written = { $file } escrito.

## Standing of readers
help-tolerance = La tolerancia que fijó su oficina, en puntos de cobertura, como “3 %”: si cada lector está en condiciones de leer, o qué debe practicar
standing-ready = En condiciones de leer, según su tolerancia de { $tolerance }: { $within } de { $lines } líneas quedan dentro de ella.
standing-practise = Por practicar, según su tolerancia de { $tolerance }: { $within } de { $lines } líneas quedan dentro de ella, y se piden nueve de cada diez. Abajo está de qué conviene hablar.
standing-too-few = { $lines ->
        [one] Ambos leyeron una línea
       *[other] Ambos leyeron { $lines } líneas
    }: muy pocas para decir que alguien está en condiciones; hacen falta al menos tres.
standing-whose = La tolerancia es la de la oficina; no se toma la de ningún manual.
standing-days = Fechas de las líneas leídas por { $second }: { $days }.
control-quiet = A lo largo de { $year } las diferencias de { $second } con { $first } no siguen ningún patrón en { $lines } líneas (Western Electric 1956).
control-broken = A lo largo de { $year } las diferencias de { $second } con { $first } muestran un patrón: { $what } el { $day } (Western Electric 1956). Por azar lo hace más o menos un valor de cada noventa; pide una mirada, no un juicio.
control-too-few = Para una gráfica de la temporada, { $second } necesita cinco líneas o más leídas por ambos; hay { $lines }.
control-beyond-three = una diferencia más allá de tres desviaciones estándar
control-two-of-three = dos de tres más allá de dos desviaciones estándar hacia un mismo lado
control-four-of-five = cuatro de cinco más allá de una desviación estándar hacia un mismo lado
control-eight-in-a-row = ocho seguidas hacia un mismo lado
control-axis = diferencia, puntos de cobertura
control-warning = dos desviaciones estándar
control-action = tres
control-flagged = se rompe una regla
title-season = A lo largo de la temporada
habit-opens-gaps = { $second } anota { $gaps } claros que { $first } leyó como copa, de hasta unos { $length }. Lean la regla de claros en voz alta y midan juntos un claro.
habit-tape-stretched = Lo que lee { $second } queda más adelante cuanto más lejos del cero: unos { $way } en { $over }. Tensen bien la cinta y lean juntos su final.
habit-tape-shrunk = Lo que lee { $second } queda más atrás cuanto más lejos del cero: unos { $way } en { $over }. Tensen bien la cinta y lean juntos su final.
habit-other-edge = Los bordes de { $second } se desvían unos { $way } a un lado o al otro. Quizá se leyó el otro borde de la cinta, o los bordes con poco cuidado: acuerden el borde, y lean juntos una planta.
habit-other-as-canopy = { $second } anota como copa el { $share } de lo que { $first } anotó de plantas que no cuentan, como gramíneas. Aparten la planta y acuerden qué es.
habit-adds-small = { $second } tiene { $plants } plantas que { $first } no tiene, de hasta unos { $length } de largo. Acuerden cuál es la copa más corta que cuenta, y qué crece ahí.

## Log of calibrations
help-agree-log = El registro de calibraciones de un cuaderno: a quién se comparó con quién, qué resultó, a quién le toca
help-log = Escribir la situación de cada lector en el registro de este cuaderno, según --tolerance
help-judge = Quién juzga: el nombre que queda en el registro; si se omite, quien lo hace
help-span = Días que dura una calibración en su oficina; no hay ninguno fijado de antemano
help-on = El día del que hablan los recordatorios, como 2026-08-01; si se omite, hoy
help-certificate = Escribir cada calibración como una página para imprimir, como HTML
help-log-reader = De un solo lector
help-log-csv = Imprimir una tabla de todas las líneas de todas las calibraciones
column-against = junto a
column-within = dentro
column-tolerance = tolerancia
column-outcome = resultado
column-judge = quién juzgó
calibration-passed = aprobada
calibration-repeat = por repetir
so-many-of = { $some } de { $all }
title-log = Calibraciones
title-due = A quién le toca
log-empty = El registro de este cuaderno está vacío: tautline agree … --tolerance … --log escribe en él.
logged = { $records ->
        [one] Una calibración escrita
       *[other] { $records } calibraciones escritas
    } en { $file }.
logged-known = Nada nuevo para el registro de { $file }.
log-left-out = No se escribió en el registro: { $second } junto a { $first } en { $site }. Hacen falta al menos tres líneas, con su día.
log-needs-tolerance = Una calibración se juzga con la tolerancia de su oficina: indíquela con --tolerance, como “3 %”.
reminder-never = { $reader } no ha aprobado ninguna calibración.
reminder-last = La última calibración de { $reader } fue hace { $days ->
        [one] un día
       *[other] { $days } días
    } ({ $date }, junto a { $against }).
reminder-within = La última calibración de { $reader } fue hace { $days ->
        [one] un día
       *[other] { $days } días
    } ({ $date }, junto a { $against }); el plazo de la oficina es de { $span } días.
reminder-over = La última calibración de { $reader } fue hace { $days } días ({ $date }, junto a { $against }); el plazo de la oficina es de { $span } días. Lean otra vez tres líneas juntos antes de leer más por separado.
reminder-repeat = Hay que repetir la calibración del { $date }.
reminder-uncovered = De { $lines } líneas en un año, { $reader } leyó { $uncovered } antes de aprobar una calibración.
reminder-uncovered-span = De { $lines } líneas en un año, { $reader } leyó { $uncovered } sin una calibración dentro del plazo.
certificate-title = Calibración de un lector
certificate-about = Se comparó a { $reader } con { $against } en { $lines } líneas de { $site }, leídas con este protocolo: { $protocol }.
certificate-passed = Aprobada el { $date }: en { $within } de { $lines } líneas las coberturas difieren a lo sumo { $tolerance }; se piden nueve de cada diez.
certificate-repeat = Por repetir ({ $date }): en { $within } de { $lines } líneas las coberturas difieren a lo sumo { $tolerance }; se piden nueve de cada diez.
certificate-bias-more = En promedio { $reader } tiene { $bias } más de copa que { $against }.
certificate-bias-less = En promedio { $reader } tiene { $bias } menos de copa que { $against }.
certificate-lines = Línea por línea
certificate-judged = Juzgó: { $judge }
certificate-day-and-hand = Día y firma
certificate-whose = La tolerancia, cuánto tiempo vale esto y a qué da derecho los fija la oficina; no es un certificado de nadie más.
certificate-unnamed-protocol = un protocolo sin nombre ({ $fingerprint })

## Where the doubt comes from
help-agree-sources = De dónde viene la duda de una media: lectores, líneas, parcelas, sitios, años; y qué la haría más segura
help-travel = Minutos para llegar a otro sitio más
help-day = Minutos de un día de calibración, por cada lector (480)
part-site = los sitios
part-year = los años
part-stratum = los estratos
part-plot = las parcelas
part-line = las líneas
part-reader = los lectores
part-site-year = un año en un sitio
part-left = lo que sobra
doubt-most = La mayor parte de lo que varía está en { $part }: de un caso a otro, unos { $sd } (una desviación estándar; el { $share } de toda la varianza).
doubt-drawn = Se separaron las lecturas de { $taken } de los { $all } sitios, sorteados al azar: más son demasiadas a la vez.
doubt-one-group = De { $part } hay un solo caso, así que no se puede saber cuánto pesa.
doubt-mixed-left = De { $part } no se leyó nada dos veces, así que su parte no se puede separar de lo que sobra.
doubt-mixed = La parte de { $part } no se puede separar de la de { $with }: donde cambia lo uno, cambia lo otro. Está contada ahí.
doubt-se = La media de { $year } tiene un error estándar de { $se }, hasta donde se puede saber; lo que hizo el año es parte de ella y no es error.
doubt-buy = Lo que más duda quita de una vez: { $what }. Qué sale más barato depende de lo que a usted le cuesten una caminata, una línea, un viaje y un día: dígalo, y se calcula.
doubt-buy-by-hour = Lo que más duda quita por las horas que lleva: { $what }.
doubt-buy-nothing = Hasta donde se puede saber, ni más líneas ni un día de calibración la harían más segura.
doubt-day-what-for = En un día de calibración todos los lectores leen las mismas líneas; lo que difieren se descuenta después, y queda la duda de ese descuento.
doubt-source = Varianzas por verosimilitud restringida (Patterson y Thompson 1971), en torno a una sola media para todo; una tendencia a lo largo de los años queda en los años.
buy-line = una línea más
buy-site = un sitio más con { $lines ->
        [one] una línea
       *[other] { $lines } líneas
    }
buy-day = un día de calibración, { $lines ->
        [one] una línea leída
       *[other] { $lines } líneas leídas
    } por cada lector
sources-too-few = Menos de tres lecturas con fecha y lector: no hay nada que separar.
sources-too-many = Un sitio tiene más de 400 lecturas: elija un año.
sources-nothing-left = Descontadas las líneas y los lectores, en las lecturas no sobra nada: lea algunas líneas dos veces.
sources-no-summit = Las lecturas no deciden cuánto varía cada parte.
sources-apart = Las líneas se leyeron con protocolos que no se pueden reunir.
title-sources = De dónde viene la duda
title-buys = Qué la haría más segura
column-groups = cuántos
column-sd-points = DE, puntos
column-of-variance = de toda la varianza
column-se-after = EE con ello, puntos

## Readers of a change
readers-measured = { $later } lee { $bias } puntos más que { $earlier } en las { $lines } líneas que leyeron ambos.
readers-measured-less = { $later } lee { $bias } puntos menos que { $earlier } en las { $lines } líneas que leyeron ambos.
readers-believed = Un cambio menor que { $believed } puntos puede ser solo de las líneas y los lectores.
readers-logged-otherwise = Ambos están en el registro, pero con otro protocolo que el de estas líneas, así que no se usa.
readers-not-measured = Leyó { $earlier } antes y { $later } después, que no han leído dos líneas en común: lo que ven distinto está en el cambio y no entra en su intervalo.
readers-measured-by-a-third = Según el registro de calibraciones, cada cual puesto junto a un tercer lector ({ $lines } líneas en total), { $later } lee { $bias } puntos más que { $earlier }.
readers-measured-by-a-third-less = Según el registro de calibraciones, cada cual puesto junto a un tercer lector ({ $lines } líneas en total), { $later } lee { $bias } puntos menos que { $earlier }.
readers-from-the-log = Tomado del registro, lo más cercano antes de las visitas: { $taken }.
taken-for-the-earlier = { $reader } junto a { $against } el { $date } ({ $days ->
        [0] el último día de la visita anterior
        [one] un día antes de la visita anterior
       *[other] { $days } días antes de la visita anterior
    })
taken-for-the-later = { $reader } junto a { $against } el { $date } ({ $days ->
        [0] el último día de la visita posterior
        [one] un día antes de la visita posterior
       *[other] { $days } días antes de la visita posterior
    })
readers-logged-after = El registro tiene a ambos, pero nada anterior a estas visitas, así que no se usa.
readers-logged-too-old = El registro tiene a ambos, pero la calibración más cercana tenía { $days } días en una visita, más que el plazo de su oficina, así que no se usa.
readers-taken-off = Descontado eso, y sumada su propia duda, el cambio es de { $change } puntos, entre { $low } y { $high } con una confianza del { $confidence }.
    .alike = Descontado eso, y sumada su propia duda, el cambio es de { $change } puntos, según las cifras mostradas, con una confianza del { $confidence }.
