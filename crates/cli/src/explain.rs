//! The method handbook on a terminal.

use crate::call::Done;
use crate::exit::Exit;
use crate::show;
use clap::{Arg, ArgMatches, Command};
use tautline_handbook::{Page, find, named, pages};
use tautline_survey::message::Message;
use tautline_words::Words;

pub(crate) fn command(words: &Words) -> Command {
    let asked = Arg::new("words").value_name("WORDS").help(words.word("help-explain-words")).num_args(0..);
    Command::new("explain").about(words.word("help-explain-page")).arg(asked)
}

/// The page of that name, or the pages that hold the words; all of them where nothing is asked for.
pub(crate) fn run(asked: &ArgMatches, words: &Words) -> Done {
    let wanted: Vec<&str> =
        asked.get_many::<String>("words").into_iter().flatten().map(String::as_str).collect();
    let wanted = wanted.join(" ");
    if let Some(page) = named(&wanted.trim().to_lowercase().replace(' ', "-")) {
        print(page, words);
        return Ok(Exit::Well);
    }
    match find(pages(), &wanted).as_slice() {
        [] => {
            let message = Message::new("handbook-not-found").with("words", wanted.as_str());
            Err((words.say(&message), Exit::Nothing))
        }
        [page] => {
            print(page, words);
            Ok(Exit::Well)
        }
        found => {
            list(found, words);
            Ok(Exit::Well)
        }
    }
}

fn print(page: &Page, words: &Words) {
    in_english(words);
    show::print_all(&format!(
        "{}\n{}\n\n{}\n",
        page.title,
        "=".repeat(page.title.chars().count()),
        page.text
    ));
}

/// Each page by its name and title, part by part.
fn list(found: &[&Page], words: &Words) {
    in_english(words);
    let width = found.iter().map(|page| page.name.len()).max().unwrap_or_default();
    let mut part = "";
    for page in found {
        // pages found by a word stand in the order of how well they fit
        if page.part != part && found.len() == pages().len() {
            show::line("");
            show::line(&page.part);
            part = &page.part;
        }
        show::line(&format!("  {:<width$}  {}", page.name, page.title));
    }
    show::aside(&words.word("handbook-how"));
}

/// That the pages are English, to whoever reads something else.
fn in_english(words: &Words) {
    if words.language() != "en" {
        show::aside(&words.word("handbook-english"));
    }
}
