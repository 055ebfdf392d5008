//! The ground: boundaries from files, corners typed or set down on a plane, and what to keep out of.

use super::fields::{Place, at, text};
use super::handed::handed_in;
use super::outline::{corners_of, outline};
use super::plane::plane;
use super::sitting::{Ground, Held, Kept, Outline};
use leptos::prelude::*;
use tautline_exchange::boundary::{Asked, Purpose, read};
use tautline_ground::site::Site;
use tautline_survey::boundary::{Boundary, Datum, Part, Reference, Role, Shape};
use tautline_survey::message::Message;

/// What was understood of the ground.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Understood {
    pub(super) site: Option<Site>,
    /// The site's name, where a file says it.
    pub(super) name: Option<String>,
    /// What was mended, and how far off it may be.
    pub(super) remarks: Vec<Message>,
    /// What is in the way.
    pub(super) wrong: Option<Message>,
}

/// The site of everything that was handed in.
pub(super) fn site_of(ground: &Ground) -> Understood {
    let mut understood = Understood::default();
    if ground.files.is_empty() && ground.outlines.is_empty() {
        return understood;
    }
    match boundary_of(ground, &mut understood.remarks) {
        Err(wrong) => understood.wrong = Some(wrong),
        Ok(boundary) => {
            understood.name.clone_from(&boundary.site);
            match Site::of(&boundary) {
                Err(error) => understood.wrong = Some(error.message()),
                Ok(site) => {
                    let file = ground.files.first().map_or("", |handed| handed.file.name.as_str());
                    understood.remarks.extend(site.repaired.iter().map(|repair| repair.message(file)));
                    understood.remarks.extend((site.error > 0).then(|| {
                        Message::new("boundary-position-error").with("metres", u64::from(site.error))
                    }));
                    understood.site = Some(site);
                }
            }
        }
    }
    understood
}

fn boundary_of(ground: &Ground, remarks: &mut Vec<Message>) -> Result<Boundary, Message> {
    let mut boundary = Boundary::default();
    for handed in &ground.files {
        let name = handed.file.name.as_str();
        let stratum = ground.stratum_from.trim();
        let asked = Asked {
            stratum: if stratum.is_empty() { "stratum" } else { stratum }.to_owned(),
            reference: handed.datum.as_deref().and_then(Reference::read),
            purpose: purpose_of(&handed.purpose, &handed.buffer, &handed.crossed),
        };
        let beside: Vec<_> = handed.beside.iter().map(Kept::source).collect();
        let found = read(&handed.file.source(), &beside, &asked).map_err(|why| refused(name, why))?;
        remarks.extend(
            found
                .boundary
                .left_out
                .iter()
                .map(|&part| Message::new("boundary-left-out").with("file", name).with("part", part)),
        );
        boundary.join(found.boundary);
    }
    let first = boundary.parts.len() + 1;
    for (number, outline) in (first..).zip(&ground.outlines) {
        let mut corners = corners_of(outline)?;
        if corners.len() < if outline.purpose == "ground" { 3 } else { 1 } {
            continue; // still being set down
        }
        let role = match purpose_of(&outline.purpose, &outline.buffer, &outline.crossed) {
            Purpose::KeepOut { buffer, crossed } => Role::KeepOut { buffer, crossed },
            _ => Role::Stratum(Some(outline.stratum.trim().to_owned()).filter(|name| !name.is_empty())),
        };
        let shape = if corners.len() < 3 {
            Shape::Way(corners)
        } else {
            // nobody sets the first corner down again at the end
            corners.push(corners[0]);
            Shape::Areas(vec![vec![corners]])
        };
        let reference = Reference { datum: datum_of(outline), utm: None };
        boundary.parts.push(Part { number, reference, role, shape });
    }
    if boundary.parts.is_empty() { Err(Message::new("where-too-few-corners")) } else { Ok(boundary) }
}

/// The datum of an outline's corners.
pub(super) fn datum_of(outline: &Outline) -> Datum {
    Datum::read(&outline.datum).unwrap_or_default()
}

/// What a file or an outline is for, as typed.
pub(super) fn purpose_of(purpose: &str, buffer: &str, crossed: &str) -> Purpose {
    match purpose {
        "keep-out" => {
            let metres = super::fields::number_of(buffer).unwrap_or(0.0).min(10_000.0);
            #[expect(clippy::cast_possible_truncation, reason = "10 km at most")]
            let buffer = (metres * 1000.0).round() as i64;
            let crossed = match crossed {
                "crossed" => Some(true),
                "not crossed" => Some(false),
                _ => None,
            };
            Purpose::KeepOut { buffer, crossed }
        }
        "there" => Purpose::There,
        _ => Purpose::Ground,
    }
}

/// Whether the walk crosses what lines keep out of.
pub(super) const CROSSED: [(&str, &str); 3] =
    [("", "where-crossed-by-shape"), ("crossed", "where-crossed-yes"), ("not crossed", "where-crossed-no")];

pub(super) fn refused(file: &str, why: Message) -> Message {
    let why = match why.code {
        "boundary-no-reference" | "boundary-typed-no-datum" => Message::new("where-no-datum"),
        _ => why,
    };
    Message::new("boundary-refused").with("file", file).with("why", why)
}

/// The fields of the ground.
pub(super) fn ground(held: Held) -> impl IntoView {
    let session = held.session;
    let outlines = move || {
        let outlines = held.with(|all| all.ground.outlines.len());
        (0..outlines).map(|at| outline(held, at)).collect_view()
    };
    let add = |purpose: &'static str, code: &'static str| {
        let add = move |_| {
            held.update(|all| {
                let outline = Outline { purpose: purpose.to_owned(), ..Outline::default() };
                all.ground.outlines.push(outline);
            });
        };
        view! { <button type="button" on:click=add>{session.word(code)}</button> }
    };
    view! {
        <section class="ground">
            <h2>{session.word("where-ground")}</h2>
            <p class="quiet">{session.word("where-ground-what")}</p>
            {handed_in(held)}
            <details>
                <summary>{session.word("where-by-hand")}</summary>
                <p class="quiet">{session.word("where-by-hand-what")}</p>
                <div class="choices">{add("ground", "where-add-ground")}{add("keep-out", "where-add-keep-out")}</div>
                {outlines}
                {plane(held)}
            </details>
            <details><summary>{session.word("where-more-ground")}</summary>{text(held, "where-stratum-from", at!(ground.stratum_from))}</details>
        </section>
    }
}

/// What the fields of a plane write into.
pub(super) const MIDDLE: Place = at!(ground.middle);
pub(super) const WIDE: Place = at!(ground.wide);
