### Words of tautline: the notebook, its records and their revisions.

## Records
record-line = { $site }, line { $line }, as planned
record-site = { $site }, the site
record-place = { $site }, where line { $line } lies
record-stratum = { $site }, stratum { $stratum }
record-visit = { $site }, line { $line }, { $date }
record-visit-undated = { $site }, line { $line }, no date
record-plants = the plant list
record-protocol = the protocol “{ $name }”
record-objective = the objective { $name }
record-trigger = the trigger { $name }
record-decision = a decision on { $site } of { $date }
record-goal = a goal for every site
record-goal-site = a goal for { $site }
record-photo = a photo of { $site }, line { $line }
record-photo-site = a photo of { $site }
record-calibration = { $reader } beside { $against } at { $site } on { $date }
record-settlement = a word on findings of the kind “{ $code }”
record-import = the import of { $files }
record-unread = a record

## What stands
two-versions = { $what }: unlike versions stand side by side: { $versions }. None of them is used until one is chosen with “tautline settle”.
written-by = by { $author } on { $device }, { $time } UTC (…{ $revision })
written-by-author = by { $author }, { $time } UTC (…{ $revision })
written-on = on { $device }, { $time } UTC, no name given (…{ $revision })
written-by-nobody = no name given, { $time } UTC (…{ $revision })
written-by-erased = blanked, { $time } UTC (…{ $revision })
record-not-understood = A record of the kind “{ $kind }” (…{ $revision }) isn't what its kind says. It is kept and not used.
records-newer = { $records ->
    [one] One record
   *[other] { $records } records
} of the kind “{ $kind }” came from a newer version of tautline: kept as they are, and not used here.

## Import
import-disputed = { $what }: unlike versions of it stand in the notebook, so nothing was added. “tautline settle” shows them.
import-left-out = { $what } was left out, since its sheet contradicts itself. Put right and imported again, it comes in.
import-twice = { $what } stands twice in these files, not the same each time. The first was taken.

## Refusals
revision-not-whole = There is a number in it that isn't whole; records hold whole numbers only.
revision-other-hash = It isn't what its hash says: the line was changed or damaged.

## What changed
change-begun = written down
change-begun-visit = written down, with { $readings ->
    [0] no readings
    [one] one reading
   *[other] { $readings } readings
}
change-taken-back = taken back
change-nothing = the same
change-none = nothing
change-field = { $field }: { $before } → { $after }
change-reading = { $reading }: { $changes }
change-reading-removed = { $reading }: removed
change-reading-added = { $reading }: added
reading-edges = { $species } { $start } to { $stop } ({ $state })
reading-length = { $species } { $length } ({ $state })

