//! Where the doubt of a mean comes from, and what would take most of it away: another line, another site, a day of calibration.

use super::buy::{Buy, Design, Prices};
use crate::assess::{Question, dedupe, round, usable_lines};
use crate::compare::common_ground;
use crate::finding::Finding;
use crate::input::Input;
use crate::line::LineResult;
use std::collections::{BTreeMap, BTreeSet};
use tautline_engine::agreement::sources::{self as engine, MOST_READINGS, NoSources};
use tautline_engine::num::count;
use tautline_engine::num::math::sqrt;
use tautline_engine::seed::Seed;

/// What moves readings.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// One site beside another.
    Site,
    /// One year beside another, at all sites alike.
    Year,
    /// One stratum beside another within a site.
    Stratum,
    /// One plot beside another within a site.
    Plot,
    /// One line beside another within a site, or within a plot.
    Line,
    /// One reader beside another.
    Reader,
    /// What a year did at one site alone.
    SiteYear,
    /// What is left: one reading of a line beside another.
    Left,
}

impl Part {
    /// Those that readings are taken apart by, the surer to be told first.
    const ALL: [Self; 7] =
        [Self::Site, Self::Year, Self::Line, Self::Reader, Self::Stratum, Self::Plot, Self::SiteYear];

    /// A stable key for data and for the catalogue of words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Site => "part-site",
            Self::Year => "part-year",
            Self::Stratum => "part-stratum",
            Self::Plot => "part-plot",
            Self::Line => "part-line",
            Self::Reader => "part-reader",
            Self::SiteYear => "part-site-year",
            Self::Left => "part-left",
        }
    }
}

/// What is known of one part.
#[derive(Clone, Debug, PartialEq)]
pub struct PartShare {
    /// The part.
    pub part: Part,
    /// How many groups there are: sites, years …; readings for what is left.
    pub groups: usize,
    /// What is known.
    pub told: Told,
}

/// What is known of a part.
#[derive(Clone, Debug, PartialEq)]
pub enum Told {
    /// The standard deviation from one group to another, and its share of all variance.
    Spread {
        /// As a share of the line.
        sd: f64,
        /// Of all variance.
        share: f64,
    },
    /// There is one group alone.
    OneGroup,
    /// It can't be told apart from these.
    Mixed(Vec<Part>),
}

/// Where the doubt comes from.
#[derive(Clone, Debug)]
pub struct Doubt {
    /// Readings that were taken apart.
    pub readings: usize,
    /// Sites whose readings were taken, of all sites.
    pub sites: (usize, usize),
    /// The parts, and what is left.
    pub parts: Vec<PartShare>,
    /// The latest year, whose design the error speaks of.
    pub year: Option<u16>,
    /// Standard error of that year's mean of the sites, as a sample of more; of a single site, of its own mean.
    pub se: f64,
    /// What would make it surer, the best for its price first.
    pub buys: Vec<Buy>,
}

/// Takes the readings of all sites apart.
///
/// # Errors
/// the code of why they can't be; what was found on the way comes beside
pub fn doubt(
    input: &Input,
    question: &Question,
    prices: Option<&Prices>,
) -> (Result<Doubt, &'static str>, Vec<Finding>) {
    let (taking, findings) = Taking::begin(input, question);
    let found = taking.and_then(|mut taking| {
        loop {
            if let Some(found) = taking.step(prices) {
                break found;
            }
        }
    });
    (found, findings)
}

/// The same, one step after the other, for whoever can't wait until it ends: four hundred readings take a tenth of a second or more.
pub struct Taking {
    lines: Vec<LineResult>,
    /// Sites whose readings were taken, of all sites.
    sites: (usize, usize),
    /// What the readings are taken apart by.
    asked: Vec<Part>,
    engine: engine::Taking,
}

impl Taking {
    /// Before the first step; what was found on the way comes beside.
    ///
    /// # Errors
    /// as [`doubt`]
    pub fn begin(input: &Input, question: &Question) -> (Result<Self, &'static str>, Vec<Finding>) {
        let rounds = round::rounds(input, question.year);
        let visits: Vec<usize> = rounds.iter().flat_map(round::Round::readings).collect();
        let ground = common_ground(input, &visits, &question.choice);
        let mut findings = ground.findings;
        if ground.apart {
            return (Err("sources-apart"), findings);
        }
        let mut lines = usable_lines(input, question, &visits, &ground.choice, &mut findings);
        lines.retain(|line| line.canopy.is_known() && line.date.is_some() && !line.reader.is_empty());
        dedupe(&mut findings);
        let all = names(&lines, |line| line.site.clone()).len();
        let lines = some(lines);
        let taken = names(&lines, |line| line.site.clone()).len();
        (Self::of_lines(lines, (taken, all)).map_err(NoSources::code), findings)
    }

    fn of_lines(lines: Vec<LineResult>, sites: (usize, usize)) -> Result<Self, NoSources> {
        let asked = asked(&lines, sites.0);
        let groupings: Vec<Vec<usize>> = asked
            .iter()
            .map(|&part| {
                let own = names(&lines, |line| group(line, part));
                let known: BTreeMap<Option<String>, usize> = own.into_iter().zip(0..).collect();
                lines.iter().map(|line| known[&group(line, part)]).collect()
            })
            .collect();
        let values: Vec<f64> = lines.iter().map(|line| line.share(line.canopy.low)).collect();
        let engine = engine::Taking::begin(&values, &groupings)?;
        Ok(Self { lines, sites, asked, engine })
    }

