//! Corners set down by touch on a plane about a place; the same corners can be typed.

use super::fields::{number, number_of, text};
use super::ground::{MIDDLE, WIDE, datum_of};
use super::outline::corners_of;
use super::sitting::Held;
use leptos::prelude::*;
use std::fmt::Write as _;
use tautline_engine::place::plane::Point;
use tautline_ground::datum::{from_wgs84, pair_on_wgs84};
use tautline_ground::local::Local;
use tautline_ground::position::Position;
use tautline_ground::typed;
use tautline_survey::boundary::{Pair, Reference};
use tautline_survey::message::Message;
use wasm_bindgen::JsCast as _;

/// The plane's side in units of its picture.
const SIDE: f64 = 400.0;

/// The plane of a sitting, where its middle is known.
#[derive(Clone, Copy)]
struct Plane {
    local: Local,
    metres: f64,
}

impl Plane {
    fn of(held: Held) -> Option<Self> {
        let (middle, wide) = held.with(|all| (all.ground.middle.clone(), all.ground.wide.clone()));
        let middle = typed::read(&middle, Reference::default())?;
        let metres = number_of(&wide).filter(|wide| (10.0..=100_000.0).contains(wide)).unwrap_or(1000.0);
        Some(Self { local: Local::about(middle), metres })
    }

    /// The position of a place of the picture.
    fn back(self, x: f64, y: f64) -> Position {
        let scale = self.metres * 1000.0 / SIDE;
        #[expect(clippy::cast_possible_truncation, reason = "100 km at most")]
        let millimetres = |share: f64| (share * scale).round() as i64;
        self.local.back(Point { x: millimetres(x - SIDE / 2.0), y: millimetres(SIDE / 2.0 - y) })
    }

    /// The place of the picture of a position.
    fn onto(self, position: Position) -> (f64, f64) {
        let point = self.local.onto(position);
        #[expect(clippy::cast_precision_loss, reason = "a plane is far smaller than 2^53 mm")]
        let (x, y) = (point.x as f64, point.y as f64);
        let scale = SIDE / (self.metres * 1000.0);
        (SIDE / 2.0 + x * scale, SIDE / 2.0 - y * scale)
    }
}

/// The plane, and which outline a touch adds a corner to: the last one.
pub(super) fn plane(held: Held) -> impl IntoView {
    let session = held.session;
    let touched = move |event: web_sys::MouseEvent| {
        let Some(plane) = untrack(move || Plane::of(held)) else { return };
        let picture = event.current_target().and_then(|target| target.dyn_into::<web_sys::Element>().ok());
        let Some(frame) = picture.map(|picture| picture.get_bounding_client_rect()) else { return };
        let along = |at: i32, from: f64, wide: f64| (f64::from(at) - from) / wide.max(1.0) * SIDE;
        let (x, y) = (
            along(event.client_x(), frame.left(), frame.width()),
            along(event.client_y(), frame.top(), frame.height()),
        );
        let at = plane.back(x, y);
        held.update(|all| {
            if let Some(outline) = all.ground.outlines.last_mut() {
                // where its datum doesn't hold, no corner is set down on it
                let Some([longitude, latitude]) = from_wgs84(datum_of(outline), at) else { return };
                if !outline.corners.is_empty() && !outline.corners.ends_with('\n') {
                    outline.corners.push('\n');
                }
                // writing to a String can't fail
                let _ = writeln!(outline.corners, "{latitude:.6}, {longitude:.6}");
            }
        });
    };
    let back = move |_| {
        held.update(|all| {
            if let Some(outline) = all.ground.outlines.last_mut() {
                let corners = outline.corners.trim_end();
                outline.corners = corners.rfind('\n').map_or(String::new(), |end| corners[..=end].to_owned());
            }
        });
    };
    let picture = move || {
        let plane = Plane::of(held)?;
        if held.with(|all| all.ground.outlines.is_empty()) {
            return None;
        }
        let shapes = held.with(|all| all.ground.outlines.clone()).into_iter().map(|outline| {
            let corners = corners_of(&outline).unwrap_or_default();
            let reference = Reference { datum: datum_of(&outline), utm: None };
            let place = |&corner: &Pair| {
                let ([longitude, latitude], _) = pair_on_wgs84(reference, corner)?;
                Some(plane.onto(Position::new(latitude, longitude)?))
            };
            let places: Vec<(f64, f64)> = corners.iter().filter_map(place).collect();
            let points: Vec<String> = places.iter().map(|(x, y)| format!("{x:.1},{y:.1}")).collect();
            let class = if outline.purpose == "ground" { "ground" } else { "keep-out" };
            let dots = places
                .into_iter()
                .map(|(x, y)| view! { <circle cx=format!("{x:.1}") cy=format!("{y:.1}") r="4"></circle> });
            let dots = dots.collect_view();
            view! { <g class=class><polygon points=points.join(" ")></polygon>{dots}</g> }
        });
        let grid: String =
            (1..10).map(|step| format!("M{0} 0V400M0 {0}H400", step * 40)).collect::<Vec<_>>().concat();
        let said = session.say(
            &Message::new("where-plane-said")
                .with("metres", tautline_survey::message::Value::Number(plane.metres, 0)),
        );
        Some(view! {
            <figure class="plane">
                <svg viewBox="0 0 400 400" role="img" aria-label=said.clone() on:click=touched>
                    <rect width="400" height="400"></rect><path d=grid></path><path class="middle" d="M200 190v20M190 200h20"></path>
                    {shapes.collect_view()}
                </svg>
                <figcaption>{said}</figcaption>
                <button type="button" on:click=back>{session.word("where-last-corner-away")}</button>
            </figure>
        })
    };
    view! {
        {text(held, "where-middle", MIDDLE)}
        {number(held, "where-wide", WIDE)}
        {picture}
    }
}
