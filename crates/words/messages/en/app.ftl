# The app in a browser.

app-this-device = this device
app-skip = To the content
app-screens = Screens
app-sites = Sites
app-take-in = Take in
app-settle = Settle
app-notebook = Notebook
app-closed = The notebook can’t be opened
app-closed-way-out = Nothing in it is lost by this. Close other windows of tautline and load the page again. A window in private mode keeps nothing: use an ordinary one.
app-badge-here = { $records ->
    [0] nothing here yet
    [one] 1 change here only
   *[other] { $records } changes here only
}
app-badge-to-settle = { $things ->
    [one] 1 to settle
   *[other] { $things } to settle
}
app-badge-sent = all sent
app-must-settle = { $findings ->
    [one] One thing must be settled
   *[other] { $findings } things must be settled
}
app-have-a-look = { $findings ->
    [one] One thing is worth a look
   *[other] { $findings } things are worth a look
}
app-welcome = A notebook for shrub lines
app-welcome-what = Read lines along a taut tape, see how much of a site live shrubs cover and how sure that is, and whether the goal is met. Everything works without a network, and what you write stays on this device until you share it.
app-open-demo = Look at the demo
app-begin-empty = Begin with my own files
app-demo-invented = The demo is an invented shrubland with invented people. It can be taken back whole.
app-cautions = In the field local rules, land owners and licensed practice come first. Ask before you enter, cap your stakes, and have somebody know when you are due back.
app-demo-reason = demo, invented
app-demo-kept = The demo is in this notebook. Everything in it is invented.
app-demo-missing = The demo could not be fetched. Open the app once with a network, then it is here for good.
app-find = Find a site
app-more-sites = { $more } more: write a part of the name above.
app-site-cover = cover { $cover }, between { $low } and { $high }
    .alike = cover { $cover }, to the digits shown
app-site-cover-alone = cover { $cover }, no interval
app-site-cover-between = cover between { $low } and { $high }, no interval
    .alike = cover { $low }, to the digits shown, no interval
app-site-cover-between-sure = cover between { $low } and { $high }; with its doubt between { $from } and { $to }
app-site-lines = { $lines ->
    [one] 1 line
   *[other] { $lines } lines
}
app-site-last = read { $date }
app-site-not-read = { $count ->
    [one] 1 line not read
   *[other] { $count } lines not read
}
app-site-to-settle = { $count } to settle
app-site-to-look-at = { $count } to look at
app-reading = Reading the notebook …
app-site-unknown = No readings of this site are in the notebook.
app-report-file = The report as a file
app-what-if = What if
app-what-if-changes-nothing = Only this screen answers; nothing in the notebook changes.
app-confidence = How sure
app-method = Interval
app-gap-rule = Gap rule
app-gap-rule-own = The rule of each reading’s own protocol.
app-gap-rule-not-read = A length with its unit, such as 4 in or 10 cm.
app-gap-rule-asked = Gaps shorter than { $length } are read as canopy, where the readings allow it.
app-take-in-what = Tables of readings, plans, plant lists, goals, protocols, typed sheets, and copies of other notebooks. You see what was understood before anything is written.
app-pick-files = Pick files, or drop them here
app-typed = Or type a sheet as it stands on paper
app-typed-name = typed.sheet
app-typed-example =
    Site: Hollow Flat
    Unit: ft
    Line B1, 100 ft
    ATCA 12.4-14.1
    KRLA 22.0-22.7
