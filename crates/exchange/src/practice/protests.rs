//! Protests of a class's day as a table: one a row.

use super::place_in;
use crate::text::rows;
use tautline_survey::finding::Finding;
use tautline_survey::message::Message;
use tautline_survey::practice::{Decision, Protest};

/// The columns, in the order in which they are written.
const COLUMNS: [&str; 7] = ["raised by", "line", "row", "about", "decided", "why", "decided by"];

/// Reads a table of protests. A decision that is none of `open`, `upheld` and `turned down` is named with its place, and the protest is
/// kept as open.
///
/// # Example
/// ```
/// use tautline_exchange::practice::{protests, protests_table};
/// let text = "raised by,line,row,about,decided,why,decided by\nAda,3-17,2,the stop is at 17,upheld,the tape had moved,Coach\n";
/// let (read, findings) = protests("protests.csv", text);
/// assert!(findings.is_empty());
/// assert_eq!((read[0].by.as_str(), read[0].decided.word()), ("Ada", "upheld"));
/// assert_eq!(protests_table(&read), text);
/// ```
pub fn protests(file: &str, text: &str) -> (Vec<Protest>, Vec<Finding>) {
    let read = rows(text);
    let place = |row: u64, column: Option<&str>| place_in(file, row, column);
    let headings: Vec<String> = read.rows.first().map_or_else(Vec::new, |(_, cells)| {
        cells.iter().map(|heading| heading.trim().to_lowercase()).collect()
    });
    if !["raised by", "about"].iter().all(|wanted| headings.iter().any(|heading| heading == wanted)) {
        let at = read.rows.first().map_or(1, |(number, _)| *number);
        let finding = Finding::must_settle(Message::new("protests-columns")).at(place(at, None));
        return (Vec::new(), vec![finding]);
    }
    let mut findings = Vec::new();
    let mut all = Vec::new();
    for (number, cells) in read.rows.iter().skip(1) {
        let cell = |wanted: &str| {
            let found = headings.iter().zip(cells).find(|(heading, _)| *heading == wanted);
            found.map_or_else(String::new, |(_, cell)| cell.trim().to_owned())
        };
        let decided = cell("decided");
        let decision = Decision::from_word(&decided);
        if decision.is_none() {
            let message = Message::new("protests-decision").with("found", crate::shown::short(&decided));
            findings.push(Finding::must_settle(message).at(place(*number, Some("decided"))));
        }
        let protest = Protest {
            by: cell("raised by"),
            line: cell("line"),
            row: cell("row"),
            about: cell("about"),
            decided: decision.unwrap_or_default(),
            why: cell("why"),
            judge: cell("decided by"),
        };
        if !protest.is_empty() {
            all.push(protest);
        }
    }
    (all, findings)
}

/// Protests as a table that [`protests`] reads again.
pub fn protests_table(protests: &[Protest]) -> String {
    let mut table = csv::Writer::from_writer(Vec::new());
    // a table in memory takes every row
    let _ = table.write_record(COLUMNS);
    for one in protests {
        let cells = [&one.by, &one.line, &one.row, &one.about, one.decided.word(), &one.why, &one.judge];
        let _ = table.write_record(cells);
    }
    table.into_inner().ok().and_then(|bytes| String::from_utf8(bytes).ok()).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_no_decision_is_named_and_left_open() {
        let (read, findings) =
            protests("p.csv", "Raised by,About,Decided\nAda,row 2,perhaps\n,,\nBen,row 3,Turned Down\n");
        let decided: Vec<Decision> = read.iter().map(|one| one.decided).collect();
        assert_eq!(decided, [Decision::Open, Decision::TurnedDown]);
        let found: Vec<(&str, u64)> =
            findings.iter().map(|one| (one.message.code, one.place.as_ref().unwrap().row)).collect();
        assert_eq!(found, [("protests-decision", 2)]);
        assert_eq!(protests("p.csv", "name,line\n").1[0].message.code, "protests-columns");
    }
}
