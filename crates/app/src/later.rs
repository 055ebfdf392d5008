//! The rooms of the app, each fetched when it is first entered. The web build cuts the module where this file says, and the
//! worker brings all rooms once the app is open, so that every one is there without a network.
//!
//! | room | what is in it |
//! | --- | --- |
//! | `work` | what stands in the notebook, looked through by the checks, and what every site comes to |
//! | `site` | one site: its report, what can be asked of it, photos, permission |
//! | `reading` | reading lines |
//! | `take` | files and sheets taken in |
//! | `desk` | settling, the notebook itself, its history, what is found in it, its protocols and plants |
//! | `follow` | a site over its years, readers side by side |
//! | `handbook` | the method handbook |
//! | `plan` | a goal, a number of lines, a layout, a packet |
//! | `practice` | lines to practise on, drills, progress, paper and marking for a class |
#![expect(
    clippy::unnecessary_wraps,
    reason = "what a room says goes the same way as that it could not be fetched"
)]

use crate::pages;
use crate::route::Route;
use crate::session::Session;
use crate::standing::{Asked, Stood};
use leptos::prelude::*;
use leptos::reactive::computed::ScopedFuture;
use leptos::task::spawn_local;
use leptos::wasm_split::{SplitLoaderError, wasm_split};
use std::pin::Pin;

/// A room that could not be fetched: it isn't on this device, and there is no network.
pub(crate) type NotHere = SplitLoaderError;

/// A room with screens.
macro_rules! room {
    ($room:ident, $enter:path) => {
        /// Its screens.
        #[wasm_split($room, wasm_split_path = leptos::wasm_split, fallible)]
        pub(crate) fn $room(route: Route) -> Result<AnyView, NotHere> {
            Ok($enter(&route))
        }
    };
}

room!(site, pages::site_room);
room!(desk, pages::desk_room);
room!(take, pages::take_in_room);
room!(reading, crate::read::room);
room!(follow, crate::follow::screen);
room!(handbook, pages::handbook_room);
room!(plan, pages::plan_room);
room!(practice, pages::practice_room);

/// Work that comes to its end by and by.
type Working<T> = Pin<Box<dyn Future<Output = T>>>;

/// What stands, and what every site comes to.
pub(crate) async fn work(asked: Asked) -> Result<Stood, NotHere> {
    Ok(begun(asked).await?.await)
}

#[wasm_split(work, wasm_split_path = leptos::wasm_split, fallible)]
fn begun(asked: Asked) -> Result<Working<Stood>, NotHere> {
    Ok(Box::pin(Stood::of(asked)))
}

/// The demo, taken in as files are.
#[wasm_split(take, wasm_split_path = leptos::wasm_split, fallible)]
pub(crate) fn demo(session: Session) -> Result<(), NotHere> {
    pages::take_in_demo(session);
    Ok(())
}

/// A room's screen once the room is here, with the words that only rooms need.
pub(crate) fn entered(room: impl Future<Output = Result<AnyView, NotHere>> + 'static) -> AnyView {
    let session = Session::here();
    let shown = RwSignal::new_local(None::<AnyView>);
    spawn_local(ScopedFuture::new(async move {
        session.all_words().await;
        match room.await {
            Ok(view) => _ = shown.try_set(Some(view)),
            Err(_) => session.tell(session.word("app-room-not-here")),
        }
    }));
    (move || {
        shown.track();
        shown.try_update_untracked(Option::take).flatten()
    })
    .into_any()
}
