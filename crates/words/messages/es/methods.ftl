### Palabras de tautline: el párrafo de métodos de un informe, en oraciones que pueden ir en un informe propio.

## How it was read
methods-read = { $lines ->
    [one] Se leyó una línea recta por intercepción en { $site } { $when }.
   *[other] Se leyeron { $lines } líneas rectas por intercepción en { $site } { $when }.
}
methods-on = el { $day }
methods-between = entre el { $first } y el { $last }
methods-undated = en días que no se anotaron
methods-protocol = El protocolo fue “{ $name }” (la huella de su significado empieza por { $fingerprint }; { $source }).
methods-source = fuente: { $source }
methods-source-memory = fuente, de memoria: { $source }
methods-source-none = sin fuente indicada
methods-no-protocol = No se entregó ningún protocolo.
methods-silence = Donde el protocolo calla, se tomó esto: { $taken }.

## How a line was worked out
methods-counts = Lo que cuenta: { $what }.
methods-except = { $what }, salvo { $except }
methods-no-gap = No se cerró ningún claro; cada borde cuenta como está escrito.
methods-gap = Un claro menor que { $limit } se leyó como copa.
methods-gap-asked = Ese límite fue pedido y es más grueso que el de la lectura, o el mismo.
methods-gap-bridged = Estos se leyeron como copa cuando eran menores: { $cases }.
methods-gap-breaks = Estos quedaron abiertos: { $cases }.
methods-dead-left-out = La copa muerta no entra en ninguna cifra.
methods-dead-apart = La copa muerta se calculó aparte de la viva.
methods-dead-joins = La copa muerta se calculó aparte de la viva; un tramo muerto menor que el límite de claro que toca copa viva se leyó como vivo (Boyd, Bates y Miller 2007).
methods-dead-counts = La copa muerta cuenta como viva.
methods-line = La cobertura de una línea es la longitud de cinta bajo copa viva de lo que cuenta, con el traslape una sola vez, sobre la longitud que se leyó. Las longitudes se guardan exactas; solo lo que se muestra se redondea, una vez.
methods-lengths-only = { $lines ->
    [one] De una línea solo se anotaron longitudes
   *[other] De { $lines } líneas solo se anotaron longitudes
}; donde varias especies podrían traslaparse, la cobertura de copa queda entre un extremo bajo y uno alto, y se llevaron ambos hasta el final.
methods-nothing-found = { $lines ->
    [one] En una línea no se halló nada; cuenta como cero.
   *[other] En { $lines } líneas no se halló nada; cuentan como cero.
}
methods-partly = { $lines ->
    [one] De una línea se leyó una parte, y se tomó esa parte.
   *[other] De { $lines } líneas se leyó una parte, y se tomaron esas partes.
}

## How the site was worked out
methods-unit-lines = La línea es la unidad de muestreo ({ $lines ->
    [one] una línea
   *[other] { $lines } líneas
}).
methods-unit-lines-of-plot = La afirmación trata solo de esta parcela, y sus líneas son las unidades de muestreo ({ $lines ->
    [one] una línea
   *[other] { $lines } líneas
}).
methods-unit-plots = La parcela es la unidad de muestreo: { $lines } líneas en { $units } parcelas.
methods-estimator = La estimación es { $estimator } ({ $source }).
methods-strata = El sitio se divide en estratos, ponderados por su superficie: { $strata } ({ $source }).
methods-stratum = { $stratum } { $weight }
methods-within = Dentro de un estrato la estimación es { $estimators }.
methods-by = { $estimator } ({ $source })
methods-on-the-level = Las clases de claros y las plantas por superficie son las del plano horizontal, según la pendiente de cada línea; la cobertura no lo necesita.
methods-interval = Intervalos bilaterales del { $confidence } de { $what }: { $method }.
methods-bounds = Los veredictos se apoyan en cotas unilaterales del { $confidence }: una meta está cumplida o no cumplida solo si la cota queda al otro lado, y si no, aún no demostrada.
methods-more = Cuántas líneas más resolverían un veredicto sale de la potencia de la misma prueba por la distribución t no central, si el sitio es como se estimó.
interval-by-student-t = t de Student (Cochran 1977, 2.8)
interval-by-logit-t = t de Student sobre el logit, con el método delta, y de vuelta (Korn y Graubard 1998)
interval-by-log-t = t de Student sobre el logaritmo, con el método delta, y de vuelta
interval-by-logit-t-effective = t de Student sobre el logit, con el método delta, y de vuelta (Korn y Graubard 1998), con grados de libertad reducidos por cuanto el error de una cobertura pequeña vacila con la cobertura misma (docs/intervals.md de tautline)
interval-by-log-t-effective = t de Student sobre el logaritmo, con el método delta, y de vuelta, con grados de libertad reducidos por cuanto el error de una cifra pequeña vacila con la cifra misma (docs/intervals.md de tautline)
interval-by-bca = remuestreo (bootstrap) de las unidades con corrección de sesgo y aceleración: todas las extracciones posibles, o 10 000 sembradas por los datos cuando son demasiadas (Efron 1987)

## With what
methods-software = Calculado con tautline { $version } a partir de archivos con la huella común { $fingerprint }.
methods-software-no-files = Calculado con tautline { $version }.
