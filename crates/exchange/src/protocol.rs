//! Protocols as small readable files, and the published variants that ship with the tool.

use tautline_engine::length::DecimalMark;
use tautline_survey::finding::{Finding, Place};
use tautline_survey::measure::Measure;
use tautline_survey::message::Message;
use tautline_survey::plants::GrowthForm;
use tautline_survey::protocol::{Bridge, Counts, CoverMeaning, Dead, Overlap, Protocol, Side};
use toml::{Table, Value};

/// The shipped protocols: key, and file. Names are neutral; each file names its source.
const SHIPPED: [(&str, &str); 8] = [
    ("live-canopy-2.5in", include_str!("../protocols/live-canopy-2.5in.toml")),
    ("canopy-2in", include_str!("../protocols/canopy-2in.toml")),
    ("live-or-dead-5cm", include_str!("../protocols/live-or-dead-5cm.toml")),
    ("live-or-dead-10cm", include_str!("../protocols/live-or-dead-10cm.toml")),
    ("live-or-dead-15cm", include_str!("../protocols/live-or-dead-15cm.toml")),
    ("live-foliage-5cm", include_str!("../protocols/live-foliage-5cm.toml")),
    ("strict-foliar", include_str!("../protocols/strict-foliar.toml")),
    ("smooth-outline", include_str!("../protocols/smooth-outline.toml")),
];

/// The shipped protocols by key.
pub fn shipped() -> Vec<(&'static str, Protocol)> {
    SHIPPED.iter().map(|(key, text)| (*key, read(key, text).0)).collect()
}

/// A shipped protocol by its key or its name.
pub fn find(name: &str) -> Option<Protocol> {
    let is = |key: &str, protocol: &Protocol| {
        key.eq_ignore_ascii_case(name) || protocol.name.eq_ignore_ascii_case(name)
    };
    shipped().into_iter().find(|(key, protocol)| is(key, protocol)).map(|(_, protocol)| protocol)
}

const TOP: [&str; 17] = [
    "name",
    "source",
    "from-memory",
    "cover",
    "counts",
    "dead",
    "gap",
    "shortest",
    "overlap",
    "side",
    "finest-division",
    "reading-window",
    "alive-without-leaves",
    "flower-stalks",
    "tape",
    "wind-limit",
    "heights",
];
const COUNTS: [&str; 4] = ["woody", "forms", "also", "except"];
const GAP: [&str; 7] =
    ["limit", "equal", "two-plants", "across-species", "between-species", "across-dead", "line-end"];

/// Reads a protocol file. What is not understood is a finding; the rest is kept.
pub fn read(file: &str, text: &str) -> (Protocol, Vec<Finding>) {
    let mut reader = Reader { file, text, findings: Vec::new() };
    let table = match text.parse::<Table>() {
        Ok(table) => table,
        Err(error) => {
            let at = error.span().map_or(0, |span| span.start);
            let row = text.get(..at).map_or(1, |before| before.matches('\n').count() + 1);
            let message = Message::new("protocol-not-toml").with("found", error.message().to_owned());
            let place = Place { file: file.to_owned(), row: row as u64, column: None };
            return (Protocol::default(), vec![Finding::must_settle(message).at(place)]);
        }
    };
    reader.only(&table, &TOP);
    let mut protocol = Protocol {
        name: reader.text(&table, "name"),
        source: reader.text(&table, "source"),
        from_memory: table.get("from-memory").and_then(Value::as_bool).unwrap_or(false),
        cover: reader.word(
            &table,
            "cover",
            &[
                ("canopy-outline", CoverMeaning::CanopyOutline),
                ("foliar", CoverMeaning::Foliar),
                ("basal", CoverMeaning::Basal),
            ],
        ),
        dead: reader.word(
            &table,
            "dead",
            &[
                ("left-out", Dead::LeftOut),
                ("apart", Dead::Apart),
                ("short-joins-live", Dead::ShortJoinsLive),
                ("counts-as-live", Dead::CountsAsLive),
            ],
        ),
        overlap: reader.word(
            &table,
            "overlap",
            &[("each-species", Overlap::EachSpecies), ("once", Overlap::Once)],
        ),
        side: reader.word(&table, "side", &[("left", Side::Left), ("right", Side::Right)]),
        shortest: reader.length(&table, "shortest"),
        finest_division: reader.length(&table, "finest-division"),
        reading_window: reader.text(&table, "reading-window"),
        alive_without_leaves: reader.text(&table, "alive-without-leaves"),
        flower_stalks: reader.text(&table, "flower-stalks"),
        tape: reader.text(&table, "tape"),
        wind_limit: reader.text(&table, "wind-limit"),
        heights: reader.text(&table, "heights"),
        ..Protocol::default()
    };
    if let Some(counts) = table.get("counts").and_then(Value::as_table) {
        reader.only(counts, &COUNTS);
        protocol.counts = Some(reader.counts(counts));
    }
    if let Some(gap) = table.get("gap").and_then(Value::as_table) {
        reader.only(gap, &GAP);
        let bridges = [("bridged", Bridge::Bridged), ("breaks", Bridge::Breaks)];
        protocol.gap.limit = reader.length(gap, "limit");
        protocol.gap.equal = reader.word(gap, "equal", &bridges);
        protocol.gap.two_plants = reader.word(gap, "two-plants", &bridges);
        protocol.gap.across_species = reader.word(gap, "across-species", &bridges);
        protocol.gap.between_species = reader.word(gap, "between-species", &bridges);
        protocol.gap.across_dead = reader.word(gap, "across-dead", &bridges);
        protocol.gap.line_end = reader.word(gap, "line-end", &bridges);
    }
    (protocol, reader.findings)
}

