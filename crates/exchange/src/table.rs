//! Delimited text out: comma, CRLF-free lines, quotes where RFC 4180 wants them.

/// One row. A text that a spreadsheet would take for a formula gets an apostrophe in front; numbers don't.
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
    let formula = cell.starts_with(['=', '+', '-', '@', '\t', '\r']) && cell.parse::<f64>().is_err();
    let cell = if formula { format!("'{cell}") } else { cell.to_owned() };
    if cell.contains([',', '"', '\n', '\r']) { format!("\"{}\"", cell.replace('"', "\"\"")) } else { cell }
}
