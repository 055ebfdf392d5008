//! Whether to read on, on a site whose objective names a sequential plan: said only under a plan that was written down before
//! the visit's first line was read, since a plan chosen afterwards keeps none of its promises.

use super::sequential;
use crate::assess::{Question, SiteGoal, assess};
use crate::date::Date;
use crate::explain::standing_words;
use crate::input::Input;
use crate::message::Message;
use crate::notebook::current::{Current, Standing};
use crate::notebook::payload::Payload;
use crate::promise::Objective;
use crate::sites::of_site;
use crate::visit::Outcome;
use serde::{Deserialize, Serialize};
use tautline_engine::effort::sequential::{Design, Plan};

/// After which lines a site is looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Looks {
    /// Lines before the first look.
    pub first: u32,
    /// Lines between looks.
    pub every: u32,
    /// The last look.
    pub most: u32,
}

impl Looks {
    /// Reads `5 to 30` or `6 to 18 by 3`.
    ///
    /// # Example
    /// ```
    /// use tautline_survey::effort::looks::Looks;
    /// let looks = Looks::read("6 to 18 by 3").unwrap();
    /// assert_eq!((looks.first, looks.every, looks.most), (6, 3, 18));
    /// assert_eq!(looks.text(), "6 to 18 by 3");
    /// assert_eq!(Looks::read("18 to 6"), None);
    /// ```
    pub fn read(text: &str) -> Option<Self> {
        let plan = sequential::read(text, 0.1)?;
        let number = |lines: usize| u32::try_from(lines).ok();
        Some(Self { first: number(plan.first)?, every: number(plan.every)?, most: number(plan.most)? })
    }

    /// As it is written.
    pub fn text(self) -> String {
        let Self { first, every, most } = self;
        if every == 1 { format!("{first} to {most}") } else { format!("{first} to {most} by {every}") }
    }

    /// The plan, with the chance that it may be wrong to either side.
    fn plan(self, error: f64) -> Plan {
        Plan { first: self.first as usize, every: self.every as usize, most: self.most as usize, error }
    }
}

/// A plan that a site is read under, and the objective's goal that it is about.
#[derive(Clone, Debug, PartialEq)]
pub struct Chosen {
    /// The objective's name.
    pub objective: String,
    /// The plan.
    pub looks: Looks,
    goal: SiteGoal,
    confidence_per_mille: Option<u16>,
    /// Written down only after the visit's first line was read.
    pub is_late: bool,
}

/// The sequential plans that the objectives of a site name, for its visit of a year.
pub fn chosen(current: &Current, input: &Input, site: &str, year: Option<u16>) -> Vec<Chosen> {
    let own = input.visits.iter().filter(|visit| {
        visit.site == site && visit.date.map(Date::year) == year && visit.outcome != Outcome::NotRead
    });
    let first_line = own.filter_map(|visit| visit.date).min();
    let named = current.standing.values().filter_map(|standing| match &standing.payload {
        Payload::Objective(objective) if objective.site.is_empty() || objective.site == site => {
            let looks = objective.sampling.looks?;
            let goal = SiteGoal { site: Some(site.to_owned()), goal: objective.goal.clone()? };
            Some(Chosen {
                objective: objective.name.clone(),
                looks,
                goal,
                confidence_per_mille: objective.sampling.confidence_per_mille,
                is_late: first_line.is_some_and(|first| written(objective, standing) > Some(first)),
            })
        }
        _ => None,
    });
    named.collect()
}

/// The day that a plan was agreed, or else written down.
fn written(objective: &Objective, standing: &Standing) -> Option<Date> {
    let agreed = objective.agreed.iter().filter_map(|agreed| agreed.date).min();
    agreed.or_else(|| Date::read(standing.revision.head().time.minute().split(' ').next()?))
}

impl Chosen {
    /// What the plan says after the lines that were read so far, in order of their names. Finding the plan's level draws
    /// [`SEQUENCES`](tautline_engine::effort::sequential::SEQUENCES) sequences of lines, which takes a moment.
    pub fn advice(&self, input: &Input, question: &Question, year: Option<u16>) -> Message {
        if self.is_late {
            return Message::new("looks-late").with("looks", self.looks.text());
        }
        let mut question = Question { goals: vec![self.goal.clone()], ..question.clone() };
        if let Some(confidence) = self.confidence_per_mille {
            question.confidence_per_mille = confidence;
        }
        question.year = year;
        question.sequential = Design::of(self.looks.plan(1.0 - question.confidence()));
        let assessments = assess(&of_site(input, self.goal.site.as_deref().unwrap_or_default()), &question);
        let own = assessments.iter().find(|one| one.plot.is_none() && one.year == year);
        let judgement = own.and_then(|own| own.judgements.first());
        judgement.and_then(standing_words).unwrap_or(Message::new("standing-none"))
    }
}
