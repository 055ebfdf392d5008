//! The plant list: each plant with its code, names, growth form, groups and key features; every change is a revision of the list.

use crate::session::Session;
use leptos::prelude::*;
use tautline_survey::draft::search::search;
use tautline_survey::message::Message;
use tautline_survey::notebook::payload::Payload;
use tautline_survey::plants::{GrowthForm, Plant, PlantList};

/// So many plants are shown at once.
const MOST: usize = 60;

/// The screen.
pub(super) fn plants() -> impl IntoView {
    let session = Session::here();
    let letters = RwSignal::new(String::new());
    let list = move || {
        let standing = session.standing();
        let plants = &standing.input.plants;
        let found: Vec<&Plant> = letters.with(|letters| {
            if letters.trim().is_empty() {
                plants.plants.iter().collect()
            } else {
                search(letters, plants, &[])
            }
        });
        let more = found.len().saturating_sub(MOST);
        let more = (more > 0).then(|| session.say(&Message::new("desk-search-more").with("more", more)));
        let items = found.into_iter().take(MOST).map(|plant| one(session, Some(plant))).collect_view();
        view! { {items}<p class="quiet">{more}</p> }
    };
    view! {
        <h1>{session.word("desk-plants")}</h1>
        <p>{session.word("desk-plants-what")}</p>
        {one(session, None)}
        <label>{session.word("desk-plants-find")}<input type="search" autocomplete="off" on:input=move |event| letters.set(event_target_value(&event))/></label>
        <div class="plants">{list}</div>
    }
}

/// A plant of the list, or one to be added.
fn one(session: Session, known: Option<&Plant>) -> impl IntoView + use<> {
    let own = known.cloned().unwrap_or_else(|| Plant::new("", GrowthForm::Shrub));
    let title = known.map_or_else(
        || session.word("desk-plant-new"),
        |plant| format!("{} · {} · {}", plant.code, plant.name, session.word(plant.form.word())),
    );
    let forms = GrowthForm::ALL.map(|form| {
        view! { <option value=form.word() selected=form == own.form>{session.word(form.word())}</option> }
    });
    let (groups, form) = (RwSignal::new(own.groups.join(", ")), RwSignal::new(own.form));
    let [code, name, common, features] =
        [&own.code, &own.name, &own.common, &own.key_features].map(|text| RwSignal::new(text.clone()));
    let field = |label: &'static str, text: RwSignal<String>| {
        let type_on = move |event| text.set(event_target_value(&event));
        view! { <label>{session.word(label)}<input type="text" autocomplete="off" prop:value=text on:input=type_on/></label> }
    };
    let choose = move |event| {
        form.set(GrowthForm::from_word(&event_target_value(&event)).unwrap_or(GrowthForm::Other));
    };
    let before = known.map(|plant| plant.code.clone());
    let (kept, gone) = (before.clone(), before.clone());
    let keep = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        let plant = Plant {
            code: code.with_untracked(|text| text.trim().to_uppercase()),
            name: name.with_untracked(|text| text.trim().to_owned()),
            common: common.with_untracked(|text| text.trim().to_owned()),
            form: form.get_untracked(),
            groups: groups.with_untracked(|text| parted(text)),
            key_features: features.with_untracked(|text| text.trim().to_owned()),
        };
        save(session, kept.as_deref(), Some(plant));
    };
    let remove = gone.map(|gone| {
        view! { <button type="button" on:click=move |_| save(session, Some(&gone), None)>{session.word("desk-plant-remove")}</button> }
    });
    view! {
        <details class="plant"><summary>{title}</summary>
            <form on:submit=keep>
                <div class="fields">
                    {field("desk-plant-code", code)}{field("desk-plant-name", name)}{field("desk-plant-common", common)}
                    <label>{session.word("desk-plant-form")}<select on:input=choose>{forms.collect_view()}</select></label>
                    {field("desk-plant-groups", groups)}{field("desk-plant-features", features)}
                </div>
                <div class="choices"><button type="submit" class="main">{session.word("app-keep")}</button>{remove}</div>
            </form>
        </details>
    }
}

/// Words with commas between them.
pub(super) fn parted(text: &str) -> Vec<String> {
    text.split(',').map(|word| word.trim().to_owned()).filter(|word| !word.is_empty()).collect()
}

/// Keeps the list with a plant changed, added, or taken out.
fn save(session: Session, before: Option<&str>, after: Option<Plant>) {
    let standing = session.standing_untracked();
    match changed(&standing.input.plants, before, after) {
        Err(code) => session.tell(session.say(&code)),
        Ok(list) => {
            let draft = standing.current.following(&Payload::Plants(list));
            session
                .write("edit", vec![draft], String::new(), move |_| session.tell(session.word("app-kept")));
        }
    }
}

/// The list with the plant of a code changed, taken out, or another added; or what keeps it from that.
fn changed(list: &PlantList, before: Option<&str>, after: Option<Plant>) -> Result<PlantList, Message> {
    let mut plants = list.plants.clone();
    let at = plants.iter().position(|plant| Some(plant.code.as_str()) == before);
    if let Some(plant) = &after {
        if plant.code.is_empty() {
            return Err(Message::new("desk-plant-no-code"));
        }
        let twice = plants
            .iter()
            .enumerate()
            .any(|(place, other)| Some(place) != at && other.code.eq_ignore_ascii_case(&plant.code));
        if twice {
            return Err(Message::new("desk-plant-twice").with("code", plant.code.as_str()));
        }
    }
    match (at, after) {
        (Some(at), Some(plant)) => plants[at] = plant,
        (Some(at), None) => {
            plants.remove(at);
        }
        (None, Some(plant)) => plants.push(plant),
        (None, None) => {}
    }
    Ok(PlantList { plants })
}
