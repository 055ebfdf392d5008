//! The words, fetched by language: first those of the screens that open first, then those of the rooms.

use js_sys::{Array, Reflect};
use tautline_words::Words;
use wasm_bindgen::{JsCast as _, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::Response;

/// Where `web/start.js` leaves the names of the files: an object of languages, each with two names.
const NAMES: &str = "tautlineWords";

/// How many texts there are of each language.
const FIRST: u32 = 0;
const ROOMS: u32 = 1;

/// The words of the screens that open first.
pub(crate) async fn first() -> Words {
    let text = text("en", FIRST).await.unwrap_or_default();
    english(&[&text])
}

/// All words; none where they can't be fetched or are there already.
pub(crate) async fn all(now: &Words) -> Option<Words> {
    if now.has(LAST) {
        return None;
    }
    let (first, rooms) = (text("en", FIRST).await?, text("en", ROOMS).await?);
    Some(english(&[&first, &rooms]))
}

/// A code that only the rooms' texts have.
const LAST: &str = "report-title";

fn english(texts: &[&str]) -> Words {
    // there is a catalogue of English
    Words::of("en", &|_| texts.to_vec()).unwrap_or_else(|| unreachable!())
}

async fn text(language: &str, which: u32) -> Option<String> {
    let names = Reflect::get(&js_sys::global(), &NAMES.into()).ok()?;
    let files: Array = Reflect::get(&names, &language.into()).ok()?.dyn_into().ok()?;
    fetched(&files.get(which).as_string()?).await.ok()?.as_string()
}

async fn fetched(name: &str) -> Result<JsValue, JsValue> {
    let window = web_sys::window().ok_or(JsValue::NULL)?;
    let response: Response = JsFuture::from(window.fetch_with_str(name)).await?.dyn_into()?;
    if !response.ok() {
        return Err(JsValue::NULL);
    }
    JsFuture::from(response.text()?).await
}
