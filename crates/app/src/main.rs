//! The app in a browser: the notebook on this device, what stands in it, and what it comes to. It works without a network
//! once it was opened, computes nothing of its own, and says nothing in words of its own.
//!
//! | what | module |
//! | --- | --- |
//! | the notebook on the browser's disk, and sharing it | `device` |
//! | what is open: the notebook, the words, what a person set | `session` |
//! | what stands in the notebook, and what it comes to | `standing` |
//! | the words, fetched by language | `words` |
//! | which screen an address names | `route` |
//! | the rooms, each fetched when it is first entered | `later` |
//! | the frame around every screen | `shell` |
//! | a newer version, offered | `newer` |
//! | the screens | `pages` |
//! | what several screens are made of | `parts` |
//! | reading a line | `read` |
//! | practice | `practice` |
//! | a goal, lines, a layout, a packet | `plan` |
//! | the method handbook | `handbook` |
//! | the figures as data | `figures` |
//! | sites over the years, readers side by side | `follow` |

mod device;
mod figures;
mod follow;
mod handbook;
mod later;
mod newer;
mod pages;
mod parts;
mod plan;
mod practice;
mod read;
mod route;
mod session;
mod settings;
mod shell;
mod standing;
mod words;

fn main() {
    #[cfg(feature = "conformance")]
    if route::wants_conformance() {
        wasm_bindgen_futures::spawn_local(async {
            device::conformance::run().await;
            shell::title("conformance: passed");
        });
        return;
    }
    wasm_bindgen_futures::spawn_local(async {
        let opened = match session::Session::open().await {
            Ok(session) => Ok(session),
            Err(error) => {
                let usual = settings::Settings::default();
                Err((error, words::spoken(&usual, words::Which::First).await.unwrap_or_default()))
            }
        };
        leptos::mount::mount_to_body(move || shell::shell(opened));
        shell::opened();
    });
}
