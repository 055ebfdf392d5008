//! Files that a person picks or drops, and files handed out.

use tautline_exchange::Source;
use wasm_bindgen::{JsCast as _, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, BlobPropertyBag, FileList, HtmlAnchorElement, Url};

/// A file of more bytes than this is for the command.
const LONGEST: f64 = 64e6;

/// Reads what was picked; the names of files that are too long or can't be read stand beside it.
pub(crate) async fn read(list: FileList) -> (Vec<Source>, Vec<String>) {
    let (mut sources, mut left) = (Vec::new(), Vec::new());
    for file in (0..list.length()).filter_map(|at| list.get(at)) {
        let bytes = if file.size() > LONGEST { None } else { JsFuture::from(file.array_buffer()).await.ok() };
        match bytes {
            Some(buffer) => {
                sources.push(Source { name: file.name(), bytes: js_sys::Uint8Array::new(&buffer).to_vec() });
            }
            None => left.push(file.name()),
        }
    }
    (sources, left)
}

/// Hands a text out as a file, as a download.
pub(crate) fn hand_out(name: &str, kind: &str, text: &str) {
    hand_out_parts(name, kind, &js_sys::Array::of1(&text.into()));
}

/// Hands a file out that is made of several texts.
pub(crate) fn hand_out_parts(name: &str, kind: &str, parts: &js_sys::Array) {
    let given = || -> Result<(), JsValue> {
        let options = BlobPropertyBag::new();
        options.set_type(kind);
        let blob = Blob::new_with_str_sequence_and_options(parts, &options)?;
        let url = Url::create_object_url_with_blob(&blob)?;
        let link: HtmlAnchorElement = leptos::prelude::document().create_element("a")?.unchecked_into();
        link.set_href(&url);
        link.set_download(name);
        link.click();
        Ok(())
    };
    // a browser that can't hand a file out says so itself
    let _ = given();
}
