//! What was read, printed as a typed sheet that reads back to the same.

mod lengths;
mod names;

use crate::headings::Column;
use crate::protocol;
use core::fmt::Write as _;
use lengths::{is_mixed, mark_of, unit_of};
use names::{bracketed, can_be_reason, capital, is_value, reads_as_condition, slope_text, species_name};
use std::collections::{HashMap, HashSet};
use tautline_engine::length::{Bare, DecimalMark};
use tautline_survey::finding::{Finding, Place};
use tautline_survey::input::Input;
use tautline_survey::measure::unit_words;
use tautline_survey::message::Message;
use tautline_survey::plan::PlannedLine;
use tautline_survey::visit::{NOT_READ_WHY, Outcome, Visit};

/// A typed sheet, and what it could not say.
#[derive(Clone, Debug)]
pub struct Printed {
    /// The sheet.
    pub text: String,
    /// What of the input a sheet has no place for.
    pub left_out: Vec<Finding>,
}

/// Prints lines and readings as a typed sheet. Reading it gives the same plan and visits: the same lengths to the
/// nanometre, written in the same notation. Plants, areas, goals and the rules of protocols stay in their own files.
///
/// # Example
/// ```
/// use tautline_exchange::{Options, Source, read, sheet::print};
/// let table = "site,line,line length,species,start (in),stop (in)\nInvented Flat,1,65 ft,SHAD,12,17\n";
/// let found = read(&[Source { name: "a.csv".into(), bytes: table.into() }], &Options::default());
/// assert_eq!(print(&found.input).text, "Site: Invented Flat\nUnit: in\n\nLine 1, 65 ft\nSHAD 12-17\n");
/// ```
pub fn print(input: &Input) -> Printed {
    let mut printer = Printer::new(input);
    for visit in &input.visits {
        printer.visit(visit);
    }
    printer.plan_before(None);
    let others = [
        ("plants", input.plants.plants.len()),
        ("strata", input.strata.len()),
        ("protocols", input.protocols.len()),
    ];
    for (what, count) in others.into_iter().filter(|(_, count)| *count > 0) {
        let what = match what {
            "plants" => "sheet-holds-no-plants",
            "strata" => "sheet-holds-no-strata",
            _ => "sheet-holds-no-protocols",
        };
        printer.left_out.push(Finding::note(Message::new(what).with("count", count)));
    }
    Printed { text: printer.text, left_out: printer.left_out }
}

/// The line that is being printed, for what is said about it.
#[derive(Clone, Copy)]
struct Named<'a> {
    site: &'a str,
    line: &'a str,
    place: Option<&'a Place>,
}

impl<'a> From<&'a Visit> for Named<'a> {
    fn from(visit: &'a Visit) -> Self {
        Self { site: &visit.site, line: &visit.line, place: visit.place.as_ref() }
    }
}

struct Printer<'a> {
    input: &'a Input,
    planned: HashMap<(&'a str, &'a str), usize>,
    /// The lines that have visits.
    visited: HashSet<(&'a str, &'a str)>,
    printed: HashSet<usize>,
    next_planned: usize,
    /// The comma where lengths were typed with one and none with a point.
    mark: DecimalMark,
    /// The unit that the first bare number of all stood in.
    first_unit: Option<Bare>,
    head: Head,
    text: String,
    left_out: Vec<Finding>,
}

/// What stands in the head above a line.
#[derive(Clone, Default, PartialEq)]
struct Head {
    /// In the order they are printed; empty ones are printed only to end what was said before.
    keys: Vec<(Column, String)>,
    conditions: Vec<(String, String)>,
}

impl<'a> Printer<'a> {
    fn new(input: &'a Input) -> Self {
        let planned = input.plan.iter().enumerate();
        let mark = mark_of(input);
        let mut text = String::new();
        if mark == DecimalMark::Comma {
            text += "Decimal: comma\n";
        }
        Self {
            input,
            planned: planned.map(|(at, line)| ((line.site.as_str(), line.line.as_str()), at)).collect(),
            visited: input.visits.iter().map(|visit| (visit.site.as_str(), visit.line.as_str())).collect(),
            printed: HashSet::new(),
            next_planned: 0,
            mark,
            first_unit: input.visits.iter().find_map(unit_of),
            head: Head::default(),
            text,
            left_out: Vec::new(),
        }
    }

