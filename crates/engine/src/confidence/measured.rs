//! How often the default interval holds the truth where lines or intercepts are few, as measured.

/// What the simulation measured for surveys like one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measured {
    /// Lowest coverage of a 90 % interval, over all simulated stands and lengths of line.
    pub lowest: f64,
    /// Highest.
    pub highest: f64,
}

/// Lines and intercepts from which 90 % intervals hold the truth in 88 to 93 % of surveys.
pub const ENOUGH: (usize, usize) = (8, 25);

/// Upper ends of the classes of intercepts; the last class is open.
pub const CLASSES: [usize; 4] = [3, 6, 12, 25];

/// Lowest and highest coverage in thousandths for each class of intercepts; none where no simulated survey falls into
/// the class.
pub type Classes = [Option<(u16, u16)>; CLASSES.len() + 1];

/// What was measured, by the number of lines. Made by `cargo run --release -p tautline-trials -- --table`.
#[rustfmt::skip]
pub const TABLE: [(usize, Classes); 7] = [
    (2, [Some((174, 887)), Some((662, 909)), Some((827, 913)), Some((898, 912)), Some((891, 909))]),
    (3, [Some((250, 893)), Some((646, 941)), Some((847, 945)), Some((900, 946)), Some((896, 934))]),
    (5, [Some((376, 906)), Some((705, 950)), Some((802, 943)), Some((904, 938)), Some((897, 924))]),
    (8, [Some((523, 904)), Some((764, 947)), Some((835, 940)), Some((908, 931)), Some((896, 924))]),
    (12, [Some((670, 903)), Some((772, 941)), Some((856, 943)), Some((907, 931)), Some((893, 921))]),
    (20, [None, Some((819, 945)), Some((898, 939)), Some((908, 926)), Some((895, 917))]),
    (30, [None, None, Some((894, 936)), Some((905, 923)), Some((894, 914))]),
];

/// How often 90 % intervals by [`Method::LogitEffective`](super::Method) hold the true cover in simulated surveys of so
/// many lines that meet so many intercepts on average.
///
/// The next smaller number of lines is taken where a number isn't in the table, and the nearest class of intercepts where
/// none was simulated, the lower first. A survey without an interval counts as a miss.
///
/// # Range
/// nothing with [`ENOUGH`] of both, where 90 % is about right; nothing for a single line, which has no interval
/// # Source
/// docs/intervals.md, from docs/intervals.csv
pub fn coverage_where_few(lines: usize, intercepts: usize) -> Option<Measured> {
    if lines >= ENOUGH.0 && intercepts >= ENOUGH.1 {
        return None;
    }
    let (_, classes) = TABLE.iter().rev().find(|(least, _)| *least <= lines)?;
    let class = CLASSES.iter().position(|&below| intercepts < below).unwrap_or(CLASSES.len());
    let found = classes[..=class].iter().rev().chain(&classes[class..]).find_map(|cell| *cell)?;
    let share = |thousandths: u16| f64::from(thousandths) / 1000.0;
    Some(Measured { lowest: share(found.0), highest: share(found.1) })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn enough_of_both_needs_no_caution() {
        assert_eq!(coverage_where_few(8, 25), None);
        assert_eq!(coverage_where_few(1, 40), None);
        for (lines, intercepts) in [(7, 400), (30, 24), (2, 0), (100, 1), (3, 5)] {
            assert!(coverage_where_few(lines, intercepts).is_some(), "{lines} {intercepts}");
        }
        assert_eq!(coverage_where_few(4, 5), coverage_where_few(3, 5));
    }
}
