//! The one list of what the checks can find: code, weight, and what settles it.

use crate::finding::Weight::{self, HaveALook, MustSettle};

/// What settles a finding.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// A person's word that it was looked at and is fine, or a correction of the sheet.
    Word,
    /// Only a correction of the sheet: without it part of the reading can't be used.
    Correction,
}

/// One kind of finding.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Kind {
    /// The stable code: the key of its words, in data, and in `docs/checks.md`.
    pub code: &'static str,
    /// How much it matters.
    pub weight: Weight,
    /// What settles it.
    pub way: Way,
}

const fn must(code: &'static str) -> Kind {
    Kind { code, weight: MustSettle, way: Way::Correction }
}

const fn must_or_word(code: &'static str) -> Kind {
    Kind { code, weight: MustSettle, way: Way::Word }
}

const fn look(code: &'static str) -> Kind {
    Kind { code, weight: HaveALook, way: Way::Word }
}

/// Every kind of finding about readings, in the order in which a person would go through them. Cells, headings and
/// files that can't be read at all have codes of their own, which are said where they stand.
pub const KINDS: [Kind; 41] = [
    // what one row says of itself
    must("stop-before-start"),
    look("zero-length"),
    look("length-zero"),
    must("start-missing"),
    must("stop-missing"),
    must("start-and-stop-missing"),
    must_or_word("start-stop-length-disagree"),
    // the tape
    must("tape-read-backwards"),
    look("tape-laid-the-other-way"),
    must("fits-another-unit"),
    must_or_word("wholly-beyond-the-tape"),
    look("beyond-the-tape"),
    must("wholly-past-the-mark"),
    look("past-the-mark"),
    must("mark-beyond-the-tape"),
    must("line-length-missing"),
    must("line-length-differs"),
    must("plan-differs"),
    must("lengths-pass-the-line"),
    must("positions-and-lengths-mixed"),
    // rows beside each other
    look("overlap-within-species"),
    look("row-written-twice"),
    look("positions-out-of-order"),
    look("positions-fall"),
    look("gaps-under-the-rule"),
    // the pencil
    must_or_word("feet-and-inches-suspected"),
    look("digits-heap"),
    // readings beside each other
    must("line-read-twice"),
    must_or_word("reading-written-twice"),
    must("visit-in-two-files"),
    look("line-far-from-others"),
    // species
    look("species-misspelt"),
    look("species-not-listed"),
    look("species-new-to-site"),
    // what is missing
    look("line-planned-without-record"),
    must("read-but-no-readings"),
    look("date-missing"),
    look("observer-missing"),
    look("outside-the-reading-window"),
    look("permission-missing"),
    look("permission-ended"),
];

/// The kind with this code, if it is one about readings.
pub fn kind(code: &str) -> Option<&'static Kind> {
    KINDS.iter().find(|kind| kind.code == code)
}
