//! Lines and the readings below them.

use super::{Line, Reader, STAYING, Stage, character, unit_of};
use crate::headings::Column;
use crate::sheet::line::{Begun, Told, begun, told};
use crate::sheet::row::{Stretch, row};
use crate::sheet::scan::{Piece, Scan, Slip, Span};
use crate::sheet::table::{Cell, Says, TypedRow};
use tautline_engine::length::Bare;
use tautline_survey::finding::{Finding, Place, Weight};
use tautline_survey::message::Message;
use tautline_survey::visit::NOT_READ_WHY;

impl Reader<'_> {
    pub(super) fn begin(&mut self, value: Span) {
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

    pub(super) fn scan_of_head(&self) -> Scan<'_> {
        let unit = self.head.staying.iter().find(|(column, _)| *column == Column::Unit);
        let unit = unit.and_then(|(_, cell)| Bare::from_words(&cell.text)).or(self.unit);
        Scan { chars: &self.even, bare: unit, mark: self.mark }
    }

    /// Gives the open line to the table, once: what is said of a whole line stands at its first row.
    pub(super) fn put_line_out(&mut self) {
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
    pub(super) fn tell(&mut self, at: usize, told: Told) {
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
    pub(super) fn told(&mut self) -> bool {
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

    pub(super) fn readings(&mut self) {
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

    pub(super) fn lose_species(&mut self) {
        if let Some(line) = &mut self.line {
            line.above = None;
        }
    }

    pub(super) fn stretch(&self, line: &Line, species: &str, stretch: &Stretch) -> TypedRow {
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
