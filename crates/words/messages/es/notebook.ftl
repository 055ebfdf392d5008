### Palabras de tautline: el cuaderno, sus registros y sus revisiones.

## Records
record-line = { $site }, línea { $line }, como se planeó
record-site = { $site }, el sitio
record-place = { $site }, dónde está la línea { $line }
record-stratum = { $site }, estrato { $stratum }
record-visit = { $site }, línea { $line }, { $date }
record-visit-undated = { $site }, línea { $line }, sin fecha
record-plants = la lista de plantas
record-protocol = el protocolo “{ $name }”
record-objective = el objetivo { $name }
record-trigger = el umbral { $name }
record-decision = una decisión sobre { $site } del { $date }
record-goal = una meta para todos los sitios
record-goal-site = una meta para { $site }
record-photo = una foto de { $site }, línea { $line }
record-photo-site = una foto de { $site }
record-calibration = { $reader } junto a { $against } en { $site }, { $date }
record-settlement = una palabra sobre hallazgos de la clase “{ $code }”
record-import = la importación de { $files }
record-unread = un registro

## What stands
two-versions = { $what }: hay versiones distintas lado a lado: { $versions }. No se usa ninguna hasta que se elija una con “tautline settle”.
written-by = de { $author } en { $device }, { $time } UTC (…{ $revision })
written-by-author = de { $author }, { $time } UTC (…{ $revision })
written-on = en { $device }, { $time } UTC, sin nombre (…{ $revision })
written-by-nobody = sin nombre, { $time } UTC (…{ $revision })
written-by-erased = borrado, { $time } UTC (…{ $revision })
record-not-understood = Un registro de la clase “{ $kind }” (…{ $revision }) no es lo que dice su clase. Se guarda y no se usa.
records-newer = { $records ->
    [one] Un registro
   *[other] { $records } registros
} de la clase “{ $kind }” de una versión más nueva de tautline: se guardan como están, y aquí no se usan.

## Import
import-disputed = { $what }: en el cuaderno hay versiones distintas de esto, así que no se agregó nada. “tautline settle” las muestra.
import-left-out = { $what } quedó fuera, pues su hoja se contradice. Corregido e importado otra vez, entra.
import-twice = { $what } está dos veces en estos archivos, no igual cada vez. Se tomó lo primero.

## Refusals
revision-not-whole = Contiene un número que no es entero; los registros solo llevan números enteros.
revision-other-hash = No es lo que dice su huella: el renglón fue cambiado o dañado.

## What changed
change-begun = anotado
change-begun-visit = anotado, con { $readings ->
    [0] ninguna lectura
    [one] una lectura
   *[other] { $readings } lecturas
}
change-taken-back = retirado
change-nothing = lo mismo
change-none = nada
change-field = { $field }: { $before } → { $after }
change-reading = { $reading }: { $changes }
change-reading-removed = { $reading }: quitada
change-reading-added = { $reading }: agregada
reading-edges = { $species } de { $start } a { $stop } ({ $state })
reading-length = { $species } { $length } ({ $state })

