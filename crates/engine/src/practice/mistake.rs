//! The sheet that a careful reader with one mistake writes of a practice line.

use super::line::{Moved, Other, PracticeLine, parallax};
use crate::cover::{Intercept, line_cover};
use crate::length::{Division, Length, Unit};
use crate::rule::{DeadRule, ReadingRule};
use crate::stretch::{Stretch, union, without};

/// One intercept of a sheet, gaps closed as its writer closes them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Row {
    /// The species; `None` where nothing says as which one it would be written.
    pub species: Option<u32>,
    /// From where to where.
    pub stretch: Stretch,
}

/// One mistake, made all along.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Mistake {
    /// Closes gaps below this length, which the rule leaves open.
    ClosesGaps(Length),
    /// Leaves gaps open that the rule closes.
    LeavesGapsOpen,
    /// Counts dead canopy as live.
    CountsDead,
    /// Counts what is no canopy of a shrub.
    Counts(Other),
    /// Reads from the tape's far end.
    FromFarEnd,
    /// Reads along the tape's other edge.
    OtherEdge,
    /// Reads everything this much further on, or back.
    TapeOff(Length),
    /// Sees every edge this much further out, or in.
    Wider(Length),
    /// Where two species overlap, writes only the upper one.
    MissesOverlap,
    /// Writes one species as another.
    Confuses(u32, u32),
    /// Looks from beside the tape at this many degrees from straight down; above zero from the right.
    FromBeside(i8),
    /// Looks along the tape at this many degrees from straight down; above zero from the tape's zero.
    FromBehind(i8),
    /// Writes the whole width of a crown that only hangs over the tape.
    WholeCrown,
    /// Drops the last digit.
    DropsLastDigit,
    /// Writes feet and inches as feet and tenths.
    InchesAsTenths,
    /// Rounds to the nearest multiple of this length.
    Rounds(Length),
    /// Leaves out intercepts shorter than this.
    LeavesOutSmall(Length),
}

impl Mistake {
    /// A stable key for data and for the catalogue of words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::ClosesGaps(_) => "mistake-closes-gaps",
            Self::LeavesGapsOpen => "mistake-leaves-gaps-open",
            Self::CountsDead => "mistake-counts-dead",
            Self::Counts(Other::Grass) => "mistake-counts-grass",
            Self::Counts(Other::Flower) => "mistake-counts-flowers",
            Self::Counts(Other::Stalks) => "mistake-counts-stalks",
            Self::Counts(Other::Litter) => "mistake-counts-litter",
            Self::Counts(Other::Rock) => "mistake-counts-rock",
            Self::FromFarEnd => "mistake-from-far-end",
            Self::OtherEdge => "mistake-other-edge",
            Self::TapeOff(_) => "mistake-tape-off",
            Self::Wider(length) if length.nanometres() < 0 => "mistake-narrower",
            Self::Wider(_) => "mistake-wider",
            Self::MissesOverlap => "mistake-misses-overlap",
            Self::Confuses(..) => "mistake-confuses",
            Self::FromBeside(_) => "mistake-from-beside",
            Self::FromBehind(_) => "mistake-from-behind",
            Self::WholeCrown => "mistake-whole-crown",
            Self::DropsLastDigit => "mistake-drops-last-digit",
            Self::InchesAsTenths => "mistake-inches-as-tenths",
            Self::Rounds(_) => "mistake-rounds",
            Self::LeavesOutSmall(_) => "mistake-leaves-out-small",
        }
    }

    /// The length that goes with it, where one does.
    pub const fn length(self) -> Option<Length> {
        match self {
            Self::ClosesGaps(length)
            | Self::TapeOff(length)
            | Self::Wider(length)
            | Self::Rounds(length)
            | Self::LeavesOutSmall(length) => Some(length),
            _ => None,
        }
    }

    /// The angle that goes with it, in degrees, where one does.
    pub const fn degrees(self) -> Option<i8> {
        match self {
            Self::FromBeside(degrees) | Self::FromBehind(degrees) => Some(degrees),
            _ => None,
        }
    }

    /// Every mistake that could be made on lines under a rule, with the lengths and angles worth telling apart.
    pub fn all<'a>(lines: impl IntoIterator<Item = &'a PracticeLine>, rule: &ReadingRule) -> Vec<Self> {
        let mut found: Vec<Self> = Other::ALL.map(Self::Counts).to_vec();
        found.extend([Self::LeavesGapsOpen, Self::CountsDead, Self::FromFarEnd, Self::OtherEdge]);
        found.extend([Self::MissesOverlap, Self::WholeCrown, Self::DropsLastDigit, Self::InchesAsTenths]);
        let angles = (5..=45).flat_map(|degrees| [degrees, -degrees]);
        found.extend(angles.flat_map(|angle| [Self::FromBeside(angle), Self::FromBehind(angle)]));
        for line in lines {
            let of = |number: i64| Length::from_nanometres(line.step().nanometres() * number);
            found.extend((1..=60).flat_map(|number| [Self::TapeOff(of(number)), Self::TapeOff(of(-number))]));
            found.extend((1..=12).flat_map(|number| [Self::Wider(of(number)), Self::Wider(of(-number))]));
            found.extend([4, 5, 8, 10, 12, 20, 24].map(|number| Self::Rounds(of(number))));
            let pairs = (0..line.species).flat_map(|a| (0..line.species).map(move |b| (a, b)));
            found.extend(pairs.filter(|(a, b)| a != b).map(|(a, b)| Self::Confuses(a, b)));
            let rows = sheet(line, rule, None);
            // just beyond each gap and each row, so that it is among those closed, or left out
            let beyond = |length: Length| length + of(1);
            found.extend(rows.iter().map(|row| Self::LeavesOutSmall(beyond(row.stretch.length()))));
            for species in 0..line.species {
                let own =
                    union(rows.iter().filter(|row| row.species == Some(species)).map(|row| row.stretch));
                let gaps = own.windows(2).map(|pair| pair[1].start() - pair[0].stop());
                found.extend(gaps.map(|gap| Self::ClosesGaps(beyond(gap))));
            }
        }
        found.sort_unstable();
        found.dedup();
        found
    }
}

