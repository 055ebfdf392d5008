//! What the archive is about, as Ecological Metadata Language 2.2.0.

use crate::Whole;
use crate::placed::all;
use std::collections::BTreeSet;
use tautline_engine::num::decimal::shortest;
use tautline_survey::place::Told;
use tautline_words::Words;

/// The description of the archive. Where nobody says who gives the data out, it says that this isn't known.
///
/// # Source
/// Jones and others 2019, Ecological Metadata Language 2.2.0, `eml-dataset` and `eml-resource`: creator, contact and publisher, in
/// the order in which a dataset has them
pub(super) fn eml(whole: &Whole, words: &Words) -> String {
    let name = escaped(&whole.publisher.map_or_else(|| words.word("export-unnamed"), str::to_owned));
    let party = |element: &str| format!("<{element}><organizationName>{name}</organizationName></{element}>");
    let files: Vec<&str> = whole.input.files.iter().map(|file| file.sha256.as_str()).collect();
    let id = tautline_survey::canonical::sha256_hex(files.concat().as_bytes());
    format!(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n\
         <eml:eml xmlns:eml=\"https://eml.ecoinformatics.org/eml-2.2.0\" packageId=\"urn:sha256:{id}\" system=\"tautline\" \
         xml:lang=\"{}\">\n<dataset>\n<title>{}</title>\n{}\n<abstract><para>{}</para></abstract>\n\
         <intellectualRights><para>{}</para></intellectualRights>\n{}{}\n{}{}</dataset>\n</eml:eml>\n",
        words.language(),
        escaped(&words.word("package-title")),
        party("creator"),
        escaped(&words.word("package-description")),
        escaped(&words.word("export-rights")),
        coverage(whole),
        party("contact"),
        if whole.publisher.is_some() { party("publisher") + "\n" } else { String::new() },
        methods(whole),
    )
}

/// Where, as far as it is told, and when.
fn coverage(whole: &Whole) -> String {
    let told = all(whole);
    let corners = told.iter().flat_map(|one| match one.told {
        Told::Exact(start, end) => std::iter::once(start).chain(end).collect(),
        Told::Blurred(middle, _) => vec![middle],
        Told::Withheld => Vec::new(),
    });
    let degrees: Vec<[f64; 2]> = corners.map(tautline_survey::place::Position::degrees).collect();
    let most =
        |at: usize, better: fn(f64, f64) -> f64| degrees.iter().map(|corner| corner[at]).reduce(better);
    let sites: BTreeSet<&str> =
        told.iter().filter(|one| one.told != Told::Withheld).map(|one| one.site).collect();
    let sites = sites.into_iter().collect::<Vec<_>>().join(", ");
    let bounds = [most(1, f64::min), most(1, f64::max), most(0, f64::max), most(0, f64::min)]
        .map(|one| one.map(shortest));
    let place = if let [Some(west), Some(east), Some(north), Some(south)] = bounds {
        format!(
            "<geographicCoverage><geographicDescription>{}</geographicDescription><boundingCoordinates>\
             <westBoundingCoordinate>{west}</westBoundingCoordinate><eastBoundingCoordinate>{east}</eastBoundingCoordinate>\
             <northBoundingCoordinate>{north}</northBoundingCoordinate><southBoundingCoordinate>{south}</southBoundingCoordinate>\
             </boundingCoordinates></geographicCoverage>",
            escaped(&sites)
        )
    } else {
        String::new()
    };
    let dates = || whole.input.visits.iter().filter_map(|visit| visit.date);
    let day = |date: tautline_survey::date::Date| format!("<calendarDate>{date}</calendarDate>");
    let time = match (dates().min(), dates().max()) {
        (Some(first), Some(last)) => format!(
            "<temporalCoverage><rangeOfDates><beginDate>{}</beginDate><endDate>{}</endDate></rangeOfDates></temporalCoverage>",
            day(first),
            day(last)
        ),
        _ => String::new(),
    };
    let both = place + &time;
    if both.is_empty() { both } else { format!("<coverage>{both}</coverage>\n") }
}

fn methods(whole: &Whole) -> String {
    let steps: Vec<String> = whole
        .input
        .protocols
        .values()
        .map(|protocol| {
            let rules = escaped(&tautline_exchange::protocol::to_toml(protocol));
            format!("<methodStep><description><para>{rules}</para></description></methodStep>\n")
        })
        .collect();
    if steps.is_empty() { String::new() } else { format!("<methods>\n{}</methods>\n", steps.concat()) }
}

fn escaped(text: &str) -> String {
    let allowed = |c: &char| !c.is_control() || *c == '\n';
    let text: String = text.chars().filter(allowed).collect();
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;")
}
