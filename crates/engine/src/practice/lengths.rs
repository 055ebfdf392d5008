//! A sheet of lengths only beside the key.

use crate::length::Length;

/// One length of the key with the one that was written for it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LengthMark {
    /// Of the key.
    pub key: Option<(Option<u32>, Length)>,
    /// Of the sheet.
    pub read: Option<(Option<u32>, Length)>,
    /// Whether they agree within the tolerance.
    pub right: bool,
}

/// Sets lengths, in the order they were walked, beside the key's; rows are paired in order and within their species so
/// that they differ least, and one without a partner counts as differing by its whole length.
///
/// # Source
/// common practice, no source: best assignment in order, by dynamic programming (Needleman and Wunsch 1970)
/// # Example
/// ```
/// use tautline_engine::{length::{Length, Unit}, practice::lengths::grade_lengths};
/// let cm = |n| Length::from_units(n, Unit::Centimetre);
/// let row = |n| (Some(0), cm(n));
/// let marks = grade_lengths(&[row(30), row(5), row(44)], &[row(31), row(44)], cm(1));
/// assert_eq!(marks.iter().filter(|mark| mark.right).count(), 2);
/// assert_eq!(marks[1].read, None);
/// ```
pub fn grade_lengths(
    key: &[(Option<u32>, Length)],
    sheet: &[(Option<u32>, Length)],
    tolerance: Length,
) -> Vec<LengthMark> {
    let (rows, columns) = (key.len(), sheet.len());
    let cost = |a: usize, b: usize| (key[a].1 - sheet[b].1).nanometres().saturating_abs();
    let mut least = vec![vec![0_i64; columns + 1]; rows + 1];
    for a in (0..=rows).rev() {
        for b in (0..=columns).rev() {
            let skip_key = (a < rows).then(|| least[a + 1][b] + key[a].1.nanometres());
            let skip_read = (b < columns).then(|| least[a][b + 1] + sheet[b].1.nanometres());
            let both =
                (a < rows && b < columns && key[a].0 == sheet[b].0).then(|| least[a + 1][b + 1] + cost(a, b));
            least[a][b] = [both, skip_key, skip_read].into_iter().flatten().min().unwrap_or(0);
        }
    }
    let mut marks = Vec::new();
    let (mut a, mut b) = (0, 0);
    while a < rows || b < columns {
        let same = a < rows && b < columns && key[a].0 == sheet[b].0;
        if same && least[a][b] == least[a + 1][b + 1] + cost(a, b) {
            let right = cost(a, b) <= tolerance.nanometres();
            marks.push(LengthMark { key: Some(key[a]), read: Some(sheet[b]), right });
            (a, b) = (a + 1, b + 1);
        } else if a < rows && least[a][b] == least[a + 1][b] + key[a].1.nanometres() {
            marks.push(LengthMark { key: Some(key[a]), read: None, right: false });
            a += 1;
        } else {
            marks.push(LengthMark { key: None, read: Some(sheet[b]), right: false });
            b += 1;
        }
    }
    marks
}
