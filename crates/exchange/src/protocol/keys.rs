//! The keys of a protocol file and the words that each of them takes; reading and writing share them.

use tautline_survey::protocol::{Bridge, CoverMeaning, Dead, Overlap, Side};

/// Keys at the top of the file, in the order in which they are written.
pub(super) const TOP: [&str; 17] = [
    "name",
    "source",
    "from-memory",
    "cover",
    "dead",
    "shortest",
    "overlap",
    "side",
    "finest-division",
    "reading-window",
    "alive-without-leaves",
    "flower-stalks",
    "tape",
    "wind-limit",
    "heights",
    "counts",
    "gap",
];

/// Keys under `[counts]`.
pub(super) const COUNTS: [&str; 4] = ["woody", "forms", "also", "except"];

/// Keys under `[gap]`.
pub(super) const GAP: [&str; 7] =
    ["limit", "equal", "two-plants", "across-species", "between-species", "across-dead", "line-end"];

/// What stands where somebody looked for a rule and didn't find it.
pub(super) const UNKNOWN: &str = "unknown";

/// A closed set of words, each with its meaning.
pub(super) type Words<T> = [(&'static str, T)];

/// Words for `cover`.
pub(super) const COVER: [(&str, CoverMeaning); 3] = [
    ("canopy-outline", CoverMeaning::CanopyOutline),
    ("foliar", CoverMeaning::Foliar),
    ("basal", CoverMeaning::Basal),
];

/// Words for `dead`.
pub(super) const DEAD: [(&str, Dead); 4] = [
    ("left-out", Dead::LeftOut),
    ("apart", Dead::Apart),
    ("short-joins-live", Dead::ShortJoinsLive),
    ("counts-as-live", Dead::CountsAsLive),
];

/// Words for `overlap`.
pub(super) const OVERLAP: [(&str, Overlap); 2] =
    [("each-species", Overlap::EachSpecies), ("once", Overlap::Once)];

/// Words for `side`.
pub(super) const SIDE: [(&str, Side); 2] = [("left", Side::Left), ("right", Side::Right)];

/// Words for everything that a gap can do.
pub(super) const BRIDGE: [(&str, Bridge); 2] = [("bridged", Bridge::Bridged), ("breaks", Bridge::Breaks)];

/// A key or word with its capitals and its choice between `_`, space and `-` evened out.
pub(super) fn plain(text: &str) -> String {
    text.trim().to_lowercase().replace(['_', ' '], "-")
}
