//! A map that can be come near to: by two buttons, the wheel, a finger or the keyboard. Only the view moves; the map stays.

use crate::session::Session;
use leptos::html;
use leptos::prelude::*;
use wasm_bindgen::JsCast as _;
use web_sys::Element;

/// Part of the picture that is seen: left, top, width, height.
type View = [f64; 4];

/// A step nearer, and how near one can come.
const STEP: f64 = 1.4;
const NEAREST: f64 = 24.0;

/// The map of some SVG.
pub(super) fn map(svg: String) -> impl IntoView {
    let session = Session::here();
    let place = NodeRef::<html::Div>::new();
    let whole = view_box(&svg);
    let view = StoredValue::new(whole);
    let show = move |new: View| {
        let new = within(new, whole);
        view.set_value(new);
        if let Some(svg) = place.get_untracked().and_then(|place| place.query_selector("svg").ok().flatten())
        {
            let text: Vec<String> = new.iter().map(|number| format!("{number:.2}")).collect();
            // a plain attribute is always taken
            let _ = svg.set_attribute("viewBox", &text.join(" "));
        }
    };
    let nearer = move |by: f64, about: Option<(f64, f64)>| {
        let [x, y, wide, high] = view.get_value();
        let (across, down) = about.unwrap_or((0.5, 0.5));
        show([
            x + wide * across * (1.0 - 1.0 / by),
            y + high * down * (1.0 - 1.0 / by),
            wide / by,
            high / by,
        ]);
    };
    let aside = move |across: f64, down: f64| {
        let [x, y, wide, high] = view.get_value();
        show([x + wide * across, y + high * down, wide, high]);
    };
    let wheel = move |event: web_sys::WheelEvent| {
        // a page that is scrolled stays a page: the wheel comes nearer with the control key, as pinching does
        if !event.ctrl_key() {
            return;
        }
        event.prevent_default();
        let about = place.get_untracked().map(|place| share_of(&place, event.client_x(), event.client_y()));
        nearer(if event.delta_y() < 0.0 { STEP } else { 1.0 / STEP }, about);
    };
    let from = StoredValue::new(None::<(i32, i32)>);
    let down = move |event: web_sys::PointerEvent| {
        // the whole map is scrolled past; a part of it is moved
        if view.get_value()[2] < whole[2] {
            from.set_value(Some((event.client_x(), event.client_y())));
        }
    };
    let moved = move |event: web_sys::PointerEvent| {
        let (Some((x, y)), Some(place)) = (from.get_value(), place.get_untracked()) else { return };
        let frame = place.get_bounding_client_rect();
        from.set_value(Some((event.client_x(), event.client_y())));
        aside(
            f64::from(x - event.client_x()) / frame.width().max(1.0),
            f64::from(y - event.client_y()) / frame.height().max(1.0),
        );
    };
    let up = move |_| from.set_value(None);
    let keys = move |event: web_sys::KeyboardEvent| {
        match event.key().as_str() {
            "+" | "=" => nearer(STEP, None),
            "-" => nearer(1.0 / STEP, None),
            "0" => show(whole),
            "ArrowLeft" => aside(-0.15, 0.0),
            "ArrowRight" => aside(0.15, 0.0),
            "ArrowUp" => aside(0.0, -0.15),
            "ArrowDown" => aside(0.0, 0.15),
            _ => return,
        }
        event.prevent_default();
    };
    view! {
        <div class="map">
            <div class="near" node_ref=place tabindex="0" role="group" aria-label=session.word("where-map-keys") inner_html=svg
                on:wheel=wheel on:pointerdown=down on:pointermove=moved on:pointerup=up on:pointerleave=up on:keydown=keys></div>
            <div class="choices">
                <button type="button" on:click=move |_| nearer(STEP, None)>{session.word("where-nearer")}</button>
                <button type="button" on:click=move |_| nearer(1.0 / STEP, None)>{session.word("where-farther")}</button>
                <button type="button" on:click=move |_| show(whole)>{session.word("where-whole")}</button>
            </div>
        </div>
    }
}

/// The view that a picture comes with.
fn view_box(svg: &str) -> View {
    let text = svg.split("viewBox=\"").nth(1).and_then(|rest| rest.split('"').next()).unwrap_or_default();
    let numbers: Vec<f64> = text.split_whitespace().filter_map(|number| number.parse().ok()).collect();
    numbers.try_into().unwrap_or([0.0, 0.0, 720.0, 720.0])
}

/// No nearer than can be seen, no farther than the whole, and never off it.
fn within([x, y, wide, high]: View, [left, top, widest, highest]: View) -> View {
    let near = (widest / wide.max(f64::MIN_POSITIVE)).clamp(1.0, NEAREST);
    let (new_wide, new_high) = (widest / near, highest / near);
    // what was in the middle stays there
    let (x, y) = (x + (wide - new_wide) / 2.0, y + (high - new_high) / 2.0);
    [x.clamp(left, left + widest - new_wide), y.clamp(top, top + highest - new_high), new_wide, new_high]
}

fn share_of(place: &Element, x: i32, y: i32) -> (f64, f64) {
    let frame = place.unchecked_ref::<Element>().get_bounding_client_rect();
    (
        (f64::from(x) - frame.left()) / frame.width().max(1.0),
        (f64::from(y) - frame.top()) / frame.height().max(1.0),
    )
}
