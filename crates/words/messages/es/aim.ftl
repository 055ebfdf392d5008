### Palabras de tautline: una meta, un número de líneas, un trazado y un paquete en una sola sentada.

## Un límite
boundary-for-the-command = Este tipo de archivo lo lee el comando: tautline plan packet --boundary ARCHIVO. GeoJSON, GPX y KML se leen también aquí.
boundary-overlap = { $file }: hay áreas que cubren otra vez { $metres } m² del mismo terreno. Cuenta una sola vez. Revise el mapa.
boundary-overlap-stratum = { $file }: hay áreas del estrato «{ $stratum }» que cubren otra vez { $metres } m² del mismo terreno. Cuenta una sola vez. Revise el mapa.
boundary-in-two-strata = { $file }: { $metres } m² quedan en dos estratos. Ese terreno puede recibir líneas de cualquiera de los dos y pesa dos veces. Separe los estratos en el programa del que vienen.