## The command
help-notebook = Work on what stands in this notebook, in place of FILES
help-notebook-of = The notebook: one file
help-import = Bring files into a notebook; what is there already adds nothing
help-import-files = Files or folders as for cover and assess, or other notebooks, as files or as lines of JSON
help-author = Who does it; whoever is logged in, if left out
help-reason = Why
help-history = Who wrote what into a notebook, when and why
help-history-site = The records of this site, one revision after another
help-history-line = The records of lines of this name, one revision after another
help-settle = Show versions that stand side by side, or choose one of them
help-keep = The version that is to stand, by the last characters of its id
help-restore = Restore an earlier revision, or undo an import, by a new revision
help-restore-revision = The revision whose record is to stand again, by the last characters of its id
help-undo = The import or other action to undo, by the last characters of its id
help-backup = Copy a notebook to a new file, even while it is in use
help-backup-to = The new file
help-history-blanked = Records of which something was blanked, and what is left of them
help-erase = Forget a person or a site: what names them is blanked for ever, ids and hashes stay; shown first, done with --yes
help-erase-person = The person, by the name that stands in the notebook
help-erase-site = The site; its own records are taken back
help-erase-instead = What stands in place of the name where a record stays
help-erase-yes = Do it; it can't be undone
column-new = new
column-changed = changed
column-known = there already
column-when = when (UTC)
column-who = who
column-device = on
column-done = what
column-records = records
column-why = why
kind-line = planned lines
kind-site = sites
kind-place = places of lines
kind-stratum = strata
kind-visit = visits
kind-plants = plant list
kind-protocol = protocols
kind-goal = goals
kind-calibration = calibrations of readers
kind-settlement = words on findings
kind-photo = photos
kind-import = imports
done-import = import
done-settle = settled
done-restore = restored
done-undo = undone
done-erase = erased
imported = Written to { $file }. To undo this import: tautline restore --undo { $action } --notebook { $file }
imported-nothing = { $file } holds all of that already; nothing was added.
changed-more = … and { $records } more, which “tautline history” shows line by line.
joined = { $file }: { $new ->
    [one] one new revision
   *[other] { $new } new revisions
}, { $known } there already, { $erased } blanked.
blanked = blanked
kept-unread = kept unread: from a newer version, or not what its kind says
set-beside = beside …{ $revision }:
stands-there = as it stands
whole-record = the whole record
history-nothing = The notebook holds nothing of that name.
settle-how = Choose with: tautline settle --keep … --notebook FILE (and --author, --reason)
settle-nothing = Nothing is to be settled.
settled-with = { $what }: the version { $version } stands from here on.
restored = The revision { $version } stands again.
undone = { $records ->
    [one] One record stands
   *[other] { $records } records stand
} as before. This in turn is undone with --undo { $action }.
undone-left = { $records ->
    [one] One record stays as it is
   *[other] { $records } records stay as they are
}, since others have built on it or it settled something.
undone-nothing = Nothing was undone: others have built on it since, or it was undone already.
restore-in-conflict = Unlike versions of it stand side by side; choose one with “tautline settle” first.
restore-erased = That revision was blanked and can't be restored.
restore-stands = It stands as that revision has it already.
erased-person = a former reader
erased-site = a former site
erase-no-name = A name is needed: --person or --site.
erase-by-themselves = Whoever erases a name signs what takes it out, so it can't be “{ $name }”: give another with --author.
erase-nothing = Nothing in the notebook names “{ $name }”.
erase-in-conflict = Unlike versions stand side by side of { $records ->
    [one] one record that names
   *[other] { $records } records that name
} “{ $name }”; choose with “tautline settle” first. Nothing was blanked:
erase-would = “{ $name }” stands in { $records ->
    [one] one record
   *[other] { $records } records
}:
erase-warning = With --yes, { $revisions ->
    [one] one revision is
   *[other] { $revisions } revisions are
} blanked, and what they said can never be got back. Devices and notebooks that share in this one blank theirs when they next meet it. Backups, exported files, printed pages and files that were imported keep the name until you delete them yourself.
erased = { $records ->
    [one] One record stands
   *[other] { $records } records stand
} without the name; { $revisions ->
    [one] one revision was
   *[other] { $revisions } revisions were
} blanked. Backups, exported files and imported files made before still hold it: delete them, or make them anew.
records-more = … and { $records } more.
id-unknown = Nothing here has an id that ends in “{ $found }”. The ids stand in “tautline history”; four characters or more are needed.
id-several = Several ids end in “{ $found }”; a few more characters would tell them apart.
backup-written = { $file } is a whole copy, with { $revisions ->
    [one] one revision
   *[other] { $revisions } revisions
}.

