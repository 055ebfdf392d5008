//! What was to be read: sites, strata, lines with their places, plants, protocols, goals.

use super::{measure, site_names};
use crate::Whole;
use crate::table::{Cell, Column, Holds, Link, Table};
use std::collections::BTreeSet;
use tautline_engine::num::decimal::shortest;
use tautline_exchange::protocol::to_toml;
use tautline_survey::assess::SiteGoal;
use tautline_survey::goal::{Relation, Subject, Wanted};
use tautline_survey::input::Input;
use tautline_survey::place::{Openness, Position, Told};
use tautline_survey::plan::Slope;
use tautline_survey::plants::GrowthForm;

const SITE: Column = Column::new("site", Holds::Text).needed();
pub(super) const TO_SITE: Link = Link { columns: &["site"], table: "sites", there: &["site"] };

pub(super) fn sites(whole: &Whole) -> Table {
    let Whole { input, goals, full, .. } = *whole;
    let row = |name: &str| {
        let site = input.sites.iter().find(|site| site.site == name);
        // whose land it is and what nests there is what a place is kept back for
        let site = site.filter(|site| full || site.openness() == Openness::Exact);
        vec![
            Cell::text(name),
            site.map_or(Cell::Empty, |site| Cell::text(&site.ownership)),
            site.map_or(Cell::Empty, |site| Cell::Yes(site.nest)),
            Cell::Text(input.openness(name).to_string()),
        ]
    };
    Table {
        name: "sites",
        columns: vec![
            SITE,
            Column::new("ownership", Holds::Text),
            Column::new("nest", Holds::Yes),
            Column::new("places", Holds::Text).needed(),
        ],
        key: &["site"],
        links: &[],
        rows: site_names(input, goals).into_iter().map(row).collect(),
    }
}

pub(super) fn strata(input: &Input) -> Table {
    // square millimetres to square metres: an exact decimal, and the nearest double of it
    #[expect(clippy::cast_precision_loss, reason = "areas stay below 2^53 square millimetres, 9000 km²")]
    let area = |square_mm: u64| square_mm as f64 / 1e6;
    let rows = input.strata.iter().map(|stratum| {
        vec![Cell::text(&stratum.site), Cell::text(&stratum.name), Cell::Number(area(stratum.area))]
    });
    Table {
        name: "strata",
        columns: vec![
            SITE,
            Column::new("stratum", Holds::Text).needed(),
            Column::of("area_m2", "m2").needed(),
        ],
        key: &["site", "stratum"],
        links: &[TO_SITE],
        rows: rows.collect(),
    }
}

pub(super) fn plants(input: &Input) -> Table {
    const FORMS: [&str; 9] =
        ["tree", "shrub", "subshrub", "succulent", "vine", "grass", "forb", "crust", "other"];
    let rows = input.plants.plants.iter().map(|plant| {
        vec![
            Cell::text(&plant.code),
            Cell::text(&plant.name),
            Cell::text(&plant.common),
            Cell::text(plant.form.word()),
            Cell::text(&plant.groups.join(" ")),
            Cell::text(&plant.key_features),
        ]
    });
    debug_assert!(GrowthForm::ALL.iter().all(|form| FORMS.contains(&form.word())), "a form is missing");
    Table {
        name: "plants",
        columns: vec![
            Column::new("code", Holds::Text).needed(),
            Column::new("scientific_name", Holds::Text),
            Column::new("common_name", Holds::Text),
            Column::new("growth_form", Holds::OneOf(&FORMS)).needed(),
            Column::new("groups", Holds::Text),
            Column::new("key_features", Holds::Text),
        ],
        key: &["code"],
        links: &[],
        rows: rows.collect(),
    }
}

