//! The smallest whole number that does, where more always does at least as well.

/// The smallest number from `least` to `most` for which `does` holds; `None` where not even `most` does.
///
/// # Range
/// `does` must hold for every number above one for which it holds.
pub(super) fn smallest(least: usize, most: usize, does: impl Fn(usize) -> bool) -> Option<usize> {
    let (mut below, mut step, mut at) = (least.saturating_sub(1), 1, least);
    while !does(at) {
        if at >= most {
            return None;
        }
        below = at;
        at = most.min(at.saturating_add(step));
        step *= 2;
    }
    while at - below > 1 {
        let middle = below + (at - below) / 2;
        if does(middle) {
            at = middle;
        } else {
            below = middle;
        }
    }
    Some(at)
}

/// More units than anybody reads at one site.
pub(super) const MOST_UNITS: usize = 1_000_000;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_answer_is_found() {
        for wanted in 2..70 {
            assert_eq!(smallest(2, 100, |n| n >= wanted), Some(wanted));
        }
        assert_eq!(smallest(2, 100, |_| false), None);
        assert_eq!(smallest(2, 100, |_| true), Some(2));
        assert_eq!(smallest(2, 100, |n| n >= 100), Some(100));
    }
}
