//! Readings under unlike protocols: what differs, the coarsest common ground, and how far the rest could matter.

use crate::date::Date;
use crate::finding::Finding;
use crate::input::Input;
use crate::line::{Choice, line_result};
use crate::measure::Measure;
use crate::message::{Message, Value};
use crate::protocol::{Assumption, Counts, Protocol, Unknown, rule_word};
use tautline_engine::length::{Length, Notation, Unit};
use tautline_engine::rule::{Bridging, DeadRule, ReadingRule};

/// A rule on which protocols differ, and what each says; `None` where one is silent.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Difference {
    /// The rule, by its key in [`Protocol::meaning`].
    pub rule: String,
    /// What each protocol says, in the order they were given.
    pub says: Vec<Option<String>>,
}

/// What can't be brought to common ground: another meaning of cover, or species written once against in full.
const NEVER_COMMON: [&str; 2] = ["cover", "overlap"];
/// What changes the reading in a way that no arithmetic undoes, but less than the rules above.
const READERS_MATTER: [&str; 7] =
    ["side", "reading-window", "alive-without-leaves", "flower-stalks", "tape", "wind-limit", "shortest"];

const GAP_LIMIT: &str = "gap-limit";
const UNKNOWN_LIMIT: &str = "gap-limit-unknown-up-to";

/// Rule by rule, where protocols differ in meaning.
///
/// # Example
/// ```
/// use tautline_survey::{compare::differences, protocol::{Protocol, Side}};
/// let left = Protocol { side: Some(Side::Left), ..Protocol::default() };
/// let found = differences(&[&left, &Protocol::default()]);
/// assert_eq!((found[0].rule.as_str(), &found[0].says), ("side", &vec![Some("left".to_owned()), None]));
/// ```
pub fn differences(protocols: &[&Protocol]) -> Vec<Difference> {
    let meanings: Vec<_> = protocols.iter().map(|protocol| protocol.meaning()).collect();
    let mut rules: Vec<&String> = meanings.iter().flat_map(|meaning| meaning.keys()).collect();
    rules.sort_unstable();
    rules.dedup();
    rules
        .into_iter()
        .map(|rule| Difference {
            rule: rule.clone(),
            says: meanings
                .iter()
                .map(|meaning| {
                    meaning.get(rule).map(|value| value.as_str().map_or(value.to_string(), str::to_owned))
                })
                .collect(),
        })
        .filter(|difference| difference.says.windows(2).any(|pair| pair[0] != pair[1]))
        .collect()
}

/// The ground on which readings are set side by side.
#[derive(Clone, Debug)]
pub struct Ground {
    /// What to work every line out under.
    pub choice: Choice,
    /// What was assumed where the protocol that gave the rule is silent.
    pub assumed: Vec<Assumption>,
    /// What differs, what was done about it, and how far the rest could matter.
    pub findings: Vec<Finding>,
    /// No arithmetic brings these readings together, so no estimate mixes them.
    pub apart: bool,
}

