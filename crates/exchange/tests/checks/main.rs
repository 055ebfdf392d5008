//! What the checks say of sheets: each slip by its own check, and of clean sheets next to nothing.

#![expect(clippy::unwrap_used, reason = "a test that can't read its own sheets has failed")]

mod clean;
mod laws;
mod settled;
mod slips;

use tautline_exchange::{Options, Source};
use tautline_survey::check::check;
use tautline_survey::finding::Finding;
use tautline_survey::input::Input;

/// Sheets by name, read and looked through.
pub(crate) fn looked_through(sheets: &[(&str, &str)]) -> Input {
    let sources: Vec<Source> = sheets
        .iter()
        .map(|(name, text)| Source { name: (*name).to_owned(), bytes: text.as_bytes().to_vec() })
        .collect();
    let mut input = tautline_exchange::read(&sources, &Options::default()).input;
    check(&mut input);
    input
}

/// One sheet, read and looked through.
pub(crate) fn sheet(text: &str) -> Input {
    looked_through(&[("sheet.csv", text)])
}

/// The findings of one code.
pub(crate) fn of<'a>(input: &'a Input, code: &str) -> Vec<&'a Finding> {
    input.findings.iter().filter(|finding| finding.message.code == code).collect()
}

/// Code and row of every finding, in order of row.
pub(crate) fn codes(input: &Input) -> Vec<(&'static str, u64)> {
    let row = |finding: &Finding| finding.place.as_ref().map_or(0, |place| place.row);
    let mut codes: Vec<_> = input.findings.iter().map(|one| (one.message.code, row(one))).collect();
    codes.sort_by_key(|&(code, row)| (row, code));
    codes
}
