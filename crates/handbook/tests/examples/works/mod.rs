//! The calculations that examples name, each by the engine or the survey.

mod change;
mod line;
mod lines;
mod place;
mod plan;
mod readers;
mod table;
mod trend;

use crate::example::Example;
use crate::printed::Found;

/// What a calculation comes to, by the name of the figure.
pub(crate) type Answer<'a> = Box<dyn Fn(&str) -> Result<Found, String> + 'a>;

/// An answer that the calculation doesn't have.
pub(crate) fn unknown(key: &str) -> Result<Found, String> {
    Err(format!("nothing works out “{key}”"))
}

/// Works an example out.
pub(crate) fn out(example: &Example) -> Answer<'_> {
    match example.calculation.as_str() {
        "line" => line::out(example),
        "widths" => line::widths(example),
        "lines" => lines::out(example),
        "figure" => lines::figure(example),
        "empty lines" => lines::empty(example),
        "table" => table::out(example),
        "lines needed" => plan::needed(example),
        "allotment" => plan::allotment(example),
        "looks" => plan::looks(example),
        "chance" => plan::chance(example),
        "change" => change::out(example),
        "years" => trend::years(example),
        "series" => trend::series(example),
        "two readers" => readers::two(example),
        "reader table" => readers::table(example),
        "habit" => readers::habit(example),
        "key and sheet" => readers::graded(example),
        "baseline" => place::baseline(example),
        "bearing" => place::bearing(example),
        other => panic!("no calculation is called “{other}”"),
    }
}