    /// A further step; the answer after the last one.
    pub fn step(&mut self, prices: Option<&Prices>) -> Option<Result<Doubt, &'static str>> {
        let found = self.engine.step()?;
        Some(found.map(|found| self.told(&found, prices)).map_err(NoSources::code))
    }

    fn told(&self, found: &engine::Sources, prices: Option<&Prices>) -> Doubt {
        let variance = |source: &engine::Source| match source {
            engine::Source::Told { variance, .. } => *variance,
            _ => 0.0,
        };
        let whole: f64 = found.left + found.of.iter().map(variance).sum::<f64>();
        let spread = |variance: f64| Told::Spread { sd: sqrt(variance), share: variance / whole };
        let mut parts: Vec<PartShare> = self
            .asked
            .iter()
            .zip(&found.of)
            .map(|(&part, source)| PartShare {
                part,
                groups: names(&self.lines, |line| group(line, part)).len(),
                told: match source {
                    engine::Source::Told { variance, .. } => spread(*variance),
                    engine::Source::OneGroup => Told::OneGroup,
                    engine::Source::Mixed(with) => Told::Mixed(
                        with.iter().map(|at| at.map_or(Part::Left, |at| self.asked[at])).collect(),
                    ),
                },
            })
            .collect();
        parts.push(PartShare { part: Part::Left, groups: self.lines.len(), told: spread(found.left) });
        let of = |part: Part| {
            let own = self.asked.iter().position(|asked| *asked == part);
            own.map_or(0.0, |at| variance(&found.of[at]))
        };
        let year = self.lines.iter().filter_map(|line| line.date).map(crate::date::Date::year).max();
        let in_year = |line: &&LineResult| line.date.map(crate::date::Date::year) == year;
        let latest: Vec<LineResult> = self.lines.iter().filter(in_year).cloned().collect();
        let now = Design::of(&latest);
        let se = |design: &Design, reader: f64| {
            // what the year did belongs to what the year's mean is about, and strata are all read, each by its area
            let of_sites = (of(Part::Site) + of(Part::SiteYear)) / design.sites;
            let of_lines = of(Part::Plot) / design.plots + (of(Part::Line) + found.left) / design.lines;
            sqrt(reader / design.readers + of_sites + of_lines)
        };
        let before = se(&now, of(Part::Reader));
        let mut buys = now.buys(prices, &latest, parts.as_slice(), &|design, day| {
            let reader = of(Part::Reader);
            se(design, day.map_or(reader, |lines| reader.min(found.left / count(lines))))
        });
        buys.sort_by(|a, b| b.gain(before).total_cmp(&a.gain(before)));
        parts.sort_by_key(|one| one.part);
        Doubt { readings: self.lines.len(), sites: self.sites, parts, year, se: before, buys }
    }
}

/// What readings of so many sites are taken apart by.
fn asked(lines: &[LineResult], sites: usize) -> Vec<Part> {
    let years = names(lines, |line| group(line, Part::Year)).len();
    let is_asked = |part: &Part| match part {
        Part::Site => sites > 1,
        Part::SiteYear => sites > 1 && years > 1,
        Part::Plot => lines.iter().all(|line| line.plot.is_some()),
        Part::Stratum => lines.iter().any(|line| line.stratum.is_some()),
        _ => true,
    };
    Part::ALL.into_iter().filter(is_asked).collect()
}

/// All readings, or where they are too many those of sites drawn at random.
fn some(lines: Vec<LineResult>) -> Vec<LineResult> {
    if lines.len() <= MOST_READINGS {
        return lines;
    }
    let mut sites: Vec<String> = names(&lines, |line| line.site.clone()).into_iter().collect();
    let mut random =
        Seed::from_purpose("sites whose readings are taken apart", &[sites.len() as u64]).stream();
    let (mut kept, mut readings) = (BTreeSet::new(), 0);
    while !sites.is_empty() {
        let at = usize::try_from(random.below(sites.len() as u64)).unwrap_or_default();
        let site = sites.swap_remove(at);
        let own = lines.iter().filter(|line| line.site == site).count();
        if readings + own > MOST_READINGS {
            break;
        }
        readings += own;
        kept.insert(site);
    }
    lines.into_iter().filter(|line| kept.contains(&line.site)).collect()
}

/// What a reading belongs to, by name; nothing where it belongs to none.
pub(super) fn group(line: &LineResult, part: Part) -> Option<String> {
    let year = || line.date.map(|date| date.year().to_string());
    let within = |name: &str| format!("{}\u{0}{name}", line.site);
    match part {
        Part::Site => Some(line.site.clone()),
        Part::Year => year(),
        Part::Stratum => line.stratum.as_deref().map(within),
        Part::Plot => line.plot.as_deref().map(within),
        Part::Line => Some(within(&line.line)),
        Part::Reader => Some(line.reader.clone()),
        Part::SiteYear => year().map(|year| within(&year)),
        Part::Left => None,
    }
}

pub(super) fn names<T: Ord>(lines: &[LineResult], of: impl Fn(&LineResult) -> T) -> BTreeSet<T> {
    lines.iter().map(of).collect()
}

/// The part that holds most of the variance.
pub(super) fn largest(doubt: &Doubt) -> Option<&PartShare> {
    let share = |one: &PartShare| match one.told {
        Told::Spread { share, .. } => share,
        _ => 0.0,
    };
    doubt.parts.iter().max_by(|a, b| share(a).total_cmp(&share(b)))
}
