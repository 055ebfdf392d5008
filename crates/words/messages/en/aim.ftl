### Words of tautline: a goal, a number of lines, a layout and a packet in one sitting.

## A boundary
boundary-for-the-command = This kind of file is read by the command: tautline plan packet --boundary FILE. GeoJSON, GPX and KML are read here too.
boundary-overlap = { $file }: areas cover { $metres } m² of the same ground again. It counts once. Look at the map.
boundary-overlap-stratum = { $file }: areas of the stratum “{ $stratum }” cover { $metres } m² of the same ground again. It counts once. Look at the map.
boundary-in-two-strata = { $file }: { $metres } m² lie in two strata. That ground can get lines for either and weighs twice. Draw the strata apart in the program that they come from.
