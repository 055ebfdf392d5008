//! The screens.

mod chain;
mod history;
mod lists;
mod notebook;
mod own;
mod permission;
mod photos;
mod search;
mod settle;
mod site;
mod sites;
mod take_in;
mod what_if;

use crate::later;
use crate::route::Route;
use leptos::prelude::*;

pub(crate) use take_in::demo as take_in_demo;

/// The screen that a route names.
pub(crate) fn screen(route: &Route) -> AnyView {
    let route = route.clone();
    match route {
        Route::Sites => sites::sites().into_any(),
        Route::More => crate::shell::more().into_any(),
        Route::Site(_) => later::entered(later::site(route)),
        Route::Read | Route::Line(_) | Route::Photo(_) => later::entered(later::reading(route)),
        Route::TakeIn => later::entered(later::take(route)),
        Route::Follow(_) | Route::Agree(_) => later::entered(later::follow(route)),
        Route::Plan(_) => later::entered(later::plan(route)),
        Route::Handbook(_) => later::entered(later::handbook(route)),
        Route::Settle
        | Route::Notebook
        | Route::History(_)
        | Route::Search(_)
        | Route::Lists(_)
        | Route::Figures => later::entered(later::desk(route)),
        Route::Practice(_) => later::entered(later::practice(route)),
    }
}

/// One site.
pub(crate) fn site_room(route: &Route) -> AnyView {
    match route {
        Route::Site(site) => site::site(site.clone()).into_any(),
        _ => ().into_any(),
    }
}

/// Settling, the notebook itself, its history, what is found in it, its protocols and plants.
pub(crate) fn desk_room(route: &Route) -> AnyView {
    match route {
        Route::Settle => settle::settle().into_any(),
        Route::History(record) => history::history(*record),
        Route::Search(words) => search::search(words.clone()).into_any(),
        Route::Lists(which) => lists::lists(which),
        Route::Figures => crate::figures::screen(),
        _ => notebook::notebook().into_any(),
    }
}

/// Files and sheets taken in.
pub(crate) fn take_in_room(_: &Route) -> AnyView {
    take_in::take_in().into_any()
}

/// Practice.
pub(crate) fn practice_room(route: &Route) -> AnyView {
    match route {
        Route::Practice(rest) => crate::practice::screen(rest),
        _ => ().into_any(),
    }
}

/// A goal, lines, a layout, a packet.
pub(crate) fn plan_room(route: &Route) -> AnyView {
    match route {
        Route::Plan(rest) => crate::plan::screen(rest),
        _ => ().into_any(),
    }
}

/// The method handbook.
pub(crate) fn handbook_room(route: &Route) -> AnyView {
    match route {
        Route::Handbook(rest) => crate::handbook::screen(rest),
        _ => ().into_any(),
    }
}