## The command
help-notebook = Trabajar con lo que hay en este cuaderno, en lugar de FILES
help-notebook-of = El cuaderno: un archivo
help-import = Llevar archivos a un cuaderno; lo que ya está no agrega nada
help-import-files = Archivos o carpetas como para cover y assess, u otros cuadernos, como archivos o como renglones de JSON
help-author = Quién lo hace; si se omite, quien tiene la sesión abierta
help-reason = Por qué
help-history = Quién escribió qué en un cuaderno, cuándo y por qué
help-history-site = Los registros de este sitio, una revisión tras otra
help-history-line = Los registros de líneas de este nombre, una revisión tras otra
help-settle = Mostrar versiones que están lado a lado, o elegir una
help-keep = La versión que ha de quedar, por los últimos caracteres de su identificador
help-restore = Restaurar una revisión anterior, o deshacer una importación, con una revisión nueva
help-restore-revision = La revisión cuyo registro ha de valer otra vez, por los últimos caracteres de su identificador
help-undo = La importación u otra acción por deshacer, por los últimos caracteres de su identificador
help-backup = Copiar un cuaderno a un archivo nuevo, incluso mientras se usa
help-backup-to = El archivo nuevo
help-history-blanked = Registros de los que se borró algo, y lo que queda de ellos
help-erase = Olvidar a una persona o un sitio: lo que los nombra se borra para siempre, los identificadores y huellas quedan; primero se muestra, con --yes se hace
help-erase-person = La persona, por el nombre que está en el cuaderno
help-erase-site = El sitio; sus propios registros se retiran
help-erase-instead = Lo que queda en lugar del nombre donde un registro se conserva
help-erase-yes = Hacerlo; no se puede deshacer
column-new = nuevos
column-changed = cambiados
column-known = ya estaban
column-when = cuándo (UTC)
column-who = quién
column-device = en
column-done = qué
column-records = registros
column-why = por qué
kind-line = líneas planeadas
kind-site = sitios
kind-place = lugares de las líneas
kind-stratum = estratos
kind-visit = visitas
kind-plants = lista de plantas
kind-protocol = protocolos
kind-goal = metas
kind-calibration = calibraciones de lectores
kind-settlement = palabras sobre hallazgos
kind-photo = fotos
kind-import = importaciones
done-import = importado
done-settle = resuelto
done-restore = restaurado
done-undo = deshecho
done-erase = borrado
imported = Escrito en { $file }. Para deshacer esta importación: tautline restore --undo { $action } --notebook { $file }
imported-nothing = { $file } ya contiene todo eso; no se agregó nada.
changed-more = … y { $records } más, que “tautline history” muestra renglón por renglón.
joined = { $file }: { $new ->
    [one] una revisión nueva
   *[other] { $new } revisiones nuevas
}, { $known } que ya estaban, { $erased } borradas.
blanked = borrado
kept-unread = guardado sin leer: de una versión más nueva, o no es lo que dice su clase
set-beside = junto a …{ $revision }:
stands-there = como está
whole-record = el registro entero
history-nothing = El cuaderno no contiene nada con ese nombre.
settle-how = Elija con: tautline settle --keep … --notebook FILE (y --author, --reason)
settle-nothing = No hay nada que resolver.
settled-with = { $what }: desde ahora vale la versión { $version }.
restored = La revisión { $version } vale otra vez.
undone = { $records ->
    [one] Un registro queda
   *[other] { $records } registros quedan
} como antes. Esto a su vez se deshace con --undo { $action }.
undone-left = { $records ->
    [one] Un registro queda como está
   *[other] { $records } registros quedan como están
}, pues otros se apoyan en ello o resolvió algo.
undone-nothing = No se deshizo nada: otros se apoyan ya en ello, o ya estaba deshecho.
restore-in-conflict = Hay versiones distintas lado a lado; elija antes una con “tautline settle”.
restore-erased = Esa revisión se borró y no se puede restaurar.
restore-stands = Ya está como lo tiene esa revisión.
erased-person = un lector anterior
erased-site = un sitio anterior
erase-no-name = Hace falta un nombre: --person o --site.
erase-by-themselves = Quien borra un nombre firma lo que lo quita, así que no puede ser “{ $name }”: dé otro con --author.
erase-nothing = Nada en el cuaderno nombra “{ $name }”.
erase-in-conflict = Hay versiones distintas lado a lado de { $records ->
    [one] un registro que nombra
   *[other] { $records } registros que nombran
} “{ $name }”; elija antes con “tautline settle”. No se borró nada:
erase-would = “{ $name }” está en { $records ->
    [one] un registro
   *[other] { $records } registros
}:
erase-warning = Con --yes, { $revisions ->
    [one] se borra una revisión
   *[other] se borran { $revisions } revisiones
}, y lo que decían no se podrá recuperar nunca. Los dispositivos y cuadernos que comparten este borran lo suyo cuando lo encuentren otra vez. Las copias de respaldo, los archivos exportados, las páginas impresas y los archivos que se importaron conservan el nombre hasta que usted los borre.
erased = { $records ->
    [one] Un registro queda
   *[other] { $records } registros quedan
} sin el nombre; { $revisions ->
    [one] se borró una revisión
   *[other] se borraron { $revisions } revisiones
}. Las copias de respaldo, los archivos exportados y los importados de antes aún lo contienen: bórrelos, o hágalos otra vez.
records-more = … y { $records } más.
id-unknown = Nada aquí tiene un identificador que termine en “{ $found }”. Están en “tautline history”; hacen falta cuatro caracteres o más.
id-several = Varios identificadores terminan en “{ $found }”; unos caracteres más los distinguirían.
backup-written = { $file } es una copia completa, con { $revisions ->
    [one] una revisión
   *[other] { $revisions } revisiones
}.

