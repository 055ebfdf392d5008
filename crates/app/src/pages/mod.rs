//! The screens.

mod notebook;
mod permission;
mod photos;
mod settle;
mod site;
mod sites;
mod take_in;

use crate::route::Route;
use leptos::prelude::*;

/// The screen that a route names.
pub(crate) fn screen(route: &Route) -> AnyView {
    match route {
        Route::Sites => sites::sites().into_any(),
        Route::Site(site) => site::site(site.clone()).into_any(),
        Route::Read => crate::read::begin().into_any(),
        Route::Line(draft) => crate::read::line(draft.clone()).into_any(),
        Route::TakeIn => take_in::take_in().into_any(),
        Route::Settle => settle::settle().into_any(),
        Route::Notebook => notebook::notebook().into_any(),
    }
}
