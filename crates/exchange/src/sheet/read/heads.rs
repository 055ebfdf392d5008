//! Head rows and remarks: what each speaks of, and when a new head begins.

use super::{Reader, STAYING, Stage, decimal_mark};
use crate::headings::Column;
use crate::sheet::head::{Key, KeyRow};
use crate::sheet::scan::{Slip, Span};
use crate::sheet::table::{Says, TypedRow};
use tautline_engine::length::Bare;
use tautline_survey::date::Date;
use tautline_survey::finding::{Finding, Weight};
use tautline_survey::near::changes;

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

impl Reader<'_> {
    /// Whether a row with a colon is a head row: not where a species may be meant, as in `ATCA: 12-14` on a line.
    pub(super) fn is_head(&self, found: &KeyRow) -> bool {
        let value = &self.even[found.value.0..found.value.1];
        let number = value.first().is_some_and(|c| c.is_ascii_digit() || matches!(c, '.' | '-'));
        found.key != Key::Condition || self.line.is_none() || !number
    }

    /// A row in brackets: a remark on the line above it, or on the lines below this head.
    pub(super) fn remark(&mut self) {
        let begin = self.even.iter().position(|&c| c == '(').map_or(0, |at| at + 1);
        let end = self.even.iter().rposition(|&c| c == ')').filter(|&at| at >= begin);
        let text = self.text((begin, end.unwrap_or(self.even.len()))).trim().to_owned();
        self.condition(Column::Note.heading().to_owned(), text);
    }

    pub(super) fn condition(&mut self, name: String, value: String) {
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

    pub(super) fn key(&mut self, found: KeyRow) {
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
    pub(super) fn ask_about(&mut self, name: Span) {
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
    pub(super) fn open_head(&mut self, column: Column) {
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
}
