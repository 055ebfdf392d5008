//! Records that hold some words, wherever in them those stand.

use super::payload::Payload;
use crate::draft::search::folded;
use crate::plants::PlantList;
use serde_json::Value;
use std::collections::BTreeSet;

/// What is looked for: every word must stand somewhere in a record, letter case and accents aside.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Wanted(Vec<String>);

impl Wanted {
    /// The words of a text.
    pub fn of(text: &str) -> Self {
        Self(folded(text).split_whitespace().map(str::to_owned).collect())
    }

    /// Nothing is looked for.
    pub fn is_nothing(&self) -> bool {
        self.0.is_empty()
    }

    /// Whether all the words stand in some texts together; and the first of the texts in which one of them does.
    ///
    /// # Example
    /// ```
    /// use tautline_survey::notebook::find::Wanted;
    /// let wanted = Wanted::of("hollow garcía");
    /// let found = wanted.found_in(["Hollow Flat", "B1", "A. Garcia"].map(str::to_owned));
    /// assert_eq!(found.as_deref(), Some("Hollow Flat"));
    /// assert_eq!(Wanted::of("hollow bush").found_in(["Hollow Flat".to_owned()]), None);
    /// ```
    pub fn found_in(&self, texts: impl IntoIterator<Item = String>) -> Option<String> {
        let mut left: BTreeSet<&String> = self.0.iter().collect();
        let mut first = None;
        for text in texts {
            let plain = folded(&text);
            let before = left.len();
            left.retain(|word| !plain.contains(word.as_str()));
            if left.len() < before && first.is_none() {
                first = Some(text);
            }
        }
        first.filter(|_| left.is_empty())
    }

    /// Where a record holds the words; nothing where it doesn't hold them all.
    pub fn found(&self, payload: &Payload, plants: &PlantList) -> Option<String> {
        self.found_in(texts(payload, plants))
    }
}

/// The texts of a record, those that people look for first.
fn texts(payload: &Payload, plants: &PlantList) -> Vec<String> {
    match payload {
        Payload::Visit(visit) => {
            let mut texts = vec![visit.site.clone(), visit.line.clone()];
            texts.extend(visit.date.map(|date| date.to_string()));
            texts.extend([visit.reader.clone(), visit.recorder.clone(), visit.pass.clone()]);
            texts.extend(visit.conditions.iter().map(|(heading, said)| format!("{heading}: {said}")));
            texts.extend(visit.intercepts.iter().map(|row| row.note.clone()).filter(|note| !note.is_empty()));
            let codes: BTreeSet<&String> = visit.intercepts.iter().map(|row| &row.species).collect();
            texts.extend(codes.into_iter().map(|code| match plants.find(code) {
                Some(plant) => format!("{} {} {}", plant.code, plant.name, plant.common),
                None => code.clone(),
            }));
            texts
        }
        other => {
            let mut texts = Vec::new();
            spoken(&other.to_json(), &mut texts);
            texts
        }
    }
}

/// Every text of a record.
fn spoken(value: &Value, into: &mut Vec<String>) {
    match value {
        Value::String(text) => into.push(text.clone()),
        Value::Array(items) => items.iter().for_each(|item| spoken(item, into)),
        Value::Object(map) => map.values().for_each(|item| spoken(item, into)),
        _ => {}
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::tests::site;
    use crate::plants::{GrowthForm, Plant};

    #[test]
    fn a_reading_is_found_by_site_reader_note_and_by_any_name_of_its_species() {
        let mut visit = site(&[("10", "", 100)]).visits.remove(0);
        visit.reader = "José Invented".to_owned();
        visit.intercepts[0].note = "hedged by deer".to_owned();
        let payload = Payload::Visit(Box::new(visit));
        let plant = Plant {
            name: "Plantus inventus".into(),
            common: "made-up bush".into(),
            ..Plant::new("AAAA", GrowthForm::Shrub)
        };
        let plants = PlantList { plants: vec![plant] };
        let found = |text: &str| Wanted::of(text).found(&payload, &plants);
        assert_eq!(found("jose").as_deref(), Some("José Invented"));
        assert_eq!(found("DEER").as_deref(), Some("hedged by deer"));
        assert_eq!(found("inventus aaaa").as_deref(), Some("AAAA Plantus inventus made-up bush"));
        assert_eq!(found("deer winterfat"), None);
    }
}
