//! Where lines go: the ground, how they are drawn, the map, and the layout kept in the notebook.

use super::ask::foreseen;
use super::fields::{at, choice, date, number, text, text_of};
use super::ground::{Understood, ground, site_of};
use super::longer::a_turn;
use super::map::map;
use super::sitting::Held;
use super::steps::Step;
use super::wanted::wanted;
use crate::device::here;
use crate::parts::sheet::sheet;
use leptos::prelude::*;
use leptos::task::spawn_local;
use std::sync::Arc;
use std::time::Duration;
use tautline_ground::drawn::record;
use tautline_ground::lay::lay;
use tautline_ground::site::Site;
use tautline_report::packet::{lines_of, map_of, said};
use tautline_survey::date::Date;
use tautline_survey::layout::LayoutOutput;
use tautline_survey::message::Message;
use tautline_survey::notebook::layouts;

/// Typing has paused after so long.
const PAUSE: Duration = Duration::from_millis(300);

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
        {options(held, understood)}
        {move || shown(held, outcome.get())}
    }
}

/// The fields of a layout.
fn options(held: Held, understood: Memo<Understood>) -> impl IntoView {
    let session = held.session;
    view! {
        <form class="set-up" on:submit=move |event| event.prevent_default()>
            <h2>{session.word("where-how")}</h2>
            {text(held, "aim-site", at!(site))}
            {number(held, "many-lines", at!(number.lines))}
            {text(held, "where-length", at!(layout.length))}
            {number(held, "where-reserve", at!(layout.reserve))}
            {choice(held, "where-shape", at!(layout.shape), &[("line", "where-shape-line"), ("spokes", "where-shape-spokes"), ("baseline", "where-shape-baseline")])}
            {move || shape(held, understood)}
            {choice(held, "where-shares", at!(layout.shares), &[("area", "where-shares-area"), ("spread", "where-shares-spread")])}
            <details>
                <summary>{session.word("where-more")}</summary>
                {choice(held, "where-edge", at!(layout.edge), &[("turn", "where-edge-turn"), ("redraw", "where-edge-redraw")])}
                {text(held, "where-apart", at!(layout.apart))}
                {text(held, "where-from", at!(layout.from))}
                {number(held, "where-batch", at!(layout.batch))}
                {text(held, "where-names", at!(layout.names))}
                {text(held, "where-judged", at!(layout.judged))}
                {number(held, "where-seed", at!(layout.seed))}
            </details>
            {date(held, "where-date", at!(packet.date))}
            {number(held, "where-elevation", at!(packet.elevation))}
        </form>
    }
}

/// What is asked of single lines, of spokes, or of a baseline alone.
fn shape(held: Held, understood: Memo<Understood>) -> AnyView {
    let drawn = || {
        view! {
            {choice(held, "where-design", at!(layout.design), &[("balanced", "design-balanced"), ("random", "design-random"), ("systematic", "design-systematic")])}
            {text(held, "where-bearing", at!(layout.bearing))}
            {bearings(held, understood)}
        }
    };
    match held.with(|all| all.layout.shape.clone()).as_str() {
        "spokes" => view! {
            <p class="quiet">{held.session.word("where-spokes-what")}</p>
            {number(held, "where-spokes", at!(layout.spokes))}
            {text(held, "where-offset", at!(layout.offset))}
            {drawn()}
        }
        .into_any(),
        "baseline" => view! {
            <p class="quiet">{held.session.word("where-baseline-what")}</p>
            {text(held, "where-baseline-from", at!(layout.baseline_from))}
            {number(held, "where-baseline-bearing", at!(layout.baseline_bearing))}
            {text(held, "where-baseline-length", at!(layout.baseline_length))}
            {choice(held, "where-starts", at!(layout.starts), &[("random", "where-starts-random"), ("systematic", "where-starts-systematic")])}
            {choice(held, "where-sides", at!(layout.sides), &[("either", "where-sides-either"), ("left", "where-sides-left"), ("right", "where-sides-right")])}
        }
        .into_any(),
        _ => drawn().into_any(),
    }
}

/// The bearing of each stratum, where the ground has several.
fn bearings(held: Held, understood: Memo<Understood>) -> impl IntoView {
    let session = held.session;
    move || {
        let names: Vec<String> = understood.with(|found| {
            let strata = found.site.iter().flat_map(|site| &site.strata);
            strata.map(|(name, _)| name.clone().unwrap_or_default()).collect()
        });
        if names.len() < 2 {
            return None;
        }
        let fields = names.into_iter().map(|name| {
            let label = session.say(&Message::new("where-bearing-of").with("stratum", name.as_str()));
            let own = name.clone();
            text_of(
                held,
                label,
                "text",
                move |all| all.layout.bearings.get(&own).map_or("", String::as_str),
                move |all, text| drop(all.layout.bearings.insert(name.clone(), text)),
            )
        });
        let fields = fields.collect_view();
        Some(view! {
            <details>
                <summary>{session.word("where-bearings")}</summary>
                <p class="quiet">{session.word("where-bearings-what")}</p>
                {fields}
            </details>
        })
    }
}

/// Draws behind the screen, at each pause in typing.
fn drawing(held: Held, understood: Memo<Understood>) -> ReadSignal<Outcome> {
    let (outcome, set) = signal(Outcome::Nothing);
    let typed = Memo::new(move |_| {
        held.with(|all| {
            let spreads = all.number.spreads.clone();
            (all.site.clone(), all.number.lines.clone(), spreads, all.layout.clone(), all.packet.clone())
        })
    });
    let foreseen = foreseen(held);
    let turn = StoredValue::new(0_u32);
    Effect::new(move || {
        let understood = understood.get();
        let deviation = foreseen.with(|found| found.as_ref().map(|found| found.deviation));
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
            let wanted = held.with_untracked(|all| wanted(all, &site, understood.name, deviation));
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
    told.extend(said::walk(layout));
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
