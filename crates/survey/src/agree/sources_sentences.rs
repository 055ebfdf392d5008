//! Where the doubt comes from, in sentences.

use super::buy::{Bought, Buy};
use super::sources::{Doubt, Part, Told, largest};
use crate::message::{Message, Value};

fn points(share: f64) -> Message {
    Message::new("points").with("figure", Value::Number(share * 100.0, 1))
}

/// The plain sentence first, then what can't be told, then what would help.
pub fn doubt_sentences(doubt: &Doubt) -> Vec<Message> {
    let mut said = Vec::new();
    if let Some(most) = largest(doubt)
        && let Told::Spread { sd, share } = most.told
    {
        said.push(
            Message::new("doubt-most")
                .with("part", Value::Word(most.part.code()))
                .with("sd", points(sd))
                .with("share", Value::Share(share, 0)),
        );
    }
    let (taken, all) = doubt.sites;
    if taken < all {
        said.push(Message::new("doubt-drawn").with("taken", taken).with("all", all));
    }
    for one in &doubt.parts {
        let part = Value::Word(one.part.code());
        match &one.told {
            Told::Spread { .. } => {}
            Told::OneGroup => said.push(Message::new("doubt-one-group").with("part", part)),
            Told::Mixed(with) if *with == [Part::Left] => {
                said.push(Message::new("doubt-mixed-left").with("part", part));
            }
            Told::Mixed(with) => {
                let with = with.iter().map(|part| Value::Word(part.code())).collect();
                said.push(Message::new("doubt-mixed").with("part", part).with("with", Value::List(with)));
            }
        }
    }
    if let Some(year) = doubt.year {
        said.push(Message::new("doubt-se").with("year", year.to_string()).with("se", points(doubt.se)));
    }
    said.extend(best(doubt));
    said.extend(
        doubt
            .buys
            .iter()
            .any(|buy| matches!(buy.what, Bought::Day { .. }))
            .then(|| Message::new("doubt-day-what-for")),
    );
    said.push(Message::new("doubt-source"));
    said
}

/// What to buy next, where anything helps.
fn best(doubt: &Doubt) -> Option<Message> {
    let best = doubt.buys.first()?;
    let code = if best.minutes.is_some() { "doubt-buy-by-hour" } else { "doubt-buy" };
    let helps = doubt.se - best.se > 1e-9;
    Some(if helps {
        Message::new(code).with("what", bought(best))
    } else {
        Message::new("doubt-buy-nothing")
    })
}

/// What is bought, in words.
pub fn bought(buy: &Buy) -> Message {
    let message = Message::new(buy.what.code());
    match buy.what {
        Bought::Line => message,
        Bought::Site { lines } | Bought::Day { lines } => message.with("lines", lines),
    }
}
