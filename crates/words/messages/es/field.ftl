# En la línea: fotos tomadas sobre las anteriores, una segunda lectura sin ver la primera, y si seguir leyendo.

photo-shows-sheet = la hoja
field-photo-of-line = { $site }, línea { $line }: { $shows }
field-photo-of-site = { $site }: { $shows }
field-camera-opening = Abriendo la cámara …
field-camera-none = El navegador no da aquí ninguna cámara: se le negó, no la hay, o esta página no llegó por una conexión segura. Tome la foto con la cámara propia del dispositivo, o elija un archivo.
field-last-over = Cuánto se ve de la última foto
field-last-of = Última foto: { $date }. Muévase hasta que estacas y horizonte caigan sobre los de ella.
field-last-beside = Última foto: { $date }. Colóquese de modo que estacas y horizonte queden como en ella.
field-last-none = El cuaderno aún no tiene ninguna foto de esta vista: la próxima se pondrá sobre esta.
field-sheet-what = Ponga la hoja plana, con luz pareja, y que llene la imagen.
field-take = Tomarla
field-take-again = Tomarla otra vez
field-keep = Guardarla
field-file = Tomar o elegir una foto
field-taken = La foto como se guardaría
field-back = Volver
field-photo = Foto: { $shows }
field-photos = Fotos guardadas con esta lectura
field-photo-over-last = Tomarla otra vez, sobre la última

## Una segunda lectura sin ver la primera
field-blind-waits = Alguien está leyendo esta línea por segunda vez y no debe ver este borrador. Se puede seguir con él cuando esa lectura se cierre o se deseche.
field-blind-drafts = { $lines ->
    [one] Un borrador espera
   *[other] { $lines } borradores esperan
} hasta que se cierre la segunda lectura de su línea.

## Si seguir leyendo
help-objective-looks = Mirar tras cada una de estas líneas y parar cuando quede claro, como «5 to 30» o «6 to 18 by 3»
objective-looks = se mira tras estas líneas
looks-late = El plan de mirar tras { $looks } líneas se anotó después de leer la primera línea de esta visita, así que no puede decir cuándo parar. Lea todas las líneas planeadas.
looks-working = Según el plan secuencial: calculando …

## Cifras como datos
figures-json = Cifras como JSON
figures-json-what = Lo que resulta de cada sitio y año, como lo imprime «tautline assess --json» para los mismos archivos: las mismas cifras, bit a bit.
field-photo-of-row = Foto …
