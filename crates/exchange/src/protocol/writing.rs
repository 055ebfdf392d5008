//! Writing a protocol as the file that gives it back.

use super::keys::{self, Words};
use core::fmt::Write as _;
use tautline_engine::length::{DecimalMark, write};
use tautline_survey::measure::Measure;
use tautline_survey::plants::GrowthForm;
use tautline_survey::protocol::{Bridge, Protocol, Unknown};
use toml::Value;

/// The protocol as a file that [`super::read`] reads back to the same meaning. Silent rules are left out.
///
/// # Example
/// ```
/// use tautline_exchange::protocol::{find, read, to_toml};
/// let protocol = find("canopy-2in").unwrap();
/// assert_eq!(read("a.toml", &to_toml(&protocol)), (protocol, vec![]));
/// ```
pub fn to_toml(protocol: &Protocol) -> String {
    let mut file = File(String::new());
    file.text("name", &protocol.name);
    file.text("source", &protocol.source);
    if protocol.from_memory {
        file.entry("from-memory", &Value::Boolean(true));
    }
    file.word("cover", protocol.cover, &keys::COVER);
    file.word("dead", protocol.dead, &keys::DEAD);
    for (rule, key, stated) in [
        (Unknown::Cover, "cover", protocol.cover.is_some()),
        (Unknown::Dead, "dead", protocol.dead.is_some()),
    ] {
        if protocol.is_unknown(rule) && !stated {
            file.text(key, keys::UNKNOWN);
        }
    }
    file.length("shortest", protocol.shortest.as_ref());
    file.word("overlap", protocol.overlap, &keys::OVERLAP);
    file.word("side", protocol.side, &keys::SIDE);
    file.length("finest-division", protocol.finest_division.as_ref());
    file.text("reading-window", &protocol.reading_window);
    file.text("alive-without-leaves", &protocol.alive_without_leaves);
    file.text("flower-stalks", &protocol.flower_stalks);
    file.text("tape", &protocol.tape);
    file.text("wind-limit", &protocol.wind_limit);
    file.text("heights", &protocol.heights);
    if let Some(counts) = &protocol.counts {
        file.section("counts");
        file.entry("forms", &list(counts.forms.iter().map(|&form| GrowthForm::word(form))));
        file.codes("also", &counts.also);
        file.codes("except", &counts.except);
    }
    let gap = &protocol.gap;
    if *gap != tautline_survey::protocol::Gap::default() {
        file.section("gap");
        file.length("limit", gap.limit.as_ref());
        if let Some(most) = gap.unknown_up_to.as_ref().filter(|_| gap.limit.is_none()) {
            file.text("limit", &format!("{} up to {}", keys::UNKNOWN, with_its_unit(most)));
        }
        file.bridge("equal", gap.equal);
        file.bridge("two-plants", gap.two_plants);
        file.bridge("across-species", gap.across_species);
        file.bridge("between-species", gap.between_species);
        file.bridge("across-dead", gap.across_dead);
        file.bridge("line-end", gap.line_end);
    }
    file.0
}

struct File(String);

impl File {
    fn entry(&mut self, key: &str, value: &Value) {
        // writing to a String can't fail
        let _ = writeln!(self.0, "{key} = {value}");
    }

    fn section(&mut self, name: &str) {
        // writing to a String can't fail
        let _ = writeln!(self.0, "\n[{name}]");
    }

    fn text(&mut self, key: &str, text: &str) {
        if !text.is_empty() {
            self.entry(key, &Value::String(text.to_owned()));
        }
    }

    fn codes(&mut self, key: &str, codes: &[String]) {
        if !codes.is_empty() {
            self.entry(key, &list(codes.iter().map(String::as_str)));
        }
    }

    fn word<T: PartialEq>(&mut self, key: &str, meaning: Option<T>, words: &Words<T>) {
        if let Some((word, _)) = meaning.and_then(|meaning| words.iter().find(|(_, known)| *known == meaning))
        {
            self.text(key, word);
        }
    }

    fn bridge(&mut self, key: &str, bridge: Option<Bridge>) {
        self.word(key, bridge, &keys::BRIDGE);
    }

    fn length(&mut self, key: &str, measure: Option<&Measure>) {
        if let Some(measure) = measure {
            self.text(key, &with_its_unit(measure));
        }
    }
}

/// The length as typed where the text names its unit, else in its own notation, else exactly in millimetres.
fn with_its_unit(measure: &Measure) -> String {
    let nanometres = measure.length().nanometres();
    let exact = format!("{}.{:06} mm", nanometres / 1_000_000, nanometres % 1_000_000);
    let same = |text: &String| {
        Measure::read(text, None, DecimalMark::Point).is_ok_and(|read| read.length() == measure.length())
    };
    [measure.typed().to_owned(), write(measure.length(), measure.notation())]
        .into_iter()
        .find(same)
        .unwrap_or(exact)
}

fn list<'a>(texts: impl Iterator<Item = &'a str>) -> Value {
    Value::Array(texts.map(|text| Value::String(text.to_owned())).collect())
}