app-files-left = Too long for the app, or not readable: { $files }. The command takes longer ones.
app-understood-heading = What was understood
app-understood = { $kind }: { $new } new, { $changed } changed, { $known } here already
app-understood-copy = { $revisions ->
    [one] one revision of another notebook
   *[other] { $revisions } revisions of another notebook
}
app-understood-unfinished = { $lines ->
    [one] one unfinished line
   *[other] { $lines } unfinished lines
}
app-lines-broken = { $file }: { $lines ->
    [one] one line is
   *[other] { $lines } lines are
} not whole and left out.
app-brings-nothing = This brings nothing that isn’t here already.
app-keep = Keep it
app-leave = Leave it
app-kept = Kept on this device.
app-kind-visit = readings of lines
app-kind-line = planned lines
app-kind-stratum = strata
app-kind-plants = plant list
app-kind-protocol = protocols
app-kind-goal = goals
app-kind-calibration = calibrations of readers
app-kind-settlement = what persons settled
app-kind-photo = photos
app-kind-other = the files themselves
app-settle-nothing = Nothing to settle. When two people write unlike things about one line, both stand here side by side until one of you chooses; no figure uses either before.
app-settle-what = Two people wrote differently about one thing. No figure uses either until one of you chooses.
app-reason = Why (if you like)
app-this-stands = This one stands
app-settled = Settled. The other stays in the history.
app-sharing = Sharing
app-sharing-under-way = Looking for the shared notebook.
app-sharing-nobody = No shared notebook answers. Everything is kept on this device, and goes there when one does.
app-sharing-done = What is here is in the shared notebook too.
app-share-now = Share now
app-copy = A copy of everything
app-copy-what = One file with all that was ever written on this device, past versions and unfinished lines too. It is a full copy, with places and names. Any tautline takes it in.
app-copy-now = Make a copy
app-persist = Room on this device
app-persist-promised = The browser keeps the notebook even when it runs short of room.
app-persist-not = The browser has not promised to keep the notebook when it runs short of room. Put the app on the home screen, and make a copy each night.
app-persist-unknown = The browser doesn’t say whether it keeps the notebook when it runs short of room. Make a copy each night.
app-persist-ask = Ask the browser to keep it
app-you = Who writes here
app-you-what = Stands with every change, so that others know whom to ask.
app-your-name = Your name
app-device-name = What you call this device
app-look = Light
app-theme-device = as the device has it
app-theme-light = light
app-theme-dark = dark
app-theme-sunlight = full sun
app-version = tautline { $version }
app-newer-label = A newer version
app-newer = A newer version of tautline is here. What is kept on this device stays; finish what you are at first.
app-newer-take = Take it now

## Photos and permission
app-photos = Photos
app-photos-none = No photo of this site is in the notebook yet.
app-photo-add = Take a photo
app-photo-of = Of
app-photo-line = Line { $line }
app-photo-site-at-large = the site at large
app-photo-shows = It shows
app-photo-caption = What there is to say of it
app-photo-people = Who can be seen on it (names, with commas)
app-photo-keep-place = Keep the place and the time of day
app-photo-what-is-kept = The photo is made smaller (1600 pixels at most) and drawn anew, so nothing stays in its file that the camera wrote beside it. Day, time, place and bearing stand in the record; without the tick only the day does.
app-photo-take = Take a photo
app-photo-choose = Choose photos
app-photos-kept = { $photos ->
    [one] The photo is kept on this device.
   *[other] { $photos } photos are kept on this device.
}
app-photos-left = This browser can't read these photos: { $files }. Save them as JPEG and choose them again.
app-photo-row = Line { $line }, { $shows }
app-photo-row-site = The site, { $shows }
app-photo-being-read = …
app-permission = Permission to enter
app-moving-label = The notebook moves
app-moving-send-first = The shared notebook moves to { $to }. Something is on this device alone, and isn't seen from there: share it now, or take a copy, before you open the new address.
app-moving-sent = The shared notebook moves to { $to }. All that is on this device has been sent; you can open the new address when it is there.
app-room-not-here = This part of the app isn’t on this device yet. Open it once with a network; then it stays.
app-plan = Plan
app-practice = Practise
app-more = More
app-take-in-for = Files and sheets typed from paper, checked before anything is kept
app-settle-for = What two people wrote unlike, side by side
app-notebook-for = Sharing, copies, history, and how this device shows things
app-handbook = Handbook
app-follow = Follow
app-agree = Agree
app-follow-for = What changed between two visits, and the trend over all
app-agree-for = Readers of the same line side by side, who is ready, and certificates
app-handbook-for = Each formula with its source and an example worked by hand
app-history = History
app-search = Search
app-lists = Protocols and plants
app-search-for = Sites, lines, people, plants, notes and rules by any word
app-figures = Figures as JSON
app-more-findings = { $more } more: shown once these are settled.
app-follow-site = Follow it over the years

# The home screen says these before the words of the rooms have come.
field-blind = Out of sight while somebody reads it a second time: { $lines }. Every figure here is without it, and it comes back when that reading is closed.
desk-only = Show
desk-only-all = all sites
desk-only-waiting = where something waits
desk-no-site = No site is so.
