//! A whole sheet, row by row: heads stay in force, lines begin, readings belong to the line above them.

mod heads;
mod lines;

use super::even::even;
use super::head::{Key, KeyRow, key_row};
use super::line::Begun;
use super::scan::{Scan, Slip, Span};
use super::table::{Cell, Says, TypedRow};
use crate::headings::Column;
use std::collections::HashSet;
use tautline_engine::length::{Bare, DecimalMark};
use tautline_survey::finding::{Finding, Place};
use tautline_survey::message::Message;

/// What a sheet says, as the rows of a table of readings.
pub(super) struct Reader<'a> {
    file: &'a str,
    mark: DecimalMark,
    unit: Option<Bare>,
    pub(super) rows: Vec<TypedRow>,
    pub(super) findings: Vec<Finding>,
    head: Head,
    line: Option<Line>,
    lines: HashSet<Vec<String>>,
    /// The row that is being read: its number, and its characters as typed and evened out.
    number: u64,
    typed: Vec<char>,
    even: Vec<char>,
}

/// What the head says of the lines below it.
#[derive(Clone, Default)]
struct Head {
    /// Site, date, reader, recorder, protocol, units and line length: in force until something else is said.
    staying: Vec<(Column, Cell)>,
    /// Stratum, plot and pass: for the lines under this head.
    passing: Vec<(Column, Cell)>,
    conditions: Vec<(String, String)>,
    /// What could not be read in the head, so that the lines below it are to be settled: a column, or a row.
    broken: Vec<Option<Column>>,
}

/// The line that readings now belong to.
struct Line {
    head: Head,
    identity: Vec<(Column, Cell)>,
    /// The species of the row above and whether it was dead throughout; none where that row could not be read.
    above: Option<(String, bool)>,
    /// Readings or an outcome stand below it, so that a head row begins a new head.
    has_rows: bool,
    begun: Begun,
    name: Cell,
    number: u64,
    stage: Stage,
}

/// How far a line has come.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Stage {
    /// Head rows may still speak of it.
    Open,
    /// It has been given to the table, and readings follow.
    Given,
    /// It has no name or stands twice on the sheet; its rows are not read.
    Ignored,
}

const STAYING: [Column; 8] = [
    Column::Site,
    Column::Date,
    Column::Reader,
    Column::Recorder,
    Column::Protocol,
    Column::Unit,
    Column::HeightUnit,
    Column::LineLength,
];

impl<'a> Reader<'a> {
    pub(super) fn new(file: &'a str, mark: DecimalMark, unit: Option<Bare>) -> Self {
        Self {
            file,
            mark,
            unit,
            rows: Vec::new(),
            findings: Vec::new(),
            head: Head::default(),
            line: None,
            lines: HashSet::new(),
            number: 0,
            typed: Vec::new(),
            even: Vec::new(),
        }
    }

    /// Reads the next row of the sheet.
    pub(super) fn row(&mut self, number: u64, text: &str) {
        self.number = number;
        self.typed = text.trim_end().chars().collect();
        self.even = even(&self.typed);
        match self.even.iter().find(|&&c| c != ' ').copied() {
            None | Some('#') => {}
            Some('(') => self.remark(),
            Some(_) if self.line.is_some() && self.told() => {}
            Some(_) => match key_row(&self.even) {
                Some(KeyRow { key: Key::Line, value, .. }) => self.begin(value),
                Some(found) if self.is_head(&found) => self.key(found),
                Some(found) => {
                    self.fault("sheet-species-or-remark", found.name);
                    self.lose_species();
                }
                None => self.readings(),
            },
        }
    }

    /// Reads what is open at the end of the sheet.
    pub(super) fn finish(&mut self) {
        self.put_line_out();
    }