/// The sheet of a careful reader, or of one who makes a mistake and is careful otherwise; along the tape.
///
/// # Example
/// ```
/// use tautline_engine::length::{Length, Notation, Unit};
/// use tautline_engine::practice::{level::{Level, Wanted, draw}, mistake::{Mistake, sheet}};
/// use tautline_engine::rule::ReadingRule;
/// let tape = Notation::decimals(Unit::Centimetre, 0);
/// let length = Length::from_units(20, Unit::Metre);
/// let line = draw(&Wanted { level: Level::One, length, tape, gap: Length::ZERO, seed: 1 });
/// let off = Length::from_units(4, Unit::Centimetre);
/// let right = sheet(&line, &ReadingRule::AS_WRITTEN, None);
/// let wrong = sheet(&line, &ReadingRule::AS_WRITTEN, Some(Mistake::TapeOff(off)));
/// assert_eq!(wrong[0].stretch.start(), right[0].stretch.start() + off);
/// ```
pub fn sheet(line: &PracticeLine, rule: &ReadingRule, mistake: Option<Mistake>) -> Vec<Row> {
    let mut rows = read(line, rule, mistake);
    match mistake {
        Some(Mistake::Counts(other)) => {
            let counted = line.others.iter().filter(|(what, _)| *what == other);
            for (_, round) in counted {
                add(&mut rows, round.cut);
            }
        }
        Some(Mistake::MissesOverlap) => rows = upper_only(&rows),
        Some(Mistake::Confuses(from, to)) => {
            for row in rows.iter_mut().filter(|row| row.row.species == Some(from)) {
                row.row.species = Some(to);
            }
        }
        Some(Mistake::LeavesOutSmall(limit)) => rows.retain(|row| row.row.stretch.length() >= limit),
        Some(mistake) => rows.retain_mut(|row| {
            let Some(stretch) = rewritten(row.row.stretch, line, mistake) else { return false };
            row.row.stretch = stretch;
            true
        }),
        None => {}
    }
    let mut rows: Vec<Row> = rows.into_iter().map(|row| row.row).collect();
    rows.sort_unstable_by_key(|row| (row.stretch, row.species));
    rows
}

/// A row and how high its canopy stands.
struct Written {
    row: Row,
    height: Length,
}

/// What the eye sees, under the rule that the reader has in mind.
fn read(line: &PracticeLine, rule: &ReadingRule, mistake: Option<Mistake>) -> Vec<Written> {
    let intercepts = match mistake {
        Some(Mistake::OtherEdge) => {
            let aside = line.width.in_unit(Unit::Metre);
            line.seen(|_| Moved { along: 0.0, aside })
        }
        Some(Mistake::FromBeside(degrees)) => {
            line.seen(|shrub| Moved { along: 0.0, aside: parallax(shrub.height, f64::from(degrees)) })
        }
        Some(Mistake::FromBehind(degrees)) => {
            line.seen(|shrub| Moved { along: parallax(shrub.height, f64::from(degrees)), aside: 0.0 })
        }
        _ => line.intercepts(),
    };
    let mut minded = *rule;
    match mistake {
        Some(Mistake::ClosesGaps(limit)) => minded.gap.limit = minded.gap.limit.max(limit),
        Some(Mistake::LeavesGapsOpen) => minded.gap.limit = Length::ZERO,
        Some(Mistake::CountsDead) => minded.dead = DeadRule::CountsAsLive,
        _ => {}
    }
    let whole_crown = mistake == Some(Mistake::WholeCrown);
    let cover = line_cover(line.length, &intercepts, &minded);
    let mut rows = Vec::new();
    for species in &cover.species {
        for piece in &species.live {
            let shrubs = piece.from.iter().filter_map(|&at| shrub_of(line, &intercepts[at]));
            let height = shrubs.map(|shrub| shrub.height).max().unwrap_or_default();
            let mut stretch = piece.stretch;
            if whole_crown {
                stretch = crowns(line, &intercepts, &piece.from)
                    .map_or(stretch, |whole| widest(stretch, whole, line));
            }
            rows.push(Written { row: Row { species: Some(species.species), stretch }, height });
        }
    }
    rows
}

