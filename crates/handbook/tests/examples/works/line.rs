//! One line: cover, gaps, plants per area.

use super::{Answer, unknown};
use crate::example::Example;
use crate::printed::{Found, length, number, stretch};
use tautline_engine::cover::{Intercept, Life, LineCover, line_cover};
use tautline_engine::density::plants_per_square_metre;
use tautline_engine::gaps::{GapClass, canopy_gaps, gap_classes, published_breaks};
use tautline_engine::length::{Length, Unit};
use tautline_engine::rule::{Bridging, DeadRule, ReadingRule};

/// The rule that the example states; what it leaves out is read as written.
fn rule(example: &Example) -> ReadingRule {
    let mut rule = ReadingRule::AS_WRITTEN;
    if let Some(limit) = example.given("gap rule") {
        rule.gap.limit = length(limit);
    }
    if let Some(equal) = example.given("a gap of exactly the rule") {
        rule.gap.equal = match equal {
            "closes" => Bridging::Bridged,
            "stays open" => Bridging::Breaks,
            other => panic!("“{other}” is no answer"),
        };
    }
    if let Some(dead) = example.given("dead wood") {
        rule.dead = match dead {
            "apart" => DeadRule::Apart,
            "left out" => DeadRule::LeftOut,
            "short joins live" => DeadRule::ShortJoinsLive,
            "counts as live" => DeadRule::CountsAsLive,
            other => panic!("“{other}” is no rule"),
        };
    }
    rule
}

/// Covers, gaps and gap classes of one line.
pub(super) fn out(example: &Example) -> Answer<'_> {
    let line = length(example.needed("line"));
    let mut species: Vec<&str> = Vec::new();
    let mut intercepts = Vec::new();
    for (word, life) in [("live", Life::Live), ("dead", Life::Dead)] {
        for (code, edges) in example.all(word) {
            if code == "wood" {
                continue; // the rule, not a plant
            }
            let number = species.iter().position(|own| *own == code).unwrap_or_else(|| {
                species.push(code);
                species.len() - 1
            });
            let species = u32::try_from(number).expect("a page names few species");
            intercepts.push(Intercept { stretch: stretch(edges), species, plant: None, life });
        }
    }
    let cover = line_cover(line, &intercepts, &rule(example));
    let classes = gap_classes(&canopy_gaps(&cover.canopy, line), &published_breaks(), 1.0);
    Box::new(move |key| {
        let of = |length: Length| Found::Number(length.share_of(line));
        Ok(match key {
            "canopy" => cover.canopy_length().into(),
            "canopy cover" => of(cover.canopy_length()),
            "sum of species" => of(cover.sum_length()),
            "dead" => cover.dead_length().into(),
            "dead cover" => of(cover.dead_length()),
            "pieces of canopy" => cover.canopy.len().into(),
            "gaps" => canopy_gaps(&cover.canopy, line).len().into(),
            other => return of_species(other, &species, &cover).or_else(|_| of_class(other, &classes, line)),
        })
    })
}

fn of_species(key: &str, species: &[&str], cover: &LineCover) -> Result<Found, String> {
    let named = |prefix: &str| {
        let code = key.strip_prefix(prefix)?;
        let number = species.iter().position(|own| *own == code)?;
        cover.species.iter().find(|one| one.species == u32::try_from(number).unwrap_or(u32::MAX))
    };
    if let Some(one) = named("cover of ") {
        return Ok(one.live_length().share_of(cover.length).into());
    }
    named("length of ").map_or_else(|| unknown(key), |one| Ok(one.live_length().into()))
}

/// “gaps of 51 to 100 cm”, “gaps over 200 cm”, as a share of the line.
fn of_class(key: &str, classes: &[GapClass], line: Length) -> Result<Found, String> {
    let name = |class: &GapClass| {
        let whole = |length: Length| length.nanometres() / Unit::Centimetre.nanometres();
        let above = whole(class.above);
        match class.up_to {
            Some(up_to) => {
                format!("gaps of {} to {} cm", if above == 25 { 25 } else { above + 1 }, whole(up_to))
            }
            None => format!("gaps over {above} cm"),
        }
    };
    let class = classes.iter().find(|class| name(class) == key);
    class.map_or_else(|| unknown(key), |class| Ok(class.length.share_of(line).into()))
}

/// Plants per area from widths.
pub(super) fn widths(example: &Example) -> Answer<'_> {
    let widths: Vec<Length> = example.needed("widths").split(',').map(length).collect();
    let lines = length(example.needed("all lines together"));
    let level = example.given("slope").map_or(lines, |grade| {
        let cosine = tautline_engine::slope::cosine_of_grade(number(grade));
        tautline_engine::slope::level(lines, cosine)
    });
    Box::new(move |key| match key {
        "plants" => {
            plants_per_square_metre(&widths, level).map(Found::from).ok_or_else(|| "no density".to_owned())
        }
        "length on the level" => Ok(level.into()),
        other => unknown(other),
    })
}
