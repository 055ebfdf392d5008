//! Lines for a GPS receiver. A receiver leads people to a place, so that a blurred one isn't among them.

use crate::placed::drawable;
use crate::{File, Whole};
use tautline_exchange::laid::{Way, ways};
use tautline_survey::message::Message;
use tautline_survey::place::Told;

pub(crate) fn files(whole: &Whole) -> Result<Vec<File>, Message> {
    let lines = drawable(whole, |told| matches!(told, Told::Exact(..)))?;
    let way = |one: &crate::placed::Placed| match one.told {
        Told::Exact(start, end) => Some(Way {
            name: format!("{} {}", one.site, one.line),
            note: one.stratum.unwrap_or("").to_owned(),
            start: start.degrees(),
            end: end.map(tautline_survey::place::Position::degrees),
        }),
        _ => None,
    };
    let all: Vec<Way> = lines.iter().filter_map(way).collect();
    Ok(vec![File::text("lines.gpx", ways("tautline", &all))])
}
