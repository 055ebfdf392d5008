//! What was noted beside the readings at each visit, and whether visits were read at like times.

use crate::check::is_outside_window;
use crate::date::Date;
use crate::finding::Finding;
use crate::input::Input;
use crate::line::LineResult;
use crate::message::Message;
use crate::visit::NOT_READ_WHY;
use std::collections::{BTreeMap, BTreeSet};

/// Visits farther apart in the year than this many days may differ by the season alone (common practice, no source).
pub(crate) const SAME_SEASON_DAYS: u16 = 21;

/// The heading under which a growth stage is noted.
const GROWTH_STAGE: &str = "growth stage";

/// What was noted under one heading: rain of the water year, grazing, browsing, fire, insects, treatment, growth stage, wind …
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Noted {
    /// The heading as written.
    pub heading: String,
    /// What was written at each visit, in the order of time; empty where nothing was.
    pub visits: Vec<Vec<String>>,
}

impl Noted {
    /// Whether the visits differ in it.
    pub fn is_unlike(&self) -> bool {
        self.visits.windows(2).any(|pair| pair[0] != pair[1])
    }

    /// Whether it is about something that moves cover from outside: rain, grazing, browsing, fire, insects, treatment.
    pub fn moves_cover(&self) -> bool {
        const STEMS: [&str; 7] = ["rain", "precipitation", "graz", "brows", "fire", "insect", "treat"];
        let heading = self.heading.to_lowercase();
        STEMS.iter().any(|stem| heading.contains(stem))
    }

    /// Whether it is about the stage of growth, which moves cover by itself.
    pub fn is_growth_stage(&self) -> bool {
        self.heading.trim().eq_ignore_ascii_case(GROWTH_STAGE)
    }
}

/// Every heading that was noted at some visit, with what stood under it at each.
pub(crate) fn noted(input: &Input, visits: &[&[LineResult]]) -> Vec<Noted> {
    let of = |lines: &[LineResult], heading: &str| -> Vec<String> {
        let own = lines.iter().flat_map(|line| input.noted_at(&input.visits[line.visit]));
        let values: BTreeSet<String> = own
            .filter(|(own, _)| own == heading)
            .map(|(_, value)| value.trim().to_owned())
            .filter(|value| !value.is_empty())
            .collect();
        values.into_iter().collect()
    };
    let lines = visits.iter().flat_map(|lines| lines.iter());
    let headings: BTreeSet<&String> = lines
        .flat_map(|line| input.noted_at(&input.visits[line.visit]))
        .map(|(heading, _)| heading)
        .filter(|heading| *heading != NOT_READ_WHY)
        .collect();
    headings
        .into_iter()
        .map(|heading| Noted {
            heading: heading.clone(),
            visits: visits.iter().map(|lines| of(lines, heading)).collect(),
        })
        .filter(|noted| noted.visits.iter().any(|visit| !visit.is_empty()))
        .collect()
}

/// The middle day of the year on which lines were read.
pub(crate) fn middle_day(lines: &[LineResult]) -> Option<u16> {
    let mut days: Vec<u16> = lines.iter().filter_map(|line| line.date).map(Date::day_of_year).collect();
    days.sort_unstable();
    days.get(days.len() / 2).copied()
}

/// How far two days lie apart in the circle of the year.
pub(crate) fn days_apart(a: u16, b: u16) -> u16 {
    let apart = a.abs_diff(b);
    apart.min(365 - apart.min(365))
}

/// Lines of a year that were read outside the window of days that their protocol states, by window.
pub(crate) fn outside_window(input: &Input, year: u16, lines: &[LineResult]) -> Vec<Finding> {
    let mut outside: BTreeMap<&str, Vec<String>> = BTreeMap::new();
    for line in lines {
        let window = input.protocols.get(&line.protocol).map(|protocol| protocol.reading_window.as_str());
        if let (Some(window), Some(date)) = (window, line.date)
            && is_outside_window(window, date)
        {
            outside.entry(window).or_default().push(line.line.clone());
        }
    }
    outside
        .into_iter()
        .map(|(window, lines)| {
            let message = Message::new("unlike-window").with("year", year.to_string());
            Finding::have_a_look(message.with("lines", lines).with("window", window))
        })
        .collect()
}
