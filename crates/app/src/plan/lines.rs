//! Where lines go: the ground, how they are drawn, the map, and the layout kept in the notebook.

use super::fields::{at, choice, date, number, number_of, text};
use super::ground::{Understood, ground, site_of};
use super::longer::a_turn;
use super::map::map;
use super::sitting::{Held, Sitting};
use super::steps::Step;
use crate::device::here;
use crate::parts::sheet::sheet;
use leptos::prelude::*;
use leptos::task::spawn_local;
use std::sync::Arc;
use std::time::Duration;
use tautline_engine::length::DecimalMark;
use tautline_engine::place::layout::{Ask, Bearing, Edge, Shape};
use tautline_engine::place::points::Design;
use tautline_ground::drawn::record;
use tautline_ground::lay::{Wanted, lay};
use tautline_ground::site::Site;
use tautline_ground::typed;
use tautline_report::packet::{lines_of, map_of, said};
use tautline_survey::boundary::Reference;
use tautline_survey::date::Date;
use tautline_survey::layout::LayoutOutput;
use tautline_survey::measure::Measure;
use tautline_survey::message::Message;
use tautline_survey::notebook::layouts;

/// Typing has paused after so long.
const PAUSE: Duration = Duration::from_millis(300);

/// More lines than anybody reads at one site, and a tape longer than any, in millimetres.
const MOST_LINES: usize = 1000;
const LONGEST: i64 = 10_000_000;

/// A layout on its site.
struct Drawn {
    site: Site,
    layout: LayoutOutput,
}

/// What the drawing came to.
#[derive(Clone)]
enum Outcome {
    Nothing,
    UnderWay,
    Wrong(Message),
    Drawn(Arc<Drawn>),
}

/// The step.
pub(super) fn lines(held: Held) -> impl IntoView {
    let session = held.session;
    let ground_typed = Memo::new(move |_| held.with(|all| all.ground.clone()));
    let understood = Memo::new(move |_| ground_typed.with(site_of));
    let outcome = drawing(held, understood);
    let remarks = move || {
        let understood = understood.get();
        let remarks =
            understood.remarks.iter().map(|one| view! { <li>{session.say(one)}</li> }).collect_view();
        let wrong = understood.wrong.map(|wrong| view! { <p class="wrong">{session.say(&wrong)}</p> });
        view! { {wrong}<ul class="plain">{remarks}</ul> }
    };
    view! {
        <p>{session.word("where-what")}</p>
        {ground(held)}
        <div role="status">{remarks}</div>
        {options(held)}
        {move || shown(held, outcome.get())}
    }
}

/// The fields of a layout.
fn options(held: Held) -> impl IntoView {
    let session = held.session;
    view! {
        <form class="set-up" on:submit=move |event| event.prevent_default()>
            <h2>{session.word("where-how")}</h2>
            {text(held, "aim-site", at!(site))}
            {number(held, "many-lines", at!(number.lines))}
            {text(held, "where-length", at!(layout.length))}
            {number(held, "where-reserve", at!(layout.reserve))}
            {choice(held, "where-design", at!(layout.design), &[("balanced", "design-balanced"), ("random", "design-random"), ("systematic", "design-systematic")])}
            {text(held, "where-bearing", at!(layout.bearing))}
            <details>
                <summary>{session.word("where-more")}</summary>
                {choice(held, "where-edge", at!(layout.edge), &[("turn", "where-edge-turn"), ("redraw", "where-edge-redraw")])}
                {text(held, "where-apart", at!(layout.apart))}
                {number(held, "where-spokes", at!(layout.spokes))}
                {text(held, "where-from", at!(layout.from))}
                {text(held, "where-names", at!(layout.names))}
                {text(held, "where-judged", at!(layout.judged))}
                {number(held, "where-seed", at!(layout.seed))}
            </details>
            {date(held, "where-date", at!(packet.date))}
            {number(held, "where-elevation", at!(packet.elevation))}
        </form>
    }
}

