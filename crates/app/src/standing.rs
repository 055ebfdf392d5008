//! What stands in the notebook, looked through by the checks, and what every site comes to.

use crate::device::Device;
use crate::device::here::a_turn;
use std::rc::Rc;
use tautline_store::Keep as _;
use tautline_survey::assess::{Question, SiteGoal};
use tautline_survey::check::check;
use tautline_survey::draft::blind::Withheld;
use tautline_survey::draft::{LineDraft, Setup};
use tautline_survey::input::Input;
use tautline_survey::notebook::{
    self,
    current::{Current, ReadHead},
    payload::Key,
};
use tautline_survey::revision::Revision;
use tautline_survey::summary::Summaries;
use tautline_survey::sync::Place;

/// What stands in the notebook, checked, without what a second reader must not see.
#[derive(Default)]
pub(crate) struct Standing {
    pub(crate) current: Current,
    pub(crate) input: Input,
    pub(crate) goals: Vec<SiteGoal>,
    /// What is out of sight for as long as a line is read blind.
    pub(crate) withheld: Withheld,
    /// Where the log ends that this was taken from.
    end: Option<Place>,
}

impl Standing {
    /// What stands, without what must not be seen by those who read blind.
    async fn without(mut current: Current, end: Option<Place>, blind: Vec<Setup>) -> Self {
        let withheld = Withheld::take(&mut current, blind);
        let (mut input, goals) = current.input();
        if input.visits.len() > RECORDS {
            a_turn().await;
        }
        check(&mut input);
        Self { current, input, goals, withheld, end }
    }

    /// The same with others reading blind.
    async fn again(&self, blind: Vec<Setup>) -> Self {
        let mut current = self.current.clone();
        self.withheld.clone().give_back(&mut current);
        Self::without(current, self.end.clone(), blind).await
    }

    /// Whether the log still ends where it did when this was taken from it: whatever is written or blanked moves its end.
    pub(crate) fn is_of(&self, device: &Device) -> bool {
        self.end.is_some() && device.memory().end().ok().flatten() == self.end
    }

    /// What stands under a key, in sight or not: whoever writes follows it.
    pub(crate) fn record(&self, key: &Key) -> Option<&notebook::current::Standing> {
        self.current.standing.get(key).or_else(|| self.withheld.record(key))
    }

    /// The question that is asked of every site: its goals, all else as usual.
    pub(crate) fn question(&self) -> Question {
        Question { goals: self.goals.clone(), ..Question::default() }
    }

    /// Up to where summaries hold: what is out of sight makes others of them.
    fn upto(&self) -> Option<Place> {
        let mark = self.withheld.mark();
        self.end
            .clone()
            .map(|end| if mark.is_empty() { end } else { Place { mark: end.mark + " " + &mark, ..end } })
    }
}

/// A log that has changed.
pub(crate) struct Log {
    /// Its newest revisions.
    pub(crate) heads: Vec<Revision>,
    /// Where it ends.
    pub(crate) end: Option<Place>,
}

/// What there is to work on.
pub(crate) struct Asked {
    /// The log, where it has changed.
    pub(crate) log: Option<Log>,
    /// What stood before.
    pub(crate) before: Rc<Standing>,
    /// The unfinished lines on this device, as they are kept; none where the disk can't be asked.
    pub(crate) drafts: Option<Vec<String>>,
    /// What every site came to last time.
    pub(crate) summaries: Summaries,
}

/// What came of it.
pub(crate) struct Stood {
    /// What stands now, where it is another.
    pub(crate) standing: Option<Standing>,
    /// The summaries and their text, where something has changed.
    pub(crate) renewed: Option<(Summaries, String)>,
}

/// So many records are read, and so many sites worked out, before others have their turn.
const RECORDS: usize = 200;
const SITES: usize = 10;

impl Stood {
    /// Works out what has changed, a part at a time: a notebook of many years keeps nobody from typing.
    pub(crate) async fn of(asked: Asked) -> Self {
        let Asked { log, before, drafts, mut summaries } = asked;
        let seen = || before.withheld.blind().to_vec();
        let blind = drafts.map_or_else(seen, |drafts| blind(&drafts));
        let standing = match log {
            Some(log) => Standing::without(current(log.heads).await, log.end, blind).await,
            None if blind == before.withheld.blind() => return Self { standing: None, renewed: None },
            None => before.again(blind).await,
        };
        let end = standing.upto();
        let renewed = if summaries.hold_for(end.as_ref()) {
            None
        } else {
            let question = standing.question();
            let renewal = summaries.renewal(&standing.current, &standing.input, &question, end);
            for (number, ()) in renewal.enumerate() {
                turn_after(number, SITES).await;
            }
            let text = summaries.text();
            Some((summaries, text))
        };
        Self { standing: Some(standing), renewed }
    }
}

/// What stands, from the heads of all records.
async fn current(heads: Vec<Revision>) -> Current {
    let mut read = Vec::with_capacity(heads.len());
    for (number, head) in heads.into_iter().enumerate() {
        read.push(ReadHead::of(head));
        turn_after(number, RECORDS).await;
    }
    Current::of_heads(read)
}

/// Gives others their turn after each so many.
async fn turn_after(number: usize, each: usize) {
    if number % each == each - 1 {
        a_turn().await;
    }
}

/// Those of the drafts that are read without sight of an earlier reading.
fn blind(drafts: &[String]) -> Vec<Setup> {
    let read = drafts.iter().filter_map(|text| LineDraft::from_text(text).ok());
    read.map(|draft| draft.setup().clone()).filter(|setup| setup.blind).collect()
}
