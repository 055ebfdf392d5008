//! Rows of readings that name no site or no line, or whose cells can't be told apart. Most likely they go on with what a neighbour reads, and that line would
//! come out too low without them: so they count as rows of it that were set aside, and it waits until they are settled.

use super::Options;
use super::cells::Row;
use crate::headings::Column;
use tautline_survey::date::Date;
use tautline_survey::input::Input;
use tautline_survey::visit::Visit;

/// What a row does say of where it belongs.
#[derive(Default)]
struct Says {
    site: Option<String>,
    line: Option<String>,
    date: Option<Date>,
}

impl Says {
    fn is_at(&self, site: &str) -> bool {
        self.site.as_ref().is_none_or(|own| own == site)
    }

    fn fits(&self, visit: &Visit) -> bool {
        self.is_at(&visit.site)
            && self.line.as_ref().is_none_or(|line| *line == visit.line)
            && self.date.is_none_or(|date| visit.date.is_none_or(|own| own == date))
    }
}

/// The rows of one sheet as they pass: the visits of those that could be placed, each time another one begins, and those
/// that wait for the next row, each with the visit above that was held back for it.
#[derive(Default)]
pub(super) struct Neighbours {
    passed: Vec<usize>,
    waiting: Vec<(Says, Option<usize>)>,
}

impl Neighbours {
    /// A row that can't be placed: the visit above that it may belong to, which is held back. A row that names its site has
    /// its neighbours there.
    pub(super) fn unplaced(&mut self, row: &Row, options: &Options, input: &mut Input) -> Option<usize> {
        self.short_of(Says { site: row.site(options), line: row.some(Column::Line), date: row.date() }, input)
    }

    /// A row of which no cell can be trusted.
    pub(super) fn misshapen(&mut self, input: &mut Input) {
        self.short_of(Says::default(), input);
    }

    fn short_of(&mut self, says: Says, input: &mut Input) -> Option<usize> {
        let mut passed = self.passed.iter().rev().copied();
        let nearest = passed.find(|&at| says.is_at(&input.visits[at].site));
        let above = nearest.filter(|&at| says.fits(&input.visits[at]));
        if let Some(at) = above {
            input.visits[at].set_aside += 1;
        }
        self.waiting.push((says, above));
        above
    }

    /// A row that was placed: those that wait may belong to its visit too.
    pub(super) fn placed(&mut self, at: usize, input: &mut Input) {
        let visit = &mut input.visits[at];
        let mut short = 0;
        self.waiting.retain(|(says, above)| {
            let is_here = says.is_at(&visit.site);
            short += u32::from(is_here && says.fits(visit) && *above != Some(at));
            !is_here
        });
        visit.set_aside += short;
        if self.passed.last() != Some(&at) {
            self.passed.push(at);
        }
    }
}