## Refusals of a notebook
notebook-not-there = { $file }: no existe ese cuaderno. “tautline import” empieza uno.
notebook-taken = { $file } ya existe; una copia no ocupa el lugar de otro archivo.
notebook-not-one = { $file } no es un cuaderno. Se dejó como está.
notebook-newer = { $file } lo escribió una versión más nueva de tautline (su formato es { $found }, este conoce { $known }). Se dejó como está; la versión más nueva lo abre.
notebook-damaged = { $file } está dañado ({ $why }) y no se usó. Vuelva a una copia de respaldo; lo que tengan otros dispositivos se le une otra vez con “tautline import”.
notebook-full = El disco está lleno, así que nada de esto se escribió en { $file }. Todo lo escrito antes está allí.
notebook-busy = Otro programa está escribiendo en { $file }; inténtelo de nuevo en un momento.
notebook-read-only = No se puede escribir en { $file }.
photo-other-bytes = Estos bytes no son los de la huella propia de la foto, así que no se guardaron. Envíe la foto otra vez.
photos-joined = { $photos ->
    [one] Con ello vinieron los bytes de una foto.
   *[other] Con ello vinieron los bytes de { $photos } fotos.
}
photo-no-picture = Esto no es un JPEG, PNG o WebP que se pueda leer. Guárdela en uno de esos formatos y agréguela otra vez.
help-photo = Fotos de líneas y visitas en un cuaderno: agregarlas, listarlas, entregarlas
help-photo-add = Agregar fotos a un cuaderno: JPEG, PNG o WebP; un JPEG grande se hace más pequeño
help-photo-files = Las fotos
help-photo-site = El sitio; se puede omitir si el cuaderno tiene uno solo
help-photo-line = La línea; se puede omitir con --at opening o visit
help-photo-at = Qué muestran: start (desde el cero), end (desde el extremo lejano), visit (algo hallado), opening (el sitio en general) o sheet (el papel en que se anotó una línea)
help-photo-date = El día en que se tomaron, si el de la cámara está mal o falta
help-photo-caption = Lo que haya que decir de ellas
help-photo-person = Una persona que se ve en ellas
help-photo-without-place = Dejar fuera del registro lugar, rumbo y hora, y fuera del archivo todo lo que se escribió junto a la imagen menos qué lado va arriba; el día se queda
help-photo-full-size = Guardar cada foto del tamaño que tiene, byte por byte
help-photo-list = Listar las fotos de un cuaderno
help-photo-out = Escribir las fotos de un cuaderno en una carpeta
help-photo-folder = La carpeta
column-photo-shows = muestra
column-place = lugar
column-size = tamaño
column-caption = pie de foto
photo-shows-start = desde el cero
photo-shows-end = desde el extremo lejano
photo-shows-visit = hallado en una visita
photo-shows-opening = vista general
photo-undated = sin día
photo-no-place = sin lugar
photo-bytes-lacking = aún no está aquí
photo-added = { $file }: { $what }, { $shows }, { $when }, { $where }
photos-none = En este cuaderno no hay ninguna foto.
photos-added = { $photos ->
    [0] Ninguna foto es nueva para { $file }.
    [one] Se agregó una foto a { $file }.
   *[other] Se agregaron { $photos } fotos a { $file }.
}{ $known ->
    [0] { "" }
    [one] {" "}Una ya estaba.
   *[other] {" "}{ $known } ya estaban.
}
photos-whole = Se guardan byte por byte, con todo lo que la cámara escribió junto a ellas.
photos-plain = No se guardaron ni el lugar ni la hora. Los archivos guardados contienen la imagen, sus colores y qué lado va arriba; nada más de lo que se escribió junto a ella. Los archivos de usted quedan como estaban.
photos-smaller = { $photos ->
    [one] Una se hizo más pequeña, con su lado más largo de { $edge } píxeles: se guarda la imagen, sus colores y qué lado va arriba.
   *[other] { $photos } se hicieron más pequeñas, con su lado más largo de { $edge } píxeles: se guarda la imagen, sus colores y qué lado va arriba.
} Lo que la cámara escribió junto a ella queda en el cuaderno en lo que se pidió. Los archivos de usted quedan como estaban; --full-size guarda enteras esas fotos.
photos-others-whole = Las demás se guardan byte por byte, con todo lo que la cámara escribió junto a ellas.
photo-too-many-pixels = Esta foto tiene más de { $most } millones de píxeles, más de lo que se abre para hacerla más pequeña. Hágala más pequeña o guárdela como está con --full-size.
photo-not-opened = Esta foto no se puede abrir para hacerla más pequeña: puede estar dañada. Mírela; --full-size la guarda como está.
photos-out = { $photos ->
    [one] Se escribió una foto en { $folder }.
   *[other] Se escribieron { $photos } fotos en { $folder }.
}{ $lacking ->
    [0] { "" }
    [one] {" "}Los bytes de una aún no están aquí.
   *[other] {" "}Los bytes de { $lacking } aún no están aquí.
}
photo-not-taken = { $file }: { $why }
photo-no-site = “{ $found }” no es un sitio de este cuaderno. Diga cuál con --site: { $sites }.
photo-no-line = “{ $found }” no es una línea de { $site }. Diga cuál con --line: { $lines }.
photo-no-date = “{ $found }” no es un día. Escriba primero el año, como 2026-06-09.
photo-not-here = Los bytes de esta foto aún no están en { $file }. El dispositivo que la tomó los envía cuando encuentre otra vez este cuaderno.
photo-not-a-hash = “{ $found }” no nombra ninguna foto: a una foto la nombran las 64 cifras hexadecimales, en minúsculas, de su SHA-256.
photo-not-named = Ninguna foto de { $file } tiene estos bytes, o fue retirada o borrada, así que no se guardaron.
photo-too-long = Esta foto pasa de { $most } MB, lo más que se guarda de una. Hágala más pequeña.
notebook-not-whole = Una revisión (…{ $revision }) no es lo que dice su huella, así que no se escribió nada en { $file }.
notebook-system = No se pudo usar { $file }: { $why }.
lines-not-a-notebook = { $file } no empieza como un cuaderno.
lines-newer = { $file } es de la versión { $version } de su formato, que lee una versión más nueva de tautline.
line-not-a-revision = Este renglón no es una revisión; se omitió.
line-not-finished = La línea sin terminar { $line } de { $site } se omitió: sígala en la aplicación.

