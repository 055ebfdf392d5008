# La aplicación en un navegador.

app-this-device = este dispositivo
app-skip = Ir al contenido
app-screens = Pantallas
app-sites = Sitios
app-take-in = Recibir
app-settle = Resolver
app-notebook = Cuaderno
app-closed = No se puede abrir el cuaderno
app-closed-way-out = Con esto no se pierde nada de lo que contiene. Cierre otras ventanas de tautline y cargue la página otra vez. Una ventana en modo privado no guarda nada: use una normal.
app-badge-here = { $records ->
    [0] aquí aún nada
    [one] 1 cambio solo aquí
   *[other] { $records } cambios solo aquí
}
app-badge-to-settle = { $things ->
    [one] 1 por resolver
   *[other] { $things } por resolver
}
app-badge-sent = todo enviado
app-must-settle = { $findings ->
    [one] Hay que resolver una cosa
   *[other] Hay que resolver { $findings } cosas
}
app-have-a-look = { $findings ->
    [one] Conviene mirar una cosa
   *[other] Conviene mirar { $findings } cosas
}
app-welcome = Un cuaderno para líneas de arbustos
app-welcome-what = Lea líneas a lo largo de una cinta tensa, vea cuánto de un sitio cubren los arbustos vivos y cuán seguro es eso, y si se cumple la meta. Todo funciona sin red, y lo que escribe se queda en este dispositivo hasta que lo comparta.
app-open-demo = Mirar la demostración
app-begin-empty = Empezar con mis archivos
app-demo-invented = La demostración es un matorral inventado con gente inventada. Se puede retirar entera.
app-cautions = En el campo van primero las normas locales, los dueños de la tierra y la práctica con licencia. Pida permiso antes de entrar, cubra sus estacas, y que alguien sepa cuándo debe volver.
app-demo-reason = demostración, inventada
app-demo-kept = La demostración está en este cuaderno. Todo en ella es inventado.
app-demo-missing = No se pudo traer la demostración. Abra la aplicación una vez con red y quedará aquí para siempre.
app-find = Buscar un sitio
app-more-sites = { $more } más: escriba arriba una parte del nombre.
app-site-cover = cobertura { $cover }, entre { $low } y { $high }
    .alike = cobertura { $cover }, según las cifras mostradas
app-site-cover-alone = cobertura { $cover }, sin intervalo
app-site-cover-between = cobertura entre { $low } y { $high }, sin intervalo
    .alike = cobertura { $low }, según las cifras mostradas, sin intervalo
app-site-cover-between-sure = cobertura entre { $low } y { $high }; contando con su duda, entre { $from } y { $to }
app-site-lines = { $lines ->
    [one] 1 línea
   *[other] { $lines } líneas
}
app-site-last = leído el { $date }
app-site-not-read = { $count ->
    [one] 1 línea sin leer
   *[other] { $count } líneas sin leer
}
app-site-to-settle = { $count } por resolver
app-site-to-look-at = { $count } por mirar
app-reading = Leyendo el cuaderno…
app-site-unknown = En el cuaderno no hay lecturas de este sitio.
app-report-file = El informe como archivo
app-what-if = Y si…
app-what-if-changes-nothing = Solo responde esta pantalla; en el cuaderno no cambia nada.
app-confidence = Con qué seguridad
app-method = Intervalo
app-gap-rule = Regla de claros
app-gap-rule-own = La regla del protocolo de cada lectura.
app-gap-rule-not-read = Una longitud con su unidad, como 4 in o 10 cm.
app-gap-rule-asked = Los claros menores que { $length } se leen como copa, donde las lecturas lo permiten.
app-take-in-what = Tablas de lecturas, planes, listas de plantas, metas, protocolos, hojas tecleadas y copias de otros cuadernos. Verá lo que se entendió antes de que se escriba nada.
app-pick-files = Elija archivos, o suéltelos aquí
app-typed = O teclee una hoja tal como está en papel
app-typed-name = tecleada.sheet
app-typed-example =
    Site: Hollow Flat
    Unit: ft
    Line B1, 100 ft
    ATCA 12.4-14.1
    KRLA 22.0-22.7
