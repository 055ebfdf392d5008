//! A whole sheet, row by row: heads stay in force, lines begin, readings belong to the line above them.

use super::even::even;
use super::head::{Key, KeyRow, key_row};
use super::line::{Begun, Told, begun, told};
use super::row::{Stretch, row};
use super::scan::{Piece, Scan, Slip, Span};
use super::table::{Cell, Says, TypedRow};
use crate::headings::Column;
use std::collections::HashSet;
use tautline_engine::length::{Bare, DecimalMark};
use tautline_survey::date::Date;
use tautline_survey::finding::{Finding, Place, Weight};
use tautline_survey::message::Message;
use tautline_survey::near::changes;

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

/// Keys that a slip of the hand is recognised for.
const ASKED_ABOUT: [&str; 10] = [
    "site",
    "date",
    "reader",
    "observer",
    "recorder",
    "protocol",
    "unit",
    "stratum",
    "line length",
    "decimal",
];

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

    /// Whether a row with a colon is a head row: not where a species may be meant, as in `ATCA: 12-14` on a line.
    fn is_head(&self, found: &KeyRow) -> bool {
        let value = &self.even[found.value.0..found.value.1];
        let number = value.first().is_some_and(|c| c.is_ascii_digit() || matches!(c, '.' | '-'));
        found.key != Key::Condition || self.line.is_none() || !number
    }

    /// A row in brackets: a remark on the line above it, or on the lines below this head.
    fn remark(&mut self) {
        let begin = self.even.iter().position(|&c| c == '(').map_or(0, |at| at + 1);
        let end = self.even.iter().rposition(|&c| c == ')').filter(|&at| at >= begin);
        let text = self.text((begin, end.unwrap_or(self.even.len()))).trim().to_owned();
        self.condition(Column::Note.heading().to_owned(), text);
    }

    fn condition(&mut self, name: String, value: String) {
        if value.is_empty() {
            return;
        }
        match &mut self.line {
            Some(line) if line.stage == Stage::Given => {
                let mut row = TypedRow::new(self.number, line.identity.clone(), Says::Line);
                row.conditions.push((name, value));
                self.rows.push(row);
            }
            Some(line) => line.head.conditions.push((name, value)),
            None => self.head.conditions.push((name, value)),
        }
    }

    fn key(&mut self, found: KeyRow) {
        let KeyRow { key, name, value } = found;
        let slip = |code| Slip { code, at: value.0.min(name.0.max(value.0)) };
        match key {
            Key::Line => {}
            Key::NotHere => self.fault("sheet-key-not-here", name),
            // it was looked for before anything was read
            Key::Decimal => {
                if decimal_mark(&self.text(value)) != Some(self.mark) {
                    self.fault("sheet-decimal-mark-not-clear", value);
                }
            }
            Key::Condition => {
                self.ask_about(name);
                let (name, value) = (self.text(name), self.text(value));
                self.condition(name, value);
            }
            Key::Of(column) => {
                self.open_head(column);
                let text = self.plain_cell(value).text;
                let sound = match column {
                    Column::Date => text.is_empty() || Date::read(&text).is_some(),
                    Column::Unit | Column::HeightUnit => text.is_empty() || Bare::from_words(&text).is_some(),
                    _ => true,
                };
                let is_name =
                    matches!(column, Column::Site | Column::Reader | Column::Recorder | Column::Protocol);
                let cell = if is_name { self.cell(value) } else { self.plain_cell(value) };
                let head = self.line.as_mut().map_or(&mut self.head, |line| &mut line.head);
                let kept = if STAYING.contains(&column) { &mut head.staying } else { &mut head.passing };
                kept.retain(|(own, _)| *own != column);
                head.broken.retain(|own| *own != Some(column));
                if sound {
                    kept.push((column, cell));
                } else {
                    head.broken.push(Some(column));
                    let code = if column == Column::Date { "date-not-understood" } else { "unit-not-known" };
                    let finding = self.finding_about(&slip(code), value);
                    self.findings.push(finding);
                }
            }
        }
    }

    /// A key that is nobody's may be a slip of one that is.
    fn ask_about(&mut self, name: Span) {
        let plain: String = self.even[name.0..name.1].iter().collect::<String>().to_lowercase();
        let close =
            |known: &&str| plain.chars().count() < 40 && changes(&plain, known) <= 1 + known.len() / 7;
        if let Some(near) = ASKED_ABOUT.into_iter().find(close) {
            let finding = self.finding_about(&Slip { code: "sheet-key-misspelt", at: name.0 }, name);
            let message = finding.message.clone().with("key", near);
            self.findings.push(Finding { weight: Weight::HaveALook, message, ..finding });
        }
    }

    /// A head row below readings begins a new head, and a site always does; right below a line it speaks of that
    /// line alone.
    fn open_head(&mut self, column: Column) {
        let begins = self
            .line
            .as_ref()
            .is_some_and(|line| line.has_rows || line.stage != Stage::Open || column == Column::Site);
        if begins {
            self.put_line_out();
            self.line = None;
            self.head.passing.clear();
            self.head.conditions.clear();
            self.head.broken.retain(Option::is_some);
        }
    }

    fn begin(&mut self, value: Span) {
        self.put_line_out();
        let begun = begun(&self.scan_of_head(), value);
        let named = begun.name.0 < begun.name.1;
        if !named {
            let slip = begun.slips[0].clone();
            let finding = self.finding(&slip);
            self.findings.push(finding);
        }
        let line = Line {
            head: self.head.clone(),
            identity: Vec::new(),
            above: Some((String::new(), false)),
            has_rows: begun.told.is_some(),
            name: self.plain_cell(begun.name),
            number: self.number,
            // without a name there is nothing that its readings could belong to
            stage: if named { Stage::Open } else { Stage::Ignored },
            begun: Begun::default(),
        };
        let slips: Vec<Finding> = begun.slips.iter().map(|slip| self.finding(slip)).collect();
        let told = begun.told;
        let own = [
            (Column::LineLength, begun.length),
            (Column::Stratum, begun.stratum),
            (Column::Plot, begun.plot),
            (Column::Slope, begun.slope),
            (Column::Pass, begun.pass),
        ];
        let own = own.map(|(column, span)| (column, span.map(|span| self.plain_cell(span))));
        self.line = Some(Line { begun, ..line });
        if !named {
            return;
        }
        if let Some(line) = &mut self.line {
            for (column, cell) in own {
                let Some(cell) = cell else { continue };
                let kept =
                    if STAYING.contains(&column) { &mut line.head.staying } else { &mut line.head.passing };
                kept.retain(|(own, _)| *own != column);
                kept.push((column, cell));
            }
        }
        for finding in slips {
            self.lose(finding);
        }
        if let Some((at, told)) = told {
            self.tell(at, told);
        }
    }

    fn scan_of_head(&self) -> Scan<'_> {
        let unit = self.head.staying.iter().find(|(column, _)| *column == Column::Unit);
        let unit = unit.and_then(|(_, cell)| Bare::from_words(&cell.text)).or(self.unit);
        Scan { chars: &self.even, bare: unit, mark: self.mark }
    }

    /// Gives the open line to the table, once: what is said of a whole line stands at its first row.
    fn put_line_out(&mut self) {
        let Some(line) = self.line.as_mut().filter(|line| line.stage == Stage::Open) else { return };
        line.stage = Stage::Given;
        let of = |column: Column| {
            let both = line.head.staying.iter().chain(&line.head.passing);
            both.filter(|(own, cell)| *own == column && !cell.text.is_empty())
                .map(|(_, cell)| cell.clone())
                .next()
        };
        let identity =
            [Column::Site, Column::Date, Column::Reader, Column::Recorder, Column::Pass, Column::Protocol];
        line.identity = identity.into_iter().filter_map(|column| Some((column, of(column)?))).collect();
        line.identity.push((Column::Line, line.name.clone()));
        let told = line.begun.told.map(|(_, told)| told);
        let key: Vec<String> =
            line.identity.iter().map(|(column, cell)| format!("{column:?} {}", cell.text)).collect();
        let number = line.number;
        if !self.lines.insert(key) && told != Some(Told::Continued) {
            line.stage = Stage::Ignored;
            let place = Place {
                file: self.file.to_owned(),
                row: number,
                column: None,
                character: Some(line.name.character),
            };
            let message = Message::new("sheet-line-twice").with("found", line.name.text.as_str());
            let finding = Finding::must_settle(message).at(place);
            self.rows.push(TypedRow::new(number, line.identity.clone(), Says::Fault(Box::new(finding))));
            return;
        }
        let mut cells = line.identity.clone();
        for column in [Column::LineLength, Column::Stratum, Column::Plot, Column::Slope] {
            cells.extend(of(column).map(|cell| (column, cell)));
        }
        let says = if told == Some(Told::Planned) { Says::Plan } else { Says::Line };
        let mut row = TypedRow::new(number, cells, says);
        row.conditions.clone_from(&line.head.conditions);
        self.rows.push(row);
        if !line.head.broken.is_empty() {
            self.rows.push(TypedRow::new(number, line.identity.clone(), Says::Broken));
        }
    }

    /// What a row says of how far its line was read.
    fn tell(&mut self, at: usize, told: Told) {
        self.put_line_out();
        let Some(line) = self.line.as_mut().filter(|line| line.stage == Stage::Given) else { return };
        line.has_rows = true;
        let mut cells = line.identity.clone();
        let word = |text: &str| Cell { text: text.to_owned(), row: self.number, character: character(at) };
        let mut conditions = Vec::new();
        match told {
            Told::Nothing => cells.push((Column::Outcome, word("nothing found"))),
            Told::NotRead(reason) => {
                cells.push((Column::Outcome, word("not read")));
                let reason = reason.map(|span| self.typed[span.0..span.1].iter().collect::<String>());
                conditions.extend(
                    reason.filter(|text| !text.is_empty()).map(|text| (NOT_READ_WHY.to_owned(), text)),
                );
            }
            Told::ReadTo(to) => {
                cells.push((Column::Outcome, word("partly read")));
                let text = self.even[to.0..to.1].iter().collect();
                cells.push((Column::ReadTo, Cell { text, row: self.number, character: character(to.0) }));
                cells.extend(unit_of(&line.head, Column::Unit));
            }
            Told::Planned | Told::Continued => return,
        }
        let mut row = TypedRow::new(self.number, cells, Says::Line);
        row.conditions = conditions;
        self.rows.push(row);
    }

    /// Reads a row such as `nothing` or `read to 24 m`, if it is one.
    fn told(&mut self) -> bool {
        let begin = self.even.iter().position(|&c| c != ' ').unwrap_or(0);
        match told(&self.scan(), (begin, self.even.len())) {
            Ok(Some(told)) => self.tell(begin, told),
            Ok(None) => return false,
            Err(slip) => {
                let finding = self.finding(&slip);
                self.lose(finding);
            }
        }
        true
    }

    fn readings(&mut self) {
        let begin = self.even.iter().position(|&c| c != ' ').unwrap_or(0);
        let whole = (begin, self.even.len());
        if self.line.is_none() {
            let stretches = row(&self.scan(), false).stretches;
            // a title may well end in a number; edges joined by a dash were read somewhere
            let read = stretches.iter().any(|stretch| matches!(stretch.piece, Piece::Edges { .. }));
            let code = if read { "sheet-before-first-line" } else { "sheet-row-not-understood" };
            let finding = self.finding_about(&Slip { code, at: begin }, whole);
            if read {
                self.lose(finding);
            } else {
                self.findings.push(Finding { weight: Weight::HaveALook, ..finding });
            }
            return;
        }
        self.put_line_out();
        let Some(line) = self.line.as_ref().filter(|line| line.stage == Stage::Given) else { return };
        let found = row(&self.scan(), line.above.as_ref().is_some_and(|(_, dead)| *dead));
        let species = match (found.species, &line.above) {
            (Some(name), _) => self.plain_cell(name).text,
            (None, Some((above, _))) => above.clone(),
            (None, None) => return self.fault("sheet-species-above", whole),
        };
        let is_lost = found.species.is_none() && found.stretches.is_empty();
        let rows: Vec<TypedRow> =
            found.stretches.iter().map(|stretch| self.stretch(line, &species, stretch)).collect();
        self.rows.extend(rows);
        if let Some(line) = &mut self.line {
            line.has_rows = true;
            line.above = (!is_lost).then_some((species, found.dead));
        }
        for slip in found.slips {
            let finding = self.finding(&slip);
            self.lose(finding);
        }
    }

    fn lose_species(&mut self) {
        if let Some(line) = &mut self.line {
            line.above = None;
        }
    }

    fn stretch(&self, line: &Line, species: &str, stretch: &Stretch) -> TypedRow {
        let mut cells = line.identity.clone();
        let begin = match &stretch.piece {
            Piece::Edges { start, start_text, stop } => {
                let start_cell = Cell { text: start_text.clone(), ..self.plain_cell(*start) };
                cells.extend([(Column::Start, start_cell), (Column::Stop, self.plain_cell(*stop))]);
                start.0
            }
            Piece::Length(length) => {
                cells.push((Column::Length, self.plain_cell(*length)));
                length.0
            }
        };
        let at = |text: &str| Cell { text: text.to_owned(), row: self.number, character: character(begin) };
        cells.push((Column::Species, at(species)));
        if stretch.dead {
            cells.push((Column::State, at("dead")));
        }
        cells.extend(stretch.plant.map(|span| (Column::Plant, self.plain_cell(span))));
        cells.extend(stretch.height.map(|span| (Column::Height, self.plain_cell(span))));
        cells.extend(stretch.width.map(|span| (Column::Width, self.plain_cell(span))));
        cells.extend(stretch.note.map(|span| (Column::Note, self.cell(span))));
        cells.extend(
            [Column::Unit, Column::HeightUnit].into_iter().filter_map(|unit| unit_of(&line.head, unit)),
        );
        TypedRow::new(self.number, cells, Says::Reading)
    }
}

/// The name of the condition that says why a line was not read.
pub(super) const NOT_READ_WHY: &str = "why not read";

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
