### Words of tautline: files in and out.

same-file-twice = { $file } holds the same bytes as { $same }. It adds nothing.
file-empty = { $file } is empty.
file-not-text = { $file } isn't text. Delimited text or a typed sheet, in UTF-8, UTF-16 or Windows-1252, would do; a spreadsheet saves one as CSV.
workbook-old-or-locked = { $file } is a spreadsheet of an old kind, or locked with a password. Open it, and save it as XLSX or ODS without one.
workbook-damaged = { $file } looks like a spreadsheet, but can't be read as one; most likely it was cut off while it was copied. Copy it again, or open it and save it once more.
workbook-too-wide = { $file } has cells far to the right of any table. Delete what stands there, or save the sheet of readings as CSV.
workbook-not-understood = { $file }: no sheet has headings that are understood ({ $found }). A table of readings has “line”, “species” and “start” and “stop”, or “length”; docs/files.md lists every heading.
sheets-left-out = { $file }: these sheets have no headings that are understood and were left out: { $found }.
rows-above-headings = What stands above the headings isn't read: { $found }.
day-was-a-fraction = The spreadsheet had made the day { $found } of this cell; it is read as { $read }. Have a look at the paper, and format the column as text.
day-not-a-length = The spreadsheet made the day { $found } of what was typed here, such as 10-5 or 1/3. Format the column as text and type it once more.
day-was-a-name = The spreadsheet made the day { $found } of the name or code that was typed here, such as 3-1 or MAR4, and what it was is lost. The row is set aside. Format the column as text and type it once more.
packed-damaged = { $file } is a packed file that can't be opened; most likely it was cut off while it was copied. Copy it again.
packed-locked = { $file } is packed with a password or in a way that isn't known here. Pack it again without.
packed-too-large = { $file } would be larger once it is unpacked than readings ever are (1 GB in all, 256 MB for one file in it, 12 million cells). It isn't read. Split it by site or by year.
packed-without-tables = { $file } holds no file that could be read. CSV, TSV, TXT, XLSX, ODS, typed sheets and protocols would do.
packed-left-out = { $file }: these files within it are of another kind and were left out: { $found }.
file-too-large = { $file } is larger than 256 MB, which is more than readings take. Split it by site or by year.
protocol-too-large = { $file } is larger than any protocol; it isn't read.
row-beyond-reading = From here on there is no line break for more than a million characters, so this is no table of readings. The file isn't read.
too-many-columns = This row has more than { $most } columns, so it is no heading row of readings. The file isn't read.
file-cut-off = The file breaks off here, in the middle of a character, so something may be missing. Copy or save it once more.
file-read-as-windows-1252 = From here on the file isn't UTF-8, so it was read as Windows-1252. Look at names with accents; saving as UTF-8 settles it.
headings-not-understood = { $file }: the headings aren't understood ({ $found }). A table of readings has “line”, “species” and “start” and “stop”, or “length”; docs/files.md lists every heading.
cell-empty = “{ $column }” is empty.
site-missing = Which site? Fill in the “site” column, or use --site.
plant-listed-twice = { $found } stands twice on the plant list. The first one is used.
form-not-known = “{ $found }” isn't a growth form. Tree, shrub, subshrub, succulent, vine, grass, forb, crust or other would do.
nest-not-known = “{ $found }” says neither yes nor no; the site is taken to have a nest until it does.
places-not-known = “{ $found }” doesn't say how much of the site's places is told: exact, withheld, or blurred 5 km. They are withheld until it does.
site-differs = Two rows say unlike things of the site “{ $found }”; its places are withheld until they agree.
position-not-understood = “{ $found }” isn't a position: latitude and longitude in decimal degrees (WGS 84), both, such as 38.512 and -113.204. The line is kept without it.
end-without-start = The end of the line has a position and its start has none. The line is kept without either.
place-differs = Line { $line } of { $site } lies at another place than an earlier row says; the earlier one is kept.
area-no-unit = “{ $found }” has no unit that is known. Try “area (ha)” as the heading; acres, m2 and km2 do too.
area-not-a-number = “{ $found }” isn't an area above zero.
date-not-understood = “{ $found }” isn't a date of the form 2026-06-09. Day and month in another order can't be told apart: head the column “date (m/d/y)” or “date (d/m/y)”, whichever it is, with the year in four digits.
outcome-not-known = “{ $found }” isn't an outcome. Read, nothing found, not read or partly read would do.
read-to-missing = Read in part, but up to where? Fill in “read to”.
row-says-nothing = This row has no species, no numbers and no outcome. For an empty line write “nothing found” under “outcome”.
state-not-known = “{ $found }” isn't live or dead.
start-missing = There is a stop but no start.
stop-missing = There is a start but no stop.
start-and-stop-missing = There is a species but no start and stop, and no length.
stop-before-start = Stop { $stop } lies before start { $start }. Swapped, or a slip of the pencil? The row is set aside.
zero-length = Start and stop are both { $start }, so there is nothing between them. The row is set aside.
length-zero = This length is nought, so there is nothing on the line. The row is set aside.
start-stop-length-disagree = Start and stop are { $between } apart, and the length says { $length }. Which is right? Until that is settled the line is left out.
positions-and-lengths-mixed = { $site }, line { $line }: some rows have positions and some only lengths. A line is one or the other; it is left out until that is settled.
line-length-differs = { $site }, line { $line } is { $first } elsewhere and { $found } here. Until that is settled it speaks for no site.
protocol-not-known = “{ $found }” is no protocol that was handed in or that ships with tautline.
length-rounded = “{ $text }” isn't whole in nanometres and was rounded once.

