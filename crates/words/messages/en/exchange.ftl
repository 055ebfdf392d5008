### Words of tautline: files in and out.

same-file-twice = { $file } holds the same bytes as { $same }. It adds nothing.
file-empty = { $file } is empty.
file-not-text = { $file } isn't text. Delimited text, UTF-8 or Windows-1252, would do.
headings-not-understood = { $file }: the headings aren't understood ({ $found }). A table of readings has “line”, “species” and “start” and “stop”, or “length”; docs/files.md lists every heading.
cell-empty = “{ $column }” is empty.
site-missing = Which site? Fill in the “site” column, or use --site.
plant-listed-twice = { $found } stands twice on the plant list. The first one is used.
form-not-known = “{ $found }” isn't a growth form. Tree, shrub, subshrub, succulent, vine, grass, forb, crust or other would do.
area-no-unit = “{ $found }” has no unit that is known. Try “area (ha)” as the heading; acres, m2 and km2 do too.
area-not-a-number = “{ $found }” isn't an area above zero.
date-not-understood = “{ $found }” isn't a date of the form 2026-06-09. Day and month in another order can't be told apart.
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
length-units-out-of-order = “{ $text }”: at character { $at } the larger unit must come first.
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
slope-differs = { $site }, line { $line } has another slope elsewhere than { $found }. The first is used.
plan-differs = { $site }, line { $line } is in { $first } elsewhere and in { $found } here. Until that is settled it speaks for no site.
visit-in-two-files = { $site }, line { $line }: this reading also stands in { $first }. Only that file's rows are used; take one of the files out, or tell the readings apart by date, reader or pass.
not-read-but-readings = { $site }, line { $line } is said to be not read, and there are readings of it. It is left out until that is settled.
nothing-found-but-readings = { $site }, line { $line } is said to hold nothing, and there are readings of it. It is left out until that is settled.
read-but-no-readings = { $site }, line { $line }: no reading of it could be used. If nothing grew on it, write “nothing found” under “outcome”; until then it is left out and is not a zero.
outcomes-differ = “{ $found }” is not what another row says of this reading. The first is used.
length-of-what = Is this the length of the lines or of what was read on them? Head it “line length”, or add a “species” column.
columns-not-used = Nothing is done with these columns: { $found }.

finding-not-known = “{ $found }” isn't a finding that can be settled; docs/checks.md lists them.
reason-missing = Why is it fine? Fill in “reason”.
settled-where = Where? Fill in “site” and “line”, or “file” and “row”, as tautline check --csv prints them.
row-not-a-number = “{ $found }” isn't the number of a row.
