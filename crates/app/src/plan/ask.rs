//! What the notebook and the fields foresee and ask; the arithmetic is `survey::effort`'s.

use super::fields::{number_of, share};
use super::sitting::{Held, Sitting};
use crate::standing::Standing;
use leptos::prelude::*;
use tautline_engine::effort::length::Cost;
use tautline_engine::length::{DecimalMark, Unit};
use tautline_survey::assess::{SiteGoal, assess};
use tautline_survey::effort::{Ask, CORRELATION, Foreseen, paid_for};
use tautline_survey::goal::{self, Goal, Subject, Wanted};
use tautline_survey::measure::Measure;
use tautline_survey::message::Message;
use tautline_survey::sites::of_site;

/// The goal as typed; what is missing or not understood is said.
pub(super) fn goal_of(all: &Sitting) -> Result<Goal, Message> {
    let aim = &all.aim;
    let number = |text: &str| text.trim().trim_end_matches('%').trim().replace(',', ".");
    let (low, high) = (number(&aim.low), number(&aim.high));
    if low.is_empty() || aim.relation == "between" && high.is_empty() {
        return Err(Message::new("aim-no-number"));
    }
    let relation = match aim.relation.as_str() {
        "between" => format!("between {low} and {high} %"),
        relation => format!("{relation} {low} %"),
    };
    let mut goal = goal::read(&format!("{}: {relation}", aim.subject), DecimalMark::Point)
        .map_err(|_| Message::new("aim-number-not-read").with("found", relation))?;
    goal.confidence_per_mille = goal::read_confidence(&aim.confidence, DecimalMark::Point);
    aim.source.trim().clone_into(&mut goal.source);
    Ok(goal)
}

/// What decides what is foreseen, so that it isn't worked out at each key.
#[derive(Clone, Debug, PartialEq)]
struct By {
    site: String,
    goal: Option<Goal>,
    described: Option<(Option<f64>, Option<f64>)>,
}

/// What is foreseen of the lines to come, from the newest readings of the site or as described; none where nothing says it.
pub(super) fn foreseen(held: Held) -> Memo<Option<Foreseen>> {
    let by = Memo::new(move |_| {
        held.with(|all| By {
            site: all.site.clone(),
            goal: goal_of(all).ok(),
            described: all.number.described.then(|| (share(&all.number.cover), share(&all.number.spread))),
        })
    });
    Memo::new(move |_| {
        let by = by.get();
        match by.described {
            Some((cover, deviation)) => {
                let deviation = deviation.filter(|&deviation| deviation > 0.0)?;
                let subject = by.goal.map_or(Subject::Canopy, |goal| goal.subject);
                Some(Foreseen { subject, cover: cover?, deviation, pilot: None, lines: Vec::new() })
            }
            None => pilot(&held.session.standing(), &by.site, by.goal.as_ref()),
        }
    })
}

/// The newest readings of a site, of what the goal is about.
fn pilot(standing: &Standing, site: &str, goal: Option<&Goal>) -> Option<Foreseen> {
    let input = of_site(&standing.input, site);
    if input.visits.is_empty() {
        return None;
    }
    let mut question = standing.question();
    question.goals =
        goal.map(|goal| SiteGoal { site: Some(site.to_owned()), goal: goal.clone() }).into_iter().collect();
    let assessments = assess(&input, &question);
    let newest = assessments.iter().max_by_key(|one| one.year)?;
    let found = match goal {
        Some(goal) => Foreseen::of_subject(newest, &goal.subject),
        None => Foreseen::of(newest),
    };
    found.filter(|found| found.deviation > 0.0)
}

/// The sites of the notebook that have readings, by their names.
pub(super) fn sites(held: Held) -> Vec<String> {
    let standing = held.session.standing();
    let mut sites: Vec<String> = standing.input.visits.iter().map(|visit| visit.site.clone()).collect();
    sites.extend(standing.input.plan.iter().map(|line| line.site.clone()));
    sites.sort();
    sites.dedup();
    sites
}

/// What is asked of a plan.
pub(super) fn ask_of(all: &Sitting) -> Ask {
    let number = &all.number;
    let whole = |text: &str| text.trim().parse::<usize>().ok();
    let positive = |text: &str| share(text).filter(|&share| share > 0.0);
    let shows = whole(&number.shows).filter(|lines| (2..=10_000).contains(lines));
    let paid = number_of(&number.budget)
        .zip(cost_of(all))
        .and_then(|(budget, cost)| paid_for(budget, cost, length_of(all)));
    Ask {
        goals: goal_of(all)
            .ok()
            .map(|goal| goal.wanted)
            .filter(|wanted| matches!(wanted, Wanted::Cover(_)))
            .into_iter()
            .collect(),
        half_width: positive(&number.half_width),
        change: positive(if number.change.is_empty() { &all.aim.smallest } else { &number.change }),
        trend: positive(&number.trend).map(|slope| (slope, whole(&number.visits).unwrap_or(5).clamp(3, 60))),
        correlation: number_of(&number.correlation).filter(|alike| *alike < 1.0).unwrap_or(CORRELATION),
        between_years: share(&number.between_years).unwrap_or(0.0),
        confidence: share(&all.aim.confidence).filter(|sure| (0.5..1.0).contains(sure)).unwrap_or(0.9),
        power: share(&number.power).filter(|chance| (0.5..1.0).contains(chance)).unwrap_or(0.8),
        lines: match (shows, paid) {
            (Some(shows), Some(paid)) => Some(shows.min(paid)),
            (shows, paid) => shows.or(paid),
        },
        population: None,
    }
}

/// What a line costs in minutes, where anything of it was said.
pub(super) fn cost_of(all: &Sitting) -> Option<Cost> {
    let number = &all.number;
    let [walk, lay, per_metre] = [&number.walk, &number.lay, &number.read].map(|text| number_of(text));
    if walk.or(lay).or(per_metre).unwrap_or(0.0) <= 0.0 {
        return None;
    }
    Some(Cost { walk: walk.unwrap_or(0.0), lay: lay.unwrap_or(0.0), per_metre: per_metre.unwrap_or(0.0) })
}

/// The length of a line in metres.
pub(super) fn length_of(all: &Sitting) -> f64 {
    let typed = Measure::read(&all.layout.length, None, DecimalMark::Point);
    typed.map_or(30.0, |length| length.length().in_unit(Unit::Metre)).max(0.1)
}
