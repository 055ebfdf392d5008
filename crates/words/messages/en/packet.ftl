### Words of tautline: the packet that a crew carries.

packet-title = Lines for { $site }
packet-about = { $lines } lines of { $length } to read, { $reserve } in reserve. Drawn with seed { $seed }.
packet-map = Map of the site and its lines
packet-map-said = The boundary of { $site } with { $lines } lines to scale, north up. They are walked in this order: { $order }.
packet-lines = Where the lines are
packet-slope = Lengths are along the tape, pulled taut close above the ground. On a slope the tape lies on the slope; cover is the same share of it as on the level.
heading-walk = To read, in the order of the walk:
column-start-utm = start (UTM, WGS 84)
map-north = N
map-line = line; the square is the tape's zero
map-reserve = in reserve
map-keep-out = keep out
map-way = way between lines

## The protocol
packet-protocol = How a line is read
packet-no-protocol = No protocol was handed in. Write down which rules you read under; a number without them can be compared with nothing.
packet-protocol-name = Protocol: { $name } (fingerprint { $print }; { $source }).
packet-gap = Read on over a gap shorter than { $limit }; write a new start where a gap is longer.
packet-gap-bridged = Read on over these where they are shorter: { $cases }.
packet-gap-breaks = These always end a stretch: { $cases }.
packet-every-edge = Write every edge; no gap is closed.
packet-dead-left-out = Don't write dead canopy down.
packet-dead-apart = Write dead canopy down and mark it dead.
packet-dead-joins = Write dead canopy down and mark it dead; a short dead stretch that touches live canopy joins it when cover is worked out.
packet-dead-counts = Dead canopy counts like live; mark it dead all the same.
packet-side-left = Read the left edge of the tape, looking from its zero.
packet-side-right = Read the right edge of the tape, looking from its zero.
packet-side-open = Read one edge of the tape all along. Which one is left open: agree before the first line and write it down.
packet-shortest = Don't write down a stretch shorter than { $length }.
packet-finest = Read to { $length }.
packet-window = When to read: { $said }
packet-alive = Alive without leaves: { $said }
packet-stalks = Flower stalks: { $said }
packet-tape = The tape: { $said }
packet-wind = Wind: { $said }
packet-heights = Heights: { $said }
packet-plants = Plants that may be met
packet-plant-code = code
packet-plant-name = name
packet-plant-common = common name
packet-plant-form = growth form
packet-plant-counted = counts
packet-plant-features = key features
packet-yes = yes
packet-no = no

## Sheets
sheet-title = Line { $line }
sheet-spare = Spare sheet
sheet-site = Site
sheet-stratum = Stratum
sheet-length = Length
sheet-line = Line
sheet-why = In place of, and why
sheet-true = True bearing
sheet-compass = Compass
sheet-start = Start
sheet-protocol = Protocol
sheet-date = Date
sheet-reader = Reader
sheet-recorder = Recorder
sheet-time = From – to (time)
sheet-weather = Wind, growth stage
sheet-readings = Readings
sheet-from = start
sheet-to = stop
sheet-species = species
sheet-dead = dead
sheet-height = height
sheet-fractions = All lengths and heights are in { $unit }: the whole number before the mark, the fraction (such as 5/8) behind it.
sheet-decimals = All lengths and heights are in { $unit }: the whole number before the mark, decimals behind it.
sheet-nothing = If nothing is met, write “nothing” in the first row.

## Cards
packet-equipment = Equipment
equipment-tape = tape, checked against a known length, and a spare
equipment-stakes = stakes with caps, two for each line, and some more
equipment-pins = tension handle or spring, clamps
equipment-hammer = hammer, gloves, eye protection
equipment-plumb = plumb bob or rod with a level
equipment-compass = compass, with the declination set or not, as agreed
equipment-gps = GPS receiver with layout.gpx, and this map on paper
equipment-sheets = these sheets, pencils, clipboard, spare sheet
equipment-plants = plant list, bags and labels for what nobody knows
equipment-camera = camera, slate with site, line and date
equipment-water = water, sun and rain gear, first aid
equipment-radio = radio or satellite messenger, who is called when
packet-stakes = Stakes
packet-stakes-said = { $stakes } stakes go out. Ask before digging or driving. Write down what was left and what came back.
stake-end = end
stake-zero = zero
stake-far = far end
stake-kind = kind
stake-capped = capped
stake-out = driven (date)
stake-back = taken out (date)
packet-photos = Photo points
packet-photos-said = Two general views and a near one of each line, from the same places and at the same height each time (common practice).
photo-from = from
photo-toward = toward
photo-number = number
photo-time = time
photo-note = height, lens, note
photo-degrees = { $degrees }° true
photo-down = down at the tape, a square metre
packet-again = Finding the lines again
again-withheld = Withheld, as the site is set
again-zero = Zero
again-end = Far end
again-bearing = Bearing: true · compass on the date of the packet
again-witness = Witness mark 1: what, distance and bearing to the zero
again-witness-two = Witness mark 2
again-way-in = Way in
again-permission = Permission to enter: who gave it, until when
again-stakes = Stakes: kind, how deep, cap

## Whom to call
packet-calls = Whom to call
packet-calls-said = Fill in before anybody leaves; where there is no signal, agree on who comes looking, and when. In an emergency the local number comes first.
call-emergency = Emergency, nearest clinic
call-back-by = Who knows where we are; back by
call-office = Office, radio channel
call-owner = Owner or manager of the land
call-before-stakes = Buried lines, before stakes are driven
call-way-out = Way out, meeting place
packet-pdf-written = The packet is { $file }, { $pages } { $pages ->
    [one] page
   *[other] pages
}.
walk-length = The walk from line to line is { $metres } m in all, as if the ground were level. What is kept out of is gone round, unless it may be crossed, as roads may.
walk-leg = from { $from } to { $to }
walk-leg-first = from where the walk begins to { $to }
walk-over-kept-out = No way round what is kept out of was found here, and the map goes straight: { $legs }. Look for a way on the ground.
walk-over-outside = No way over the site's own ground was found here: { $legs }. Ask whose ground lies between.
