# On the line: photos taken over the last ones, a second reading without sight of the first, and whether to read on.

photo-shows-sheet = the sheet
field-photo-of-line = { $site }, line { $line }: { $shows }
field-photo-of-site = { $site }: { $shows }
field-camera-opening = The camera is being opened …
field-camera-none = The browser gives no camera here: it was refused, there is none, or this page did not come over a safe connection. Take the photo with the device’s own camera, or choose a file.
field-last-over = How much of the last photo shows
field-last-of = Last photo: { $date }. Move until stakes and skyline lie on those of it.
field-last-beside = Last photo: { $date }. Stand so that stakes and skyline lie as on it.
field-last-none = The notebook has no photo of this view yet: the next one will be laid over this.
field-sheet-what = Lay the sheet flat, in even light, and fill the picture with it.
field-take = Take it
field-take-again = Take it again
field-keep = Keep it
field-file = Take or choose a photo
field-taken = The photo as it would be kept
field-back = Back
field-photo = Photo: { $shows }
field-photos = Photos kept with this reading
field-photo-over-last = Take it again, over the last one

## A second reading without sight of the first
field-blind-waits = Somebody is reading this line a second time and must not see this draft. It can be gone on with when that reading is closed or thrown away.
field-blind-drafts = { $lines ->
    [one] One draft waits
   *[other] { $lines } drafts wait
} until the second reading of its line is closed.

## Whether to read on
help-objective-looks = Look after each of these lines and stop once it is settled, such as “5 to 30” or “6 to 18 by 3”
objective-looks = looked at after these lines
looks-late = The plan to look after { $looks } lines was written down after the first line of this visit was read, so it can't say when to stop. Read all the lines that were planned.
looks-working = Under the sequential plan: being worked out …

## Figures as data
figures-json = Figures as JSON
figures-json-what = What every site and year comes to, as “tautline assess --json” prints it for the same files: the same figures, bit for bit.
field-photo-of-row = Photo …