    fn scan(&self) -> Scan<'_> {
        let unit = self.value_of(Column::Unit).and_then(Bare::from_words).or(self.unit);
        Scan { chars: &self.even, bare: unit, mark: self.mark }
    }

    fn value_of(&self, column: Column) -> Option<&str> {
        let head = self.line.as_ref().map_or(&self.head, |line| &line.head);
        let found = head.staying.iter().find(|(own, _)| *own == column);
        found.map(|(_, cell)| cell.text.as_str()).filter(|text| !text.is_empty())
    }

    fn text(&self, span: Span) -> String {
        self.typed[span.0..span.1].iter().collect()
    }

    fn cell(&self, span: Span) -> Cell {
        Cell { text: self.text(span), row: self.number, character: character(span.0) }
    }

    /// A cell as the row evened out has it: numbers, dates, codes. A name in brackets stays as it was typed.
    fn plain_cell(&self, span: Span) -> Cell {
        let in_brackets = span.0 > 0 && self.even[span.0 - 1] == '[';
        let from = if in_brackets { &self.typed } else { &self.even };
        Cell { text: from[span.0..span.1].iter().collect(), row: self.number, character: character(span.0) }
    }

    fn place(&self, at: usize) -> Place {
        Place { file: self.file.to_owned(), row: self.number, column: None, character: Some(character(at)) }
    }

    /// A finding about this row, with the word that is meant or what stands from the slip to the end of its word.
    fn finding(&self, slip: &Slip) -> Finding {
        let blank = |&at: &usize| self.even[at] == ' ';
        let end = (slip.at..self.even.len()).find(blank).unwrap_or(self.even.len());
        let whole_word = [
            "sheet-letter-for-digit",
            "sheet-decimal-mark",
            "sheet-too-many-dashes",
            "sheet-dash-or-fraction",
        ];
        let begin = match slip.code {
            code if whole_word.contains(&code) => (0..slip.at).rfind(blank).map_or(0, |at| at + 1),
            _ => slip.at,
        };
        let end = if slip.code == "sheet-no-numbers" { self.even.len() } else { end };
        let ends = slip.code == "sheet-number-missing" && begin >= self.even.len();
        let code = if ends { "sheet-number-missing-at-end" } else { slip.code };
        self.finding_about(&Slip { code, at: slip.at }, (begin.min(end), end))
    }

    fn finding_about(&self, slip: &Slip, found: Span) -> Finding {
        let message = Message::new(slip.code).with("found", shown(&self.text(found)));
        let message = match self.even.get(slip.at) {
            Some('O' | 'o') => message.with("near", "0"),
            Some('l' | 'I') => message.with("near", "1"),
            _ => message,
        };
        Finding::must_settle(message).at(self.place(slip.at))
    }

    /// Part of this row could not be read: said, and the line it belongs to waits until it is settled.
    fn fault(&mut self, code: &'static str, found: Span) {
        let finding = self.finding_about(&Slip { code, at: found.0 }, found);
        self.lose(finding);
    }

    fn lose(&mut self, finding: Finding) {
        self.put_line_out();
        let Some(line) = &mut self.line else {
            self.head.broken.push(None);
            return self.findings.push(finding);
        };
        line.has_rows = true;
        if line.stage == Stage::Given {
            let cells = line.identity.clone();
            self.rows.push(TypedRow::new(self.number, cells, Says::Fault(Box::new(finding))));
        }
    }
}

fn unit_of(head: &Head, column: Column) -> Option<(Column, Cell)> {
    head.staying.iter().find(|(own, cell)| *own == column && !cell.text.is_empty()).cloned()
}

fn character(at: usize) -> u32 {
    u32::try_from(at.saturating_add(1)).unwrap_or(u32::MAX)
}

/// What was found, with a name for what can't be seen, and cut where it is long.
fn shown(text: &str) -> String {
    let mut chars = text.chars();
    let first = chars.next().unwrap_or(' ');
    if !first.is_alphanumeric() && (first.is_control() || is_unseen(first)) {
        return format!("U+{:04X}", u32::from(first));
    }
    let cut: String = text.chars().take(40).collect();
    if text.chars().count() > 40 { cut + "…" } else { cut }
}

fn is_unseen(c: char) -> bool {
    matches!(c, '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{206f}' | '\u{feff}')
}

/// The mark that the value of `Decimal:` names.
pub(super) fn decimal_mark(value: &str) -> Option<DecimalMark> {
    match value.trim().to_lowercase().as_str() {
        "comma" | "," => Some(DecimalMark::Comma),
        "point" | "." | "dot" => Some(DecimalMark::Point),
        _ => None,
    }
}
