//! The words, fetched by language: first those of the screens that open first, then those of the rooms.

use crate::settings::Settings;
use js_sys::{Array, Reflect};
use tautline_words::Words;
use wasm_bindgen::{JsCast as _, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::Response;

/// Where `web/start.js` leaves the names of the files: an object of languages, each with two names.
const NAMES: &str = "tautlineWords";

/// A code that only the rooms' texts have.
const OF_ROOMS: &str = "report-title";

/// How many of the words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Which {
    /// Those of the screens that open first.
    First,
    /// All.
    All,
}

/// The words of a person's language.
pub(crate) struct Spoken {
    pub(crate) words: Words,
    /// The same for what was worked out: lengths stand in the units that the person likes.
    pub(crate) results: Words,
}

impl Spoken {
    fn of(named: &str, texts: &[&str], settings: &Settings) -> Option<Self> {
        let words = || {
            Words::of(named, &|language| {
                if named.starts_with(language) { texts.to_vec() } else { Vec::new() }
            })
        };
        Some(Self { words: words()?, results: words()?.with_lengths(settings.lengths()) })
    }
}

impl Default for Spoken {
    /// Codes in place of words: what there is where none could be fetched.
    fn default() -> Self {
        Self { words: Words::bare(), results: Words::bare() }
    }
}

/// The words that the settings ask for; none where they can't be fetched.
pub(crate) async fn spoken(settings: &Settings, which: Which) -> Option<Spoken> {
    for named in settings.languages() {
        let Some(files) = files(&named) else { continue };
        let first = fetched(&files.get(0)).await?;
        let rooms = match which {
            Which::First => String::new(),
            Which::All => fetched(&files.get(1)).await?,
        };
        return Spoken::of(&named, &[&first, &rooms], settings);
    }
    None
}

/// Whether these are all words.
pub(crate) fn are_all(words: &Words) -> bool {
    words.has(OF_ROOMS)
}

/// The files of a language, named as a browser does: `es-MX`.
fn files(named: &str) -> Option<Array> {
    let language = named.split('-').next()?.to_lowercase();
    let names = Reflect::get(&js_sys::global(), &NAMES.into()).ok()?;
    Reflect::get(&names, &language.into()).ok()?.dyn_into().ok()
}

async fn fetched(name: &JsValue) -> Option<String> {
    let fetching = web_sys::window()?.fetch_with_str(&name.as_string()?);
    let response: Response = JsFuture::from(fetching).await.ok()?.dyn_into().ok()?;
    if !response.ok() {
        return None;
    }
    JsFuture::from(response.text().ok()?).await.ok()?.as_string()
}
