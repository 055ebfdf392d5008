# Reading a line on a device.

read-lines = Read
read-going-on = Go on with
read-draft = { $site }, line { $line }: { $rows ->
    [0] nothing yet
    [one] 1 row
   *[other] { $rows } rows
}
read-planned = { $site }, line { $line }
read-waiting = { $lines ->
    [one] One planned line has
   *[other] { $lines } planned lines have
} not been read this year
read-more-planned = { $more } more: set them up below.
read-set-up = Set up a line
read-site = Site
read-line = Line
read-tape-length = Length of the tape, such as 65 ft or 20 m
read-unit = Numbers on the tape are in
read-unit-in = inches
read-unit-ft = feet
read-unit-m = metres
read-unit-dm = decimetres
read-unit-cm = centimetres
read-unit-mm = millimetres
read-unit-decimal-ft = feet, tenths and hundredths
read-unit-ft-in = feet and inches
read-protocol = Protocol
read-protocol-none = none named
read-reader = Who reads the tape
read-recorder = Who writes
read-date = Day
read-second-reader = A second reading: the reader has not seen the first one
read-permission = Have you permission to be on this land? If nobody was asked, ask before you go on. You can read the line either way.
read-begin = Begin at the zero stake
read-name-the-line = Name the site and the line.
read-length-not-read = “{ $found }” is not a length. Write it such as 65 ft or 20 m, or leave it empty.
read-date-not-read = “{ $found }” is not a day. Write it such as 2026-06-09.
read-unknown = This line is no longer a draft: it was closed or thrown away.
read-back = Lines
read-heading = { $site }, line { $line }
read-kept = kept
read-keeping = keeping …
read-tape = The tape
read-tape-shows = { $rows ->
    [0] Nothing has been read on it yet.
    [one] One stretch has been read on it.
   *[other] { $rows } stretches have been read on it.
} The rows below say which.
read-rows = Rows
read-start = Start
read-stop = Stop
read-nothing-yet = Nothing has been written yet.
read-dead = dead
read-row-height = height { $value }
read-row-width = width { $value }
read-row-note = { $value }
read-row-plant = plant { $value }
read-row-removed = taken out
read-expects-species = Which species next?
read-expects-start = { $species } starts at
read-expects-stop = { $species } from { $start } stops at
read-expects-length = { $species } is this long
read-expects-correct-start = { $row }: it starts at
read-expects-correct-stop = { $row }: it stops at
read-expects-correct-length = { $row }: it is this long
read-expects-height = { $row }: height of the plant
read-expects-width = { $row }: greatest width of the plant
read-expects-split-stop = { $row }: the first part stops at
read-expects-split-start = { $row }: the second part starts at
read-expects-read-to = The line was read up to
read-species = Species
read-other-species = others …
read-find-species = Part of a code or a name
read-new-plant = new plant
read-keep-name = Keep “{ $name }” as a plant without a name
read-working-name = new plant { $number }
read-is-now = “{ $name }” is
read-pad = Numbers
read-feet = ft –
read-erase = erase
read-undo = undo
read-redo = redo
read-start-done = starts here
read-stop-done = stops here
read-done = done
read-swap = Swap
read-join = Join
read-remove = Take out
read-put-back = Put back
read-mend = Mend
read-use-species = { $species } was meant
read-leave-so = Leave it so
read-correct-start = Start …
read-correct-stop = Stop …
read-correct-length = Length …
read-make-dead = Dead
read-make-live = Live
read-insert = Insert one before it
read-split = Split …
read-join-before = Join with the row before
read-same-plant = Same plant as the row before
read-height = Height …
read-width = Width …
read-species-of-row = Species
read-note = Remark
read-more = More …
read-rules = Rules
read-keys = Back to the keys
read-close-look = Close …
read-nothing = Nothing stands on this line
read-partly = Read only up to …
read-whole = Read from end to end
read-lengths-only = Lengths without positions
read-leave-entry = Leave what is being typed
read-why-not = Why it was not read
read-not-read = Not read
read-wind = Wind
read-growth-stage = Growth stage
read-departure = Departure from the protocol
read-remarks = Remarks on the line
read-discard = Throw this draft away
read-discard-sure = Yes, throw it away: nothing of it is kept
read-told-nothing = Nothing stands on this line.
read-told-to = Read up to { $mark }.
read-told-not-read = Not read. { $why }
read-before-closing = Worth a look before the stake is pulled
read-under-way = Something is still being typed: finish it, or leave it.
read-nothing-written = Nothing is written. If nothing stands on this line, say so under “More”.
read-close-rows = { $rows ->
    [0] No rows
    [one] 1 row
   *[other] { $rows } rows
}. Has the end stake been reached?
read-close = Close the line
read-again-what = You have read this line on this day already, and that reading is kept. Is this one a correction of it, or did you read the line again?
read-again-corrects = It corrects the first
read-again-another = We read it again
read-without-protocol = No protocol is named for this line.
rule-drawn-gap-joined = A gap under { $limit }: read on as canopy.
rule-drawn-gap-breaks = A gap over { $limit }: stop, and start again.
rule-drawn-dead-apart = A dead part: written by itself, as dead.
rule-drawn-dead-left-out = A dead part: left out.
rule-drawn-dead-counts = A dead part: read as live.
rule-drawn-dead-short = A dead part under the gap rule that touches live canopy: read as live.
rule-drawn-overhang = A crown that hangs over the edge is read, wherever it is rooted.
rule-drawn-under-the-line = Rooted under the tape, crown beside it: not read.
rule-drawn-two-species = Two species overlap: each is written in full.
rule-drawn-two-species-once = Two species overlap: the tape is written once, under the upper one.
read-rule-window = When lines are read
read-rule-alive = Alive without leaves
read-rule-stalks = Flower stalks
read-rule-tape = The tape
read-rule-wind = Wind
read-rule-heights = Heights
read-rule-open = Left open, taken so
read-closed = { $site }, line { $line } is kept
read-line-not-read = The line was not read.
read-line-cover = This line: cover { $cover }.
read-last-time = Last time, { $date }: cover { $cover }.
read-last-time-unlike = Last time, { $date }, under other rules: cover { $cover }. The two can’t be set side by side as they are.
read-site-cover = The site so far, { $lines ->
    [one] 1 line
   *[other] { $lines } lines
}: cover { $cover }, between { $low } and { $high }.
    .alike = The site so far, { $lines ->
        [one] 1 line
       *[other] { $lines } lines
    }: cover { $cover }, to the digits shown.