## Refusals of a notebook
notebook-not-there = { $file }: there is no such notebook. “tautline import” begins one.
notebook-taken = { $file } is there already; a copy takes no other file's place.
notebook-not-one = { $file } is no notebook. It was left as it is.
notebook-newer = { $file } was written by a newer version of tautline (its format is { $found }, this one knows { $known }). It was left as it is; the newer version opens it.
notebook-damaged = { $file } is damaged ({ $why }) and was not used. Go back to a backup; what other devices hold joins it again by “tautline import”.
notebook-full = The disk is full, so nothing of this was written to { $file }. All that was written before is there.
notebook-busy = Another program is writing to { $file }; try again in a moment.
notebook-read-only = { $file } can't be written to.
photo-other-bytes = These bytes are not those of the photo's own hash, so they were not kept. Send the photo again.
photos-joined = { $photos ->
    [one] The bytes of one photo came with it.
   *[other] The bytes of { $photos } photos came with it.
}
photo-no-picture = This is no JPEG, PNG or WebP that can be read. Save it as one of these and add it again.
help-photo = Photos of lines and visits in a notebook: add, list, hand out
help-photo-add = Add photos to a notebook: JPEG, PNG or WebP; a large JPEG is made smaller
help-photo-files = The photos
help-photo-site = The site; may be left out where the notebook has one
help-photo-line = The line; may be left out with --at opening or visit
help-photo-at = What they show: start (from the zero), end (from the far end), visit (something met), opening (the site at large), sheet (the paper that a line was written on)
help-photo-date = The day they were taken, where the camera's is wrong or missing
help-photo-caption = What there is to say of them
help-photo-person = A person who can be seen on them
help-photo-without-place = Leave place, bearing and time of day out of the record, and out of the file everything that was written beside the picture but which side is up; the day stays
help-photo-full-size = Keep every photo as large as it is, byte for byte
help-photo-list = List the photos of a notebook
help-photo-out = Write the photos of a notebook into a folder
help-photo-folder = The folder
column-photo-shows = shows
column-place = place
column-size = size
column-caption = caption
photo-shows-start = from the zero
photo-shows-end = from the far end
photo-shows-visit = met on a visit
photo-shows-opening = opening view
photo-undated = without a day
photo-no-place = without a place
photo-bytes-lacking = not here yet
photo-added = { $file }: { $what }, { $shows }, { $when }, { $where }
photos-none = No photo is in this notebook.
photos-added = { $photos ->
    [0] No photo is new to { $file }.
    [one] One photo was added to { $file }.
   *[other] { $photos } photos were added to { $file }.
}{ $known ->
    [0] { "" }
    [one] {" "}One was there.
   *[other] {" "}{ $known } were there.
}
photos-whole = They are kept byte for byte, with everything that the camera wrote beside them.
photos-plain = Place and time of day were not kept. The kept files hold the picture, its colours and which side is up; nothing else that was written beside them. Your own files are as they were.
photos-smaller = { $photos ->
    [one] One was made smaller, its longest edge { $edge } pixels: what is kept is the picture, its colours and which side is up.
   *[other] { $photos } were made smaller, their longest edges { $edge } pixels: what is kept is the picture, its colours and which side is up.
} What the camera wrote beside it stands in the notebook as far as it was wanted. Your own files are as they were; --full-size keeps such photos whole.
photos-others-whole = The others are kept byte for byte, with everything that the camera wrote beside them.
photo-too-many-pixels = This photo has more than { $most } million pixels, more than is opened to make it smaller. Make it smaller, or keep it as it is with --full-size.
photo-not-opened = This photo can't be opened to make it smaller: it may be damaged. Look at it; --full-size keeps it as it is.
photos-out = { $photos ->
    [one] One photo was written to { $folder }.
   *[other] { $photos } photos were written to { $folder }.
}{ $lacking ->
    [0] { "" }
    [one] {" "}The bytes of one aren't here yet.
   *[other] {" "}The bytes of { $lacking } aren't here yet.
}
photo-not-taken = { $file }: { $why }
photo-no-site = “{ $found }” is no site of this notebook. Say which with --site: { $sites }.
photo-no-line = “{ $found }” is no line of { $site }. Say which with --line: { $lines }.
photo-no-date = “{ $found }” isn't a day. Write it year first, as 2026-06-09.
photo-not-here = The bytes of this photo aren't in { $file } yet. The device that took it sends them when it next meets this notebook.
photo-not-a-hash = “{ $found }” names no photo: a photo is named by the 64 lower-case hexadecimal digits of its SHA-256.
photo-not-named = No photo of { $file } has these bytes, or it was taken back or erased, so they were not kept.
photo-too-long = This photo is longer than { $most } MB, the most that is kept of one. Make it smaller.
notebook-not-whole = A revision (…{ $revision }) isn't what its hash says, so nothing was written to { $file }.
notebook-system = { $file } could not be used: { $why }.
lines-not-a-notebook = { $file } does not begin as a notebook does.
lines-newer = { $file } is of version { $version } of its format, which a newer version of tautline reads.
line-not-a-revision = This line is no revision; it was left out.
line-not-finished = The unfinished line { $line } of { $site } was left out: go on with it in the app.

## Sharing
sync-here = { $revisions ->
    [0] Nothing has been shared yet
    [one] One entry is on this device alone
   *[other] { $revisions } entries are on this device alone
}
sync-to-settle = All is shared; { $things ->
    [one] one thing waits
   *[other] { $things } things wait
} to be settled
sync-sent = All is shared
revision-too-long = It is too long to be sent. Exported to a file and imported there, it comes across.