length-empty = “{ $column }” is empty.
length-not-a-number = “{ $text }”: a number was expected at character { $at }, where “{ $found }” stands.
length-unknown-unit = “{ $text }”: “{ $found }” at character { $at } isn't a unit. mm, cm, m, in and ft would do.
length-no-unit = “{ $text }” has no unit. Give the column one, such as “{ $column } (in)”, or use --unit.
length-negative = “{ $text }” is below zero.
length-feet-or-inches = “{ $text }” could be decimal feet or feet and inches. Say “decimal ft” in the heading, or write 5 ft 11 in.
length-which-of-feet-and-inches = “{ $text }”: feet or inches? Write 5-0 or 0-5.
length-units-out-of-order = “{ $text }”: at character { $at } the smaller unit of the same kind must follow, such as 5 ft 3 in or 3 m 20 cm.
length-part-too-large = “{ $text }”: at character { $at } the smaller part is as large as one of the larger unit.
length-bad-fraction = “{ $text }”: the fraction at character { $at } isn't one.
length-other-decimal-mark = “{ $text }”: the decimal mark at character { $at } isn't this file's. Use the file's own, or --decimal.
length-too-long = “{ $text }” is longer than any tape.

goal-no-relation = “{ $found }” isn't a goal. Try “at least 15 %”, “at most 10 %” or “15..25 %”, with a species or growth form and a colon in front if it isn't about canopy cover.
goal-not-a-percentage = “{ $found }” isn't a percentage.
goal-not-a-length = “{ $found }” isn't a height with its unit.
goal-confidence = “{ $found }” isn't a confidence between 50 and 99.9 %. The goal is set aside until it is.
goal-low-above-high = “{ $found }”: the low end lies above the high end.

protocol-not-toml = This protocol file can't be read: { $found }.
protocol-unknown-rule = “{ $found }” isn't a rule of a protocol. These are: { $accepted }.
protocol-unknown-word = { $rule } = “{ $found }” isn't understood. One of these would do: { $accepted }.
protocol-not-text = { $rule } = { $found } should be text in quotes.
protocol-not-a-length = { $rule } = “{ $found }” isn't a length with its unit.

