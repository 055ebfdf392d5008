### Palabras de tautline: una meta, un número de líneas, un trazado y un paquete en una sola sentada.

## Un límite
boundary-for-the-command = Este tipo de archivo lo lee el comando: tautline plan packet --boundary ARCHIVO. GeoJSON, GPX y KML se leen también aquí.
boundary-overlap = { $file }: hay áreas que cubren otra vez { $metres } m² del mismo terreno. Cuenta una sola vez. Revise el mapa.
boundary-overlap-stratum = { $file }: hay áreas del estrato «{ $stratum }» que cubren otra vez { $metres } m² del mismo terreno. Cuenta una sola vez. Revise el mapa.
boundary-in-two-strata = { $file }: { $metres } m² quedan en dos estratos. Ese terreno puede recibir líneas de cualquiera de los dos y pesa dos veces. Separe los estratos en el programa del que vienen.

## Un trazado en el cuaderno
help-names = Con qué empiezan los nombres de las líneas, para que un trazado posterior no tome el nombre de una línea anterior
help-layout-notebook = Guardar también en este cuaderno el trazado, sus líneas y sus estratos
help-lines-reason = Por qué tantas líneas; se guarda con el trazado
help-plan-replace = Decir por qué una línea sorteada no se puede leer; la siguiente de la reserva toma su lugar
help-replace-site = El sitio
help-replace-line = La línea que no se puede leer
help-replace-why = Por qué: other-ground (camino, agua, otra vegetación), no-permission (sin permiso), not-safe (peligro), out-of-reach (inaccesible), shrubs (los arbustos estorban) u other (otra cosa)
help-replace-note = Lo mismo con sus propias palabras
help-replace-date = Cuándo se vio, por ejemplo 2026-06-09
record-layout = el trazado de { $site }
record-replaced = por qué no se lee la línea { $line } de { $site }
layout-site-unnamed = Un trazado en un cuaderno necesita el nombre de su sitio: indique --site.
layout-kept = El trazado, sus líneas y sus estratos están en { $file }.
layout-names-taken = En { $site } ya se leyó otro terreno con los nombres { $lines }. Haga que los nombres de las líneas nuevas empiecen con otra cosa, por ejemplo «27-».
replace-not-drawn = Ningún trazado de { $site } en este cuaderno tiene una línea «{ $line }». Un trazado entra con tautline plan packet … --notebook ARCHIVO, o desde la aplicación.
replace-not-planned = La línea { $line } de { $site } no está entre las que se leen: está en la reserva, o ya otra tomó su lugar.
replace-read = La línea { $line } de { $site } ya se leyó. Lo leído queda; una línea solo se sustituye antes.
replaced-by = La línea { $line } no se lee ({ $why }). { $by } toma su lugar.
replaced-by-none = La línea { $line } no se lee ({ $why }). No queda ninguna línea de su estrato en la reserva.
replaced-other-ground = { $site }: { $lines } salieron sorteadas y quedan en otro terreno. Las cifras hablan del terreno que resta, que es menos de lo que muestra el mapa.
replaced-not-entered = { $site }: { $lines } salieron sorteadas y no se pudo entrar. Las cifras hablan del terreno en que se puede entrar; el resto puede ser distinto.
replaced-shrubs = { $site }: { $lines } se dejaron porque los arbustos estorbaban. Falta terreno con muchos arbustos, así que la cobertura sale demasiado baja: lea una línea así hasta donde pueda.
why-other-ground = otro terreno: camino, agua, otra vegetación
why-no-permission = sin permiso para entrar
why-not-safe = peligroso
why-out-of-reach = inaccesible
why-shrubs = los arbustos estorban
why-other = otra cosa

## Un plan como página
help-effort-report = Escribir el plan como página en este archivo
effort-about = Lo que hace falta para que un plan diga lo que se le pregunta, a partir de un piloto o de lo que alguien prevé.
heading-answers = Lo que hace falta
effort-answers = Líneas para cada pregunta
effort-takes = { $lines } líneas: { $question }.
effort-takes-too-many = Más de 200 líneas, lo que no es un número práctico: { $question }.
