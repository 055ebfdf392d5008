//! Where on the tape a line changed: canopy gained, lost and kept, exactly.

use crate::length::Length;
use crate::stretch::{Stretch, total, union, without};

/// Two readings of one staked line, laid over each other.
///
/// The lengths are whole, so what was gained less what was lost is the net change to the last nanometre.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Turnover {
    /// Under canopy at the later visit alone.
    pub gained: Vec<Stretch>,
    /// Under canopy at the earlier visit alone.
    pub lost: Vec<Stretch>,
    /// Under canopy at both.
    pub kept: Vec<Stretch>,
}

impl Turnover {
    /// Later canopy less earlier canopy.
    pub fn net(&self) -> Length {
        total(&self.gained) - total(&self.lost)
    }

    /// Canopy that came or went: large where a line stays as it is only on balance.
    pub fn turned_over(&self) -> Length {
        total(&self.gained) + total(&self.lost)
    }
}

/// Lays two readings of one line over each other.
///
/// gained = later ∖ earlier; lost = earlier ∖ later; kept = earlier ∩ later.
///
/// # Units
/// Whole nanometres.
///
/// # Source
/// Common practice, no source: set arithmetic on the tape
///
/// # Example
/// Invented: a shrub that grew by 5 cm at its far edge, and one that died.
/// ```
/// use tautline_engine::change::tape::turnover;
/// use tautline_engine::length::{Length, Unit};
/// use tautline_engine::stretch::{Stretch, total};
/// let at = |cm| Length::from_units(cm, Unit::Centimetre);
/// let shrub = |from, to| Stretch::new(at(from), at(to)).unwrap();
/// let change = turnover(&[shrub(10, 40), shrub(90, 100)], &[shrub(10, 45)]);
/// assert_eq!(change.gained, [shrub(40, 45)]);
/// assert_eq!(change.lost, [shrub(90, 100)]);
/// assert_eq!(total(&change.kept), at(30));
/// assert_eq!(change.net(), at(5) - at(10));
/// ```
pub fn turnover(earlier: &[Stretch], later: &[Stretch]) -> Turnover {
    let (earlier, later) = (union(earlier.iter().copied()), union(later.iter().copied()));
    let lost = without(&earlier, &later);
    Turnover { gained: without(&later, &earlier), kept: without(&earlier, &lost), lost }
}
