//! Reading a protocol file: every key that isn't known and every value that isn't understood is named with its line.

use super::keys::{self, Words, plain};
use crate::limits::LARGEST_PROTOCOL;
use tautline_engine::length::DecimalMark;
use tautline_survey::finding::{Finding, Place};
use tautline_survey::measure::Measure;
use tautline_survey::message::Message;
use tautline_survey::near::nearest;
use tautline_survey::plants::GrowthForm;
use tautline_survey::protocol::{Bridge, Counts, Gap, Protocol, Unknown, widest_unknown};
use toml::Spanned;
use toml::de::{DeTable, DeValue};

/// Reads a protocol file, and says everything that is wrong with it.
///
/// A protocol with a finding should not be used: one misread rule would move every figure under it.
///
/// # Example
/// ```
/// let text = "name = \"gaps under 2 in closed\"\n[gap]\nlimit = \"2 in\"\n";
/// let (protocol, findings) = tautline_exchange::protocol::read("ours.toml", text);
/// assert_eq!(findings, []);
/// assert_eq!(protocol.gap.limit.unwrap().typed(), "2 in");
/// ```
pub fn read(file: &str, text: &str) -> (Protocol, Vec<Finding>) {
    if text.len() as u64 > LARGEST_PROTOCOL {
        let message = Message::new("protocol-too-large").with("file", file);
        return (Protocol::default(), vec![Finding::must_settle(message)]);
    }
    let mut reader = Reader { file, text, findings: Vec::new() };
    let protocol = match DeTable::parse(text) {
        Ok(table) => reader.protocol(table.get_ref()),
        Err(error) => {
            let place = reader.place(error.span().map_or(0, |span| span.start), None);
            let message = Message::new("protocol-not-toml").with("found", error.message());
            reader.findings.push(Finding::must_settle(message).at(place));
            Protocol::default()
        }
    };
    (protocol, reader.findings)
}

/// One key with its value, and where it stands.
struct Entry<'a> {
    key: String,
    at: usize,
    value: &'a DeValue<'a>,
}

struct Reader<'a> {
    file: &'a str,
    text: &'a str,
    findings: Vec<Finding>,
}