protocol-rule-misspelt = “{ $found }” isn't a rule of a protocol. Was “{ $near }” meant?
protocol-without-name = This protocol has no name. Give it a plain description: name = "live canopy, gaps under 2 in closed".
protocol-not-true-or-false = { $rule } = { $found } should be true or false, without quotes.
protocol-not-a-list = { $rule } = { $found } should be a list of texts, such as ["shrub", "subshrub"].
protocol-not-a-section = { $rule } should be a section of its own: a row [{ $rule }] with its rules below it.

heading-twice = “{ $found }” names the same column as a heading before it. The first is used; give the other one another name or take it out.
row-too-long = This row has { $found } cells under { $headings } headings, so its cells can't be told apart and it is set aside. If it has decimal commas, part the cells with semicolons or put the numbers in quotes.
cell-over-several-rows = A cell goes over several rows; most likely a quote that opens here never closes. These rows are set aside.
unit-not-known = “{ $found }” isn't a unit. mm, cm, m, in, ft, decimal ft or ft-in would do.
stratum-listed-twice = { $found } stands twice in the table of strata. The first area is used.
slope-not-understood = “{ $found }” isn't a slope. Head the column “slope (%)” or “slope (deg)”, or write 12 % or 7°.
permission-until-not-understood = “{ $found }” isn't a day. Write it year first, as 2027-03-31. The permission of this row isn't kept.
permission-from-missing = A day until which permission holds, and nobody who gave it. Write who did under “permission from”. The permission of this row isn't kept.
permission-differs = { $site }, line { $line } has another permission elsewhere than that from “{ $found }”. The first is used.
slope-differs = { $site }, line { $line } has another slope elsewhere than { $found }. The first is used.
plan-differs = { $site }, line { $line } is in { $first } elsewhere and in { $found } here. Until that is settled it speaks for no site.
visit-in-two-files = { $site }, line { $line }: this reading also stands in { $first }. Only that file's rows are used; take one of the files out, or tell the readings apart by date, reader or pass.
not-read-but-readings = { $site }, line { $line } is said to be not read, and there are readings of it. It is left out until that is settled.
nothing-found-but-readings = { $site }, line { $line } is said to hold nothing, and there are readings of it. It is left out until that is settled.
read-but-no-readings = { $site }, line { $line }: no reading of it could be used. If nothing grew on it, write “nothing found” (in a table under “outcome”); until then it is left out and is not a zero.
outcomes-differ = “{ $found }” is not what another row says of this reading. The first is used.
length-of-what = Is this the length of the lines or of what was read on them? Head it “line length”, or add a “species” column.
columns-not-used = Nothing is done with these columns: { $found }.

finding-not-known = “{ $found }” isn't a finding that can be settled; docs/checks.md lists them.
reason-missing = Why is it fine? Fill in “reason”.
settled-where = Where? Fill in “site” and “line”, or “file” and “row”, as tautline check --csv prints them.
row-not-a-number = “{ $found }” isn't the number of a row.

