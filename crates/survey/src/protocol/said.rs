//! What a protocol's rules are called.

use crate::message::Value;

/// Words for every rule that a protocol may state.
const RULE_WORDS: [&str; 22] = [
    "rule-cover",
    "rule-counts",
    "rule-dead",
    "rule-gap-limit",
    "rule-gap-limit-unknown-up-to",
    "rule-unknown",
    "rule-gap-equal",
    "rule-gap-two-plants",
    "rule-gap-across-species",
    "rule-gap-between-species",
    "rule-gap-across-dead",
    "rule-gap-line-end",
    "rule-shortest",
    "rule-overlap",
    "rule-side",
    "rule-finest-division",
    "rule-reading-window",
    "rule-alive-without-leaves",
    "rule-flower-stalks",
    "rule-tape",
    "rule-wind-limit",
    "rule-heights",
];

/// A rule, by its key in [`super::Protocol::meaning`], in the catalogue's words.
pub(crate) fn rule_word(rule: &str) -> Value {
    let own = |word: &&&str| word.strip_prefix("rule-") == Some(rule);
    RULE_WORDS.iter().find(own).map_or_else(|| Value::from(rule), |word| Value::Word(word))
}

#[cfg(test)]
mod tests {
    use super::super::{Bridge, Counts, CoverMeaning, Dead, Gap, Overlap, Protocol, Side, Unknown};
    use super::*;
    use crate::measure::Measure;
    use tautline_engine::length::Unit;

    /// Every rule that a protocol can state has its words, and no words are left over.
    #[test]
    fn every_rule_has_words() {
        let (inch, text, bridge) =
            (Some(Measure::whole(1, Unit::Inch)), "x".to_owned(), Some(Bridge::Breaks));
        let gap = Gap {
            limit: inch.clone(),
            equal: bridge,
            two_plants: bridge,
            across_species: bridge,
            between_species: bridge,
            across_dead: bridge,
            line_end: bridge,
            ..Gap::default()
        };
        let full = Protocol {
            cover: Some(CoverMeaning::Foliar),
            counts: Some(Counts::default()),
            dead: Some(Dead::Apart),
            unknown: vec![Unknown::Dead],
            shortest: inch.clone(),
            overlap: Some(Overlap::Once),
            side: Some(Side::Left),
            finest_division: inch.clone(),
            reading_window: text.clone(),
            alive_without_leaves: text.clone(),
            flower_stalks: text.clone(),
            tape: text.clone(),
            wind_limit: text.clone(),
            heights: text,
            gap,
            ..Protocol::default()
        };
        let unknown = Protocol {
            gap: Gap { limit: None, unknown_up_to: inch, ..Gap::default() },
            ..Protocol::default()
        };
        let keys = full.meaning().into_iter().chain(unknown.meaning()).map(|(key, _)| key);
        let mut said: Vec<&str> = keys
            .map(|key| match rule_word(&key) {
                Value::Word(word) => word,
                other => panic!("{key} is said as {other:?}"),
            })
            .collect();
        said.sort_unstable();
        said.dedup();
        assert_eq!(said.len(), RULE_WORDS.len(), "{said:?}");
    }
}
