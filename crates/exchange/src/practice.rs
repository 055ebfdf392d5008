//! Sheets of learners and of experts: one intercept a row, in a table with headings; and graded results.

mod protests;
mod results;

pub use protests::{protests, protests_table};
pub use results::results;

use crate::text::rows;
use tautline_engine::length::{Bare, DecimalMark, write};
use tautline_survey::date::Date;
use tautline_survey::finding::{Finding, Place};
use tautline_survey::measure::Measure;
use tautline_survey::message::Message;
use tautline_survey::practice::{LearnerRow, LearnerSheet};

/// What a column holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Holds {
    Name,
    Group,
    Line,
    Date,
    Species,
    Start,
    Stop,
    Length,
    Percent,
}

const HEADINGS: [(Holds, &[&str]); 9] = [
    (Holds::Name, &["name", "learner", "reader"]),
    (Holds::Group, &["group", "team", "class"]),
    (Holds::Line, &["line"]),
    (Holds::Date, &["date"]),
    (Holds::Species, &["species", "code"]),
    (Holds::Start, &["start"]),
    (Holds::Stop, &["stop"]),
    (Holds::Length, &["length"]),
    (Holds::Percent, &["percent", "per cent", "cover"]),
];

struct Column {
    holds: Holds,
    heading: String,
    unit: Option<Bare>,
}

/// A place in a table of practice.
fn place_in(file: &str, row: u64, column: Option<&str>) -> Place {
    Place { file: file.to_owned(), row, column: column.map(str::to_owned), character: None }
}

/// Reads a table of sheets: rows of one name, line and day are one sheet, in the order in which they begin.
///
/// A row that can't be read is named with its place and left out; the others are kept.
///
/// # Example
/// ```
/// let text = "name,line,species,start (in),stop (in),percent\nAda,3-17,FOUR,12,17.5,9.2\nAda,3-17,SHAD,40,52,\n";
/// let (sheets, findings) = tautline_exchange::practice::sheets("class.csv", text);
/// assert_eq!((sheets.len(), sheets[0].rows.len(), findings.len()), (1, 2, 0));
/// assert_eq!(sheets[0].percent.as_deref(), Some("9.2"));
/// ```
pub fn sheets(file: &str, text: &str) -> (Vec<LearnerSheet>, Vec<Finding>) {
    let read = rows(text);
    let place = |row: u64, column: Option<&str>| place_in(file, row, column);
    let mut sheets: Vec<LearnerSheet> = Vec::new();
    let mut findings = Vec::new();
    let Some((heading_row, headings)) = read.rows.first() else {
        let finding = Finding::must_settle(Message::new("practice-columns")).at(place(1, None));
        return (sheets, vec![finding]);
    };
    let columns: Vec<Option<Column>> = headings.iter().map(|heading| column(heading)).collect();
    let has = |wanted: Holds| columns.iter().flatten().any(|column| column.holds == wanted);
    let complete = [Holds::Name, Holds::Line, Holds::Species].into_iter().all(has)
        && (has(Holds::Length) || (has(Holds::Start) && has(Holds::Stop)));
    if !complete {
        let finding = Finding::must_settle(Message::new("practice-columns")).at(place(*heading_row, None));
        return (sheets, vec![finding]);
    }
    for (number, cells) in read.rows.iter().skip(1) {
        let cell = |wanted: Holds| {
            let found = columns.iter().zip(cells).find_map(|(column, cell)| {
                column.as_ref().filter(|column| column.holds == wanted).map(|column| (column, cell.as_str()))
            });
            found.filter(|(_, cell)| !cell.is_empty())
        };
        let text = |wanted: Holds| cell(wanted).map_or("", |(_, cell)| cell).to_owned();
        let about = |(column, found): (&Column, &str), code: &'static str| {
            let message = Message::new(code).with("found", crate::shown::short(found));
            Finding::must_settle(message).at(place(*number, Some(&column.heading)))
        };
        let day = cell(Holds::Date);
        let date = day.and_then(|(_, found)| Date::read(found));
        if let Some(not_a_day) = day.filter(|_| date.is_none()) {
            findings.push(about(not_a_day, "practice-cell-date"));
            continue;
        }
        let (name, line) = (text(Holds::Name), text(Holds::Line));
        let same = |sheet: &LearnerSheet| sheet.name == name && sheet.line == line && sheet.date == date;
        let at = sheets.iter().position(same).unwrap_or_else(|| {
            sheets.push(LearnerSheet {
                name: name.clone(),
                group: text(Holds::Group),
                line: line.clone(),
                date,
                rows: Vec::new(),
                percent: None,
                place: Some(place(*number, None)),
            });
            sheets.len() - 1
        });
        if let Some((_, percent)) = cell(Holds::Percent) {
            sheets[at].percent = Some(percent.to_owned());
        }
        let measure = |wanted: Holds| {
            let (column, found) = cell(wanted)?;
            let read = Measure::read(found, column.unit, DecimalMark::Point);
            Some(read.map_err(|_| about((column, found), "practice-cell-length")))
        };
        let lengths = [Holds::Start, Holds::Stop, Holds::Length].map(measure);
        match row(lengths, &text(Holds::Species)) {
            Ok(Some(row)) if row.edges.is_some() && row.stretch().is_none() => {
                let finding = Finding::must_settle(Message::new("practice-cell-edges"));
                findings.push(finding.at(place(*number, None)));
            }
            Ok(row) => sheets[at].rows.extend(row),
            Err(finding) => findings.push(finding),
        }
    }
    (sheets, findings)
}