impl Reader<'_> {
    fn protocol(&mut self, table: &DeTable<'_>) -> Protocol {
        let mut protocol = Protocol::default();
        for entry in entries(table) {
            match entry.key.as_str() {
                "name" => protocol.name = self.text(&entry),
                "source" => protocol.source = self.text(&entry),
                "from-memory" => protocol.from_memory = self.flag(&entry),
                "cover" if is_unknown(&entry) => protocol.unknown.push(Unknown::Cover),
                "dead" if is_unknown(&entry) => protocol.unknown.push(Unknown::Dead),
                "cover" => protocol.cover = self.word(&entry, &keys::COVER),
                "dead" => protocol.dead = self.word(&entry, &keys::DEAD),
                "shortest" => protocol.shortest = self.length(&entry),
                "overlap" => protocol.overlap = self.word(&entry, &keys::OVERLAP),
                "side" => protocol.side = self.word(&entry, &keys::SIDE),
                "finest-division" => protocol.finest_division = self.length(&entry),
                "reading-window" => protocol.reading_window = self.text(&entry),
                "alive-without-leaves" => protocol.alive_without_leaves = self.text(&entry),
                "flower-stalks" => protocol.flower_stalks = self.text(&entry),
                "tape" => protocol.tape = self.text(&entry),
                "wind-limit" => protocol.wind_limit = self.text(&entry),
                "heights" => protocol.heights = self.text(&entry),
                "counts" => protocol.counts = self.counts(&entry),
                "gap" => protocol.gap = self.gap(&entry),
                _ => self.unknown_key(&entry, &keys::TOP),
            }
        }
        protocol.unknown.sort_unstable();
        if protocol.name.is_empty() && self.findings.is_empty() {
            let place = self.place(0, Some("name"));
            self.findings.push(Finding::must_settle(Message::new("protocol-without-name")).at(place));
        }
        protocol
    }

    fn counts(&mut self, entry: &Entry<'_>) -> Option<Counts> {
        let mut counts = Counts::default();
        for entry in entries(self.table(entry)?) {
            match entry.key.as_str() {
                "woody" => {
                    if self.flag(&entry) {
                        counts.forms.extend(Counts::woody().forms);
                    }
                }
                "forms" => {
                    for word in self.texts(&entry) {
                        match GrowthForm::from_word(&word) {
                            Some(form) => counts.forms.push(form),
                            None => self.bad_word(&entry, &word, &GrowthForm::ALL.map(GrowthForm::word)),
                        }
                    }
                }
                "also" => counts.also = self.texts(&entry),
                "except" => counts.except = self.texts(&entry),
                _ => self.unknown_key(&entry, &keys::COUNTS),
            }
        }
        counts.forms.sort_unstable();
        counts.forms.dedup();
        Some(counts)
    }

    fn gap(&mut self, entry: &Entry<'_>) -> Gap {
        let mut gap = Gap::default();
        let Some(table) = self.table(entry) else { return gap };
        for entry in entries(table) {
            match entry.key.as_str() {
                "limit" if is_unknown(&entry) => gap.unknown_up_to = Some(widest_unknown()),
                "limit" => match up_to(&entry) {
                    Some(most) => gap.unknown_up_to = self.measure(&entry, most),
                    None => gap.limit = self.length(&entry),
                },
                "equal" => gap.equal = self.bridge(&entry),
                "two-plants" => gap.two_plants = self.bridge(&entry),
                "across-species" => gap.across_species = self.bridge(&entry),
                "between-species" => gap.between_species = self.bridge(&entry),
                "across-dead" => gap.across_dead = self.bridge(&entry),
                "line-end" => gap.line_end = self.bridge(&entry),
                _ => self.unknown_key(&entry, &keys::GAP),
            }
        }
        gap
    }

    fn bridge(&mut self, entry: &Entry<'_>) -> Option<Bridge> {
        self.word(entry, &keys::BRIDGE)
    }

    fn word<T: Copy>(&mut self, entry: &Entry<'_>, words: &Words<T>) -> Option<T> {
        let accepted: Vec<&str> = words.iter().map(|(word, _)| *word).collect();
        let found = plain(entry.value.as_str().unwrap_or_default());
        let meant = words.iter().find(|(word, _)| *word == found).map(|(_, meaning)| *meaning);
        if meant.is_none() {
            self.bad_word(entry, &shown(entry.value), &accepted);
        }
        meant
    }

    fn length(&mut self, entry: &Entry<'_>) -> Option<Measure> {
        self.measure(entry, &shown(entry.value))
    }

    fn measure(&mut self, entry: &Entry<'_>, written: &str) -> Option<Measure> {
        let measure = Measure::read(written, None, DecimalMark::Point).ok();
        if measure.is_none() {
            self.bad_value(entry, "protocol-not-a-length");
        }
        measure
    }

    fn text(&mut self, entry: &Entry<'_>) -> String {
        if let Some(text) = entry.value.as_str() {
            return text.trim().to_owned();
        }
        self.bad_value(entry, "protocol-not-text");
        String::new()
    }

    fn flag(&mut self, entry: &Entry<'_>) -> bool {
        entry.value.as_bool().unwrap_or_else(|| {
            self.bad_value(entry, "protocol-not-true-or-false");
            false
        })
    }

    fn texts(&mut self, entry: &Entry<'_>) -> Vec<String> {
        let texts = entry.value.as_array().and_then(|array| {
            array.iter().map(|item| item.get_ref().as_str().map(|text| text.trim().to_owned())).collect()
        });
        texts.unwrap_or_else(|| {
            self.bad_value(entry, "protocol-not-a-list");
            Vec::new()
        })
    }

    fn table<'t>(&mut self, entry: &Entry<'t>) -> Option<&'t DeTable<'t>> {
        let table = entry.value.as_table();
        if table.is_none() {
            self.bad_value(entry, "protocol-not-a-section");
        }
        table
    }

    fn unknown_key(&mut self, entry: &Entry<'_>, known: &[&str]) {
        let message = match nearest(&entry.key, known) {
            Some(near) => Message::new("protocol-rule-misspelt").with("near", near),
            None => Message::new("protocol-unknown-rule").with("accepted", list(known)),
        };
        self.must_settle(entry, message.with("found", entry.key.as_str()));
    }

    fn bad_word(&mut self, entry: &Entry<'_>, found: &str, accepted: &[&str]) {
        let message = Message::new("protocol-unknown-word")
            .with("found", found)
            .with("rule", entry.key.as_str())
            .with("accepted", list(accepted));
        self.must_settle(entry, message);
    }

    fn bad_value(&mut self, entry: &Entry<'_>, code: &'static str) {
        let message = Message::new(code).with("found", shown(entry.value)).with("rule", entry.key.as_str());
        self.must_settle(entry, message);
    }

    fn must_settle(&mut self, entry: &Entry<'_>, message: Message) {
        let place = self.place(entry.at, Some(&entry.key));
        self.findings.push(Finding::must_settle(message).at(place));
    }

    fn place(&self, at: usize, column: Option<&str>) -> Place {
        // what is missed at the very end is placed on the last row
        let text = self.text.trim_end().as_bytes();
        let before = text.iter().take(at);
        let row = 1 + before.filter(|&&byte| byte == b'\n').count() as u64;
        Place { file: self.file.to_owned(), row, column: column.map(str::to_owned), character: None }
    }
}

/// Whether somebody looked for a rule and didn't find it.
fn is_unknown(entry: &Entry<'_>) -> bool {
    entry.value.as_str().is_some_and(|text| plain(text) == keys::UNKNOWN)
}

/// How far an unknown limit may reach: `unknown up to 6 in`.
fn up_to<'t>(entry: &Entry<'t>) -> Option<&'t str> {
    let text = entry.value.as_str()?.trim();
    let rest = text.get(..keys::UNKNOWN.len()).filter(|word| word.eq_ignore_ascii_case(keys::UNKNOWN));
    let rest = rest.map(|word| text[word.len()..].trim_start())?;
    Some(rest.strip_prefix("up to").unwrap_or(rest).trim_start())
}

/// The entries of a table in the order of the file, so that findings come in that order too.
fn entries<'t>(table: &'t DeTable<'t>) -> Vec<Entry<'t>> {
    let entry = |(key, value): (&Spanned<_>, &'t Spanned<DeValue<'t>>)| {
        let text: &std::borrow::Cow<'_, str> = key.get_ref();
        Entry { key: plain(text), at: key.span().start, value: value.get_ref() }
    };
    let mut entries: Vec<_> = table.iter().map(entry).collect();
    entries.sort_by_key(|entry| entry.at);
    entries
}

fn list(words: &[&str]) -> Vec<String> {
    words.iter().map(|&word| word.to_owned()).collect()
}

/// A value as a person would recognise it.
fn shown(value: &DeValue<'_>) -> String {
    match value {
        DeValue::String(text) => text.to_string(),
        DeValue::Integer(number) => number.as_str().to_owned(),
        DeValue::Float(number) => number.as_str().to_owned(),
        DeValue::Boolean(flag) => flag.to_string(),
        DeValue::Datetime(date) => date.to_string(),
        DeValue::Array(_) => "[…]".to_owned(),
        DeValue::Table(_) => "{…}".to_owned(),
    }
}