/// Draws behind the screen, at each pause in typing.
fn drawing(held: Held, understood: Memo<Understood>) -> ReadSignal<Outcome> {
    let (outcome, set) = signal(Outcome::Nothing);
    let typed = Memo::new(move |_| {
        held.with(|all| (all.site.clone(), all.number.lines.clone(), all.layout.clone(), all.packet.clone()))
    });
    let turn = StoredValue::new(0_u32);
    Effect::new(move || {
        let understood = understood.get();
        typed.track();
        turn.update_value(|turn| *turn = turn.wrapping_add(1));
        let mine = turn.get_value();
        let Some(site) = understood.site else {
            set.set(Outcome::Nothing);
            return;
        };
        set.set(Outcome::UnderWay);
        let work = async move {
            // the screen says that it draws before it does
            a_turn().await;
            if turn.try_get_value() != Some(mine) {
                return;
            }
            let wanted = held.with_untracked(|all| wanted(all, understood.name));
            let drawn = wanted.and_then(|wanted| lay(&site, &wanted).map_err(|error| error.message()));
            set.set(match drawn {
                Ok(layout) => Outcome::Drawn(Arc::new(Drawn { site, layout })),
                Err(wrong) => Outcome::Wrong(wrong),
            });
        };
        set_timeout(move || spawn_local(work), PAUSE);
    });
    outcome
}

/// What is wanted, as typed.
fn wanted(all: &Sitting, name: Option<String>) -> Result<Wanted, Message> {
    let typed = &all.layout;
    let wrong = |found: &str, what: &'static str| {
        Message::new("where-not-read")
            .with("found", found)
            .with("what", tautline_survey::message::Value::Word(what))
    };
    let whole = |text: &str, what: &'static str| -> Result<Option<usize>, Message> {
        let text = text.trim();
        let read = || text.parse().ok().filter(|&count| count <= MOST_LINES).ok_or_else(|| wrong(text, what));
        if text.is_empty() { Ok(None) } else { read().map(Some) }
    };
    let millimetres = |text: &str, what: &'static str| -> Result<Option<i64>, Message> {
        if text.trim().is_empty() {
            return Ok(None);
        }
        let length = Measure::read(text, None, DecimalMark::Point).map_err(|_| wrong(text, what))?;
        let millimetres = (length.length().nanometres() + 500_000) / 1_000_000;
        if (0..=LONGEST).contains(&millimetres) { Ok(Some(millimetres)) } else { Err(wrong(text, what)) }
    };
    let lines = whole(&all.number.lines, "many-lines")?.filter(|&lines| lines > 0);
    let lines = lines.ok_or_else(|| Message::new("where-no-number"))?;
    let length = millimetres(&typed.length, "where-length")?.filter(|&length| length > 0);
    let length = length.ok_or_else(|| wrong(&typed.length, "where-length"))?;
    let shape = match whole(&typed.spokes, "where-spokes")? {
        Some(spokes) if spokes > 0 => {
            let lines = u16::try_from(spokes).ok().filter(|&spokes| spokes <= 36);
            Shape::Spokes { lines: lines.ok_or_else(|| wrong(&typed.spokes, "where-spokes"))?, offset: 5_000 }
        }
        _ => Shape::Line,
    };
    let from = typed.from.trim();
    let from = if from.is_empty() {
        None
    } else {
        Some(typed::read(from, Reference::default()).ok_or_else(|| wrong(from, "where-from"))?)
    };
    let site = all.site.trim();
    Ok(Wanted {
        name: if site.is_empty() { name.unwrap_or_default() } else { site.to_owned() },
        names: typed.names.trim().to_owned(),
        ask: Ask {
            design: match typed.design.as_str() {
                "random" => Design::Random,
                "systematic" => Design::Systematic,
                _ => Design::Balanced,
            },
            wanted: lines,
            reserve: whole(&typed.reserve, "where-reserve")?.unwrap_or(lines.div_ceil(2)),
            shape,
            length,
            bearing: bearing(&typed.bearing)?,
            edge: if typed.edge == "redraw" { Edge::Redraw } else { Edge::Turn },
            apart: millimetres(&typed.apart, "where-apart")?.unwrap_or(length),
        },
        line_length: typed.length.trim().to_owned(),
        seed: typed.seed.trim().parse().map_err(|_| wrong(&typed.seed, "where-seed"))?,
        compass: Date::read(&all.packet.date)
            .map(|date| (date, number_of(&all.packet.elevation).unwrap_or(0.0))),
        batch: None,
        from,
        baseline: None,
        take_in: true,
        judged: Some(typed.judged.trim().to_owned()).filter(|why| !why.is_empty()),
    })
}

