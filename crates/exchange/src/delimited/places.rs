//! What rows say of a site as a whole and of where a line lies: in a table of sites, of lines or of readings.

use super::cells::Row;
use super::{Options, Sheet};
use crate::headings::Column;
use tautline_survey::finding::{Finding, Weight};
use tautline_survey::input::Input;
use tautline_survey::message::Message;
use tautline_survey::place::{LinePlace, Openness, Position, Site};

pub(super) fn sites(sheet: &Sheet, options: &Options, input: &mut Input) {
    for row in sheet.rows() {
        match row.site(options) {
            Some(site) => self::site(&row, &site, input),
            None => input.findings.push(row.about(Column::Site, "site-missing")),
        }
    }
}

/// Ownership, nests, and how much of the places is told. Where two rows differ, nothing is told.
pub(super) fn site(row: &Row, site: &str, input: &mut Input) {
    let columns = [Column::Ownership, Column::Nest, Column::Places];
    if columns.iter().all(|&column| row.text(column).is_empty()) {
        return;
    }
    let nest = match row.text(Column::Nest).to_lowercase().as_str() {
        "" | "no" | "n" | "false" => false,
        "yes" | "y" | "true" => true,
        _ => {
            // taken for a nest until somebody says: what is told can't be taken back
            input.findings.push(row.about(Column::Nest, "nest-not-known"));
            true
        }
    };
    let places = match row.text(Column::Places) {
        "" => None,
        text => Some(Openness::read(text).unwrap_or_else(|| {
            input.findings.push(row.about(Column::Places, "places-not-known"));
            Openness::Withheld
        })),
    };
    let read =
        Site { site: site.to_owned(), ownership: row.text(Column::Ownership).to_owned(), nest, places };
    let Some(known) = input.sites.iter_mut().find(|known| known.site == site) else {
        return input.sites.push(read);
    };
    let unlike = |one: &str, other: &str| !one.is_empty() && !other.is_empty() && one != other;
    let unlike = unlike(&known.ownership, &read.ownership)
        || (known.places.is_some() && read.places.is_some() && known.places != read.places);
    if known.ownership.is_empty() {
        known.ownership = read.ownership;
    }
    known.nest |= read.nest;
    known.places = if unlike { Some(Openness::Withheld) } else { known.places.or(read.places) };
    let finding = row.about(Column::Site, "site-differs");
    if unlike && !input.findings.iter().any(|told| told.message == finding.message) {
        input.findings.push(finding);
    }
}

/// Where a line lies; the first row that says so is kept. No cover hangs on it, so that nothing is held back for it.
pub(super) fn line(row: &Row, site: &str, line: &str, input: &mut Input) {
    let read = |north, east| -> Result<Option<Position>, Finding> {
        let [latitude, longitude] = [row.text(north), row.text(east)];
        if latitude.is_empty() && longitude.is_empty() {
            return Ok(None);
        }
        let column = if latitude.is_empty() { north } else { east };
        let position = Position::read(latitude, longitude, row.sheet.mark());
        let finding =
            || Finding { weight: Weight::HaveALook, ..row.about(column, "position-not-understood") };
        position.map(Some).ok_or_else(finding)
    };
    let start = read(Column::StartLatitude, Column::StartLongitude);
    let end = read(Column::EndLatitude, Column::EndLongitude);
    let found = match (start, end) {
        (Ok(None), Ok(None)) => return,
        (Ok(Some(start)), Ok(end)) => LinePlace { site: site.to_owned(), line: line.to_owned(), start, end },
        (Ok(None), Ok(Some(_))) => {
            let finding = row.about(Column::StartLatitude, "end-without-start");
            return input.findings.push(Finding { weight: Weight::HaveALook, ..finding });
        }
        (Err(finding), _) | (_, Err(finding)) => return input.findings.push(finding),
    };
    match input.places.iter().find(|known| known.site == site && known.line == line) {
        None => input.places.push(found),
        Some(known) if *known != found => {
            let message = Message::new("place-differs").with("site", site).with("line", line);
            let finding = Finding::have_a_look(message).at(row.place(Column::StartLatitude));
            if !input.findings.iter().any(|told| told.message == finding.message) {
                input.findings.push(finding);
            }
        }
        Some(_) => {}
    }
}
