# Lo que se dice mientras se lee una línea, de una fila cada vez.
remark-stop-before-start = El final { $stop } está antes del comienzo { $start }: ¿se intercambian?
remark-zero-length = Comienzo y final son ambos { $start }: no hay nada entre ellos. Quite la fila, o teclee uno otra vez.
remark-length-zero = Esta longitud es cero. Quite la fila, o tecléela otra vez.
remark-species-not-named = No se nombró ninguna especie.
remark-species-not-listed = { $species } no está en la lista de plantas. Se guarda como está.
remark-finer-than-the-division = { $edge } es más fino que { $finest }, la división más fina del protocolo. Se guarda como está.
remark-beyond = { $stop } queda más allá de la cinta, que termina en { $length }. Solo cuenta la parte sobre la cinta.
remark-wholly-beyond = { $stop } queda más allá de la cinta, que termina en { $length }, y el comienzo también. ¿Se leyó pasada la estaca?
remark-overlap = Se traslapa con { $species } de { $start } a { $stop }. Lo que comparten cuenta una vez. ¿Se unen los dos?
remark-written-twice = { $species } de { $start } a { $stop } está escrita dos veces. Cuenta una vez. ¿Se quita una fila?
remark-gap-joined = Claro de { $gap }, bajo la regla de { $limit }: unido.
remark-gap-joined-species = Claro de { $gap } entre dos especies, bajo la regla de { $limit }: unido.
remark-gap-joined-end = Claro de { $gap } hasta el final de la cinta, bajo la regla de { $limit }: unido.
remark-dead-joined = Parte muerta de { $gap }, bajo la regla de { $limit }, que toca copa viva: leída como viva.
