### Words of tautline: a goal, a number of lines, a layout and a packet in one sitting.

## A boundary
boundary-for-the-command = This kind of file is read by the command: tautline plan packet --boundary FILE. GeoJSON, GPX and KML are read here too.
boundary-overlap = { $file }: areas cover { $metres } m² of the same ground again. It counts once. Look at the map.
boundary-overlap-stratum = { $file }: areas of the stratum “{ $stratum }” cover { $metres } m² of the same ground again. It counts once. Look at the map.
boundary-in-two-strata = { $file }: { $metres } m² lie in two strata. That ground can get lines for either and weighs twice. Draw the strata apart in the program that they come from.

## A layout in the notebook
help-names = What the names of lines begin with, so that a later layout takes no earlier line's name
help-layout-notebook = Keep the layout, its lines and its strata in this notebook too
help-lines-reason = Why so many lines; kept with the layout
help-plan-replace = Say why a drawn line can't be read; the next one in reserve takes its place
help-replace-site = The site
help-replace-line = The line that can't be read
help-replace-why = Why: other-ground (road, water, another vegetation), no-permission, not-safe, out-of-reach, shrubs (they were in the way), or other
help-replace-note = The same in your own words
help-replace-date = When that was found, such as 2026-06-09
record-layout = the layout of { $site }
record-replaced = why line { $line } of { $site } isn't read
layout-site-unnamed = A layout in a notebook needs its site's name: say --site.
layout-kept = The layout, its lines and its strata are in { $file }.
layout-names-taken = Other ground of { $site } was read under { $lines } already. Let the names of the new lines begin with something else, such as “27-”.
replace-not-drawn = No layout of { $site } in this notebook has a line “{ $line }”. A layout comes in with tautline plan packet … --notebook FILE, or from the app.
replace-not-planned = Line { $line } of { $site } isn't one that is to be read: it is in reserve, or another has taken its place.
replace-read = Line { $line } of { $site } was read. What was read stands; a line can only be replaced before.
replaced-by = Line { $line } isn't read ({ $why }). { $by } takes its place.
replaced-by-none = Line { $line } isn't read ({ $why }). No line of its stratum is left in reserve.
replaced-other-ground = { $site }: { $lines } were drawn and lie on other ground. Figures speak for the ground that is left, which is less than the map shows.
replaced-not-entered = { $site }: { $lines } were drawn and couldn't be entered. Figures speak for the ground that can be; the rest may differ.
replaced-shrubs = { $site }: { $lines } were left out because shrubs were in the way. Ground with many shrubs is missing, so cover is too low: read such a line as far as you can.
why-other-ground = other ground: road, water, another vegetation
why-no-permission = no permission to enter
why-not-safe = not safe
why-out-of-reach = out of reach
why-shrubs = shrubs in the way
why-other = something else

## A plan as a page
help-effort-report = Write the plan as a page into this file
effort-about = What a plan takes to say what is asked of it, from a pilot or from what somebody foresees.
heading-answers = What it takes
effort-answers = Lines for each question
effort-takes = { $lines } lines: { $question }.
effort-takes-too-many = More than 200 lines, which is no practical number: { $question }.
