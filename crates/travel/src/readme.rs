//! What stands beside each export for people: what it is, how places were told, what the form can't carry.

use crate::{File, Form, Whole};
use tautline_survey::message::Message;
use tautline_survey::place::Told;
use tautline_words::Words;

/// How many lines are told exactly, blurred, withheld, and of how many no place is known.
pub(crate) fn counted(whole: &Whole) -> [usize; 4] {
    let mut counts = [0; 4];
    for row in &crate::tables::lines(whole).rows {
        let told = match (&row[0], &row[1]) {
            (crate::table::Cell::Text(site), crate::table::Cell::Text(line)) => whole.told(site, line),
            _ => None,
        };
        counts[match told {
            Some(Told::Exact(..)) => 0,
            Some(Told::Blurred(..)) => 1,
            Some(Told::Withheld) => 2,
            None => 3,
        }] += 1;
    }
    counts
}

pub(crate) fn file(form: Form, whole: &Whole, words: &Words) -> File {
    let names: Vec<&str> = whole
        .input
        .files
        .iter()
        .map(|file| file.name.rsplit(['/', '\\']).next().unwrap_or_default())
        .collect();
    let mut lines = vec![words.say(&Message::new("readme-head").with("version", env!("CARGO_PKG_VERSION")))];
    if !names.is_empty() {
        lines.push(words.say(&Message::new("readme-files").with("files", names.join(", "))));
    }
    lines.push(words.word("package-description"));
    let [exact, blurred, withheld, unknown] = counted(whole);
    lines.push(if whole.full {
        words.word("readme-places-full")
    } else {
        let told = Message::new("readme-places").with("exact", exact).with("blurred", blurred);
        words.say(&told.with("withheld", withheld).with("unknown", unknown))
    });
    lines.push(words.word("readme-lacks"));
    lines.push(words.word(form.lacks()));
    File::text("readme.txt", lines.join("\n\n") + "\n")
}
