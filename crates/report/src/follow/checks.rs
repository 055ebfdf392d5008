//! What holds a change up besides its interval: equivalence, and tests that ask for no bell curve.

use crate::document::{Block, Item, ListOf, list};
use crate::page::Page;
use tautline_survey::follow::{SiteChange, chain};

/// The whole chain of the first figure: strata, error, interval, the largest change that could hide, signs and ranks.
pub(super) fn blocks(one: &SiteChange, page: &Page) -> Vec<Block> {
    let Some(figure) = one.figures.first() else { return Vec::new() };
    let steps = chain(one, figure).into_iter().map(|step| {
        let mut item = Item::said(page.say(&step.message));
        item.depth = step.depth;
        item
    });
    list(ListOf::Chain, steps.collect()).into_iter().collect()
}