/// Brings visits to the coarsest ground that their protocols share.
///
/// One protocol needs nothing. Several: the widest gap limit is taken with its own bridging rules; what counts is
/// cut down to what counts under all of them; dead canopy counts only if it does under all. The bridging rules of
/// the others are tried too, and the range they give is said.
///
/// Where a gap rule is unknown, visits of several years or protocols are brought to the widest rule that any of them can have
/// been read under, every case bridged that any may have bridged: closing gaps that the reader closed before changes nothing, so
/// what comes out is the same whatever the rule was.
pub fn common_ground(input: &Input, visits: &[usize], asked: &Choice) -> Ground {
    let mut prints: Vec<&str> = visits.iter().map(|&visit| input.visits[visit].protocol.as_str()).collect();
    prints.sort_unstable();
    prints.dedup();
    let silent = Protocol::default();
    let protocols: Vec<&Protocol> =
        prints.iter().map(|print| input.protocols.get(*print).unwrap_or(&silent)).collect();
    let limit = |protocol: &&Protocol| (protocol.rule().0.gap.limit, protocol.gap.unknown().is_some());
    let widest = protocols.iter().copied().max_by_key(limit).unwrap_or(&silent);
    let (rule, mut assumed) = widest.rule();
    assumed.retain(|one| asked.leaves_open(one));
    let mut ground = Ground { choice: asked.clone(), assumed, findings: Vec::new(), apart: false };
    // sheets under a rule that nobody knows were one rule's only where they were read together
    let mut years: Vec<Option<u16>> =
        visits.iter().map(|&visit| input.visits[visit].date.map(Date::year)).collect();
    years.sort_unstable();
    years.dedup();
    let several = protocols.len() > 1 || years.len() > 1;
    let unknown = |rule| several && protocols.iter().any(|protocol| protocol.is_unknown(rule));
    let never: Vec<Value> = [(Unknown::Cover, "rule-cover"), (Unknown::Dead, "rule-dead")]
        .into_iter()
        .filter(|(rule, _)| unknown(*rule))
        .map(|(_, word)| Value::Word(word))
        .collect();
    if !never.is_empty() {
        ground.apart = true;
        ground.findings.push(Finding::must_settle(
            Message::new("protocols-apart-unknown").with("rules", Value::List(never)),
        ));
        return ground;
    }
    let closed = asked.gap_limit.or(several.then_some(rule.gap.limit));
    ground.findings.extend(protocols.iter().flat_map(|protocol| unknown_rules(protocol, closed)));
    let gap_unknown = protocols.iter().any(|protocol| protocol.gap.unknown().is_some());
    if protocols.len() < 2 && !(several && gap_unknown) {
        return ground;
    }
    if protocols.len() < 2 {
        ground.choice.rule = Some(rule);
        ground.findings.push(brought_to(rule.gap.limit, widest));
        return ground;
    }
    let differing = differences(&protocols);
    let names = Value::from(protocols.iter().map(|protocol| protocol.name.clone()).collect::<Vec<_>>());
    let rules = |wanted: &dyn Fn(&str) -> bool| -> Vec<Value> {
        // a limit that is unknown differs from a known one as a limit
        let known = |rule: &&str| *rule != UNKNOWN_LIMIT || !differing.iter().any(|d| d.rule == GAP_LIMIT);
        let rules = differing.iter().map(|d| d.rule.as_str()).filter(known).filter(|rule| wanted(rule));
        rules.map(rule_word).collect()
    };
    ground.findings.push(Finding::have_a_look(
        Message::new("protocols-differ")
            .with("protocols", names)
            .with("rules", Value::List(rules(&|_| true))),
    ));
    let never = rules(&|rule| NEVER_COMMON.contains(&rule));
    if !never.is_empty() {
        ground.apart = true;
        ground
            .findings
            .push(Finding::must_settle(Message::new("protocols-apart").with("rules", Value::List(never))));
        return ground;
    }
    let shared = shared_rule(rule, &protocols);
    ground.choice.rule = Some(shared);
    if ground.choice.counts.is_none() {
        ground.choice.counts = Some(shared_counts(&protocols));
    }
    ground.findings.push(brought_to(shared.gap.limit, widest));
    let rest = || range_of_the_rest(input, visits, &ground.choice, shared, &protocols);
    if let Some((low, high)) = (!gap_unknown).then(rest).flatten() {
        ground.findings.push(Finding::have_a_look(
            Message::new("rest-could-matter")
                .with("low", Value::Share(low, 1))
                .with("high", Value::Share(high, 1)),
        ));
    }
    let by_reader = rules(&|rule| READERS_MATTER.contains(&rule));
    if !by_reader.is_empty() {
        ground.findings.push(Finding::have_a_look(
            Message::new("rest-not-computable").with("rules", Value::List(by_reader)),
        ));
    }
    ground
}

/// The rule that visits were brought to, its limit as the protocol writes it that gave it.
fn brought_to(limit: Length, widest: &Protocol) -> Finding {
    let (code, written) = widest.gap.unknown().map_or_else(
        || {
            (
                "brought-to-common-ground",
                widest.gap.limit.as_ref().filter(|written| written.length() == limit),
            )
        },
        |most| ("brought-to-widest", Some(most)),
    );
    let notation = written.map_or(Notation::decimals(Unit::Centimetre, 2), Measure::notation);
    Finding::note(Message::new(code).with("limit", Value::Length(limit, notation)))
}

