//! Strata as given in a call: `flat: 12, 5` for twelve hectares whose lines vary by 5 %.

use super::numbers::{Numbers, Refusal};
use crate::call::percent;
use crate::exit::Exit;
use clap::ArgMatches;
use tautline_engine::effort::allot::Stratum;
use tautline_survey::effort::shares::Planned;
use tautline_survey::message::Message;
use tautline_words::Words;

pub(super) fn read(asked: &ArgMatches, words: &Words) -> Result<Vec<Planned>, Refusal> {
    let least = Numbers { asked, words }.whole("least")?.unwrap_or(2).max(2);
    let wrong = |found: &String| {
        (words.say(&Message::new("option-stratum").with("found", found.as_str())), Exit::NotUnderstood)
    };
    let all = asked.get_many::<String>("stratum").into_iter().flatten();
    all.map(|found| planned(found, least).ok_or_else(|| wrong(found))).collect()
}

/// `NAME: HECTARES, PERCENT` or `NAME: HECTARES, PERCENT, COST`.
fn planned(text: &str, least: usize) -> Option<Planned> {
    let (name, numbers) = text.rsplit_once(':')?;
    let numbers: Vec<&str> = numbers.split(',').map(str::trim).collect();
    let (area, spread, cost) = match numbers.as_slice() {
        [area, spread] => (area, spread, "1"),
        [area, spread, cost] => (area, spread, *cost),
        _ => return None,
    };
    let positive = |text: &str| text.parse::<f64>().ok().filter(|number| number.is_finite() && *number > 0.0);
    let deviation = percent(spread).filter(|&spread| spread > 0.0)? / 100.0;
    let stratum = Stratum { area: positive(area)?, deviation, cost: positive(cost)?, least };
    (!name.trim().is_empty()).then(|| Planned { name: name.trim().to_owned(), stratum })
}
