//! What is carried beside the sheets: equipment and stakes before, photo points and how to find a line again after.

use super::{Packet, read};
use crate::markup::{around, text};
use tautline_survey::layout::LaidLine;
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

/// Equipment, and how many stakes go out and come back.
pub(super) fn before(packet: &Packet, words: &Words) -> String {
    let list: String = EQUIPMENT.map(|code| text("li class=\"tick\"", &words.word(code))).concat();
    let stakes = Message::new("packet-stakes-said").with("stakes", 2 * packet.layout.walk.len());
    let stakes = text("h2", &words.word("packet-stakes"))
        + &text("p", &words.say(&stakes))
        + &table(
            &words.word("packet-stakes"),
            &["column-line", "stake-end", "stake-kind", "stake-capped", "stake-out", "stake-back"],
            &read(packet)
                .flat_map(|line| {
                    ["stake-zero", "stake-far"].map(|end| vec![line.line.clone(), words.word(end)])
                })
                .collect::<Vec<_>>(),
            words,
        );
    around(
        "section",
        &(text("h2", &words.word("packet-equipment")) + &around("ul class=\"ticks\"", &list) + &stakes),
    )
}

/// Photo points, and a card for each line on how it is found again.
pub(super) fn after(packet: &Packet, words: &Words) -> String {
    let photos = text("h2", &words.word("packet-photos"))
        + &text("p", &words.word("packet-photos-said"))
        + &table(
            &words.word("packet-photos"),
            &["column-line", "photo-from", "photo-toward", "photo-number", "photo-time", "photo-note"],
            &read(packet).flat_map(|line| photos(line, words)).collect::<Vec<_>>(),
            words,
        );
    let cards = read(packet).map(|line| card(packet, line, words)).collect::<String>();
    around("section", &photos)
        + &around(
            "section",
            &(text("h2", &words.word("packet-again")) + &around("div class=\"cards\"", &cards)),
        )
}

/// From the zero along the line, from its end back, and a near view (two general views and a close-up).
fn photos(line: &LaidLine, words: &Words) -> [Vec<String>; 3] {
    let back = (line.true_bearing + 180) % 360;
    let toward =
        |degrees: u16| words.say(&Message::new("photo-degrees").with("degrees", usize::from(degrees)));
    [
        vec![line.line.clone(), words.word("stake-zero"), toward(line.true_bearing)],
        vec![line.line.clone(), words.word("stake-far"), toward(back)],
        vec![line.line.clone(), words.word("stake-zero"), words.word("photo-down")],
    ]
}

/// Both ends, bearing, and room for witness marks.
fn card(packet: &Packet, line: &LaidLine, words: &Words) -> String {
    let place = |latitude: f64, longitude: f64, utm: &str| {
        format!("{} {} · {utm}", words.number(latitude, 6), words.number(longitude, 6))
    };
    let bearing = match line.magnetic_bearing {
        Some(magnetic) => format!("{}° · {}°", line.true_bearing, words.number(magnetic, 1)),
        None => format!("{}°", line.true_bearing),
    };
    let permission = packet
        .known
        .iter()
        .find(|known| known.site == packet.layout.site && known.line == line.line)
        .and_then(|known| known.permission.as_ref());
    let place = |latitude: f64, longitude: f64, utm: &str| match packet.openness {
        Openness::Exact => place(latitude, longitude, utm),
        _ => words.word("again-withheld"),
    };
    let facts = [
        ("again-zero", place(line.start.latitude, line.start.longitude, &line.start.utm)),
        ("again-end", place(line.end.latitude, line.end.longitude, &line.end.utm)),
        ("again-bearing", bearing),
        ("again-witness", String::new()),
        ("again-witness-two", String::new()),
        ("again-way-in", String::new()),
        ("again-permission", permission.map_or_else(String::new, |permission| words.say(&permission.said()))),
    ];
    let facts = facts.map(|(code, said)| {
        let class = if said.is_empty() { "dd class=\"blank\"" } else { "dd" };
        around("div", &(text("dt", &words.word(code)) + &text(class, &said)))
    });
    let title = words.say(&Message::new("sheet-title").with("line", line.line.as_str()));
    around("article class=\"card\"", &(text("h3", &title) + &around("dl", &facts.concat())))
}

/// A table whose rows begin with what is known and go on blank.
fn table(caption: &str, headings: &[&str], rows: &[Vec<String>], words: &Words) -> String {
    let head: String = headings.iter().map(|code| text("th scope=\"col\"", &words.word(code))).collect();
    let row = |known: &Vec<String>| {
        let cells = (0..headings.len()).map(|at| match (at, known.get(at)) {
            (0, Some(cell)) => text("th scope=\"row\"", cell),
            (_, Some(cell)) => text("td", cell),
            _ => text("td class=\"empty\"", ""),
        });
        around("tr", &cells.collect::<String>())
    };
    let inner = text("caption", caption)
        + &around("thead", &around("tr", &head))
        + &around("tbody", &rows.iter().map(row).collect::<String>());
    around("table tabindex=\"0\"", &inner)
}
