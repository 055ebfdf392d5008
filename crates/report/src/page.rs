//! What every part of a page needs: the input, what was asked of it, the words, the colours of the species, and what may be told
//! of a site's places.

use crate::onward::Changes;
use crate::photos::Photograph;
use crate::pictures::Tones;
use crate::telling::{Reader, Telling};
use std::collections::BTreeMap;
use tautline_survey::assess::Question;
use tautline_survey::finding::Finding;
use tautline_survey::input::Input;
use tautline_survey::layout::MapOutput;
use tautline_survey::message::Message;
use tautline_survey::place::{Openness, says_where};
use tautline_survey::visit::Visit;
use tautline_words::Words;

/// What the pictures are drawn for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Medium {
    /// Wide and narrow, coloured by the page's style.
    Screen,
    /// Once, in colours of their own.
    #[cfg_attr(
        not(feature = "pdf"),
        expect(dead_code, reason = "only the typeset report is drawn for print")
    )]
    Print,
    /// Not at all.
    Plain,
}

/// The page in the making.
pub(crate) struct Page<'a> {
    pub(crate) input: &'a Input,
    pub(crate) question: &'a Question,
    pub(crate) words: &'a Words,
    pub(crate) reader: Reader,
    pub(crate) medium: Medium,
    pub(crate) tones: Tones,
    pub(crate) changes: Changes,
    pub(crate) photos: &'a [Photograph],
    maps: Option<&'a BTreeMap<String, MapOutput>>,
    pub(crate) made: Option<&'a str>,
    pub(crate) full: bool,
}

impl<'a> Page<'a> {
    pub(crate) fn new(telling: &Telling<'a>, medium: Medium) -> Self {
        let Telling { input, question, assessments, words, reader, photos, maps, made, full } = *telling;
        let changes = Changes::up_to(input, question, assessments);
        let tones = Tones::of(assessments);
        Self { input, question, words, reader, medium, tones, changes, photos, maps, made, full }
    }

    /// How much this report tells of a site's places.
    pub(crate) fn openness(&self, site: &str) -> Openness {
        if self.full { Openness::Exact } else { self.input.openness(site) }
    }

    /// Whether something of a site's places is kept back; of what is about no site, whether it is of any.
    pub(crate) fn keeps_back(&self, site: Option<&str>) -> bool {
        match site {
            Some(site) => self.openness(site) != Openness::Exact,
            None => self.input.sites.iter().any(|site| self.openness(&site.site) != Openness::Exact),
        }
    }

    /// The lines of a site on a plane.
    pub(crate) fn map(&self, site: &str) -> Option<&'a MapOutput> {
        self.maps.and_then(|maps| maps.get(site))
    }

    /// What was noted at a visit, as far as its readers may be told.
    pub(crate) fn noted<'v>(&self, visit: &'v Visit) -> impl Iterator<Item = &'v (String, String)> + Clone {
        let keeps_back = self.keeps_back(Some(&visit.site));
        visit.told().filter(move |(heading, _)| !(keeps_back && says_where(heading)))
    }

    /// Whether a finding may repeat what stands in a cell: not where the cell says where a line is that is kept back.
    pub(crate) fn may_quote(&self, finding: &Finding) -> bool {
        let of_place = || finding.place.as_ref().and_then(|at| at.column.as_deref()).is_some_and(says_where);
        !(of_place() && self.keeps_back(finding.about.as_ref().map(|about| about.site.as_str())))
    }

    /// The words for a code without values.
    pub(crate) fn word(&self, code: &str) -> String {
        self.words.word(code)
    }

    /// The words for a message.
    pub(crate) fn say(&self, message: &Message) -> String {
        self.words.say(message)
    }

    /// The words for some codes, in their order.
    pub(crate) fn each(&self, codes: &[&str]) -> Vec<String> {
        codes.iter().map(|code| self.word(code)).collect()
    }
}

/// The place of an assessment on the page: the beginning of its ids.
pub(crate) fn site_id(number: usize) -> String {
    format!("site-{}", number + 1)
}

/// The place of a visit's readings on the page.
pub(crate) fn readings_id(visit: usize) -> String {
    format!("readings-{}", visit + 1)
}
