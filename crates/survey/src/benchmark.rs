//! Published numbers that cover is set against, and how far one can be from a figure that was read another way.
//!
//! A number means nothing without the ground it speaks of, the plants it counts and the rule it was read under. Where one
//! of these is unlike the user's, or not known, the number becomes a range and never a match.

use crate::goal::{Percent, Relation};
use crate::message::{Message, Value};
use crate::protocol::Protocol;
use serde::Serialize;

/// The ground that a number speaks of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Scale {
    /// A stand, a site or a pasture.
    Stand,
    /// The few metres around a nest, a shrub or a point of use.
    Nest,
    /// A landscape of many stands.
    Landscape,
}

impl Scale {
    /// The scale that a word stands for.
    pub fn from_word(word: &str) -> Option<Self> {
        Some(match word.trim().to_lowercase().as_str() {
            "stand" | "site" | "pasture" => Self::Stand,
            "nest" => Self::Nest,
            "landscape" => Self::Landscape,
            _ => return None,
        })
    }

    /// The code of the catalogue's word.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Stand => "scale-stand",
            Self::Nest => "scale-nest",
            Self::Landscape => "scale-landscape",
        }
    }
}

/// A published number with everything that it means.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Benchmark {
    /// Its short name.
    pub key: String,
    /// What it is for.
    pub name: String,
    /// The cover.
    pub cover: Relation<Percent>,
    /// The words and units as published; nothing is converted.
    pub published: String,
    /// Which plants it counts.
    pub plants: String,
    /// The season.
    pub season: String,
    /// The region.
    pub region: String,
    /// The ground it speaks of.
    pub scale: Scale,
    /// Name of the protocol it was read under, or its fingerprint (12 characters or more); empty where nobody said.
    pub rule: String,
    /// Author, year, title, table.
    pub source: String,
    /// Known from memory, not from the page.
    pub from_memory: bool,
}

/// A benchmark beside the user's own way to read.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Compared {
    /// The benchmark.
    pub benchmark: Benchmark,
    /// Scale and rule are the user's own: the number can be judged by as it is.
    pub fits: bool,
    /// Where it doesn't fit: what each value of the benchmark could be under the user's way, as shares.
    pub could_be: Vec<(f64, f64)>,
    /// What is unlike or not known.
    #[cfg_attr(feature = "schema", schemars(with = "Vec<serde_json::Value>"))]
    pub warnings: Vec<Message>,
}

/// Two ways to apply the method differed by up to this on the same ground.
///
/// # Source
/// Wambolt, Frisina, Knapp and Frisina 2006, Wildlife Society Bulletin 34:440, abstract
pub const RULES_DIFFER: f64 = 2.6;

/// Plots around a likely nest shrub gave 1.2 to 4.4 times the cover of their stand.
///
/// # Source
/// Miller et al. 2003, abstract (12 big-sagebrush stands; plots of 9.3 m²; crossed lines of 10 m gave 1.4 to 2.7)
pub const NESTS_DIFFER: (f64, f64) = (1.2, 4.4);

