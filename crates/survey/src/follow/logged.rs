//! What the log of calibrations says of two unlike readers: which entry is taken, and how old it was when the visit was read.

use super::readers::Way;
use crate::agree::Calibration;
use crate::date::Date;
use std::collections::BTreeMap;

/// A visit of a change.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Visit {
    /// The earlier one.
    Earlier,
    /// The later one.
    Later,
}

/// A calibration that was taken, and how old it was.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Taken {
    /// Who was set beside another.
    pub reader: String,
    /// Beside whom.
    pub against: String,
    /// Its day.
    pub date: Date,
    /// Days before the visit that it speaks for.
    pub days: u32,
    /// The visit that it speaks for.
    pub visit: Visit,
}

/// Why nothing of a log that has both readers was taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotTaken {
    /// It has them under other rules alone.
    OtherRules,
    /// All of it came after the visits, or they have no day.
    After,
    /// The nearest was this many days old, which is more than the office lets a calibration last.
    TooOld(u32),
}

/// The two readers and the last day on which each read the visit's lines.
pub(super) struct Asked<'a> {
    pub(super) earlier: (&'a str, Option<Date>),
    pub(super) later: (&'a str, Option<Date>),
    /// Days that a calibration lasts in this office.
    pub(super) span: Option<u32>,
}

/// Two readers set beside each other by the log, and how old the oldest part of it was.
struct Candidate {
    way: Way,
    oldest: u32,
}

/// How much more the later reader sees than the earlier one, by what was logged before their visits and is nearest to them. Nothing
/// where the log doesn't have both.
pub(super) fn logged(
    log: &[Calibration],
    asked: &Asked,
    same_rules: &dyn Fn(&Calibration) -> bool,
) -> Option<Result<Way, NotTaken>> {
    let (own, others): (Vec<&Calibration>, Vec<&Calibration>) =
        log.iter().filter(|one| one.lines.len() > 1).partition(|one| same_rules(one));
    let whenever = |log: &[&Calibration]| {
        let last = log.iter().map(|one| one.date).max();
        let any_day = |name| (name, last);
        let asked = Asked { earlier: any_day(asked.earlier.0), later: any_day(asked.later.0), span: None };
        nearest(log, &asked).is_some()
    };
    match nearest(&own, asked) {
        Some(one) => Some(match asked.span {
            Some(span) if one.oldest > span => Err(NotTaken::TooOld(one.oldest)),
            _ => Ok(one.way),
        }),
        None if whenever(&own) => Some(Err(NotTaken::After)),
        None if whenever(&others) => Some(Err(NotTaken::OtherRules)),
        None => None,
    }
}

/// Of all ways that lead from the one reader to the other, the one whose oldest calibration is youngest; the surer comparison, of
/// the same lines, where two are alike.
fn nearest(log: &[&Calibration], asked: &Asked) -> Option<Candidate> {
    let ways = of_each_other(log, asked).into_iter().chain(beside_a_third(log, asked));
    ways.chain(each_in_its_time(log, asked)).min_by_key(|one| one.oldest)
}

/// A calibration as one taken for a visit, where it came no later.
fn taken(one: &Calibration, visit: Visit, day: Option<Date>) -> Option<Taken> {
    let day = day.filter(|day| one.date <= *day)?;
    Some(Taken {
        reader: one.reader.clone(),
        against: one.against.clone(),
        date: one.date,
        days: day.days_since(one.date),
        visit,
    })
}

/// The one was set beside the other: it speaks for the later visit.
fn of_each_other(log: &[&Calibration], asked: &Asked) -> Vec<Candidate> {
    let (earlier, later) = (asked.earlier.0, asked.later.0);
    let pairs = log.iter().filter_map(|one| {
        let sign = match (one.reader.as_str(), one.against.as_str()) {
            (reader, against) if (reader, against) == (later, earlier) => 1.0,
            (reader, against) if (reader, against) == (earlier, later) => -1.0,
            _ => return None,
        };
        let taken = taken(one, Visit::Later, asked.later.1)?;
        let differences: Vec<f64> = one.lines.iter().map(|line| sign * line.share()).collect();
        Some(Candidate { oldest: taken.days, way: Way::of(&differences, vec![taken]) })
    });
    pairs.collect()
}

/// Both were set beside the same third on the same lines in one year: it speaks for the later visit.
fn beside_a_third(log: &[&Calibration], asked: &Asked) -> Vec<Candidate> {
    let mut found = Vec::new();
    for (before, after) in thirds(log, asked) {
        if before.site != after.site || before.date.year() != after.date.year() {
            continue;
        }
        let earlier: BTreeMap<&str, f64> =
            before.lines.iter().map(|line| (line.line.as_str(), line.share())).collect();
        let both = after.lines.iter();
        let differences: Vec<f64> = both
            .filter_map(|line| earlier.get(line.line.as_str()).map(|before| line.share() - before))
            .collect();
        let day = asked.later.1;
        let (Some(one), Some(other)) = (taken(before, Visit::Later, day), taken(after, Visit::Later, day))
        else {
            continue;
        };
        if differences.len() > 1 {
            let oldest = one.days.max(other.days);
            found.push(Candidate { oldest, way: Way::of(&differences, vec![one, other]) });
        }
    }
    found
}

/// Each was set beside the same third before the own visit, on whatever lines: two means that have nothing but the third in common.
fn each_in_its_time(log: &[&Calibration], asked: &Asked) -> Vec<Candidate> {
    let pairs = thirds(log, asked).into_iter().filter_map(|(before, after)| {
        let one = taken(before, Visit::Earlier, asked.earlier.1)?;
        let other = taken(after, Visit::Later, asked.later.1)?;
        let oldest = one.days.max(other.days);
        let [before, after] = [before, after].map(|one| {
            let shares: Vec<f64> = one.lines.iter().map(crate::agree::CalibrationLine::share).collect();
            Way::of(&shares, Vec::new())
        });
        Some(Candidate { oldest, way: before.then(after, vec![one, other]) })
    });
    pairs.collect()
}

/// Every calibration of the earlier reader with every one of the later reader beside the same third.
fn thirds<'a>(log: &[&'a Calibration], asked: &Asked) -> Vec<(&'a Calibration, &'a Calibration)> {
    let of = |reader: &str| -> Vec<&'a Calibration> {
        log.iter().copied().filter(|one| one.reader == reader).collect()
    };
    let later = of(asked.later.0);
    let pairs = of(asked.earlier.0).into_iter().flat_map(|before| {
        let same = later.iter().copied().filter(move |after| after.against == before.against);
        same.map(move |after| (before, after))
    });
    pairs.collect()
}
