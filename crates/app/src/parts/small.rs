//! Cover and its interval against the goal, as a small picture: a stretch of tape with the estimate on it.

use leptos::prelude::*;
use tautline_engine::verdict::Goal;
use tautline_survey::assess::threshold;
use tautline_survey::goal::Subject;
use tautline_survey::summary::YearSummary;

/// Cover of a year against its first goal, where that is one of canopy cover; nothing where no figure is known.
pub(crate) fn of_year(year: &YearSummary, end: f64) -> Option<impl IntoView + use<>> {
    let goal = year.verdicts.first().map(|(goal, _)| goal).filter(|goal| goal.subject == Subject::Canopy);
    let goal = goal.map(|goal| threshold(&goal.wanted));
    Some(small(Small { cover: year.cover?, interval: year.interval, goal, end }))
}

/// Where a scale ends that these share: the next tenth above all of them.
pub(crate) fn end_of<'a>(years: impl IntoIterator<Item = &'a YearSummary>) -> f64 {
    let highest = years.into_iter().filter_map(|year| year.interval.or(year.cover));
    let highest = highest.map(|(_, high)| high).fold(0.1, f64::max);
    ((highest * 10.0).ceil() / 10.0).min(1.0)
}

/// What is drawn, as shares.
#[derive(Clone, Copy, Debug)]
struct Small {
    /// The estimate's low and high end.
    cover: (f64, f64),
    interval: Option<(f64, f64)>,
    goal: Option<Goal>,
    /// Where the scale ends; the same for all that stand below each other.
    end: f64,
}

const WIDTH: f64 = 200.0;

/// The picture. What it shows stands beside it in words, so it is hidden from those who listen.
fn small(small: Small) -> impl IntoView {
    let at = |share: f64| WIDTH * (share / small.end).clamp(0.0, 1.0);
    let text = |x: f64| format!("{x:.1}");
    let bar = |class: &'static str, from: f64, to: f64, y: &'static str, height: &'static str| {
        let wide = (at(to) - at(from)).max(1.0);
        view! { <rect class=class x=text(at(from)) y=y width=text(wide) height=height rx="1"></rect> }
    };
    let goal = small.goal.map(|goal| match goal {
        Goal::AtLeast(least) => bar("goal", least, small.end, "2", "20"),
        Goal::AtMost(most) => bar("goal", 0.0, most, "2", "20"),
        Goal::Between(low, high) => bar("goal", low, high, "2", "20"),
    });
    let interval = small.interval.map(|(low, high)| bar("interval", low, high, "10.5", "3"));
    let (low, high) = small.cover;
    let estimate = bar("estimate", low - small.end / 150.0, high + small.end / 150.0, "6", "12");
    let ticks: Vec<String> =
        (0..=10).map(|tick| format!("M{} 22v2", f64::from(tick) * WIDTH / 10.0)).collect();
    view! {
        <svg class="small" viewBox="-2 0 204 26" aria-hidden="true">
            {goal}<path class="tape" d="M0 22H200"></path><path class="tape" d=ticks.concat()></path>{interval}{estimate}
        </svg>
    }
}
