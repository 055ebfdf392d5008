//! A photo made smaller by the browser: its longest edge 1600 pixels at most, as JPEG. What the camera wrote beside the
//! picture is not in what comes out, since the picture is drawn anew, the right way up.

use leptos::prelude::document;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, CanvasRenderingContext2d, HtmlCanvasElement, ImageBitmap};

/// The longest edge of what is kept, in pixels.
const EDGE: f64 = 1600.0;

/// How closely JPEG keeps to the picture, of 1.
const QUALITY: f64 = 0.85;

/// A photo made smaller.
pub(crate) struct Small {
    pub(crate) bytes: Vec<u8>,
    pub(crate) width: u32,
    pub(crate) height: u32,
}

/// Makes a photo smaller; an error where the browser can't read it.
pub(crate) async fn smaller(file: &Blob) -> Result<Small, JsValue> {
    let none = || JsValue::UNDEFINED;
    let window = web_sys::window().ok_or_else(none)?;
    let bitmap: ImageBitmap =
        JsFuture::from(window.create_image_bitmap_with_blob(file)?).await?.unchecked_into();
    let (width, height) = fitted(bitmap.width(), bitmap.height());
    let canvas: HtmlCanvasElement = document().create_element("canvas")?.unchecked_into();
    canvas.set_width(width);
    canvas.set_height(height);
    let drawing: CanvasRenderingContext2d = canvas.get_context("2d")?.ok_or_else(none)?.unchecked_into();
    drawing.draw_image_with_image_bitmap_and_dw_and_dh(&bitmap, 0.0, 0.0, width.into(), height.into())?;
    bitmap.close();
    let drawn = js_sys::Promise::new(&mut |done, failed| {
        let kind = "image/jpeg";
        if let Err(error) = canvas.to_blob_with_type_and_encoder_options(&done, kind, &QUALITY.into()) {
            // the promise is waited for, so it must come to an end
            let _ = failed.call1(&JsValue::UNDEFINED, &error);
        }
    });
    let blob: Blob = JsFuture::from(drawn).await?.dyn_into()?;
    let buffer = JsFuture::from(blob.array_buffer()).await?;
    Ok(Small { bytes: js_sys::Uint8Array::new(&buffer).to_vec(), width, height })
}

/// The size within [`EDGE`], in the same proportion; a smaller picture stays as it is.
fn fitted(width: u32, height: u32) -> (u32, u32) {
    let share = (EDGE / f64::from(width.max(height))).min(1.0);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "from 0 to the edge")]
    let part = |length: u32| (f64::from(length) * share).round().max(1.0) as u32;
    (part(width), part(height))
}