## Sharing
sync-here = { $revisions ->
    [0] Aún no se ha compartido nada
    [one] Una entrada está solo en este dispositivo
   *[other] { $revisions } entradas están solo en este dispositivo
}
sync-to-settle = Todo está compartido; { $things ->
    [one] una cosa espera
   *[other] { $things } cosas esperan
} a que se resuelva
sync-sent = Todo está compartido
revision-too-long = Es demasiado larga para enviarse. Exportada a un archivo e importada allá, pasa.

## The server
api-unknown = La interfaz no tiene nada en esta dirección; /api/openapi.json describe lo que tiene.
api-method = La interfaz tiene esta dirección, pero no para este método; /api/openapi.json describe lo que tiene.
api-no-such-file = Aquí no hay tal archivo.
api-not-json = La petición es del tipo “{ $found }”; serviría “application/json”.
api-too-long = La petición pasa de { $most } MB y no se leyó. Servirían varias más cortas.
api-not-a-number = “{ $name }” no es un número entero de 0 en adelante.
sync-not-a-message = Este no es un mensaje del formato “{ $format }” ({ $found }).
sync-newer = El mensaje es de la versión { $found } de su formato; este servidor conoce { $known }. Lo lee un tautline más nuevo en la oficina.
sync-too-many = El mensaje contiene { $found } revisiones; caben a lo sumo { $most }.
door-host = La petición es para “{ $found }”; este servidor responde solo a { $accepted }.
door-origin = La petición viene de una página de otro lugar ({ $found }), que aquí no tiene voz; serviría { $accepted }.
serve-without-app = Este servidor tiene el cuaderno. La aplicación no viene dentro: “tautline serve --app FOLDER” ofrece una ya construida.
serve-port-taken = Otro programa escucha en el puerto { $port }. Ciérrelo, o elija otro con --port; los navegadores guardan lo de un dispositivo por dirección y puerto, así que antes comparta o exporte lo que haya en los dispositivos.
serve-port = No se puede escuchar en el puerto { $port }: { $why }.
serve-no-app = { $folder } no contiene una aplicación construida: no hay index.html.
serve-system = El servidor no pudo empezar: { $why }.
serve-began = { $notebook } está abierto en { $origin }/ solo para esta computadora. Ctrl-C lo termina.
serve-other-port = Antes se servía en el puerto { $before }. Lo que los navegadores guardan con esa dirección se queda allí y no se ve con la nueva: compártalo o expórtelo desde allí.
serve-ended = Terminado; todo lo confirmado está en { $notebook }.
help-serve = Servir un cuaderno a la aplicación en los navegadores de esta computadora, y a programas, hasta Ctrl-C
help-serve-notebook = El cuaderno, que se empieza si no existe; si se omite, notebook.tautline
help-serve-port = Escuchar desde ahora en este puerto, en lugar del primero que estaba libre y quedó guardado en el cuaderno
help-serve-app = La carpeta de la aplicación construida; si se omite, web junto a este comando o junto a su carpeta
help-serve-open = Abrir la aplicación en el navegador de esta computadora
serve-no-browser = Desde aquí no se pudo abrir un navegador: abra en uno la dirección de arriba.