## The server
api-unknown = The interface has nothing under this address; /api/openapi.json describes what it has.
api-method = The interface has this address, though not for this method; /api/openapi.json describes what it has.
api-no-such-file = There is no such file here.
api-not-json = The request is of the type “{ $found }”; “application/json” would do.
api-too-long = The request is longer than { $most } MB, and was not read. Several shorter ones would do.
api-not-a-number = “{ $name }” is no whole number from 0 up.
sync-not-a-message = This is no message of the format “{ $format }” ({ $found }).
sync-newer = The message is of version { $found } of its format; this server knows { $known }. A newer tautline on the desk reads it.
sync-too-many = The message holds { $found } revisions; at most { $most } go into one.
door-host = The request is for “{ $found }”; this server answers to { $accepted } alone.
door-origin = The request comes from a page of another place ({ $found }), which has no say here; { $accepted } would do.
serve-without-app = This server holds the notebook. The app isn't built into it: “tautline serve --app FOLDER” gives out a built one.
serve-port-taken = Another program listens on port { $port }. End it, or choose another with --port; browsers keep what a device holds by address and port, so share or export what is on the devices first.
serve-port = Port { $port } can't be listened on: { $why }.
serve-no-app = { $folder } holds no built app: there is no index.html in it.
serve-system = The server could not begin: { $why }.
serve-began = { $notebook } is open at { $origin }/ for this computer alone. Ctrl-C ends it.
serve-other-port = It was served on port { $before } before. What browsers hold under that address stays there and isn't seen under the new one: share or export it from there.
serve-ended = Ended; all that was acknowledged is in { $notebook }.
help-serve = Serve a notebook to the app in this computer's browsers, and to programs, until Ctrl-C
help-serve-notebook = The notebook, begun where there is none; notebook.tautline, if left out
help-serve-port = Listen on this port from now on, in place of the one that was first free and is kept in the notebook
help-serve-app = The folder of the built app; if left out, web beside this command or beside its folder
help-serve-open = Open the app in this computer's browser
serve-no-browser = No browser could be begun from here: open the address above in one.

## Sharing with the crew's devices
help-share = Let the crew's phones and tablets share in it too, over their own network, at a secure address
help-share-name = The name that devices know this computer by: its own with .local, if left out; or one that your network answers for
help-share-port = Listen for them on this port from now on
help-share-certificate = An organisation's own certificate for that name (PEM), in place of this computer's authority
help-share-key = The key of that certificate (PEM)
help-share-move-to = Serve at the known address once more, and tell each device that the notebook will go by this name: to send or export first
help-share-new-address = Share under another address than the one that paired devices know
help-devices = The devices that were let in to a shared notebook
help-devices-withdraw = Shut one out from now on, by the last characters of its id
share-began = The crew's devices reach it at { $origin }/ . How a device comes to trust this address: { $origin }/trust
share-fingerprint = SHA-256 of the certificate that devices are asked to trust: { $fingerprint }
share-unnamed = Its name isn't answered for on the network ({ $why }); devices find it only if the network knows the name by other means.
share-invitation = To let one device in, for ten minutes: { $link } or the code { $code }
share-not-paired = This device hasn't been let in, or was shut out. The code that lets it in stands on the desk's screen; { $origin }/pair takes it.
share-no-code = There is no code in the request.
share-wrong-code = That is not the code, or not any more. The one that holds now stands on the desk's screen.
share-too-many-codes = Too many codes were wrong. Wait for ten minutes, then give the one on the desk's screen.
share-no-authority = This address has a certificate of an organisation; your device trusts it already, or the organisation says how.
share-no-name = “{ $found }” is no name of a computer: letters, digits and hyphens, with points between, never a bare address such as 192.168.1.5, which the next network changes.
share-no-folder = There is no folder for this person's data (HOME isn't set), so no place for the authority's key.
share-not-secure = No secure address could be made: { $why }.
share-other-address = { $number ->
    [one] One device knows
   *[other] { $number } devices know
} this notebook by { $before } ({ $devices }), and what a browser holds isn't seen under another address. What they hold that isn't here yet, they alone know. Serve it there once more with --move-to NAME, which tells each device to send or export first; when all have, --new-address takes the new one.
share-moving = Devices that meet it are told that the notebook moves to { $to }, and to send or export first. When all of them have, serve it with --name { $to } --new-address.
share-title = Let a device in
share-how = Point the device's camera at the picture, or give the code at the address below. It lets one device in, for ten minutes; load this page again for the next.
pair-title = Let this device in
pair-how = The code stands on the screen of the desk, where the notebook is served. It lets one device in.
pair-code = Code
pair-name = What this device is called (so that it can be told from the others)
trust-title = Trust this computer
trust-why = What a device holds is safe only at a secure address. So the computer at the desk vouches for its own address, and your device asks whether you trust it. That takes a few minutes, once.
trust-fingerprint = SHA-256 of the certificate
trust-compare = Compare the letters and figures above with those on the desk's screen. If they differ, stop: something stands between you and the desk.
trust-take = Take the certificate
trust-fetch = Take the certificate with the button above.
trust-android = Android: Settings, Security, Encryption and credentials, Install a certificate, CA certificate; choose the file.
trust-apple = iPhone and iPad: open it in Safari; Settings, General, VPN and Device Management, install the profile; then Settings, General, About, Certificate Trust Settings, switch it on.
trust-desktop = Computers: import it as a certificate authority for websites in the browser's settings.
trust-pair = Come back and give the code.
trust-limits = It vouches for this one address and for nothing else that your device visits. When the season is over, remove it in the same place.
column-device-name = device
column-device-id = id
column-since = let in (UTC)
column-withdrawn = shut out (UTC)
devices-none = No device was let in yet; “tautline serve --share” shows a code.
device-withdrawn = “{ $name }” is shut out from now on. What it holds stays on it; what it shared stays here.

