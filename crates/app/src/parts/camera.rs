//! A photo made smaller by the browser: its longest edge 1600 pixels at most, as JPEG. What the camera wrote beside the
//! picture is not in what comes out, since the picture is drawn anew, the right way up.

use leptos::prelude::document;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, CanvasRenderingContext2d, HtmlCanvasElement, HtmlVideoElement, ImageBitmap};

/// The longest edge of what is kept, in pixels.
const EDGE: f64 = 1600.0;

/// How closely JPEG keeps to the picture, of 1.
const QUALITY: f64 = 0.85;

/// A photo made smaller.
#[derive(Clone, Debug)]
pub(crate) struct Small {
    pub(crate) bytes: Vec<u8>,
    pub(crate) width: u32,
    pub(crate) height: u32,
}

/// Makes a photo smaller; an error where the browser can't read it.
pub(crate) async fn smaller(file: &Blob) -> Result<Small, JsValue> {
    let window = web_sys::window().ok_or(JsValue::UNDEFINED)?;
    let bitmap: ImageBitmap =
        JsFuture::from(window.create_image_bitmap_with_blob(file)?).await?.unchecked_into();
    let drawn = drawn(bitmap.width(), bitmap.height(), |drawing, width, height| {
        drawing.draw_image_with_image_bitmap_and_dw_and_dh(&bitmap, 0.0, 0.0, width, height)
    });
    bitmap.close();
    jpeg(&drawn?).await
}

/// What a camera shows at this moment; an error before it shows anything.
pub(crate) async fn still(video: &HtmlVideoElement) -> Result<Small, JsValue> {
    let drawn = drawn(video.video_width(), video.video_height(), |drawing, width, height| {
        drawing.draw_image_with_html_video_element_and_dw_and_dh(video, 0.0, 0.0, width, height)
    });
    jpeg(&drawn?).await
}

/// A picture of this size drawn within [`EDGE`].
fn drawn(
    width: u32,
    height: u32,
    draw: impl FnOnce(&CanvasRenderingContext2d, f64, f64) -> Result<(), JsValue>,
) -> Result<HtmlCanvasElement, JsValue> {
    if width == 0 || height == 0 {
        return Err(JsValue::UNDEFINED);
    }
    let (width, height) = fitted(width, height);
    let canvas: HtmlCanvasElement = document().create_element("canvas")?.unchecked_into();
    canvas.set_width(width);
    canvas.set_height(height);
    let drawing: CanvasRenderingContext2d =
        canvas.get_context("2d")?.ok_or(JsValue::UNDEFINED)?.unchecked_into();
    draw(&drawing, width.into(), height.into())?;
    Ok(canvas)
}

async fn jpeg(canvas: &HtmlCanvasElement) -> Result<Small, JsValue> {
    let drawn = js_sys::Promise::new(&mut |done, failed| {
        let kind = "image/jpeg";
        if let Err(error) = canvas.to_blob_with_type_and_encoder_options(&done, kind, &QUALITY.into()) {
            // the promise is waited for, so it must come to an end
            let _ = failed.call1(&JsValue::UNDEFINED, &error);
        }
    });
    let blob: Blob = JsFuture::from(drawn).await?.dyn_into()?;
    let buffer = JsFuture::from(blob.array_buffer()).await?;
    let bytes = js_sys::Uint8Array::new(&buffer).to_vec();
    Ok(Small { bytes, width: canvas.width(), height: canvas.height() })
}

/// The size within [`EDGE`], in the same proportion; a smaller picture stays as it is.
fn fitted(width: u32, height: u32) -> (u32, u32) {
    let share = (EDGE / f64::from(width.max(height))).min(1.0);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "from 0 to the edge")]
    let part = |length: u32| (f64::from(length) * share).round().max(1.0) as u32;
    (part(width), part(height))
}