app-files-left = Demasiado largos para la aplicación, o ilegibles: { $files }. La orden acepta más largos.
app-understood-heading = Lo que se entendió
app-understood = { $kind }: { $new } nuevos, { $changed } cambiados, { $known } que ya estaban
app-understood-copy = { $revisions ->
    [one] una revisión de otro cuaderno
   *[other] { $revisions } revisiones de otro cuaderno
}
app-understood-unfinished = { $lines ->
    [one] una línea sin terminar
   *[other] { $lines } líneas sin terminar
}
app-lines-broken = { $file }: { $lines ->
    [one] un renglón no está entero y se omitió.
   *[other] { $lines } renglones no están enteros y se omitieron.
}
app-brings-nothing = Esto no trae nada que no esté ya aquí.
app-keep = Guardarlo
app-leave = Dejarlo
app-kept = Guardado en este dispositivo.
app-kind-visit = lecturas de líneas
app-kind-line = líneas planeadas
app-kind-stratum = estratos
app-kind-plants = lista de plantas
app-kind-protocol = protocolos
app-kind-goal = metas
app-kind-calibration = calibraciones de lectores
app-kind-settlement = lo resuelto por personas
app-kind-photo = fotos
app-kind-other = los archivos mismos
app-settle-nothing = Nada que resolver. Cuando dos personas escriben cosas distintas de una línea, ambas quedan aquí lado a lado hasta que una de ustedes elija; ninguna cifra usa antes ni una ni otra.
app-settle-what = Dos personas escribieron distinto sobre una misma cosa. Ninguna cifra usa lo uno ni lo otro hasta que alguien elija.
app-reason = Por qué (si quiere)
app-this-stands = Esta vale
app-settled = Resuelto. La otra queda en el historial.
app-sharing = Compartir
app-sharing-under-way = Buscando el cuaderno compartido.
app-sharing-nobody = No responde ningún cuaderno compartido. Todo se guarda en este dispositivo, y pasa allá cuando uno responda.
app-sharing-done = Lo que hay aquí está también en el cuaderno compartido.
app-share-now = Compartir ahora
app-copy = Una copia de todo
app-copy-what = Un archivo con todo lo que se escribió alguna vez en este dispositivo, también las versiones pasadas y las líneas sin terminar. Es una copia completa, con lugares y nombres. Cualquier tautline la recibe.
app-copy-now = Hacer una copia
app-persist = Sitio en este dispositivo
app-persist-promised = El navegador conserva el cuaderno aunque le falte sitio.
app-persist-not = El navegador no ha prometido conservar el cuaderno cuando le falte sitio. Ponga la aplicación en la pantalla de inicio, y haga una copia cada noche.
app-persist-unknown = El navegador no dice si conserva el cuaderno cuando le falta sitio. Haga una copia cada noche.
app-persist-ask = Pedir al navegador que lo conserve
app-you = Quién escribe aquí
app-you-what = Va con cada cambio, para que otros sepan a quién preguntar.
app-your-name = Su nombre
app-device-name = Cómo llama a este dispositivo
app-look = Luz
app-theme-device = como la tiene el dispositivo
app-theme-light = clara
app-theme-dark = oscura
app-theme-sunlight = pleno sol
app-version = tautline { $version }
app-newer-label = Una versión más nueva
app-newer = Hay una versión más nueva de tautline. Lo guardado en este dispositivo se queda; termine antes lo que esté haciendo.
app-newer-take = Tomarla ahora

## Photos and permission
app-photos = Fotos
app-photos-none = En el cuaderno aún no hay ninguna foto de este sitio.
app-photo-add = Tomar una foto
app-photo-of = De
app-photo-line = Línea { $line }
app-photo-site-at-large = el sitio en general
app-photo-shows = Muestra
app-photo-caption = Lo que haya que decir de ella
app-photo-people = Quién se ve en ella (nombres, con comas)
app-photo-keep-place = Guardar el lugar y la hora
app-photo-what-is-kept = La foto se hace más pequeña (1600 píxeles a lo sumo) y se dibuja de nuevo, así que en su archivo no queda nada de lo que la cámara escribió junto a ella. Día, hora, lugar y rumbo van en el registro; sin la marca, solo el día.
app-photo-take = Tomar una foto
app-photo-choose = Elegir fotos
app-photos-kept = { $photos ->
    [one] La foto está guardada en este dispositivo.
   *[other] { $photos } fotos están guardadas en este dispositivo.
}
app-photos-left = Este navegador no puede leer estas fotos: { $files }. Guárdelas como JPEG y elíjalas otra vez.
app-photo-row = Línea { $line }, { $shows }
app-photo-row-site = El sitio, { $shows }
app-photo-being-read = …
app-permission = Permiso para entrar
app-moving-label = El cuaderno se muda
app-moving-send-first = El cuaderno compartido se muda a { $to }. Hay algo que está solo en este dispositivo y desde allí no se ve: compártalo ahora, o haga una copia, antes de abrir la dirección nueva.
app-moving-sent = El cuaderno compartido se muda a { $to }. Todo lo que hay en este dispositivo ya se envió; puede abrir la dirección nueva cuando esté lista.
app-room-not-here = Esta parte de la aplicación todavía no está en este aparato. Ábrala una vez con red; después se queda.
app-plan = Planear
app-practice = Practicar
app-more = Más
app-take-in-for = Archivos y hojas pasadas del papel, revisados antes de guardar nada
app-settle-for = Lo que dos personas anotaron distinto, lado a lado
app-notebook-for = Compartir, copias, historial y cómo muestra las cosas este aparato
app-handbook = Manual
app-follow = Seguir
app-agree = Acordar
app-follow-for = Qué cambió entre dos visitas, y la tendencia de todas
app-agree-for = Lectores de la misma línea lado a lado, quién está listo, y constancias
app-handbook-for = Cada fórmula con su fuente y un ejemplo hecho a mano
app-history = Historial
app-search = Buscar
app-lists = Protocolos y plantas
app-search-for = Sitios, líneas, personas, plantas, notas y reglas por cualquier palabra
app-figures = Cifras como JSON
app-more-findings = { $more } más: se muestran cuando estos estén resueltos.
app-follow-site = Seguirlo a lo largo de los años

# La pantalla de inicio dice estas antes de que lleguen las palabras de las salas.
field-blind = Fuera de la vista mientras alguien lee por segunda vez: { $lines }. Todas las cifras aquí van sin esa lectura, que vuelve cuando se cierre la segunda.
desk-only = Mostrar
desk-only-all = todos los sitios
desk-only-waiting = donde algo espera
desk-no-site = Ningún sitio es así.
