//! Progress: each learner's lessons in their order, and what can be said of them.

use super::exercise::Exercise;
use super::marking::Parts;
use crate::date::Date;
use crate::output::VERSION;
use serde::Serialize;
use std::collections::BTreeMap;

/// One graded line of one learner.
#[derive(Clone, Debug, PartialEq)]
pub struct Lesson {
    /// Who.
    pub name: String,
    /// The day, where it was written.
    pub date: Option<Date>,
    /// The line's name.
    pub line: String,
    /// The key's cover as a share of the line.
    pub key: f64,
    /// The cover that was handed in: the per cent that was written, else what the rows come to.
    pub handed_in: f64,
    /// The marks, part by part.
    pub marks: Parts,
    /// What there was for each part, where the results say so.
    pub most: Option<Parts>,
    /// Intercepts that were right, of all that were set beside the key.
    pub right: (usize, usize),
    /// The code of the habit that explains the sheet, where one does.
    pub habit: Option<String>,
}

impl Lesson {
    /// The level, where the line is a practice line.
    pub fn level(&self) -> Option<u8> {
        Exercise::level_and_number(&self.line).map(|(level, _)| level.number())
    }

    /// How far the cover that was handed in lies from the key's, above zero where it is too much.
    ///
    /// # Units
    /// percentage points
    pub fn error(&self) -> f64 {
        (self.handed_in - self.key) * 100.0
    }
}

/// A habit that was named.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Habit {
    /// Its code in the catalogue.
    pub code: String,
    /// In how many lessons.
    pub lessons: usize,
    /// How many lessons came after the last of them.
    pub since: usize,
}

/// One learner's lessons, the oldest first.
#[derive(Clone, Debug, PartialEq)]
pub struct Learner {
    /// Who.
    pub name: String,
    /// The lessons.
    pub lessons: Vec<Lesson>,
}

/// So many lessons at either end are set side by side.
const AT_EITHER_END: usize = 3;

impl Learner {
    /// The mean distance from the key, in percentage points, over the first lessons and over the last, with how many those
    /// are: up to three at either end, none in both; nothing before there are two lessons.
    pub fn first_and_last(&self) -> Option<(usize, f64, f64)> {
        let number = (self.lessons.len() / 2).min(AT_EITHER_END);
        let mean = |lessons: &[Lesson]| {
            let sum: f64 = lessons.iter().map(|one| one.error().abs()).sum();
            sum / count(lessons.len())
        };
        (number > 0).then(|| {
            let last = self.lessons.len() - number;
            (number, mean(&self.lessons[..number]), mean(&self.lessons[last..]))
        })
    }

    /// Habits that were named, the most frequent first.
    pub fn habits(&self) -> Vec<Habit> {
        let mut found: BTreeMap<&str, (usize, usize)> = BTreeMap::new();
        for (at, lesson) in self.lessons.iter().enumerate() {
            if let Some(code) = &lesson.habit {
                let entry = found.entry(code).or_default();
                *entry = (entry.0 + 1, at);
            }
        }
        let mut habits: Vec<Habit> = found
            .into_iter()
            .map(|(code, (lessons, last))| Habit {
                code: code.to_owned(),
                lessons,
                since: self.lessons.len() - 1 - last,
            })
            .collect();
        habits.sort_by_key(|habit| core::cmp::Reverse(habit.lessons));
        habits
    }
}

fn count(number: usize) -> f64 {
    f64::from(u32::try_from(number).unwrap_or(u32::MAX))
}

/// Lessons by learner, in the order of names; each learner's by day, those of one day or without one as they were handed in.
///
/// # Example
/// ```
/// use tautline_survey::practice::{Lesson, Parts, progress};
/// let lesson = |name: &str, handed_in| Lesson {
///     name: name.to_owned(), date: None, line: "2-1".to_owned(), key: 0.20, handed_in,
///     marks: Parts::default(), most: None, right: (0, 0), habit: None,
/// };
/// let learners = progress(vec![lesson("Bea", 0.25), lesson("Ada", 0.26), lesson("Ada", 0.18)]);
/// let (number, first, last) = learners[0].first_and_last().unwrap();
/// assert_eq!((learners[0].name.as_str(), number), ("Ada", 1));
/// assert!((first - 6.0).abs() < 1e-9 && (last - 2.0).abs() < 1e-9);
/// ```
pub fn progress(lessons: Vec<Lesson>) -> Vec<Learner> {
    let mut of: BTreeMap<String, Vec<Lesson>> = BTreeMap::new();
    for lesson in lessons {
        of.entry(lesson.name.clone()).or_default().push(lesson);
    }
    of.into_iter()
        .map(|(name, mut lessons)| {
            lessons.sort_by_key(|lesson| lesson.date);
            Learner { name, lessons }
        })
        .collect()
}

/// What `tautline practice progress --json` prints.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PracticeProgressOutput {
    /// `tautline.practice-progress`
    pub format: &'static str,
    /// The version of the format.
    pub version: u32,
    /// The learners, by name.
    pub learners: Vec<LearnerOutput>,
}

/// One learner.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LearnerOutput {
    /// Who.
    pub name: String,
    /// The lessons, the oldest first.
    pub lessons: Vec<LessonOutput>,
    /// Habits that were named: which, in how many lessons, how many lessons came after the last of them.
    pub habits: Vec<(String, usize, usize)>,
}

/// One lesson.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LessonOutput {
    /// The day, where it was written.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub date: Option<String>,
    /// The line.
    pub line: String,
    /// The level, where the line is a practice line.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub level: Option<u8>,
    /// How far the cover that was handed in lies from the key's, in percentage points.
    pub error_points: f64,
    /// All marks.
    pub marks: f64,
    /// Intercepts that were right.
    pub right: usize,
    /// Intercepts that were set beside the key.
    pub intercepts: usize,
    /// The habit that explains the sheet.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub habit: Option<String>,
}

/// Progress as data.
pub fn progress_output(learners: &[Learner]) -> PracticeProgressOutput {
    let lesson = |one: &Lesson| LessonOutput {
        date: one.date.map(|date| date.to_string()),
        line: one.line.clone(),
        level: one.level(),
        error_points: one.error(),
        marks: one.marks.all(),
        right: one.right.0,
        intercepts: one.right.1,
        habit: one.habit.clone(),
    };
    let learner = |one: &Learner| LearnerOutput {
        name: one.name.clone(),
        lessons: one.lessons.iter().map(lesson).collect(),
        habits: one.habits().into_iter().map(|habit| (habit.code, habit.lessons, habit.since)).collect(),
    };
    PracticeProgressOutput {
        format: "tautline.practice-progress",
        version: VERSION,
        learners: learners.iter().map(learner).collect(),
    }
}
