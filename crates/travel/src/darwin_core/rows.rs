//! Events, occurrences and what the survey looked for.

use super::{DARWIN_CORE, HUMBOLDT, Part};
use crate::Whole;
use crate::tables::metres;
use std::collections::BTreeSet;
use tautline_engine::num::decimal::shortest;
use tautline_survey::canonical::sha256_hex;
use tautline_survey::input::Input;
use tautline_survey::line::{LineResult, Recording};
use tautline_survey::message::Message;
use tautline_survey::place::{Openness, Told};
use tautline_survey::visit::Visit;
use tautline_words::Words;

macro_rules! terms {
    ($($namespace:literal $($term:literal)+;)+) => { &[$($(concat!($namespace, $term)),+),+] };
}

const EVENT: &[&str] = terms!["http://rs.tdwg.org/dwc/terms/"
    "eventID" "eventType" "eventDate" "samplingProtocol" "sampleSizeValue" "sampleSizeUnit" "samplingEffort" "locationID"
    "locality" "siteNumber" "decimalLatitude" "decimalLongitude" "geodeticDatum" "coordinateUncertaintyInMeters"
    "footprintWKT" "footprintSRS" "dataGeneralizations" "informationWithheld";];

const OCCURRENCE: &[&str] = terms!["http://rs.tdwg.org/dwc/terms/"
    "occurrenceID" "eventID" "basisOfRecord" "occurrenceStatus" "scientificName" "vernacularName" "verbatimIdentification"
    "organismQuantity" "organismQuantityType" "vitality" "recordedBy" "dataGeneralizations" "informationWithheld";];

const INVENTORY: &[&str] = terms!["http://rs.tdwg.org/eco/terms/"
    "siteCount" "verbatimSiteNames" "inventoryTypes" "protocolNames" "protocolDescriptions" "protocolReferences"
    "targetGrowthFormScope" "isGrowthFormScopeFullyReported" "isAbsenceReported" "isAbundanceReported"
    "isVegetationCoverReported" "isSamplingEffortReported" "samplingEffortProtocol" "samplingEffortValue"
    "samplingEffortUnit" "samplingPerformedBy" "hasNonTargetTaxa";];

pub(super) fn parts(whole: &Whole, words: &Words) -> [Part; 3] {
    let mut parts = [
        Part {
            file: "event.csv",
            class: "http://rs.tdwg.org/dwc/terms/Event",
            terms: EVENT,
            rows: Vec::new(),
        },
        Part {
            file: "occurrence.csv",
            class: "http://rs.tdwg.org/dwc/terms/Occurrence",
            terms: OCCURRENCE,
            rows: Vec::new(),
        },
        Part {
            file: "humboldt.csv",
            class: "http://rs.tdwg.org/eco/terms/Event",
            terms: INVENTORY,
            rows: Vec::new(),
        },
    ];
    debug_assert!(EVENT.iter().chain(OCCURRENCE).all(|term| term.starts_with(DARWIN_CORE)), "namespace");
    debug_assert!(INVENTORY.iter().all(|term| term.starts_with(HUMBOLDT)), "namespace");
    let mut seen = BTreeSet::new();
    for line in whole.assessments.iter().flat_map(|assessment| &assessment.lines) {
        let visit = &whole.input.visits[line.visit];
        if !line.unsettled && seen.insert(line.visit) {
            let told = Place::of(whole, line, words);
            let id = event_id(visit);
            parts[0].rows.push(event(whole.input, line, &id, &told));
            parts[1].rows.extend(occurrences(whole.input, line, visit, &id, &told));
            parts[2].rows.push(inventory(whole.input, line, visit, &id));
        }
    }
    parts
}

/// The same reading has the same id in every archive: a hash of what tells it from all others.
fn event_id(visit: &Visit) -> String {
    let date = visit.date.map_or(String::new(), |date| date.to_string());
    let parts = [&visit.site, &visit.line, &date, &visit.reader, &visit.recorder, &visit.pass];
    let text: String = parts.iter().flat_map(|part| [part.as_str(), "\u{1f}"]).collect();
    format!("urn:sha256:{}", sha256_hex(text.as_bytes()))
}

/// What is said of where a line lies, and in which words.
struct Place {
    latitude: String,
    longitude: String,
    uncertainty: String,
    wkt: String,
    generalised: String,
    withheld: String,
    /// What a quantity of plants is.
    quantity: String,
}

