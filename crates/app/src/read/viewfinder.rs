//! The device's camera, opened by a person's touch and let go with the screen.

use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{MediaStream, MediaStreamConstraints, MediaStreamTrack};

/// How wide a picture is asked for, in pixels; a camera that hasn't as many gives what it has.
const WIDE: u32 = 1920;

/// The camera for as long as this is kept; its light goes out with it.
pub(super) struct Camera {
    stream: MediaStream,
}

impl Camera {
    /// The camera that looks away from whoever holds the device; an error where the browser gives none.
    pub(super) async fn open() -> Result<Self, JsValue> {
        let window = web_sys::window().ok_or(JsValue::UNDEFINED)?;
        let devices = window.navigator().media_devices()?;
        // on a page that came over an open line a browser has no such devices at all
        if devices.is_undefined() {
            return Err(JsValue::UNDEFINED);
        }
        let wanted = js_sys::Object::new();
        js_sys::Reflect::set(&wanted, &"facingMode".into(), &"environment".into())?;
        let wide = js_sys::Object::new();
        js_sys::Reflect::set(&wide, &"ideal".into(), &WIDE.into())?;
        js_sys::Reflect::set(&wanted, &"width".into(), &wide)?;
        let constraints = MediaStreamConstraints::new();
        constraints.set_video(&wanted);
        let given = JsFuture::from(devices.get_user_media_with_constraints(&constraints)?).await?;
        Ok(Self { stream: given.dyn_into()? })
    }

    pub(super) const fn stream(&self) -> &MediaStream {
        &self.stream
    }
}

impl Drop for Camera {
    fn drop(&mut self) {
        for track in self.stream.get_tracks() {
            track.unchecked_into::<MediaStreamTrack>().stop();
        }
    }
}