pub(super) fn protocols(input: &Input) -> Table {
    let rows = input.protocols.iter().map(|(fingerprint, protocol)| {
        let (rule, assumed) = protocol.rule();
        let least = protocol.ends(None).map_or(rule, |[least, _]| least).gap.limit;
        let most =
            if least < rule.gap.limit { Cell::Number(super::metres(rule.gap.limit)) } else { Cell::Empty };
        let assumed: Vec<String> =
            assumed.iter().map(|taken| format!("{}: {}", taken.rule, taken.taken)).collect();
        vec![
            Cell::text(fingerprint),
            Cell::text(&protocol.name),
            Cell::text(&protocol.source),
            Cell::Number(super::metres(least)),
            most,
            Cell::text(&assumed.join("; ")),
            Cell::text(&to_toml(protocol)),
        ]
    });
    Table {
        name: "protocols",
        columns: vec![
            Column::new("protocol", Holds::Text).needed(),
            Column::new("name", Holds::Text),
            Column::new("source", Holds::Text),
            Column::of("gap_limit_m", "m").needed(),
            Column::of("gap_limit_high_m", "m"),
            Column::new("assumed", Holds::Text),
            Column::new("rules", Holds::Text),
        ],
        key: &["protocol"],
        links: &[],
        rows: rows.collect(),
    }
}

/// Every line that anything is said of, where it lies as far as that is told.
pub(super) fn lines(whole: &Whole) -> Table {
    let input = whole.input;
    let plan = input.plan.iter().map(|line| (line.site.as_str(), line.line.as_str()));
    let visits = input.visits.iter().map(|visit| (visit.site.as_str(), visit.line.as_str()));
    let places = input.places.iter().map(|place| (place.site.as_str(), place.line.as_str()));
    let all: BTreeSet<(&str, &str)> = plan.chain(visits).chain(places).collect();
    let mut all: Vec<(&str, &str)> = all.into_iter().collect();
    all.sort_by(|a, b| a.0.cmp(b.0).then_with(|| tautline_survey::assess::natural_order(a.1, b.1)));
    let rows = all.into_iter().map(|(site, line)| {
        let planned = input.planned(site, line);
        let text = |found: Option<&String>| Cell::text(found.map_or("", String::as_str));
        let (grade, angle) = match planned.and_then(|line| line.slope) {
            Some(Slope::Grade(percent)) => (Cell::Number(f64::from(percent.0) / 10_000.0), Cell::Empty),
            Some(Slope::Degrees(angle)) => (Cell::Empty, Cell::Number(f64::from(angle) / 10_000.0)),
            None => (Cell::Empty, Cell::Empty),
        };
        let mut row = vec![
            Cell::text(site),
            Cell::text(line),
            measure(planned.and_then(|line| line.length.as_ref())),
            text(planned.and_then(|line| line.stratum.as_ref())),
            text(planned.and_then(|line| line.plot.as_ref())),
            grade,
            angle,
        ];
        row.extend(place(whole, site, line));
        row
    });
    Table {
        name: "lines",
        columns: vec![
            SITE,
            Column::new("line", Holds::Text).needed(),
            Column::of("line_length_m", "m"),
            Column::new("stratum", Holds::Text),
            Column::new("plot", Holds::Text),
            Column::of("slope_percent", "%"),
            Column::of("slope_degrees", "deg"),
            Column { unit: Some("deg"), ..Column::new("start_latitude", Holds::Number) },
            Column { unit: Some("deg"), ..Column::new("start_longitude", Holds::Number) },
            Column { unit: Some("deg"), ..Column::new("end_latitude", Holds::Number) },
            Column { unit: Some("deg"), ..Column::new("end_longitude", Holds::Number) },
            Column::of("place_uncertainty_m", "m"),
            Column::new("place", Holds::OneOf(&["exact", "blurred", "withheld"])),
        ],
        key: &["site", "line"],
        links: &[TO_SITE],
        rows: rows.collect(),
    }
}

