//! The protocol in plain words and small drawings, and the plants that may be met.

use super::Packet;
use super::booklet::{Drawn, Grid, Rules};
use tautline_engine::rule::{Bridging, DeadRule};
use tautline_figures::rules::{Case, draw};
use tautline_figures::{Frame, Palette};
use tautline_survey::message::{Message, Value};
use tautline_survey::plants::Plant;
use tautline_survey::protocol::{Dead, Overlap, Protocol, Side};
use tautline_words::Words;

pub(super) fn part(packet: &Packet, letters: &'static str, words: &Words) -> Rules {
    Rules {
        heading: words.word("packet-protocol"),
        said: match packet.protocol {
            Some(protocol) => of_protocol(protocol, words),
            None => vec![words.word("packet-no-protocol")],
        },
        drawings: packet.protocol.map(|one| drawings(one, letters, words)).unwrap_or_default(),
        plants: plants(packet, words),
    }
}

/// How wide a rule is drawn.
const WIDE: u16 = 240;

fn drawings(protocol: &Protocol, letters: &'static str, words: &Words) -> Vec<Drawn> {
    let drawing = |(case, message): (Case, Message)| {
        let title = words.say(&message);
        let frame = Frame::new(&format!("rule-{}", case.code()), WIDE, Palette::print().with_font(letters));
        let drawing = draw(case, &Frame { title: title.clone(), ..frame });
        Drawn { title, description: String::new(), drawing }
    };
    drawn(protocol).into_iter().map(drawing).collect()
}

/// The rules of a protocol that are drawn, each with the words below its drawing.
pub fn drawn(protocol: &Protocol) -> Vec<(Case, Message)> {
    let mut cases = Vec::new();
    if let Some(limit) = &protocol.gap.limit {
        let limit = || Value::Length(limit.length(), limit.notation());
        cases.push((Case::GapJoined, Message::new("rule-drawn-gap-joined").with("limit", limit())));
        cases.push((Case::GapBreaks, Message::new("rule-drawn-gap-breaks").with("limit", limit())));
    }
    let dead = match protocol.dead {
        Some(Dead::LeftOut) => (Case::DeadLeftOut, "rule-drawn-dead-left-out"),
        Some(Dead::CountsAsLive) => (Case::DeadJoined, "rule-drawn-dead-counts"),
        Some(Dead::ShortJoinsLive) => (Case::DeadJoined, "rule-drawn-dead-short"),
        Some(Dead::Apart) | None => (Case::DeadApart, "rule-drawn-dead-apart"),
    };
    cases.push((dead.0, Message::new(dead.1)));
    cases.push((Case::Overhang, Message::new("rule-drawn-overhang")));
    cases.push((Case::UnderTheLine, Message::new("rule-drawn-under-the-line")));
    cases.push(if protocol.overlap == Some(Overlap::Once) {
        (Case::TwoSpeciesOnce, Message::new("rule-drawn-two-species-once"))
    } else {
        (Case::TwoSpecies, Message::new("rule-drawn-two-species"))
    });
    cases
}