read-site-cover-alone = The site so far, { $lines ->
    [one] 1 line
   *[other] { $lines } lines
}: cover { $cover }; no interval can be given yet.
read-left = Planned and not read yet: { $lines }.
read-next-line = Next line
read-to-site = To the site
tailgate-covers = { $first } has cover { $cover }, { $second } { $other }. You lie furthest apart here:
tailgate-alike = { $first } and { $second } read the same canopy: cover { $cover }.
tailgate-stretch = From { $start } to { $stop } { $has } has canopy and { $lacks } has none. Look at { $rule }.
apart-gap = how long a gap ends the canopy, and where it is measured
apart-dead = what counts as alive
apart-counts = which plants count
apart-edge = where a crown ends, straight down on the tape’s edge
apart-plant = whether this plant meets the tape’s edge
tailgate-heading = Do you read alike?
tailgate-swap = This was the day’s first line. Swap before the next: { $second } reads it again without seeing these rows, and you see where you differ.
tailgate-begin = Swap and read it again
tailgate-agreed = What you agreed on
tailgate-keep = Write it down
tailgate-kept = It stands with the second reading.
read-stake-noted = The zero stake’s place was noted on { $date }.
read-stake-placed = The notebook has the place of this line’s zero; it is taken as good to { $metres } m.
read-stake-find = Find the zero stake
read-stake-waiting = Waiting for the device’s position …
read-stake-no-position = The device gives no position. Go by the stake’s description, its photos and the compass.
read-stake-way = { $metres } m to the { $way }, true bearing { $bearing }°. Positions may be { $off } m off.
read-stake-near = It is within { $off } m, which is as near as positions tell. Look about you.
read-stake-note = Note where the zero stake stands
read-stake-where = Stand beside it. The place is kept with the reading and left out of reports.
way-north = north
way-north-east = north-east
way-east = east
way-south-east = south-east
way-south = south
way-south-west = south-west
way-west = west
way-north-west = north-west
read-type-again = Type the sheet a second time
read-twice = { $alike ->
    [one] 1 row alike
   *[other] { $alike } rows alike
}, { $differ ->
    [0] none differs
    [one] 1 differs
   *[other] { $differ } differ
}
read-first-typing = First typing
read-second-typing = This typing
read-to-first-typing = Correct the first typing
read-unnamed = { $plants ->
    [one] One plant waits for a name
   *[other] { $plants } plants wait for a name
}
read-unnamed-is = “{ $name }”, { $rows ->
    [one] 1 row
   *[other] { $rows } rows
}, is
read-named = “{ $name }” is { $species }.