    fn line(&mut self, text: &str) {
        // writing to a String can't fail
        let _ = writeln!(self.text, "{text}");
    }

    fn leave_out(&mut self, code: &'static str, of: Named, found: &str) {
        let message = Message::new(code).with("site", of.site).with("line", of.line).with("found", found);
        let finding = Finding::have_a_look(message);
        self.left_out.push(match of.place {
            Some(place) => finding.at(place.clone()),
            None => finding,
        });
    }

    /// Names what would not come back as it is from behind a key or out of square brackets.
    fn check(&mut self, of: Named, in_brackets: &[&str]) {
        let empty = of.site.is_empty() || of.line.is_empty();
        if empty || !is_value(of.site) {
            self.leave_out("sheet-cannot-say", of, of.site);
        }
        for name in in_brackets.iter().chain([&of.line]).filter(|name| !is_value(name) || name.contains(']'))
        {
            self.leave_out("sheet-cannot-say", of, name);
        }
    }

    fn visit(&mut self, visit: &'a Visit) {
        let at = self.planned.get(&(visit.site.as_str(), visit.line.as_str())).copied();
        self.plan_before(at);
        let unit = unit_of(visit).or_else(|| self.unit_in_force()).or(self.first_unit);
        let protocol = self.protocol(visit);
        let keys = vec![
            (Column::Site, visit.site.clone()),
            (Column::Date, visit.date.map(|date| date.to_string()).unwrap_or_default()),
            (Column::Reader, visit.reader.clone()),
            (Column::Recorder, visit.recorder.clone()),
            (Column::Protocol, protocol),
            (Column::Unit, unit.map_or("", unit_words).to_owned()),
        ];
        // readings of both kinds on one line speak for themselves, and the reason then stands in the head
        let says_not_read = visit.outcome == Outcome::NotRead && !is_mixed(visit);
        // of several reasons the first by the alphabet, whatever order they were read in
        let reasons = visit.conditions.iter().filter(|(name, _)| name == NOT_READ_WHY);
        let reason =
            reasons.map(|(_, why)| why.as_str()).filter(|why| says_not_read && can_be_reason(why)).min();
        let conditions = visit
            .conditions
            .iter()
            .filter(|(name, why)| !(name == NOT_READ_WHY && Some(why.as_str()) == reason));
        let head = Head { keys, conditions: conditions.cloned().collect() };
        self.head(head, visit);
        let planned = at.map(|at| &self.input.plan[at]);
        let first = at.is_none_or(|at| self.printed.insert(at));
        self.check(visit.into(), &[&visit.pass]);
        let pass = Some(visit.pass.as_str()).filter(|pass| !pass.is_empty());
        self.line_row(&visit.line, planned.filter(|_| first), pass, None);
        let text = match &visit.outcome {
            Outcome::Read if visit.intercepts.is_empty() => "nothing".to_owned(),
            Outcome::PartlyRead(to) => format!("read to {}", self.length(to, unit)),
            Outcome::NotRead if says_not_read => {
                reason.map_or_else(|| "not read".to_owned(), |why| format!("not read: {why}"))
            }
            Outcome::Read | Outcome::NotRead => String::new(),
        };
        if !text.is_empty() {
            self.line(&text);
        }
        self.rows(visit, unit);
        if visit.set_aside > 0 {
            self.leave_out("sheet-holds-no-set-aside", visit.into(), &visit.set_aside.to_string());
        }
    }

    fn unit_in_force(&self) -> Option<Bare> {
        let unit = self.head.keys.iter().find(|(column, _)| *column == Column::Unit);
        unit.and_then(|(_, words)| Bare::from_words(words))
    }

    /// Planned lines that nobody has read, up to this one of the plan.
    fn plan_before(&mut self, at: Option<usize>) {
        let end = at.unwrap_or(self.input.plan.len());
        while self.next_planned < end {
            let at = self.next_planned;
            self.next_planned += 1;
            let planned = &self.input.plan[at];
            let name = (planned.site.as_str(), planned.line.as_str());
            if self.printed.contains(&at) || self.visited.contains(&name) {
                continue;
            }
            self.printed.insert(at);
            let head = Head { keys: vec![(Column::Site, planned.site.clone())], conditions: Vec::new() };
            self.head_of_plan(head);
            self.line_row(&planned.line, Some(planned), None, Some("planned"));
        }
    }