## The ledger
help-ledger = Objectives, triggers agreed beforehand, and what was decided, in a notebook
help-ledger-objective = Write an objective down: what is wanted, and how sure the answer must be
help-ledger-trigger = Write a promise down: at what reading what will be done
help-ledger-decide = Write a decision down: what was read, what was decided, by whom, when to look again
help-ledger-show = What was promised and decided
help-ledger-site = The site; every site where none is named
help-ledger-name = Its name; the same name on the same site again is a correction
help-attribute = What is measured of which plants
help-place = Which ground it is about
help-direction = raise, lower or hold
help-amount = How much, in words
help-by-date = By when, such as 2030-09-30
help-objective-confidence = How sure intervals and verdicts must be, in per cent
help-smallest-change = The smallest change worth seeing, in per cent of the ground
help-false-alarm = Chance to see a change where there is none, in per cent
help-missed-change = Chance to miss the smallest change worth seeing, in per cent
help-why = Why
help-objective-source = Where it comes from
help-agreed = Who agreed and when, such as “owner, 2026-03-01”; may be repeated
help-when = At what reading, with rule, season and place
help-then = What will be done then, by whom
help-decided-on = The day of the decision
help-decided-trigger = The trigger that it answers
help-was-read = What was read: the figure with its interval
help-decided = What was decided
help-decided-by = Who decided
help-look-again = When to look again
ledger-written = Written down: { $what }.
ledger-same = That stands there already.
ledger-empty = Nothing was promised or decided here yet.
every-site = every site
objective-title = Objective “{ $name }”, { $site }
objective-attribute = what is measured
objective-place = ground
objective-direction = direction
objective-amount = how much
objective-by = by
objective-goal = goal
objective-confidence = confidence
objective-smallest = smallest change worth seeing
objective-false-alarm = chance of a false alarm
objective-missed = chance to miss that change
objective-reason = why
objective-source = source
objective-agreed = agreed
objective-open = Left open: { $parts }. Without them nobody can tell met from missed.
direction-raise = raise
direction-lower = lower
direction-hold = hold
trigger-title = Trigger “{ $name }”, { $site }
trigger-when = when
trigger-then = then
trigger-at = reached at
help-trigger-at = The reading as a number, such as “at most 10 %”: the trigger is reached where that is met
promised-reached = Promised (“{ $name }”): “{ $when }” is reached; { $at } is met. Then was promised: { $then }
promised-not-reached = Promised (“{ $name }”): “{ $when }” is not reached; { $at } is not met. Then would be: { $then }
promised-not-yet-shown = Promised (“{ $name }”): whether “{ $when }” is reached isn't shown yet; { $at } may or may not be met. Then would be: { $then }
promised-in-words = Promised (“{ $name }”): “{ $when }”, in words that no figure answers. Look whether it is reached. Then would be: { $then }
promised-agreed = Agreed: { $who }
trigger-not-agreed = Nobody is named who agreed to this. A promise holds those who made it.
decision-title = Decision on { $site }, { $date }
decision-trigger = trigger
decision-read = what was read
decision-decided = what was decided
decision-by = by
decision-again = look again

## Headings of an office, and an import that only looks
record-headings = What the office writes over its columns
kind-headings = headings of the office's own
help-heading = What the office writes over a column, and the heading that it stands for, such as “Tape begin=start”; a notebook remembers it
help-dry-run = Show what was understood and what would change, and write nothing
option-heading = “{ $found }” doesn't say which heading is meant. “Tape begin=start” would do; docs/files.md lists the headings.
import-dry = Nothing was written. Without --dry-run this goes to { $file } as one import, which can be undone as one.
would-join = { $file }: { $new } new revisions would join. Nothing was written.
help-notebook-full = Places as they are, whatever the sites' settings say
change-kept-back = something that is kept back, as the site is set (--full tells it)
photo-place-kept-back = kept back
photos-out-plain = { $photos ->
    [one] One of them is without what the camera wrote beside it, since its site keeps its places back; what it shows can’t be known. --full gives it as it is kept.
   *[other] { $photos } of them are without what the camera wrote beside them, since their sites keep their places back; what they show can’t be known. --full gives them as they are kept.
}
