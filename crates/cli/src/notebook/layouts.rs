//! Layouts kept in a notebook, and drawn lines that can't be read.

use super::{Notebook, Refused, file, text};
use crate::call::Done;
use crate::exit::Exit;
use crate::here::Here;
use crate::show;
use clap::ArgMatches;
use tautline_ground::drawn::record;
use tautline_ground::site::Site;
use tautline_survey::date::Date;
use tautline_survey::drawn::{Replaced, Why};
use tautline_survey::layout::LayoutOutput;
use tautline_survey::message::{Message, Value};
use tautline_survey::notebook::layouts;
use tautline_words::Words;

/// Keeps a layout with its lines, places and strata, where a notebook was named.
pub(crate) fn keep(
    asked: &ArgMatches,
    site: &Site,
    layout: &LayoutOutput,
    words: &Words,
    here: &mut Here,
) -> Result<(), Refused> {
    let Some(file) = text(asked, "notebook") else { return Ok(()) };
    if layout.site.is_empty() {
        return Err((words.word("layout-site-unnamed"), Exit::NotUnderstood));
    }
    sign(asked, here);
    let mut notebook = Notebook::open_or_begin(file, words)?;
    let today = Some(here.today);
    let reason = text(asked, "reason").unwrap_or_default();
    let drawn = record(site, layout, text(asked, "names").unwrap_or_default(), reason, today);
    let drafts = layouts::keep(&notebook.current()?, &drawn)
        .map_err(|refused| (words.say(&refused), Exit::MustSettle))?;
    if drafts.is_empty() {
        show::aside(&words.word("ledger-same"));
        return Ok(());
    }
    notebook.write("plan", drafts, reason, here)?;
    show::aside(&words.say(&Message::new("layout-kept").with("file", file)));
    Ok(())
}

/// Takes a drawn line out of the plan, and the next reserve of its stratum into it.
pub(crate) fn replace(asked: &ArgMatches, words: &Words, here: &mut Here) -> Done {
    let own = |name: &str| text(asked, name).unwrap_or_default().trim().to_owned();
    let date = text(asked, "date")
        .map(|found| {
            Date::read(found).ok_or_else(|| {
                (words.say(&Message::new("option-date").with("found", found)), Exit::NotUnderstood)
            })
        })
        .transpose()?;
    let word = Replaced {
        site: own("site"),
        line: own("line"),
        by: None,
        why: Why::from_word(&own("why")).unwrap_or(Why::Other),
        note: own("note"),
        date,
    };
    sign(asked, here);
    let mut notebook = Notebook::open(file(asked), words)?;
    let done = layouts::replace(&notebook.current()?, word)
        .map_err(|refused| (words.say(&refused), Exit::NotUnderstood))?;
    notebook.write("replace", done.drafts, &own("note"), here)?;
    show::line(&words.say(&replaced(&done.word)));
    show::line(
        &words.say(
            &Message::new(done.word.why.follows())
                .with("site", done.word.site.as_str())
                .with("lines", vec![done.word.line.clone()]),
        ),
    );
    Ok(Exit::Well)
}

/// What takes the place of a line.
fn replaced(word: &Replaced) -> Message {
    let message = Message::new(if word.by.is_some() { "replaced-by" } else { "replaced-by-none" });
    message
        .with("line", word.line.as_str())
        .with("by", word.by.clone().unwrap_or_default())
        .with("why", Value::Word(word.why.code()))
}

fn sign(asked: &ArgMatches, here: &mut Here) {
    if let Some(author) = text(asked, "author") {
        author.clone_into(&mut here.author);
    }
}