    fn protocol(&mut self, visit: &Visit) -> String {
        let Some(own) = self.input.protocols.get(&visit.protocol) else { return String::new() };
        let same_name =
            self.input.protocols.values().filter(|other| other.name.eq_ignore_ascii_case(&own.name)).count();
        let shipped =
            protocol::find(&own.name).is_some_and(|shipped| shipped.fingerprint() != visit.protocol);
        if same_name > 1 || (shipped && same_name == 0) {
            self.leave_out("sheet-protocol-not-clear", visit.into(), &own.name);
        }
        own.name.clone()
    }

    /// The head, where it is another one than before.
    fn head(&mut self, head: Head, visit: &Visit) {
        if head == self.head {
            return self.line("");
        }
        let told = |(column, value): &&(Column, String)| *column != Column::Site && !is_value(value);
        for (_, value) in head.keys.iter().filter(told) {
            self.leave_out("sheet-cannot-say", visit.into(), value);
        }
        let conditions = head.conditions.clone();
        self.head_of_plan(head);
        for (name, value) in conditions {
            let text = format!("{name}: {value}");
            if reads_as_condition(&text, &name, &value) {
                // conditions stand above the blank row that ends the head
                self.text.truncate(self.text.trim_end_matches('\n').len());
                self.text += "\n";
                self.line(&text);
                self.line("");
            } else {
                self.leave_out("sheet-cannot-say", visit.into(), &text);
            }
        }
    }

    fn head_of_plan(&mut self, head: Head) {
        if head == self.head {
            return self.line("");
        }
        if !self.text.is_empty() && !self.head.keys.is_empty() {
            self.line("");
        }
        for (column, value) in &head.keys {
            let before = self.head.keys.iter().find(|(own, _)| own == column).map_or("", |(_, value)| value);
            // a site begins a new head
            if *column == Column::Site || before != value {
                let key = capital(column.heading());
                self.line(format!("{key}: {}", value.trim()).trim_end());
            }
        }
        self.line("");
        let mut head = head;
        for (column, value) in &self.head.keys {
            if !head.keys.iter().any(|(own, _)| own == column) {
                head.keys.push((*column, value.clone()));
            }
        }
        self.head = head;
    }

    fn line_row(
        &mut self,
        name: &str,
        planned: Option<&PlannedLine>,
        pass: Option<&str>,
        told: Option<&str>,
    ) {
        let mut parts = vec![format!("Line {}", bracketed(name))];
        if let Some(planned) = planned {
            let names = [&planned.stratum, &planned.plot].map(|name| name.as_deref().unwrap_or_default());
            self.check(Named { site: &planned.site, line: name, place: None }, &names);
            parts.extend(planned.length.as_ref().map(|length| self.length(length, None)));
            parts.extend(planned.stratum.as_ref().map(|name| format!("stratum {}", bracketed(name))));
            parts.extend(planned.plot.as_ref().map(|name| format!("plot {}", bracketed(name))));
            parts.extend(planned.slope.map(|slope| format!("slope {}", self.marked(slope_text(slope)))));
        }
        parts.extend(pass.map(|pass| format!("pass {}", bracketed(pass))));
        parts.extend(told.map(str::to_owned));
        self.line(&parts.join(", "));
    }

    /// The intercepts in their order, those of one species that follow each other on one row.
    fn rows(&mut self, visit: &Visit, unit: Option<Bare>) {
        for group in visit.intercepts.chunk_by(|a, b| a.species == b.species) {
            let species = species_name(&group[0].species);
            let mut row = species.clone();
            let mut plain = true;
            for (at, intercept) in group.iter().enumerate() {
                let text = self.intercept(intercept, unit);
                let own_plain = text.chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | '-'));
                if !self.reads_back(intercept, &text, unit) {
                    self.leave_out("sheet-cannot-say", visit.into(), &format!("{species} {text}"));
                    continue;
                }
                // numbers of several parts are told apart by commas
                row += if at > 0 && !(plain && own_plain) { ", " } else { " " };
                row += &text;
                plain = own_plain;
            }
            if row != species {
                self.line(&row);
            }
        }
    }
}
