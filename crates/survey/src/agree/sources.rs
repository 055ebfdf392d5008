//! Where the doubt of a mean comes from, and what would take most of it away: another line, another site, a day of calibration.

use crate::assess::{Question, dedupe, round, usable_lines};
use crate::compare::common_ground;
use crate::finding::Finding;
use crate::input::Input;
use crate::line::LineResult;
use std::collections::{BTreeMap, BTreeSet};
use tautline_engine::agreement::sources::{self as engine, MOST_READINGS, NoSources};
use tautline_engine::effort::length::Cost;
use tautline_engine::length::Unit;
use tautline_engine::num::count;
use tautline_engine::num::math::sqrt;
use tautline_engine::seed::Seed;

/// Lines that each reader reads on a day of calibration where no cost says how many fit into one.
const LINES_OF_A_DAY: usize = 3;

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

/// Something that would make the mean surer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Buy {
    /// What.
    pub what: Bought,
    /// The standard error of the mean with it.
    pub se: f64,
    /// Minutes of a crew; none where no cost was given.
    pub minutes: Option<f64>,
}

impl Buy {
    /// How much surer the mean becomes: by hour where there is a cost.
    fn gain(&self, before: f64) -> f64 {
        (before - self.se) / self.minutes.map_or(1.0, |minutes| minutes / 60.0)
    }
}

/// What can be bought.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bought {
    /// One more line.
    Line,
    /// One more site with as many lines as the others have.
    Site {
        /// Its lines.
        lines: usize,
    },
    /// A day on which every reader reads the same lines, and what they differ by is taken off.
    Day {
        /// Lines that each reads.
        lines: usize,
    },
}

impl Bought {
    /// A stable key for data and for the catalogue of words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Line => "buy-line",
            Self::Site { .. } => "buy-site",
            Self::Day { .. } => "buy-day",
        }
    }
}

/// What things cost, in minutes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Prices {
    /// Of a line.
    pub line: Cost,
    /// To get to a further site.
    pub travel: f64,
    /// A day of one reader.
    pub day: f64,
}

/// A working day, in minutes.
const DAY: f64 = 480.0;

