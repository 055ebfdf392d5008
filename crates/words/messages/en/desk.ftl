# The desk: what a person sets, asks, searches and takes back in the app.

## What a person asked for
line-not-wanted = { $site }, line { $line } is left out, as was asked.
dead-was-left-out = { $site }, line { $line }: its protocol leaves dead canopy out, so it may not have been written down. What was asked of dead canopy holds only for what was.

## Settings
desk-said = Language and units
desk-language = Language
desk-language-device = as the device has it
desk-language-en = English
desk-language-es = Español
desk-lengths = Lengths that are worked out
desk-lengths-as-written = in the units of the readings
desk-lengths-metric = in metres and centimetres
desk-lengths-feet = in feet and inches
desk-lengths-what = Readings stay as they were written, and a tape is read in its own units.
desk-letters = Letters
desk-letters-usual = as the browser has them

## What if
desk-as-recorded = All as in the notebook
desk-asked = As asked:
desk-recorded = In the notebook:
desk-asked-nothing = no figure can be worked out so; the report says why
desk-dead = Dead canopy
desk-dead-own = as the protocol says
desk-dead-counts = counts like live
desk-dead-apart = apart from live
desk-counts = What counts
desk-counts-only = All of one kind and nothing else, or plant by plant.
desk-group = group { $group }
desk-lines = Lines that speak

## All sites
desk-site-twice = { $count ->
    [one] 1 record written in two ways
   *[other] { $count } records written in two ways
}

## Where each number comes from
desk-numbers = Where each number comes from
desk-numbers-what = The newest year, as asked above. Open a number to see what it came from: the formula with its source, the lines, and their readings.

## History
desk-history-what = Everything that was done, the newest first. Nothing is ever lost: what is taken back stays here, and can be brought back.
desk-history-empty = Nothing was done yet.
desk-history-more = Show { $more } more
desk-history-records = { $more ->
    [one] and 1 record more
   *[other] and { $more } records more
}
desk-history-of = History of { $what }
desk-take-back = Take this back
desk-take-back-of = Take this back: { $what }, { $time }
desk-taken-back = { $records ->
    [one] Taken back: 1 record stands as before.
   *[other] Taken back: { $records } records stand as before.
}
desk-restore = Make this stand again
desk-restore-of = Make this stand again: { $version }
done-read = lines read
done-photo = photos
done-log = calibration of readers
done-edit = edited

## Search
desk-search-what = Sites, lines, readers, species, notes, protocols, goals
desk-search-nothing = Nothing in the notebook holds all of these words.
desk-search-found = { $found ->
    [one] Found once.
   *[other] Found { $found } times.
}
desk-search-so-far = Looking … found { $found } so far.
desk-search-more = { $more } more: write another word.
desk-others = Other records

## Protocols and plants
desk-protocol-read = { $lines ->
    [0] no line read under it
    [one] 1 line read under it
   *[other] { $lines } lines read under it
}
desk-protocol-new = A new protocol
desk-protocol-name = Name
desk-protocol-source = Where the rules come from
desk-protocol-no-name = Give the protocol a name.
desk-protocol-same = Kept as a revision of this protocol.
desk-protocol-another = Kept as another protocol, since a rule differs. Lines stay under the rules by which they were read.
desk-left-open = left open
desk-rule-shortest = the shortest canopy that is read
desk-rule-division = finest division
desk-rule-overlap = where two species overlap
desk-rule-side = edge of the tape, seen from its zero
desk-cover-foliar = foliage itself, without small openings
desk-cover-basal = at ground level
desk-dead-left-out = not read
desk-dead-short = a short part touching live canopy is read as live
desk-overlap-each = each species in full
desk-overlap-once = once, under the upper species
desk-side-left = left
desk-side-right = right
desk-counts-open = No tick and no code leaves it open; then trees, shrubs and subshrubs count.
desk-counts-also = These codes too
desk-counts-except = Not these codes
desk-plants = Plants
desk-plants-count = { $plants ->
    [one] 1 plant
   *[other] { $plants } plants
}
desk-plants-what = The code is what stands on sheets. The growth form decides what is woody, and groups are your own.
desk-plants-find = Find a plant
desk-plant-new = Add a plant
desk-plant-code = Code
desk-plant-name = Scientific name
desk-plant-common = Common name
desk-plant-form = Growth form
desk-plant-groups = Groups, with commas
desk-plant-features = Key features, by which it is told from its like
desk-plant-remove = Take it off the list
desk-plant-no-code = Give the plant a code.
desk-plant-twice = { $code } stands in the list already. Change that plant instead.
