### Palabras de tautline: fotos y lugares en los informes.

report-photos = Fotos, año por año
report-photos-line = Línea { $line }, { $shows }
report-photos-site = El sitio, { $shows }
report-photos-met = Encontrado en las visitas de este año
report-photos-places = Dónde se tomaron estas fotos se reserva, como dice la configuración del sitio. Lo que se ve en una puede delatar el lugar de todos modos: mire cada una antes de entregarla.
report-photo-said = { $view }, fotografiado el { $day }
report-photo-place = tomada en { $latitude } { $longitude } (latitud, longitud, WGS 84)
report-photo-bearing = mirando a { $degrees }° del norte verdadero
report-photo-lacking = la imagen misma no está en esta copia del cuaderno
report-photo-too-large = la imagen es demasiado grande para estar aquí con las demás; una de 1600 píxeles de ancho o menos serviría
report-photo-damaged = la imagen está dañada y no se puede mostrar
help-report-full = decir todos los lugares como son, y avisar en el informe que no es para entregar a otros
report-finding-kept-back = No se entiende una celda que debería decir dónde está una línea de este sitio. Lo que contiene se reserva, como dice la configuración del sitio.

## Dónde están las líneas
report-map = Dónde están las líneas
report-map-said = Las líneas de { $site } a escala, con el norte arriba: { $lines }. Una línea cuyo final no se anotó es solo el cuadrado de su cero.
report-map-table = Dónde empieza y termina cada línea (grados, WGS 84)
report-column-end = final (latitud, longitud)
report-map-withheld = Dónde están las líneas se anotó y se reserva, como dice la configuración del sitio. Pregunte a quien cuida del sitio.
report-map-blurred = Dónde están las líneas no se dice con más detalle que un cuadrado de { $width } km de ancho, como dice la configuración del sitio. El centro del cuadrado (latitud, longitud, WGS 84): { $middle }. Una línea puede empezar hasta a { $metres } m de allí.
holds-exact-places = Contiene lugares exactos que la configuración del sitio reserva: no es para entregar a otros.