/// One intercept; nothing where a row only says who read which line, which is a line with nothing on it.
fn row(
    [start, stop, length]: [Option<Result<Measure, Finding>>; 3],
    species: &str,
) -> Result<Option<LearnerRow>, Finding> {
    let species = species.to_owned();
    Ok(match (start.transpose()?, stop.transpose()?, length.transpose()?) {
        (Some(start), Some(stop), _) => {
            Some(LearnerRow { species, edges: Some((start, stop)), length: None })
        }
        (None, None, Some(length)) => Some(LearnerRow { species, edges: None, length: Some(length) }),
        _ => None,
    })
}

fn column(heading: &str) -> Option<Column> {
    let (name, unit) = heading.split_once(['(', '[']).unwrap_or((heading, ""));
    let name = name.trim().to_lowercase();
    let (holds, _) = HEADINGS.iter().find(|(_, names)| names.contains(&name.as_str()))?;
    let unit = Bare::from_words(unit.trim_end_matches([')', ']']));
    Some(Column { holds: *holds, heading: heading.to_owned(), unit })
}

/// Sheets as a table that [`sheets`] reads again, every length as it was typed.
///
/// # Example
/// ```
/// use tautline_exchange::practice::{sheets, table};
/// let text = "name,line,species,start (in),stop (in),percent\nAda,3-17,FOUR,12,17.5,9.2\n";
/// let again = table(&sheets("class.csv", text).0);
/// assert_eq!(again.lines().last(), Some("Ada,,3-17,,FOUR,12 in,17.5 in,,9.2"));
/// ```
pub fn table(sheets: &[LearnerSheet]) -> String {
    let mut table = csv::Writer::from_writer(Vec::new());
    let mut put = |cells: [&str; 9]| {
        // a table in memory takes every row
        let _ = table.write_record(cells);
    };
    put(["name", "group", "line", "date", "species", "start", "stop", "length", "percent"]);
    for sheet in sheets {
        let date = sheet.date.map_or_else(String::new, |date| date.to_string());
        let percent = sheet.percent.as_deref().unwrap_or_default();
        let head = [sheet.name.as_str(), &sheet.group, &sheet.line, &date];
        let mut row = |species: &str, [start, stop, length]: [&str; 3]| {
            let [name, group, line, date] = head;
            put([name, group, line, date, species, start, stop, length, percent]);
        };
        for one in &sheet.rows {
            let (start, stop) =
                one.edges.as_ref().map(|(start, stop)| (typed(start), typed(stop))).unwrap_or_default();
            let length = one.length.as_ref().map(typed).unwrap_or_default();
            row(&one.species, [&start, &stop, &length]);
        }
        if sheet.rows.is_empty() {
            row("", [""; 3]);
        }
    }
    table.into_inner().ok().and_then(|bytes| String::from_utf8(bytes).ok()).unwrap_or_default()
}

/// A length as typed, with its unit where the heading had it.
fn typed(measure: &Measure) -> String {
    let typed = measure.typed();
    match measure.unit() {
        Some(Bare::Unit(unit)) if Measure::read(typed, None, DecimalMark::Point).is_err() => {
            format!("{typed} {}", unit.symbol())
        }
        Some(_) if Measure::read(typed, None, DecimalMark::Point).is_err() => {
            write(measure.length(), measure.notation())
        }
        _ => typed.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_can_t_be_read_is_named_and_the_rest_kept() {
        let text = "name,line,date,species,start (cm),stop (cm)\n\
                    Ada,2-1,2026-06-01,FOUR,12,abc\nAda,2-1,2026-06-01,FOUR,30,20\nAda,2-1,2026-06-01,SHAD,40,52\n\
                    Ben,2-1,soon,FOUR,1,2\nCy,2-1,2026-06-01,,,\n";
        let (sheets, findings) = sheets("class.csv", text);
        let codes: Vec<(&str, u64)> =
            findings.iter().map(|one| (one.message.code, one.place.as_ref().unwrap().row)).collect();
        assert_eq!(
            codes,
            [("practice-cell-length", 2), ("practice-cell-edges", 3), ("practice-cell-date", 5)]
        );
        let read: Vec<(&str, usize)> = sheets.iter().map(|one| (one.name.as_str(), one.rows.len())).collect();
        assert_eq!(read, [("Ada", 1), ("Cy", 0)]);
        assert_eq!(super::sheets("class.csv", "a,b\n1,2\n").1[0].message.code, "practice-columns");
        assert_eq!(super::sheets("class.csv", "").1[0].message.code, "practice-columns");
    }
}
