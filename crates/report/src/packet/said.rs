//! What a layout is in sentences: its strata, how it was drawn, what was given up, how it is walked.

use tautline_survey::layout::{LayoutOutput, Leg, Over};
use tautline_survey::message::{Message, Value};

/// The ground and the lines of each stratum; a site without strata is named by `site`.
pub fn strata(layout: &LayoutOutput, site: &str) -> Vec<Message> {
    let one = |stratum: &tautline_survey::layout::StratumOutput| {
        Message::new("layout-stratum")
            .with("name", stratum.name.clone().unwrap_or_else(|| site.to_owned()))
            .with("hectares", Value::Number(stratum.area_m2 / 10_000.0, 2))
            .with("placed", stratum.placed)
            .with("wanted", stratum.wanted)
    };
    layout.strata.iter().map(one).collect()
}

/// Why the area was chosen, how points were drawn, what the edge rule does, what was given up, and whether there was room.
pub fn drawing(layout: &LayoutOutput) -> Vec<Message> {
    let judged = layout.judged.as_ref().map(|why| {
        Message::new("area-chosen-by-judgement").with("site", layout.site.as_str()).with("why", why.as_str())
    });
    #[expect(clippy::cast_precision_loss, reason = "lengths on the ground")]
    let apart = layout.apart_mm as f64 / 1000.0;
    let design = match layout.design.as_str() {
        "random" => "design-random",
        "systematic" => "design-systematic",
        "baseline" => "design-baseline",
        _ => "design-balanced",
    };
    let baseline = layout.design == "baseline";
    let drawn = Message::new("layout-drawn")
        .with("design", Value::Word(design))
        .with("seed", layout.seed)
        .with("apart", Value::Number(apart, 1));
    let edge = Message::new(match layout.edge.as_str() {
        _ if baseline => "layout-edge-baseline",
        "turn" => "layout-edge-turn",
        _ => "layout-edge-redraw",
    });
    let given_up = Message::new(if baseline { "layout-drawings-given-up" } else { "layout-given-up" })
        .with("edge", layout.given_up_at_the_edge)
        .with("kept", layout.given_up_kept_out)
        .with("near", layout.given_up_too_near);
    let no_room = layout.strata.iter().any(|stratum| stratum.placed < stratum.wanted);
    let no_room = no_room.then(|| Message::new("layout-no-room"));
    judged.into_iter().chain([drawn, edge, given_up]).chain(no_room).collect()
}

/// How far it is from line to line, and which legs somebody must look at on the ground.
pub fn walk(layout: &LayoutOutput) -> Vec<Message> {
    if layout.legs.is_empty() {
        return Vec::new();
    }
    let metres = layout.legs.iter().map(|leg| leg.metres).sum();
    let leg = |leg: &Leg| {
        let said = match &leg.from {
            Some(from) => Message::new("walk-leg").with("from", from.as_str()),
            None => Message::new("walk-leg-first"),
        };
        Value::Message(Box::new(said.with("to", leg.to.as_str())))
    };
    let over = |ground: Over, code: &'static str| {
        let legs: Vec<Value> = layout.legs.iter().filter(|leg| leg.over == Some(ground)).map(leg).collect();
        (!legs.is_empty()).then(|| Message::new(code).with("legs", Value::List(legs)))
    };
    [
        Some(Message::new("walk-length").with("metres", Value::Number(metres, 0))),
        over(Over::KeptOut, "walk-over-kept-out"),
        over(Over::Outside, "walk-over-outside"),
    ]
    .into_iter()
    .flatten()
    .collect()
}