/// What nobody knows any more of a protocol, each with what was made of it: all gaps up to `closed` read as canopy where one rule
/// was asked for or shared, else figures between two ends.
fn unknown_rules(protocol: &Protocol, closed: Option<Length>) -> Vec<Finding> {
    let about = |code| Message::new(code).with("protocol", protocol.name.as_str());
    let gap = protocol.gap.unknown().map(|most| {
        let length = |length| Value::Length(length, most.notation());
        let known = |limit| about("rule-unknown-gap-closed").with("limit", length(limit));
        closed.map_or_else(|| about("rule-unknown-gap"), known).with("most", length(most.length()))
    });
    let dead = protocol.is_unknown(Unknown::Dead).then(|| about("rule-unknown-dead"));
    let cover = protocol.is_unknown(Unknown::Cover).then(|| about("rule-unknown-cover"));
    gap.into_iter().chain(dead).chain(cover).map(Finding::have_a_look).collect()
}

/// The widest protocol's rule, live only unless dead canopy does the same under all.
fn shared_rule(mut rule: ReadingRule, protocols: &[&Protocol]) -> ReadingRule {
    let dead: Vec<DeadRule> = protocols.iter().map(|protocol| protocol.rule().0.dead).collect();
    if dead.windows(2).any(|pair| pair[0] != pair[1]) {
        rule.dead = DeadRule::LeftOut;
    }
    // closing what a reader may have closed already is the one thing that brings an unknown rule to the same as the others
    if protocols.iter().any(|protocol| protocol.gap.unknown().is_some()) {
        for other in protocols.iter().map(|protocol| protocol.rule().0.gap) {
            let gap = &mut rule.gap;
            for (case, may) in [
                (&mut gap.equal, other.equal),
                (&mut gap.two_plants, other.two_plants),
                (&mut gap.across_species, other.across_species),
                (&mut gap.between_species, other.between_species),
                (&mut gap.across_dead, other.across_dead),
                (&mut gap.line_end, other.line_end),
            ] {
                if may == Bridging::Bridged {
                    *case = may;
                }
            }
        }
    }
    rule.shortest = protocols.iter().map(|protocol| protocol.rule().0.shortest).max().unwrap_or(Length::ZERO);
    rule
}

/// What counts under every one of the protocols.
fn shared_counts(protocols: &[&Protocol]) -> Counts {
    let all: Vec<Counts> = protocols.iter().map(|protocol| protocol.counts_or_woody()).collect();
    let in_all = |one: &dyn Fn(&Counts) -> bool| all.iter().all(one);
    let mut shared = Counts::default();
    for form in crate::plants::GrowthForm::ALL {
        if in_all(&|counts| counts.forms.contains(&form)) {
            shared.forms.push(form);
        }
    }
    let mut codes: Vec<&String> = all.iter().flat_map(|counts| counts.also.iter()).collect();
    codes.sort_unstable();
    codes.dedup();
    shared.also =
        codes.into_iter().filter(|code| in_all(&|counts| counts.also.contains(code))).cloned().collect();
    shared.except = all.iter().flat_map(|counts| counts.except.iter().cloned()).collect();
    shared
}

/// Mean canopy cover of the lines under each protocol's own bridging rules at the common limit, least and most.
fn range_of_the_rest(
    input: &Input,
    visits: &[usize],
    choice: &Choice,
    shared: ReadingRule,
    protocols: &[&Protocol],
) -> Option<(f64, f64)> {
    let means = protocols.iter().filter_map(|protocol| {
        let mut gap = protocol.rule().0.gap;
        // a protocol whose limit is nothing says nothing about bridging
        if gap.limit == Length::ZERO {
            gap = shared.gap;
        }
        gap.limit = shared.gap.limit;
        gap.two_plants = Bridging::Bridged;
        let tried = Choice { rule: Some(ReadingRule { gap, ..shared }), ..choice.clone() };
        let covers: Vec<f64> = visits
            .iter()
            .filter_map(|&visit| line_result(input, visit, &tried).ok())
            .map(|line| line.share(line.canopy.low))
            .collect();
        #[expect(clippy::cast_precision_loss, reason = "lines are few")]
        let mean = covers.iter().sum::<f64>() / covers.len() as f64;
        (!covers.is_empty()).then_some(mean)
    });
    let (low, high) = means.fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), m| (l.min(m), h.max(m)));
    (low < high).then_some((low, high))
}