## Sharing with the crew's devices
help-share = Dejar que también lo compartan los teléfonos y tabletas de la cuadrilla, por su propia red, en una dirección segura
help-share-name = El nombre con que los dispositivos conocen esta computadora: si se omite, el suyo con .local; o uno por el que responda su red
help-share-port = Escucharlos desde ahora en este puerto
help-share-certificate = El certificado propio de una organización para ese nombre (PEM), en lugar de la autoridad de esta computadora
help-share-key = La llave de ese certificado (PEM)
help-share-move-to = Servirlo una vez más en la dirección conocida, y decir a cada dispositivo que el cuaderno tendrá este nombre, para que antes envíe o exporte
help-share-new-address = Compartir en una dirección distinta de la que conocen los dispositivos enlazados
help-devices = Los dispositivos admitidos en un cuaderno compartido
help-devices-withdraw = No admitir más a uno desde ahora, por los últimos caracteres de su identificador
share-began = Los dispositivos de la cuadrilla lo alcanzan en { $origin }/ . Cómo llega un dispositivo a confiar en esta dirección: { $origin }/trust
share-fingerprint = SHA-256 del certificado en que se pide confiar a los dispositivos: { $fingerprint }
share-unnamed = En la red nadie responde por su nombre ({ $why }); los dispositivos lo hallan solo si la red conoce el nombre por otro medio.
share-invitation = Para admitir un dispositivo, durante diez minutos: { $link } o el código { $code }
share-not-paired = Este dispositivo no ha sido admitido, o ya no lo es. El código que lo admite está en la pantalla de la oficina; se escribe en { $origin }/pair.
share-no-code = La petición no trae ningún código.
share-wrong-code = Ese no es el código, o ya no lo es. El que vale ahora está en la pantalla de la oficina.
share-too-many-codes = Hubo demasiados códigos equivocados. Espere diez minutos, y dé entonces el de la pantalla de la oficina.
share-no-authority = Esta dirección tiene el certificado de una organización; su dispositivo ya confía en él, o la organización dice cómo.
share-no-name = “{ $found }” no es el nombre de una computadora: letras, cifras y guiones, con puntos en medio, y nunca una dirección sola como 192.168.1.5, que la red siguiente cambia.
share-no-folder = No hay carpeta para los datos de esta persona (HOME no está puesto), así que la llave de la autoridad no tiene lugar.
share-not-secure = No se pudo hacer una dirección segura: { $why }.
share-other-address = { $number ->
    [one] Un dispositivo conoce
   *[other] { $number } dispositivos conocen
} este cuaderno como { $before } ({ $devices }), y lo que guarda un navegador no se ve en otra dirección. Lo que haya ahí y aún no esté aquí, no lo sabe nadie más. Sírvalo allí una vez más con --move-to NAME, que dice a cada dispositivo que antes envíe o exporte; cuando todos lo hayan hecho, --new-address toma la nueva.
share-moving = A los dispositivos que lo encuentren se les dice que el cuaderno se muda a { $to }, y que antes envíen o exporten. Cuando todos lo hayan hecho, sírvalo con --name { $to } --new-address.
share-title = Admitir un dispositivo
share-how = Apunte la cámara del dispositivo a la imagen, o escriba el código en la dirección de abajo. Admite un dispositivo, durante diez minutos; para el siguiente cargue esta página otra vez.
pair-title = Admitir este dispositivo
pair-how = El código está en la pantalla de la oficina, donde se sirve el cuaderno. Admite un dispositivo.
pair-code = Código
pair-name = Cómo se llama este dispositivo (para distinguirlo de los otros)
trust-title = Confiar en esta computadora
trust-why = Lo que guarda un dispositivo solo está a salvo en una dirección segura. Por eso la computadora de la oficina responde por su propia dirección, y su dispositivo le pregunta si confía en ella. Toma unos minutos, una sola vez.
trust-fingerprint = SHA-256 del certificado
trust-compare = Compare las letras y cifras de arriba con las de la pantalla de la oficina. Si difieren, deténgase: hay algo entre usted y la oficina.
trust-take = Tomar el certificado
trust-fetch = Tome el certificado con el botón de arriba.
trust-android = Android: Ajustes, Seguridad, Cifrado y credenciales, Instalar un certificado, Certificado de CA; elija el archivo.
trust-apple = iPhone y iPad: ábralo en Safari; Configuración, General, VPN y administración de dispositivos, instale el perfil; luego Configuración, General, Información, Configuración de confianza de los certificados, actívelo.
trust-desktop = Computadoras: impórtelo en la configuración del navegador como autoridad de certificación para sitios web.
trust-pair = Vuelva y escriba el código.
trust-limits = Responde por esta única dirección y por nada más de lo que visite su dispositivo. Cuando termine la temporada, quítelo en el mismo lugar.
column-device-name = dispositivo
column-device-id = identificador
column-since = admitido (UTC)
column-withdrawn = ya no admitido (UTC)
devices-none = Aún no se ha admitido ningún dispositivo; “tautline serve --share” muestra un código.
device-withdrawn = Desde ahora no se admite a “{ $name }”. Lo que tiene se queda en él; lo que compartió se queda aquí.