impl Prices {
    /// What was said of costs, in minutes: to walk to a line, to lay and take up its tape, to read a metre, to travel to a further
    /// site, a day of one reader (480). None where a line costs nothing, since then nothing was said.
    ///
    /// # Example
    /// ```
    /// use tautline_survey::agree::Prices;
    /// assert_eq!(Prices::said([None; 5]), None);
    /// assert_eq!(Prices::said([Some(10.0), None, None, None, None]).map(|prices| prices.day), Some(480.0));
    /// ```
    pub fn said([walk, lay, read_metre, travel, day]: [Option<f64>; 5]) -> Option<Self> {
        let said = |minutes: Option<f64>| minutes.unwrap_or_default();
        let line = Cost { walk: said(walk), lay: said(lay), per_metre: said(read_metre) };
        (line != Cost { walk: 0.0, lay: 0.0, per_metre: 0.0 }).then(|| Self {
            line,
            travel: said(travel),
            day: day.unwrap_or(DAY),
        })
    }
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
    (of_lines(&lines, (taken, all), prices).map_err(NoSources::code), findings)
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
fn group(line: &LineResult, part: Part) -> Option<String> {
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

fn names<T: Ord>(lines: &[LineResult], of: impl Fn(&LineResult) -> T) -> BTreeSet<T> {
    lines.iter().map(of).collect()
}

fn of_lines(
    lines: &[LineResult],
    sites: (usize, usize),
    prices: Option<&Prices>,
) -> Result<Doubt, NoSources> {
    let groups = |part: Part| names(lines, |line| group(line, part));
    let has_plots = lines.iter().all(|line| line.plot.is_some());
    let has_strata = lines.iter().any(|line| line.stratum.is_some());
    let asked: Vec<Part> = Part::ALL
        .into_iter()
        .filter(|part| match part {
            Part::Site => sites.0 > 1,
            Part::SiteYear => sites.0 > 1 && groups(Part::Year).len() > 1,
            Part::Plot => has_plots,
            Part::Stratum => has_strata,
            _ => true,
        })
        .collect();
    let groupings: Vec<Vec<usize>> = asked
        .iter()
        .map(|&part| {
            let known: BTreeMap<Option<String>, usize> = groups(part).into_iter().zip(0..).collect();
            lines.iter().map(|line| known[&group(line, part)]).collect()
        })
        .collect();
    let values: Vec<f64> = lines.iter().map(|line| line.share(line.canopy.low)).collect();
    let found = engine::sources(&values, &groupings)?;
    let variance = |source: &engine::Source| match source {
        engine::Source::Told { variance, .. } => *variance,
        _ => 0.0,
    };
    let whole: f64 = found.left + found.of.iter().map(variance).sum::<f64>();
    let spread = |variance: f64| Told::Spread { sd: sqrt(variance), share: variance / whole };
    let mut parts: Vec<PartShare> = asked
        .iter()
        .zip(&found.of)
        .map(|(&part, source)| PartShare {
            part,
            groups: groups(part).len(),
            told: match source {
                engine::Source::Told { variance, .. } => spread(*variance),
                engine::Source::OneGroup => Told::OneGroup,
                engine::Source::Mixed(with) => {
                    Told::Mixed(with.iter().map(|at| at.map_or(Part::Left, |at| asked[at])).collect())
                }
            },
        })
        .collect();
    parts.push(PartShare { part: Part::Left, groups: values.len(), told: spread(found.left) });
    let of = |part: Part| {
        let own = asked.iter().position(|asked| *asked == part);
        own.map_or(0.0, |at| variance(&found.of[at]))
    };
    let year = lines.iter().filter_map(|line| line.date).map(crate::date::Date::year).max();
    let latest: Vec<LineResult> =
        lines.iter().filter(|line| line.date.map(crate::date::Date::year) == year).cloned().collect();
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
    Ok(Doubt { readings: values.len(), sites, parts, year, se: before, buys })
}

/// How many of everything a year's mean rests on.
#[derive(Clone, Copy, Debug)]
struct Design {
    sites: f64,
    plots: f64,
    lines: f64,
    readers: f64,
}

impl Design {
    fn of(latest: &[LineResult]) -> Self {
        let groups = |part: Part| count(names(latest, |line| group(line, part)).len());
        Self {
            sites: groups(Part::Site),
            plots: groups(Part::Plot),
            lines: groups(Part::Line),
            readers: groups(Part::Reader),
        }
    }

    /// What can be bought, with the error that it would leave.
    fn buys(
        self,
        prices: Option<&Prices>,
        latest: &[LineResult],
        parts: &[PartShare],
        se: &dyn Fn(&Self, Option<usize>) -> f64,
    ) -> Vec<Buy> {
        let metres: f64 = latest.iter().map(|line| line.length.length().in_unit(Unit::Metre)).sum();
        let of_line = prices.map(|prices| prices.line.of_line(metres / count(latest.len())));
        let line = Self { lines: self.lines + 1.0, ..self };
        let mut buys = vec![Buy { what: Bought::Line, se: se(&line, None), minutes: of_line }];
        let told =
            |part: Part| parts.iter().any(|one| one.part == part && matches!(one.told, Told::Spread { .. }));
        if told(Part::Site) {
            let lines = (self.lines / self.sites).round().max(1.0);
            let site = Self {
                sites: self.sites + 1.0,
                plots: self.plots + (self.plots / self.sites).round().max(1.0),
                lines: self.lines + lines,
                ..self
            };
            let minutes = prices.zip(of_line).map(|(prices, line)| prices.travel + lines * line);
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a number of lines")]
            let lines = lines as usize;
            buys.push(Buy { what: Bought::Site { lines }, se: se(&site, None), minutes });
        }
        if told(Part::Reader) {
            let fit =
                prices.zip(of_line).map(|(prices, line)| (prices.day / line).floor().clamp(1.0, 1000.0));
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a number of lines")]
            let lines = fit.map_or(LINES_OF_A_DAY, |fit| fit as usize);
            let minutes = prices.map(|prices| prices.day * self.readers);
            buys.push(Buy { what: Bought::Day { lines }, se: se(&self, Some(lines)), minutes });
        }
        buys
    }
}

/// The part that holds most of the variance.
pub(super) fn largest(doubt: &Doubt) -> Option<&PartShare> {
    let share = |one: &PartShare| match one.told {
        Told::Spread { share, .. } => share,
        _ => 0.0,
    };
    doubt.parts.iter().max_by(|a, b| share(a).total_cmp(&share(b)))
}
