//! Rows that sum up the rows above them, as spreadsheets have them: no reading, and no line of that name.

/// What an office writes at the head of such a row.
const WORDS: [&str; 18] = [
    "total",
    "totals",
    "grand total",
    "subtotal",
    "line total",
    "total cover",
    "sum",
    "average",
    "average cover",
    "avg",
    "mean",
    "mean cover",
    "suma",
    "promedio",
    "media",
    "total general",
    "cobertura media",
    "cobertura total",
];

/// Whether a cell names a sum or a mean, and nothing that could be read on a tape.
pub(crate) fn sums_up(cell: &str) -> bool {
    let plain = cell.trim().trim_end_matches([':', '.']).replace('-', "").to_lowercase();
    WORDS.contains(&plain.trim())
}

#[cfg(test)]
mod tests {
    use super::sums_up;

    #[test]
    fn sums_and_means_are_told_from_names() {
        for cell in ["Total", "TOTALS:", "Sub-total", "Average cover", "Promedio"] {
            assert!(sums_up(cell), "{cell}");
        }
        for cell in ["", "Total Draw", "TOTA", "1", "Mean Creek", "SUMA2 flat", "@SUM(1)"] {
            assert!(!sums_up(cell), "{cell}");
        }
    }
}