## The ledger
help-ledger = Objetivos, umbrales acordados de antemano, y lo que se decidió, en un cuaderno
help-ledger-objective = Anotar un objetivo: qué se quiere, y qué tan segura debe ser la respuesta
help-ledger-trigger = Anotar un compromiso: con qué lectura se hará qué
help-ledger-decide = Anotar una decisión: qué se leyó, qué se decidió, quién, cuándo se vuelve a mirar
help-ledger-show = Lo que se prometió y se decidió
help-ledger-site = El sitio; todos los sitios si no se nombra ninguno
help-ledger-name = Su nombre; el mismo nombre otra vez en el mismo sitio es una corrección
help-attribute = Qué se mide de qué plantas
help-place = De qué terreno se trata
help-direction = raise (subir), lower (bajar) o hold (mantener)
help-amount = Cuánto, en palabras
help-by-date = Para cuándo, como 2030-09-30
help-objective-confidence = Qué tan seguros deben ser intervalos y veredictos, en por ciento
help-smallest-change = El menor cambio que vale la pena ver, en por ciento del terreno
help-false-alarm = Probabilidad de ver un cambio donde no lo hay, en por ciento
help-missed-change = Probabilidad de no ver el menor cambio que vale la pena, en por ciento
help-why = Por qué
help-objective-source = De dónde viene
help-agreed = Quién estuvo de acuerdo y cuándo, como “owner, 2026-03-01”; se puede repetir
help-when = Con qué lectura, con su regla, temporada y lugar
help-then = Qué se hará entonces, y quién
help-decided-on = El día de la decisión
help-decided-trigger = El umbral al que responde
help-was-read = Lo que se leyó: la cifra con su intervalo
help-decided = Lo que se decidió
help-decided-by = Quién decidió
help-look-again = Cuándo se vuelve a mirar
ledger-written = Anotado: { $what }.
ledger-same = Eso ya está ahí.
ledger-empty = Aquí aún no se ha prometido ni decidido nada.
every-site = todos los sitios
objective-title = Objetivo “{ $name }”, { $site }
objective-attribute = qué se mide
objective-place = terreno
objective-direction = dirección
objective-amount = cuánto
objective-by = para
objective-goal = meta
objective-confidence = confianza
objective-smallest = menor cambio que vale la pena ver
objective-false-alarm = probabilidad de falsa alarma
objective-missed = probabilidad de no ver ese cambio
objective-reason = por qué
objective-source = fuente
objective-agreed = de acuerdo
objective-open = Quedó abierto: { $parts }. Sin ello nadie puede distinguir lo cumplido de lo no cumplido.
direction-raise = subir
direction-lower = bajar
direction-hold = mantener
trigger-title = Umbral “{ $name }”, { $site }
trigger-when = cuando
trigger-then = entonces
trigger-at = se alcanza con
help-trigger-at = La lectura como número, como “at most 10 %”: el umbral se alcanza donde eso se cumple
promised-reached = Prometido (“{ $name }”): “{ $when }” se alcanzó; se cumple { $at }. Para entonces se prometió: { $then }
promised-not-reached = Prometido (“{ $name }”): “{ $when }” no se alcanzó; no se cumple { $at }. De alcanzarse, se haría: { $then }
promised-not-yet-shown = Prometido (“{ $name }”): aún no está demostrado si “{ $when }” se alcanzó; { $at } puede cumplirse o no. De alcanzarse, se haría: { $then }
promised-in-words = Prometido (“{ $name }”): “{ $when }”, en palabras a las que ninguna cifra responde. Mire si se alcanzó. De alcanzarse, se haría: { $then }
promised-agreed = De acuerdo: { $who }
trigger-not-agreed = No se nombra a nadie que esté de acuerdo con esto. Un compromiso obliga a quienes lo hicieron.
decision-title = Decisión sobre { $site }, { $date }
decision-trigger = umbral
decision-read = lo que se leyó
decision-decided = lo que se decidió
decision-by = quién
decision-again = volver a mirar