fn of_protocol(protocol: &Protocol, words: &Words) -> Vec<String> {
    let (rule, silent) = protocol.rule();
    let source = match (protocol.source.as_str(), protocol.from_memory) {
        ("", _) => words.word("methods-source-none"),
        (source, true) => words.say(&Message::new("methods-source-memory").with("source", source)),
        (source, false) => words.say(&Message::new("methods-source").with("source", source)),
    };
    let mut said = vec![
        words.say(
            &Message::new("packet-protocol-name")
                .with("name", protocol.name.as_str())
                .with("print", short_print(protocol))
                .with("source", source),
        ),
        words.say(&Message::new("methods-counts").with("what", counts(protocol, words))),
    ];
    match &protocol.gap.limit {
        None if protocol.gap.unknown().is_some() => said.push(words.word("packet-gap-unknown")),
        Some(limit) => {
            said.push(words.say(
                &Message::new("packet-gap").with("limit", Value::Length(limit.length(), limit.notation())),
            ));
            let cases = [
                ("rule-gap-equal", rule.gap.equal),
                ("rule-gap-two-plants", rule.gap.two_plants),
                ("rule-gap-across-species", rule.gap.across_species),
                ("rule-gap-between-species", rule.gap.between_species),
                ("rule-gap-across-dead", rule.gap.across_dead),
                ("rule-gap-line-end", rule.gap.line_end),
            ];
            let those = |wanted: Bridging| -> Vec<String> {
                let found = cases.iter().filter(|(_, does)| *does == wanted);
                found.map(|(code, _)| words.word(code)).collect()
            };
            for (code, wanted) in
                [("packet-gap-bridged", Bridging::Bridged), ("packet-gap-breaks", Bridging::Breaks)]
            {
                let cases = those(wanted);
                if !cases.is_empty() {
                    said.push(words.say(&Message::new(code).with("cases", cases)));
                }
            }
        }
        None => said.push(words.word("packet-every-edge")),
    }
    said.push(words.word(match rule.dead {
        DeadRule::LeftOut => "packet-dead-left-out",
        DeadRule::Apart => "packet-dead-apart",
        DeadRule::ShortJoinsLive => "packet-dead-joins",
        DeadRule::CountsAsLive => "packet-dead-counts",
    }));
    said.push(words.word(match protocol.side {
        Some(Side::Left) => "packet-side-left",
        Some(Side::Right) => "packet-side-right",
        None => "packet-side-open",
    }));
    let measures = [("packet-shortest", &protocol.shortest), ("packet-finest", &protocol.finest_division)];
    for (code, measure) in measures {
        if let Some(measure) = measure {
            let length = Value::Length(measure.length(), measure.notation());
            said.push(words.say(&Message::new(code).with("length", length)));
        }
    }
    let texts = [
        ("packet-window", &protocol.reading_window),
        ("packet-alive", &protocol.alive_without_leaves),
        ("packet-stalks", &protocol.flower_stalks),
        ("packet-tape", &protocol.tape),
        ("packet-wind", &protocol.wind_limit),
        ("packet-heights", &protocol.heights),
    ];
    for (code, written) in texts.into_iter().filter(|(_, written)| !written.is_empty()) {
        said.push(words.say(&Message::new(code).with("said", written.as_str())));
    }
    if !silent.is_empty() {
        let taken: Vec<String> = silent.iter().map(|one| words.assumption(one)).collect();
        said.push(words.say(&Message::new("methods-silence").with("taken", taken.join("; "))));
    }
    said
}

/// The beginning of the fingerprint, as sheets carry it.
pub(super) fn short_print(protocol: &Protocol) -> String {
    protocol.fingerprint().chars().take(12).collect()
}

fn counts(protocol: &Protocol, words: &Words) -> String {
    let counts = protocol.counts_or_woody();
    let forms = counts.forms.iter().map(|form| words.word(form.word()));
    let said: Vec<String> = forms.chain(counts.also.iter().cloned()).collect();
    let said = said.join(", ");
    if counts.except.is_empty() {
        said
    } else {
        words.say(&Message::new("methods-except").with("what", said).with("except", counts.except))
    }
}

fn plants(packet: &Packet, words: &Words) -> Option<Grid> {
    if packet.plants.is_empty() {
        return None;
    }
    let counts = packet.protocol.map(Protocol::counts_or_woody);
    let told_apart = packet.plants.iter().any(|plant| !plant.key_features.is_empty());
    let row = |plant: &Plant| {
        let counted = counts.as_ref().is_none_or(|counts| counts.includes(&plant.code, Some(plant)));
        let mut cells = vec![
            plant.code.clone(),
            plant.name.clone(),
            plant.common.clone(),
            words.word(plant.form.word()),
            words.word(if counted { "packet-yes" } else { "packet-no" }),
        ];
        cells.extend(told_apart.then(|| plant.key_features.clone()));
        cells.into_iter().map(Some).collect()
    };
    let headings = ["code", "name", "common", "form", "counted"].into_iter();
    let headings = headings.chain(told_apart.then_some("features"));
    Some(Grid {
        caption: words.word("packet-plants"),
        columns: headings.map(|name| words.word(&format!("packet-plant-{name}"))).collect(),
        rows: packet.plants.iter().map(row).collect(),
    })
}
