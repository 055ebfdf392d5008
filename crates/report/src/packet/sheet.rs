//! A blank sheet for one line: what is known is printed, what is read is written, and a code to scan says which line it is.

use super::booklet::{Blank, Drawn, Fact, Sheet};
use super::{Packet, rules};
use qrcode::{Color, QrCode};
use tautline_engine::length::Unit;
use tautline_survey::layout::LaidLine;
use tautline_survey::message::Message;
use tautline_words::Words;

/// Rows for readings on either half of a sheet.
const ROWS: usize = 26;

/// The sheet of a line; a spare one without a line.
pub(super) fn of_line(packet: &Packet, line: Option<&LaidLine>, words: &Words) -> Sheet {
    let layout = packet.layout;
    let title = words.say(&match line {
        Some(line) => Message::new("sheet-title").with("line", line.line.as_str()),
        None => Message::new("sheet-spare"),
    });
    let mut facts: Vec<(&str, String)> =
        vec![("sheet-site", layout.site.clone()), ("sheet-length", layout.line_length.clone())];
    if let Some(line) = line {
        facts.extend(line.stratum.clone().map(|name| ("sheet-stratum", name)));
        facts.push(("sheet-true", format!("{}°", line.true_bearing)));
        let compass = line.magnetic_bearing.map(|bearing| format!("{}°", words.number(bearing, 1)));
        facts.extend(compass.map(|bearing| ("sheet-compass", bearing)));
        let start = &line.start;
        facts.push((
            "sheet-start",
            format!("{} {}", words.number(start.latitude, 6), words.number(start.longitude, 6)),
        ));
    } else {
        facts.push(("sheet-line", String::new()));
        facts.push(("sheet-why", String::new()));
    }
    facts.extend(
        packet.protocol.map(|protocol| {
            ("sheet-protocol", format!("{} ({})", protocol.name, rules::short_print(protocol)))
        }),
    );
    for blank in ["sheet-date", "sheet-reader", "sheet-recorder", "sheet-time", "sheet-weather"] {
        facts.push((blank, String::new()));
    }
    let unit = Message::new(if packet.unit == Unit::Inch { "sheet-fractions" } else { "sheet-decimals" })
        .with("unit", packet.unit.symbol());
    Sheet {
        code: line.and_then(|line| code(packet, line, &title)),
        title,
        facts: facts.into_iter().map(|(code, said)| Fact::new(words.word(code), said)).collect(),
        caption: words.word("sheet-readings"),
        columns: columns(packet, words),
        rows: ROWS,
        foot: words.say(&unit) + " " + &words.word("sheet-nothing"),
    }
}

fn columns(packet: &Packet, words: &Words) -> Vec<Blank> {
    let unit = packet.unit.symbol();
    let length = |code: &str| format!("{} ({unit})", words.word(code));
    let columns = [
        ("length", length("sheet-from")),
        ("length", length("sheet-to")),
        ("species", words.word("sheet-species")),
        ("mark", words.word("sheet-dead")),
        ("height", length("sheet-height")),
    ];
    columns.map(|(holds, text)| Blank { holds, text }).to_vec()
}

/// The head of a typed sheet as a code to scan, so that what is typed from paper begins with its line. A line whose name is too
/// long for a code has none.
fn code(packet: &Packet, line: &LaidLine, title: &str) -> Option<Drawn> {
    let protocol = packet.protocol.map(|one| format!("Protocol: {}\n", one.name)).unwrap_or_default();
    let head = format!(
        "Site: {}\n{protocol}Unit: {}\n\nLine {}, {}\n",
        packet.layout.site,
        packet.unit.symbol(),
        line.line,
        packet.layout.line_length
    );
    let drawing = svg(&QrCode::new(head.as_bytes()).ok()?, &line.line)?;
    Some(Drawn { title: title.to_owned(), description: head, drawing })
}

fn svg(code: &QrCode, line: &str) -> Option<String> {
    let (wide, colours) = (code.width(), code.to_colors());
    let dark = colours.iter().enumerate().filter(|(_, colour)| **colour == Color::Dark);
    let squares: Vec<String> = dark.map(|(at, _)| format!("M{} {}h1v1h-1z", at % wide, at / wide)).collect();
    let squares = squares.concat();
    // four modules of quiet on every side (ISO/IEC 18004)
    let whole = wide.checked_add(8)?;
    Some(format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"-4 -4 {whole} {whole}\" role=\"img\" aria-label=\"{}\">\
         <rect x=\"-4\" y=\"-4\" width=\"{whole}\" height=\"{whole}\" fill=\"#fff\"/><path d=\"{squares}\" fill=\"#000\"/></svg>",
        crate::markup::escape(line)
    ))
}