## Typed sheets
sheet-before-first-line = “{ $found }” stands before the first line, so it belongs to none. Begin a line above it, such as “Line 1, 65 ft”.
sheet-row-not-understood = “{ $found }” is neither a head row, such as “Date: 2026-06-09”, nor a line, such as “Line 1, 65 ft”. Nothing is done with it; a # in front makes it a comment.
sheet-no-numbers = “{ $found }” has no numbers behind it. Write where it starts and stops, such as 12-14, or put it in brackets if it is a remark.
sheet-number-missing = A number was expected here, and “{ $found }” stands here. Write both ends, such as 12-14, or a length alone.
sheet-number-missing-at-end = The row ends where a number was expected. Write both ends, such as 12-14, or a length alone.
sheet-letter-for-digit = There is a letter among the digits here: “{ $found }”. If { $near } was meant, type the digit.
sheet-space-missing = Is “{ $found }” a number of its own? Put a space before it.
sheet-word-not-understood = “{ $found }” isn't understood here. Behind a number may stand d for dead, h 40 cm for a height, w 30 cm for a width, #2 for a plant, or a remark in brackets.
sheet-character = “{ $found }” isn't understood here. Put a space between two numbers and a remark in brackets.
sheet-mark-before-number = “{ $found }” speaks of the number before it, and there is none on this row. For a whole row put d behind the species: ATCA d 12-14.
sheet-mark-twice = “{ $found }” says a second time what was said already. The first is used.
sheet-dash-without-start = There is no start in front of the dash. Write both ends, such as 12-14.
sheet-too-many-dashes = Which numbers belong together? Write each stretch as start-stop with a space between two stretches: 12-14 20-23. In feet and inches write 5-3 to 6-2.
sheet-dash-or-fraction = From one to the other, or a fraction? A fraction has a space before it and no dash: 10 1/2.
sheet-bracket-open = A bracket opens here and never closes.
sheet-plant-missing = Which plant? Write its mark right behind the #, such as #2.
sheet-decimal-mark = “{ $found }” isn't this sheet's decimal mark. Numbers are parted by spaces; for decimal commas write “Decimal: comma” in the head, or use --decimal.
sheet-decimal-mark-not-clear = “{ $found }”: one sheet has one decimal mark. Write “Decimal: comma” or “Decimal: point” once.
sheet-no-unit = “{ $text }” of what? Write “Unit: in” in the head, or cm, m, ft, decimal ft or ft-in; or use --unit. The sheet's other numbers wait for it too.
sheet-tape-no-unit = “{ $text }” of what? The tape's length needs its own unit, such as 65 ft.
sheet-feet-or-inches = “{ $text }” could be decimal feet or feet and inches. Write “Unit: decimal ft” or “Unit: ft-in” in the head.
sheet-line-without-name = Which line? Write its name behind the word, such as “Line 1, 65 ft”.
sheet-line-item = “{ $found }” isn't understood in the row of a line. Behind its name may stand a length with its unit, stratum, plot, slope or pass with a name, and nothing, not read, read to 24 m, planned or continued, with commas.
sheet-line-twice = Line { $found } with this date, reader and pass stands further up already, so the rows below it are not read. If it is the rest of that line, write “continued” behind its name; if it is a second reading, give it a pass.
sheet-key-not-here = “{ $found }” can't stand in a head. Readings go below their line: a species and its numbers.
sheet-species-or-remark = Is “{ $found }” a species or a remark? For a species leave the colon out; a remark with a number goes in brackets, or in the head above the line.
sheet-species-above = Which species is this row about? The row above it could not be read; write the species in front.
sheet-key-misspelt = Was “{ $key }” meant by “{ $found }”? It is kept as a remark.
sheet-holds-no-plants = The plant list ({ $count }) isn't part of a typed sheet; keep its own file.
sheet-holds-no-strata = The areas of strata ({ $count }) aren't part of a typed sheet; keep their own file.
sheet-holds-no-protocols = The sheet names its protocols ({ $count }) and doesn't hold their rules; keep their own files.
sheet-holds-no-set-aside = { $site }, line { $line }: what could not be read ({ $found }) is not on the sheet printed here.
sheet-protocol-not-clear = { $site }, line { $line }: the name “{ $found }” stands for more than one protocol, so the sheet can't say which.
sheet-cannot-say = { $site }, line { $line }: “{ $found }” can't be written on a typed sheet and is left out.

