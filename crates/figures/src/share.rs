//! A share of a line, as a picture can show it.

/// A finite share, kept within what a picture can show.
///
/// # Units
/// a share, not per cent: 0.25 is a quarter of the line
/// # Range
/// 0 to 10 (a sum of species can pass 1); a bound below zero or a value above ten is drawn at that end
/// # Example
/// ```
/// use tautline_figures::Share;
/// assert!(Share::new(0.176).is_some());
/// assert!(Share::new(f64::NAN).is_none());
/// ```
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Share(f64);

impl Share {
    /// Nothing of the line.
    pub const ZERO: Self = Self(0.0);

    /// A share; `None` where it is no finite number.
    pub fn new(share: f64) -> Option<Self> {
        share.is_finite().then(|| Self(share.clamp(0.0, 10.0)))
    }

    /// The share in per cent.
    pub(crate) const fn per_cent(self) -> f64 {
        self.0 * 100.0
    }
}
