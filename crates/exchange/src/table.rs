//! Delimited text out: comma, CRLF-free lines, quotes where RFC 4180 wants them.

/// One row. A text that a spreadsheet would take for a formula gets an apostrophe in front; numbers don't. Reading
/// takes the apostrophe off again.
///
/// # Example
/// ```
/// assert_eq!(tautline_exchange::table::row(&["a,b", "=1+1", "-2.5"]), "\"a,b\",'=1+1,-2.5\n");
/// ```
pub fn row<S: AsRef<str>>(cells: &[S]) -> String {
    let cells: Vec<String> = cells.iter().map(|cell| quoted(cell.as_ref())).collect();
    cells.join(",") + "\n"
}

fn quoted(cell: &str) -> String {
    let cell = if is_formula(cell) { format!("'{cell}") } else { cell.to_owned() };
    if cell.contains([',', '"', '\n', '\r']) { format!("\"{}\"", cell.replace('"', "\"\"")) } else { cell }
}

/// Whether a spreadsheet would work the text out instead of showing it; apostrophes in front count as part of it, so
/// that taking one off is the way back.
fn is_formula(cell: &str) -> bool {
    let begin = cell.trim_start_matches('\'');
    let sign = begin.trim_start().starts_with(['=', '+', '-', '@', '＝', '＋', '－', '＠']);
    let sign = sign || begin.starts_with(['\t', '\r']);
    let is_number = cell.bytes().all(|byte| byte.is_ascii_digit() || b"+-.eE".contains(&byte))
        && cell.parse::<f64>().is_ok();
    sign && !is_number
}

/// A cell as it was before it was written: without the apostrophe that keeps a spreadsheet from working it out.
///
/// # Example
/// ```
/// assert_eq!(tautline_exchange::table::plain("'=1+1"), "=1+1");
/// assert_eq!(tautline_exchange::table::plain("'tis"), "'tis");
/// ```
pub fn plain(cell: &str) -> &str {
    cell.strip_prefix('\'').filter(|rest| is_formula(rest)).unwrap_or(cell)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// Whatever stands in cells comes back, white space at their ends aside.
        #[test]
        fn cells_come_back(cells in prop::collection::vec("['=+@ a,\"\n\t\r0-]{0,6}|\\PC{0,4}", 2..5)) {
            let cells: Vec<String> = cells.into_iter().chain(["end".to_owned()]).map(|cell| cell.trim().to_owned()).collect();
            let text = "x,x\n".to_owned() + &row(&cells);
            let read = crate::text::rows(&text);
            prop_assert_eq!(&read.rows[1].1, &cells, "{}", text);
        }

        /// And nothing that is written begins like a formula.
        #[test]
        fn no_cell_is_worked_out(cell in "['=+@ \t\r0-]{0,4}[a-z]?") {
            let written = row(&[cell]);
            let bare = written.trim_start_matches('"');
            prop_assert!(!bare.starts_with(['=', '+', '-', '@', '\t', '\r']) || bare.trim_end().parse::<f64>().is_ok(), "{}", written);
        }
    }
}