## Encabezados de una oficina, y una importación que solo mira
record-headings = Lo que la oficina escribe sobre sus columnas
kind-headings = encabezados propios de la oficina
help-heading = Lo que la oficina escribe sobre una columna y el encabezado que significa, como «Inicio=start»; un cuaderno lo recuerda
help-dry-run = Mostrar lo que se entendió y lo que cambiaría, sin escribir nada
option-heading = «{ $found }» no dice qué encabezado se quiere. «Inicio=start» serviría; docs/files.md enumera los encabezados.
import-dry = No se escribió nada. Sin --dry-run, esto va a { $file } como una sola importación, que se deshace de una vez.
would-join = { $file }: se añadirían { $new } revisiones nuevas. No se escribió nada.
help-notebook-full = Los lugares tal como son, digan lo que digan los ajustes de los sitios
change-kept-back = algo que se reserva, según el ajuste del sitio (--full lo dice)
photo-place-kept-back = reservado
photos-out-plain = { $photos ->
    [one] Una va sin lo que la cámara escribió junto a ella, porque su sitio reserva sus lugares; lo que muestra no puede saberse. --full la da tal como se guarda.
   *[other] { $photos } van sin lo que la cámara escribió junto a ellas, porque sus sitios reservan sus lugares; lo que muestran no puede saberse. --full las da tal como se guardan.
}
