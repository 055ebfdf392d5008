//! What is carried beside the sheets: equipment and stakes before, photo points and how to find a line again after.

use super::Packet;
use super::booklet::{Card, Cards, Fact, Grid, List, Part};
use tautline_survey::layout::{End, LaidLine};
use tautline_survey::message::Message;
use tautline_survey::place::Openness;
use tautline_words::Words;

const EQUIPMENT: [&str; 12] = [
    "equipment-tape",
    "equipment-stakes",
    "equipment-pins",
    "equipment-hammer",
    "equipment-plumb",
    "equipment-compass",
    "equipment-gps",
    "equipment-sheets",
    "equipment-plants",
    "equipment-camera",
    "equipment-water",
    "equipment-radio",
];

/// What is taken along.
pub(super) fn equipment(words: &Words) -> List {
    List { heading: words.word("packet-equipment"), items: EQUIPMENT.map(|code| words.word(code)).to_vec() }
}

/// How many stakes go out and come back.
pub(super) fn stakes(packet: &Packet, words: &Words) -> Part {
    let said = Message::new("packet-stakes-said").with("stakes", 2 * packet.layout.walk.len());
    let ends =
        |line: &LaidLine| ["stake-zero", "stake-far"].map(|end| vec![line.line.clone(), words.word(end)]);
    let columns = ["column-line", "stake-end", "stake-kind", "stake-capped", "stake-out", "stake-back"];
    let table = table("packet-stakes", &columns, packet.read().flat_map(ends), words);
    Part { heading: words.word("packet-stakes"), said: vec![words.say(&said)], tables: vec![table] }
}

/// Photo points.
pub(super) fn photos(packet: &Packet, words: &Words) -> Part {
    let columns = ["column-line", "photo-from", "photo-toward", "photo-number", "photo-time", "photo-note"];
    let rows = packet.read().flat_map(|line| photos_of(line, words));
    Part {
        heading: words.word("packet-photos"),
        said: vec![words.word("packet-photos-said")],
        tables: vec![table("packet-photos", &columns, rows, words)],
    }
}

/// From the zero along the line, from its end back, and a near view (two general views and a close-up).
fn photos_of(line: &LaidLine, words: &Words) -> [Vec<String>; 3] {
    let back = (line.true_bearing + 180) % 360;
    let toward =
        |degrees: u16| words.say(&Message::new("photo-degrees").with("degrees", usize::from(degrees)));
    [
        vec![line.line.clone(), words.word("stake-zero"), toward(line.true_bearing)],
        vec![line.line.clone(), words.word("stake-far"), toward(back)],
        vec![line.line.clone(), words.word("stake-zero"), words.word("photo-down")],
    ]
}

/// A card for each line on how it is found again.
pub(super) fn again(packet: &Packet, words: &Words) -> Cards {
    Cards {
        heading: words.word("packet-again"),
        cards: packet.read().map(|line| card(packet, line, words)).collect(),
    }
}

/// Both ends, bearing, and room for witness marks.
fn card(packet: &Packet, line: &LaidLine, words: &Words) -> Card {
    let bearing = match line.magnetic_bearing {
        Some(magnetic) => format!("{}° · {}°", line.true_bearing, words.number(magnetic, 1)),
        None => format!("{}°", line.true_bearing),
    };
    let permission = packet
        .known
        .iter()
        .find(|known| known.site == packet.layout.site && known.line == line.line)
        .and_then(|known| known.permission.as_ref());
    let place = |end: &End| match packet.openness {
        Openness::Exact => {
            format!("{} {} · {}", words.number(end.latitude, 6), words.number(end.longitude, 6), end.utm)
        }
        _ => words.word("again-withheld"),
    };
    let facts = [
        ("again-zero", place(&line.start)),
        ("again-end", place(&line.end)),
        ("again-bearing", bearing),
        ("again-stakes", String::new()),
        ("again-witness", String::new()),
        ("again-witness-two", String::new()),
        ("again-way-in", String::new()),
        ("again-permission", permission.map_or_else(String::new, |permission| words.say(&permission.said()))),
    ];
    Card {
        title: words.say(&Message::new("sheet-title").with("line", line.line.as_str())),
        facts: facts.into_iter().map(|(code, said)| Fact::new(words.word(code), said)).collect(),
    }
}

/// A table whose rows begin with what is known and go on blank.
fn table(caption: &str, headings: &[&str], rows: impl Iterator<Item = Vec<String>>, words: &Words) -> Grid {
    let filled = |known: Vec<String>| {
        let mut row: Vec<Option<String>> = known.into_iter().map(Some).collect();
        row.resize(headings.len(), None);
        row
    };
    Grid {
        caption: words.word(caption),
        columns: headings.iter().map(|code| words.word(code)).collect(),
        rows: rows.map(filled).collect(),
    }
}
