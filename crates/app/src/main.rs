//! The app in a browser: the notebook on this device, what stands in it, and what it comes to. It works without a network
//! once it was opened, computes nothing of its own, and says nothing in words of its own.
//!
//! | what | module |
//! | --- | --- |
//! | the notebook on the browser's disk, and sharing it | `device` |
//! | what is open: the notebook, the words, what a person set | `session` |
//! | which screen an address names | `route` |
//! | the frame around every screen | `shell` |
//! | a newer version, offered | `newer` |
//! | the screens | `pages` |
//! | what several screens are made of | `parts` |
//! | reading a line | `read` |

mod device;
mod newer;
mod pages;
mod parts;
mod read;
mod route;
mod session;
mod settings;
mod shell;

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
        let opened = session::Session::open().await;
        leptos::mount::mount_to_body(move || shell::shell(opened));
        shell::opened();
    });
}