impl Place {
    fn of(whole: &Whole, line: &LineResult, words: &Words) -> Self {
        let mut place = Self {
            latitude: String::new(),
            longitude: String::new(),
            uncertainty: String::new(),
            wkt: String::new(),
            generalised: String::new(),
            withheld: String::new(),
            quantity: words.word("export-quantity"),
        };
        let openness = if whole.full { Openness::Exact } else { whole.input.openness(&line.site) };
        match whole.told(&line.site, &line.line) {
            Some(Told::Exact(start, end)) => {
                place.at(start.degrees());
                if let Some(end) = end {
                    let [[a, b], [c, d]] = [start.degrees(), end.degrees()].map(|at| at.map(shortest));
                    place.wkt = format!("LINESTRING ({b} {a}, {d} {c})");
                }
            }
            Some(Told::Blurred(middle, metres)) => {
                place.at(middle.degrees());
                place.uncertainty = metres.to_string();
                if let Openness::Blurred(width) = openness {
                    let said = Message::new("export-generalised").with("width", u64::from(width));
                    place.generalised = words.say(&said);
                }
            }
            Some(Told::Withheld) => place.withheld = words.word("export-withheld"),
            None => {}
        }
        place
    }

    fn at(&mut self, [latitude, longitude]: [f64; 2]) {
        self.latitude = shortest(latitude);
        self.longitude = shortest(longitude);
    }
}

fn protocol_name(input: &Input, line: &LineResult) -> String {
    let name = input.protocols.get(&line.protocol).map_or("", |protocol| protocol.name.as_str());
    [name, "line intercept"].into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join("; ")
}

fn event(input: &Input, line: &LineResult, id: &str, told: &Place) -> Vec<String> {
    let has_place = !told.latitude.is_empty();
    vec![
        id.to_owned(),
        id.to_owned(),
        "Survey".to_owned(),
        line.date.map_or(String::new(), |date| date.to_string()),
        protocol_name(input, line),
        shortest(metres(line.read)),
        "metre".to_owned(),
        format!("{} m of line", shortest(metres(line.read))),
        format!("{}/{}", line.site, line.line),
        line.site.clone(),
        line.line.clone(),
        told.latitude.clone(),
        told.longitude.clone(),
        if has_place { "EPSG:4326".to_owned() } else { String::new() },
        told.uncertainty.clone(),
        told.wkt.clone(),
        if told.wkt.is_empty() { String::new() } else { "EPSG:4326".to_owned() },
        told.generalised.clone(),
        told.withheld.clone(),
    ]
}

/// Each species with its live cover; one that was met dead alone is there, and dead.
fn occurrences(
    input: &Input,
    line: &LineResult,
    visit: &Visit,
    event: &str,
    told: &Place,
) -> Vec<Vec<String>> {
    let one = |species: &tautline_survey::line::SpeciesResult| {
        let plant = input.plants.find(&species.code);
        let is_live = species.live.high.nanometres() > 0;
        let known = species.live.is_known();
        let percent = shortest(line.share(species.live.low) * 100.0);
        vec![
            event.to_owned(),
            format!("{event}:{}", species.code),
            event.to_owned(),
            "HumanObservation".to_owned(),
            "present".to_owned(),
            plant.map_or(String::new(), |plant| plant.name.clone()),
            plant.map_or(String::new(), |plant| plant.common.clone()),
            species.code.clone(),
            if known { percent } else { String::new() },
            if known { told.quantity.clone() } else { String::new() },
            if is_live { "alive".to_owned() } else { "dead".to_owned() },
            visit.reader.clone(),
            told.generalised.clone(),
            told.withheld.clone(),
        ]
    };
    line.species.iter().filter(|species| !species.code.is_empty()).map(one).collect()
}

fn inventory(input: &Input, line: &LineResult, visit: &Visit, id: &str) -> Vec<String> {
    let protocol = input.protocols.get(&line.protocol);
    let forms = protocol.map(|protocol| {
        let counts = protocol.counts_or_woody();
        counts.forms.iter().map(|form| form.word()).collect::<Vec<_>>().join(" | ")
    });
    let people: Vec<&str> =
        [visit.reader.as_str(), &visit.recorder].into_iter().filter(|name| !name.is_empty()).collect();
    let others = line.species.iter().any(|species| !species.counted);
    let yes = |yes: bool| yes.to_string();
    vec![
        id.to_owned(),
        "1".to_owned(),
        line.site.clone(),
        "restricted search".to_owned(),
        protocol_name(input, line),
        protocol.map_or(String::new(), |protocol| {
            let (limit, most) = line.gap_limits();
            let limit = shortest(metres(limit));
            let limit = most.map_or(format!("gap limit {limit} m"), |most| {
                format!("gap limit unknown, {limit} to {} m", shortest(metres(most)))
            });
            format!("{limit}; fingerprint {}", protocol.fingerprint())
        }),
        protocol.map_or(String::new(), |protocol| protocol.source.clone()),
        forms.unwrap_or_default(),
        // a line that was read to its end holds every plant that counts; nothing found is an absence that was seen
        yes(!line.is_partly_read()),
        yes(line.recording == Recording::NothingFound),
        yes(true),
        yes(true),
        yes(true),
        "length of line".to_owned(),
        shortest(metres(line.read)),
        "metre".to_owned(),
        people.join(" | "),
        yes(others),
    ]
}
