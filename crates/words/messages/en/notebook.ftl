### Words of tautline: the notebook, its records and their revisions.

## Records
record-line = { $site }, line { $line }, as planned
record-stratum = { $site }, stratum { $stratum }
record-visit = { $site }, line { $line }, { $date }
record-visit-undated = { $site }, line { $line }, no date
record-plants = the plant list
record-protocol = the protocol “{ $name }”
record-goal = a goal for every site
record-goal-site = a goal for { $site }
record-import = the import of { $files }
record-unread = a record

## What stands
two-versions = { $what }: unlike versions stand side by side: { $versions }. None of them is used until one is chosen with “tautline settle”.
written-by = by { $author } on { $device }, { $time } UTC (…{ $revision })
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
