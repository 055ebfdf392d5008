//! What stands in the notebook, looked through by the checks, and what every site comes to.

use tautline_survey::assess::{Question, SiteGoal};
use tautline_survey::check::check;
use tautline_survey::input::Input;
use tautline_survey::notebook::current::Current;
use tautline_survey::revision::Revision;
use tautline_survey::summary::Summaries;
use tautline_survey::sync::Place;

/// What stands in the notebook, checked.
#[derive(Default)]
pub(crate) struct Standing {
    pub(crate) current: Current,
    pub(crate) input: Input,
    pub(crate) goals: Vec<SiteGoal>,
}

impl Standing {
    /// The question that is asked of every site: its goals, all else as usual.
    pub(crate) fn question(&self) -> Question {
        Question { goals: self.goals.clone(), ..Question::default() }
    }
}

/// What there is to work on.
pub(crate) struct Asked {
    /// The newest revisions.
    pub(crate) heads: Vec<Revision>,
    /// Where the notebook's log ends.
    pub(crate) end: Option<Place>,
    /// What every site came to last time.
    pub(crate) summaries: Summaries,
}

/// What came of it.
pub(crate) struct Stood {
    pub(crate) standing: Standing,
    /// The summaries and their text, where something has changed.
    pub(crate) renewed: Option<(Summaries, String)>,
}

impl Stood {
    /// Works out the sites that have changed.
    pub(crate) fn of(asked: Asked) -> Self {
        let Asked { heads, end, mut summaries } = asked;
        let current = Current::of(heads);
        let (mut input, goals) = current.input();
        check(&mut input);
        let standing = Standing { current, input, goals };
        let renewed = (!summaries.hold_for(end.as_ref())).then(|| {
            summaries.renew(&standing.current, &standing.input, &standing.question(), end);
            let text = summaries.text();
            (summaries, text)
        });
        Self { standing, renewed }
    }
}
