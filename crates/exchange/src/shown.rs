//! What was found, as it may be shown: short, and without characters that steer a screen.

use crate::limits::LONGEST_SHOWN;
use tautline_survey::finding::Finding;
use tautline_survey::message::Value;

/// The text cut where it is long. Control characters are left to whoever shows it.
///
/// # Example
/// ```
/// assert_eq!(tautline_exchange::shown::short("ATCA"), "ATCA");
/// assert_eq!(tautline_exchange::shown::short(&"x".repeat(1000)).chars().count(), 201);
/// ```
pub fn short(text: &str) -> String {
    match text.char_indices().nth(LONGEST_SHOWN) {
        Some((end, _)) => format!("{}…", &text[..end]),
        None => text.to_owned(),
    }
}

/// The same for every text in findings, so that a cell of a megabyte is not kept again in each of them.
pub(crate) fn shorten(findings: &mut [Finding]) {
    for (_, value) in findings.iter_mut().flat_map(|finding| &mut finding.message.values) {
        if let Value::Text(text) = value
            && text.len() > LONGEST_SHOWN
        {
            *text = short(text);
        }
    }
}