struct Reader<'a> {
    file: &'a str,
    text: &'a str,
    findings: Vec<Finding>,
}

impl Reader<'_> {
    /// The row on which a key is first set.
    fn row(&self, key: &str) -> u64 {
        let is_key = |line: &str| line.trim_start().trim_start_matches('[').starts_with(key);
        self.text.lines().position(is_key).map_or(1, |at| at as u64 + 1)
    }

    fn say(&mut self, key: &str, message: Message) {
        let place = Place { file: self.file.to_owned(), row: self.row(key), column: Some(key.to_owned()) };
        self.findings.push(Finding::must_settle(message).at(place));
    }

    /// Keys that aren't rules, with the rules there are.
    fn only(&mut self, table: &Table, known: &[&str]) {
        for key in table.keys().filter(|key| !known.contains(&key.as_str())) {
            let accepted: Vec<String> = known.iter().map(|&rule| rule.to_owned()).collect();
            let message =
                Message::new("protocol-unknown-rule").with("found", key.as_str()).with("accepted", accepted);
            self.say(key, message);
        }
    }

    fn text(&mut self, table: &Table, key: &str) -> String {
        match table.get(key) {
            None => String::new(),
            Some(Value::String(text)) => text.trim().to_owned(),
            Some(other) => {
                self.say(
                    key,
                    Message::new("protocol-not-text").with("rule", key).with("found", other.to_string()),
                );
                String::new()
            }
        }
    }

    fn word<T: Copy>(&mut self, table: &Table, key: &str, words: &[(&str, T)]) -> Option<T> {
        let text = self.text(table, key);
        if text.is_empty() {
            return None;
        }
        let found = words.iter().find(|(word, _)| text.eq_ignore_ascii_case(word)).map(|(_, value)| *value);
        if found.is_none() {
            let accepted: Vec<String> = words.iter().map(|(word, _)| (*word).to_owned()).collect();
            let message = Message::new("protocol-unknown-word").with("rule", key).with("found", text);
            self.say(key, message.with("accepted", accepted));
        }
        found
    }

    fn length(&mut self, table: &Table, key: &str) -> Option<Measure> {
        let text = self.text(table, key);
        if text.is_empty() {
            return None;
        }
        match Measure::read(&text, None, DecimalMark::Point) {
            Ok(measure) => Some(measure),
            Err(error) => {
                let message = Message::new("protocol-not-a-length").with("rule", key).with("found", text);
                self.say(key, message.with("at", error.at));
                None
            }
        }
    }

    fn counts(&mut self, table: &Table) -> Counts {
        let list = |key: &str| -> Vec<String> {
            let items = table.get(key).and_then(Value::as_array);
            items.into_iter().flatten().filter_map(Value::as_str).map(str::to_owned).collect()
        };
        let mut counts = Counts { forms: Vec::new(), also: list("also"), except: list("except") };
        if table.get("woody").and_then(Value::as_bool) == Some(true) {
            counts.forms = Counts::woody().forms;
        }
        for word in list("forms") {
            match GrowthForm::from_word(&word) {
                Some(form) if !counts.forms.contains(&form) => counts.forms.push(form),
                Some(_) => {}
                None => {
                    let accepted: Vec<String> =
                        GrowthForm::ALL.iter().map(|form| form.word().to_owned()).collect();
                    let message =
                        Message::new("protocol-unknown-word").with("rule", "forms").with("found", word);
                    self.say("forms", message.with("accepted", accepted));
                }
            }
        }
        counts
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_shipped_protocol_is_understood_and_names_its_source() {
        for (key, text) in SHIPPED {
            let (protocol, findings) = read(key, text);
            assert_eq!(findings, [], "{key}");
            assert!(!protocol.name.is_empty() && !protocol.source.is_empty(), "{key}");
        }
        let mut prints: Vec<String> = shipped().iter().map(|(_, protocol)| protocol.fingerprint()).collect();
        prints.sort();
        prints.dedup();
        assert_eq!(prints.len(), SHIPPED.len());
    }

    #[test]
    fn what_is_not_understood_is_placed() {
        let (_, findings) =
            read("p.toml", "name = \"x\"\ndaed = \"apart\"\n[gap]\nlimit = \"2.5\"\nequal = \"maybe\"\n");
        let found: Vec<(&str, u64)> =
            findings.iter().map(|f| (f.message.code, f.place.as_ref().unwrap().row)).collect();
        assert_eq!(
            found,
            [("protocol-unknown-rule", 2), ("protocol-not-a-length", 4), ("protocol-unknown-word", 5)]
        );
        assert_eq!(read("p.toml", "name = \n").1[0].message.code, "protocol-not-toml");
    }
}