/// Both ends, how far off they may be, and what was done to them.
fn place(whole: &Whole, site: &str, line: &str) -> [Cell; 6] {
    let degrees = |position: Option<Position>| match position {
        Some(position) => position.degrees().map(Cell::Number),
        None => [Cell::Empty, Cell::Empty],
    };
    let (start, end, uncertainty, what) = match whole.told(site, line) {
        None => (None, None, Cell::Empty, Cell::Empty),
        Some(Told::Exact(start, end)) => (Some(start), end, Cell::Empty, Cell::text("exact")),
        Some(Told::Blurred(middle, metres)) => {
            (Some(middle), None, Cell::Number(f64::from(metres)), Cell::text("blurred"))
        }
        Some(Told::Withheld) => (None, None, Cell::Empty, Cell::text("withheld")),
    };
    let ([a, b], [c, d]) = (degrees(start), degrees(end));
    [a, b, c, d, uncertainty, what]
}

impl Whole<'_> {
    /// What may be told of where a line lies; nothing where nobody noted it.
    pub fn told(&self, site: &str, line: &str) -> Option<Told> {
        let openness = if self.full { Openness::Exact } else { self.input.openness(site) };
        self.input.place(site, line).map(|place| self.input.told_of(place, openness))
    }
}

pub(super) fn goals(goals: &[SiteGoal]) -> Table {
    let rows = (1..).zip(goals).map(|(number, SiteGoal { site, goal })| {
        let (attribute, unit, relation, ends) = match &goal.wanted {
            Wanted::Cover(relation) => (
                "cover",
                "percent",
                word(relation),
                ends(relation, |percent| shortest(percent.share() * 100.0)),
            ),
            Wanted::Height(relation) => {
                let metres =
                    |height: &tautline_survey::measure::Measure| shortest(super::metres(height.length()));
                ("height", "m", word(relation), ends(relation, metres))
            }
        };
        let number_of = |text: Option<String>| Cell::number(text.and_then(|text| text.parse().ok()));
        vec![
            Cell::Whole(number),
            Cell::text(site.as_deref().unwrap_or("")),
            Cell::text(&subject(&goal.subject)),
            Cell::text(attribute),
            Cell::text(unit),
            Cell::text(relation),
            number_of(ends.0),
            number_of(ends.1),
            Cell::number(goal.confidence_per_mille.map(|per_mille| f64::from(per_mille) / 10.0)),
            Cell::text(&goal.source),
        ]
    });
    Table {
        name: "goals",
        columns: vec![
            Column::new("goal", Holds::Whole).needed(),
            Column::new("site", Holds::Text),
            SUBJECT,
            Column::new("attribute", Holds::OneOf(&["cover", "height"])).needed(),
            Column::new("unit", Holds::OneOf(&["percent", "m"])).needed(),
            Column::new("relation", Holds::OneOf(&["at least", "at most", "between"])).needed(),
            Column::new("low", Holds::Amount),
            Column::new("high", Holds::Amount),
            Column::of("confidence_percent", "%"),
            Column::new("source", Holds::Text),
        ],
        key: &["goal"],
        links: &[TO_SITE],
        rows: rows.collect(),
    }
}

pub(super) const SUBJECT: Column = Column::new("subject", Holds::Text).needed();

fn word<T>(relation: &Relation<T>) -> &'static str {
    match relation {
        Relation::AtLeast(_) => "at least",
        Relation::AtMost(_) => "at most",
        Relation::Between(..) => "between",
    }
}

fn ends<T>(relation: &Relation<T>, written: impl Fn(&T) -> String) -> (Option<String>, Option<String>) {
    match relation {
        Relation::AtLeast(low) => (Some(written(low)), None),
        Relation::AtMost(high) => (None, Some(written(high))),
        Relation::Between(low, high) => (Some(written(low)), Some(written(high))),
    }
}

/// A subject as a goal names it.
pub(crate) fn subject(subject: &Subject) -> String {
    match subject {
        Subject::Canopy => "canopy".to_owned(),
        Subject::Sum => "sum".to_owned(),
        Subject::Dead => "dead".to_owned(),
        Subject::Species(code) => code.clone(),
        Subject::Form(form) => form.word().to_owned(),
        Subject::Group(group) => format!("group {group}"),
    }
}
