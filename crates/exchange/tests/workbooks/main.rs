//! Spreadsheets and packed folders. All data is invented.
//!
//! XLSX is written by a general library, ODS by hand after ISO/IEC 26300-1, so that what is read was not written by what
//! reads it.

#![expect(clippy::unwrap_used, reason = "a test that can't write its file has failed")]

mod hostile;
mod make;
mod ods;
mod packed;
mod xlsx;

use tautline_exchange::{Options, Read, Source, read};
use tautline_survey::measure::Measure;
use tautline_survey::visit::Extent;

fn reads(name: &str, bytes: Vec<u8>) -> Read {
    read(&[Source { name: name.into(), bytes }], &Options::default())
}

/// Code, row and column of every finding.
fn found(read: &Read) -> Vec<(&str, u64, &str)> {
    let findings = read.input.findings.iter();
    findings
        .map(|one| match &one.place {
            Some(place) => (one.message.code, place.row, place.column.as_deref().unwrap_or_default()),
            None => (one.message.code, 0, ""),
        })
        .collect()
}

/// Line, species and the edges in nanometres of every intercept.
fn intercepts(read: &Read) -> Vec<(&str, &str, i64, i64)> {
    let visits = read.input.visits.iter();
    visits
        .flat_map(|visit| visit.intercepts.iter().map(move |one| (visit, one)))
        .map(|(visit, one)| {
            let Extent::Edges { start, stop } = &one.extent else { panic!("edges were written") };
            let nm = |measure: &Measure| measure.length().nanometres();
            (visit.line.as_str(), one.species.as_str(), nm(start), nm(stop))
        })
        .collect()
}

/// An inch in nanometres (1959 agreement: 25.4 mm).
const INCH: i64 = 25_400_000;