## Boundaries
geojson-not-json = Row { $row }, character { $character } isn't JSON.
geojson-no-features = “{ $found }” isn't a GeoJSON polygon, feature or feature collection.
geojson-buffer = Feature { $part }: buffer is a number of metres from 0 to 10 000.
geojson-use = Feature { $part }: “{ $found }” isn't a use. “stratum”, “keep out” and “line” are.
geojson-shape = Feature { $part }: “{ $found }” can't be read. Polygons, lines and points can, with numbers as longitude and latitude.
benchmarks-not-read = Not read: { $why }
benchmark-cover = { $key }: “{ $found }” isn't a cover. “at least 15 %” or “between 15 and 25 %” would do.
benchmark-scale = { $key }: “{ $found }” is no scale. stand, nest or landscape would do.
benchmark-part = { $key }: nothing stands under { $found }. A number without it can't be set against anything.
boundary-unknown = This is no boundary that can be read. GeoJSON, GPX, KML, KMZ, GeoPackage and shapefiles can (.shp with its .prj beside it, or both in a .zip), and a text of corners, one a row, such as “42.3010, -113.7000”.
boundary-other-encoding = From row { $row } on this is written in an encoding that isn't UTF-8. Save it as UTF-8 in the program it comes from.
boundary-too-large = This is larger than a boundary ever is (64 MB). Cut the site out of it in the program it comes from.
boundary-too-many-corners = This has more than { $most } corners. Cut the site out of it in the program it comes from.
boundary-outline-too-long = Feature { $part }: an outline of more than { $most } corners. Simplify it in the program it comes from; a corner every few metres is enough.
boundary-too-deep = Elements lie within each other deeper than any boundary's do.
boundary-not-xml = Row { $row }, character { $character }: this isn't well-formed XML.
boundary-other-xml = “{ $found }” isn't GPX or KML.
boundary-no-number = Feature { $part }, row { $row }: longitude and latitude are no numbers.
boundary-damaged = This file is damaged; most likely it was cut off while it was copied. Copy it again.
boundary-not-geopackage = This is a database, but no GeoPackage.
boundary-packed-without = There is no .shp and no .kml in this packed file.
boundary-packed-several = There are { $files } shapefiles in this packed file. Hand in one at a time: --boundary for the site, --keep-out for roads and water.
boundary-nothing = There is nothing in it that could be used.
boundary-reference = It is in “{ $found }”, which isn't known here. Degrees or UTM in metres on WGS 84, NAD 83 or NAD 27 are. Save it as WGS 84 in the program it comes from.
boundary-no-reference = Nothing says in which datum it is: a shapefile says so in a .prj file beside it. Ask whoever made it, then say --datum WGS84, --datum NAD27 or --datum "NAD27 UTM 12 N". An old one taken for a new one can be up to 100 m off.
map-no-lines = { $file }: { $shapes ->
    [one] one shape that is no line with a name was left out.
   *[other] { $shapes } shapes that are no lines with names were left out.
} Ground and what to keep out of go into a plan: tautline plan lines --boundary.
map-kept-back = { $file }: { $shapes ->
    [one] the place of one line isn't told there, or is the middle of a square; it was left out.
   *[other] the places of { $shapes } lines aren't told there, or are the middles of squares; they were left out.
}
map-nothing = { $file } holds no line with a name and a place. A line is a way, or a mark at its zero, named as the line is.
map-no-site = Nothing says of which site these lines are. Say it with --site.
map-brought-over = { $file }: its places are on { $found } and were brought to WGS 84, by which they may be { $metres ->
    [one] one metre
   *[other] { $metres } m
} off.
map-other-datum = Its places are on { $found }. Save it on WGS 84 (EPSG:4326) in the program it comes from.
imported-nothing-read = Nothing that a notebook keeps could be read, so nothing was added to { $file }.
boundary-crossed = Feature { $part }: “{ $found }” doesn't say whether people walk across it. “yes” and “no” do.
boundary-typed-row = Row { $row }: “{ $found }” isn't a corner. “42.3010, -113.7000” or “12 N 278494 4687150” would do, or an empty row between two outlines.
boundary-typed-grid = Row { $row }: “{ $found }” is on another grid than the corners above it. Write the corners of one outline all in degrees, or all in one UTM zone.
boundary-typed-no-datum = Nothing says on which datum these corners are. Write it in a row of its own above them (WGS84, NAD83 or NAD27), or say --datum WGS84, --datum NAD83 or --datum NAD27. An old one taken for a new one can be up to 100 m off.
row-of-totals = This row sums up others. It was set aside: sums are worked out from the readings.
