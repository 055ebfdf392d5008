//! Whether the readings behind a report stand as they did when it was written.

use crate::call::Done;
use crate::exit::Exit;
use crate::inputs::unreadable;
use crate::show;
use std::collections::BTreeMap;
use tautline_survey::date::Date;
use tautline_survey::imprint::{found_in, of_readings};
use tautline_survey::input::Input;
use tautline_survey::message::Message;
use tautline_words::Words;

/// Says of every fingerprint in a report whether it is still that of the readings of some site and year.
pub(crate) fn verify(file: &str, input: &Input, words: &Words) -> Done {
    let bytes = std::fs::read(file).map_err(|error| unreadable(file, &error, words))?;
    let prints = found_in(&bytes);
    if prints.is_empty() {
        let message = Message::new("verify-no-print").with("file", file);
        return Err((words.say(&message), Exit::Nothing));
    }
    let rounds: BTreeMap<String, (&str, Option<u16>)> = input
        .visits
        .iter()
        .map(|visit| (visit.site.as_str(), visit.date.map(Date::year)))
        .collect::<std::collections::BTreeSet<_>>()
        .into_iter()
        .map(|(site, year)| (of_readings(input, site, year), (site, year)))
        .collect();
    let mut stand = true;
    for print in prints {
        let message = match rounds.get(&print) {
            Some((site, Some(year))) => {
                Message::new("verify-stands").with("site", *site).with("year", year.to_string())
            }
            Some((site, None)) => Message::new("verify-stands-undated").with("site", *site),
            None => {
                stand = false;
                Message::new("verify-differs").with("print", print.chars().take(12).collect::<String>())
            }
        };
        show::line(&words.say(&message));
    }
    Ok(if stand { Exit::Well } else { Exit::MustSettle })
}