/// Sets a benchmark beside the user's scale and protocol.
///
/// # Example
/// ```
/// use tautline_survey::{benchmark::{Benchmark, Scale, compare}, goal::{Percent, Relation}};
/// let invented = Benchmark {
///     key: "invented".into(), name: "invented".into(), cover: Relation::AtLeast(Percent(150_000)),
///     published: "15 %".into(), plants: "shrubs".into(), season: "any".into(), region: "nowhere".into(),
///     scale: Scale::Stand, rule: String::new(), source: "invented".into(), from_memory: false,
/// };
/// let beside = compare(&invented, Scale::Stand, None);
/// // a rule that nobody stated: 15 % could be 5.8 % or 39 %
/// assert!(!beside.fits && (beside.could_be[0].0 - 0.15 / 2.6).abs() < 1e-12);
/// ```
pub fn compare(benchmark: &Benchmark, scale: Scale, protocol: Option<&Protocol>) -> Compared {
    let (mut least, mut most) = (1.0, 1.0);
    let mut warnings = Vec::new();
    let rule = benchmark.rule.trim();
    let same_rule = protocol.is_some_and(|own| {
        let same_print = rule.len() >= 12 && own.fingerprint().starts_with(rule);
        !rule.is_empty() && (same_print || own.name.eq_ignore_ascii_case(rule))
    });
    if !same_rule {
        (least, most) = (1.0 / RULES_DIFFER, RULES_DIFFER);
        let code = if rule.is_empty() { "benchmark-rule-unsaid" } else { "benchmark-rule-unlike" };
        let message = Message::new(code).with("rule", rule);
        warnings.push(message.with("times", Value::Number(RULES_DIFFER, 1)));
    }
    match (benchmark.scale, scale) {
        (own, yours) if own == yours => {}
        (Scale::Nest, Scale::Stand) => {
            (least, most) = (least / NESTS_DIFFER.1, most / NESTS_DIFFER.0);
            warnings.push(nests("benchmark-nest-to-stand"));
        }
        (Scale::Stand, Scale::Nest) => {
            (least, most) = (least * NESTS_DIFFER.0, most * NESTS_DIFFER.1);
            warnings.push(nests("benchmark-stand-to-nest"));
        }
        (own, yours) => {
            (least, most) = (0.0, f64::INFINITY);
            let message = Message::new("benchmark-scale-unlike").with("theirs", Value::Word(own.word()));
            warnings.push(message.with("yours", Value::Word(yours.word())));
        }
    }
    if benchmark.from_memory {
        warnings.push(Message::new("benchmark-from-memory"));
    }
    let fits = same_rule && benchmark.scale == scale;
    let values = match &benchmark.cover {
        Relation::AtLeast(at) | Relation::AtMost(at) => vec![at.share()],
        Relation::Between(low, high) => vec![low.share(), high.share()],
    };
    let range = |value: &f64| (value * least, (value * most).min(1.0));
    let could_be = if fits { Vec::new() } else { values.iter().map(range).collect() };
    Compared { benchmark: benchmark.clone(), fits, could_be, warnings }
}

fn nests(code: &'static str) -> Message {
    let message = Message::new(code).with("least", Value::Number(NESTS_DIFFER.0, 1));
    message.with("most", Value::Number(NESTS_DIFFER.1, 1))
}

/// What `tautline plan benchmarks --json` prints.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BenchmarksOutput {
    /// `tautline.plan-benchmarks`
    pub format: &'static str,
    /// The version of the format.
    pub version: u32,
    /// The benchmarks beside the user's way to read.
    pub benchmarks: Vec<Compared>,
}

#[cfg(test)]
mod tests {
    use super::*;

    fn benchmark(scale: Scale, rule: &str) -> Benchmark {
        Benchmark {
            key: "invented".into(),
            name: "invented".into(),
            cover: Relation::Between(Percent(150_000), Percent(250_000)),
            published: "15–25 %".into(),
            plants: "shrubs".into(),
            season: "spring".into(),
            region: "nowhere".into(),
            scale,
            rule: rule.into(),
            source: "invented".into(),
            from_memory: false,
        }
    }

    fn own() -> Protocol {
        Protocol { name: "Ours".into(), ..Protocol::default() }
    }

    #[test]
    fn only_the_same_rule_on_the_same_scale_fits() {
        let fits = compare(&benchmark(Scale::Stand, "ours"), Scale::Stand, Some(&own()));
        assert!(fits.fits && fits.could_be.is_empty() && fits.warnings.is_empty());
        let print = own().fingerprint();
        assert!(compare(&benchmark(Scale::Stand, &print[..12]), Scale::Stand, Some(&own())).fits);
        for (scale, rule) in [(Scale::Stand, ""), (Scale::Stand, "theirs"), (Scale::Nest, "ours")] {
            let found = compare(&benchmark(scale, rule), Scale::Stand, Some(&own()));
            assert!(!found.fits && found.could_be.len() == 2 && !found.warnings.is_empty(), "{found:?}");
        }
    }

    /// A nest's 15 % under the same rule: its stand had 15/4.4 = 3.4 to 15/1.2 = 12.5 % (Miller et al. 2003).
    #[test]
    fn a_nest_is_not_its_stand() {
        let found = compare(&benchmark(Scale::Nest, "ours"), Scale::Stand, Some(&own()));
        let (low, high) = found.could_be[0];
        assert!((low - 0.034_09).abs() < 1e-5 && (high - 0.125).abs() < 1e-12);
        let landscape = compare(&benchmark(Scale::Landscape, "ours"), Scale::Stand, Some(&own()));
        assert_eq!(landscape.could_be[0], (0.0, 1.0), "nothing follows for one stand");
    }
}