fn shrub_of<'a>(line: &'a PracticeLine, intercept: &Intercept) -> Option<&'a super::line::Shrub> {
    line.shrubs.get(usize::try_from(intercept.plant?).ok()?)
}

/// The whole width of the one crown that a piece is of, where its middle stands off the tape.
fn crowns(line: &PracticeLine, intercepts: &[Intercept], from: &[usize]) -> Option<Stretch> {
    let mut shrubs = from.iter().filter_map(|&at| shrub_of(line, &intercepts[at]));
    let shrub = shrubs.next()?;
    let (middle, radius) = (shrub.crown.middle(), shrub.crown.radius());
    let edge = |metres| super::line::nearest(metres, line.step());
    Stretch::new(edge(middle - radius), edge(middle + radius))
}

fn widest(a: Stretch, b: Stretch, line: &PracticeLine) -> Stretch {
    let (start, stop) = (a.start().min(b.start()).max(Length::ZERO), a.stop().max(b.stop()).min(line.length));
    Stretch::new(start, stop).unwrap_or(a)
}

/// Something counted as canopy: it makes a row that it touches longer, or a row of its own.
fn add(rows: &mut Vec<Written>, stretch: Stretch) {
    if let Some(row) = rows.iter_mut().find(|row| row.row.stretch.touches(stretch)) {
        let own = row.row.stretch;
        let both = Stretch::new(own.start().min(stretch.start()), own.stop().max(stretch.stop()));
        row.row.stretch = both.unwrap_or(own);
    } else {
        rows.push(Written { row: Row { species: None, stretch }, height: Length::ZERO });
    }
}

/// What is left of each row when the tape is written once, under the higher canopy.
fn upper_only(rows: &[Written]) -> Vec<Written> {
    let mut left = Vec::new();
    for row in rows {
        let above =
            rows.iter().filter(|other| other.height > row.height && other.row.species != row.row.species);
        for stretch in without(&[row.row.stretch], &union(above.map(|other| other.row.stretch))) {
            left.push(Written { row: Row { stretch, ..row.row }, height: row.height });
        }
    }
    left
}

/// A row as it is written down by a reader with a slip of the tape or of the pen.
fn rewritten(stretch: Stretch, line: &PracticeLine, mistake: Mistake) -> Option<Stretch> {
    let (start, stop) = (stretch.start(), stretch.stop());
    let on_tape = |start: Length, stop: Length| Stretch::new(start.max(Length::ZERO), stop.min(line.length));
    match mistake {
        Mistake::FromFarEnd => on_tape(line.length - stop, line.length - start),
        Mistake::TapeOff(by) => on_tape(start + by, stop + by),
        Mistake::Wider(by) => on_tape(start - by, stop + by),
        Mistake::Rounds(to) => on_tape(rounded(start, to), rounded(stop, to)),
        Mistake::DropsLastDigit => {
            let left = digit(line);
            on_tape(cut_down(start, left), cut_down(stop, left))
        }
        Mistake::InchesAsTenths if line.tape.feet_and_inches => on_tape(as_tenths(start), as_tenths(stop)),
        _ => Some(stretch),
    }
}

/// What one step of the last digit but one is worth: ten divisions, or the whole unit where it is divided in fractions.
fn digit(line: &PracticeLine) -> Length {
    match line.tape.division {
        Division::Decimals(_) => Length::from_nanometres(line.step().nanometres() * 10),
        Division::Fraction(_) => Length::from_units(1, line.tape.unit),
    }
}

fn cut_down(length: Length, to: Length) -> Length {
    Length::from_nanometres(length.nanometres().div_euclid(to.nanometres()) * to.nanometres())
}

fn rounded(length: Length, to: Length) -> Length {
    cut_down(length + Length::from_nanometres(to.nanometres() / 2), to)
}

/// 5 ft 3 in written as 5.3 ft.
fn as_tenths(length: Length) -> Length {
    let feet = cut_down(length, Length::from_units(1, Unit::Foot));
    let inches = (length - feet).nanometres();
    feet + Length::from_nanometres(inches * 12 / 10)
}