/// Any, degrees from true north, or across.
fn bearing(text: &str) -> Result<Bearing, Message> {
    Bearing::read(text).ok_or_else(|| Message::new("option-bearing").with("found", text))
}

/// How wide a map is drawn: its letters are read on a phone as on a desk.
fn wide() -> u16 {
    let window = web_sys::window().and_then(|window| window.inner_width().ok());
    if window.and_then(|wide| wide.as_f64()).is_some_and(|wide| wide < 600.0) { 400 } else { 720 }
}

/// The drawing, and what can be done with it.
fn shown(held: Held, outcome: Outcome) -> AnyView {
    let session = held.session;
    match outcome {
        Outcome::Nothing => view! { <p class="quiet">{session.word("where-nothing")}</p> }.into_any(),
        Outcome::UnderWay => {
            view! { <p class="quiet under-way" role="status">{session.word("where-under-way")}</p> }
                .into_any()
        }
        Outcome::Wrong(wrong) => view! { <p class="wrong" role="alert">{session.say(&wrong)}</p> }.into_any(),
        Outcome::Drawn(drawn) => result(held, &drawn).into_any(),
    }
}

fn result(held: Held, drawn: &Arc<Drawn>) -> impl IntoView + use<> {
    let session = held.session;
    let words = session.words();
    let Drawn { site, layout } = &**drawn;
    let svg = map_of(layout, &tautline_ground::map::map(site, layout), wide(), &words);
    let mut told = said::strata(layout, &words.word("the-site"));
    told.extend(said::drawing(layout));
    let told = told.iter().map(|message| view! { <li>{words.say(message)}</li> }).collect_view();
    let table = format!("<article>{}</article>", lines_of(layout, &words));
    let again = move |_| {
        held.update(|all| {
            let seed = all.layout.seed.trim().parse::<u64>().unwrap_or(0);
            all.layout.seed = seed.wrapping_add(1).to_string();
        });
    };
    let kept = Arc::clone(drawn);
    let wrong = RwSignal::new(None::<String>);
    let keep = move |_| {
        if kept.layout.site.is_empty() {
            wrong.set(Some(session.word("aim-no-site")));
            return;
        }
        let (names, why) =
            held.with_untracked(|all| (all.layout.names.trim().to_owned(), all.number.why.clone()));
        let record = record(&kept.site, &kept.layout, &names, &why, Date::read(&here::today()));
        match layouts::keep(&session.standing_untracked().current, &record) {
            Err(refused) => wrong.set(Some(session.say(&refused))),
            Ok(drafts) => {
                wrong.set(None);
                held.update(|all| {
                    all.site.clone_from(&record.site);
                    all.packet.layout = super::packet::key(&record);
                });
                let go_on = move || {
                    session.tell(session.word("where-kept"));
                    crate::route::go(&Step::Packet.route());
                };
                if drafts.is_empty() {
                    go_on();
                } else {
                    session.write("plan", drafts, why, move |_| go_on());
                }
            }
        }
    };
    view! {
        <section class="drawn">
            <h2>{session.word("where-map")}</h2>
            {map(svg)}
            <ul class="plain">{told}</ul>
            <p class="wrong" role="alert">{move || wrong.get()}</p>
            <div class="choices">
                <button type="button" on:click=again>{session.word("where-draw-anew")}</button>
                <button type="button" class="main" on:click=keep>{session.word("where-keep")}</button>
            </div>
            {sheet(table, super::packet::within())}
        </section>
    }
}
