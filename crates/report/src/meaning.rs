//! What the words of a report mean: short, in the words of the trade, each with a small picture.

use crate::document::{Block, Item, Meaning as Told, Picture, Section};
use crate::page::{Medium, Page};
use crate::pictures::{frame, printed};
use crate::telling::Reader;
use tautline_figures::Palette;
use tautline_figures::meaning::{Meaning, draw};
use tautline_survey::message::Message;

/// The end of the id of everything here.
const KEY: &str = "meanings";
/// How wide a drawing is, on a screen and on paper alike.
const SMALL: u16 = 340;

/// Words of a report of sites: fewer for one who has a page of it.
pub(crate) fn of_sites(page: &Page) -> Vec<Meaning> {
    let wanted = |meaning: &Meaning| match meaning {
        Meaning::Cover | Meaning::Interval | Meaning::Verdict => true,
        Meaning::GapRule | Meaning::SumOfSpecies => page.reader != Reader::Landowner,
        Meaning::SmallestChange => !page.changes.is_empty(),
        Meaning::Trend => false,
    };
    Meaning::ALL.into_iter().filter(wanted).collect()
}

/// The section at the end of the report.
pub(crate) fn section(meanings: &[Meaning], page: &Page) -> Option<Section> {
    let blocks: Vec<Block> = meanings.iter().map(|&meaning| Block::Meaning(told(meaning, page))).collect();
    (!blocks.is_empty()).then(|| Section { key: KEY, heading: page.word("meanings"), blocks })
}

/// The way to it.
pub(crate) fn jump(page: &Page) -> Item {
    Item::leading_to(KEY.to_owned(), page.word("meanings-jump"))
}

fn told(meaning: Meaning, page: &Page) -> Told {
    let code = meaning.code();
    let word = |part: &str| page.word(&format!("meaning-{code}-{part}"));
    let labels: Vec<String> = meaning.labels().iter().map(|label| word(label)).collect();
    let (term, description) = (word("term"), word("picture"));
    let title = page.say(&Message::new("meaning-picture-title").with("term", term.as_str()));
    let drawing = |palette| {
        let named = format!("{KEY}-{code}");
        draw(meaning, &labels, &frame(&named, &title, &description, SMALL, palette, page))
    };
    let drawings = match page.medium {
        Medium::Screen => vec![drawing(Palette::screen())],
        Medium::Print => vec![drawing(printed())],
        Medium::Plain => Vec::new(),
    };
    let handbook = handbook(meaning);
    Told {
        term,
        said: vec![word("is"), word("is-not")],
        more: page.say(&Message::new("meaning-more").with("page", handbook)),
        page: handbook,
        picture: Picture { title, description, drawings },
    }
}

/// The page of the method handbook that says more.
const fn handbook(meaning: Meaning) -> &'static str {
    match meaning {
        Meaning::Cover => "canopy-cover",
        other => other.code(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use tautline_words::Words;

    #[test]
    fn every_meaning_is_told_in_every_language() {
        for language in Words::LANGUAGES {
            let words = Words::in_language(language).unwrap();
            for meaning in Meaning::ALL {
                let parts =
                    ["term", "is", "is-not", "picture"].into_iter().chain(meaning.labels().iter().copied());
                for part in parts {
                    let code = format!("meaning-{}-{part}", meaning.code());
                    assert!(words.has(&code), "{language}: no words for {code}");
                }
            }
        }
    }
}
