//! This device at this moment: the clock and chance are read here and nowhere else, and turns are given here.

use js_sys::Date;
use tautline_survey::revision::Stamp;

/// The time as text with its offset, and in milliseconds since 1970.
pub(crate) fn now() -> (Stamp, u64) {
    let date = Date::new_0();
    let utc = String::from(date.to_iso_string());
    #[expect(clippy::cast_possible_truncation, reason = "an offset is a few hundred minutes")]
    let offset = -(date.get_timezone_offset() as i16);
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a browser's clock begins in 1970"
    )]
    let milliseconds = date.get_time() as u64;
    // a clock before year 1 or after 9999 can't be written down; the oldest time stands for it
    let oldest = || Stamp::new("0001-01-01T00:00:00Z", 0).expect("the oldest time is one");
    (Stamp::new(&utc, offset).unwrap_or_else(oldest), milliseconds)
}

/// Fills bytes at random.
pub(crate) fn random(bytes: &mut [u8]) {
    let crypto = web_sys::window().and_then(|window| window.crypto().ok());
    let filled = crypto.is_some_and(|crypto| crypto.get_random_values_with_u8_array(bytes).is_ok());
    assert!(filled, "every browser that runs this has randomness");
}

/// Today as a civil date, year first.
pub(crate) fn today() -> String {
    civil(&Date::new_0())
}

/// The day, by this device's own calendar, of a time in milliseconds since 1970.
pub(crate) fn day_of(milliseconds: f64) -> String {
    civil(&Date::new(&milliseconds.into()))
}

fn civil(date: &Date) -> String {
    format!("{:04}-{:02}-{:02}", date.get_full_year(), date.get_month() + 1, date.get_date())
}

/// Lets everything else have its turn.
pub(crate) async fn a_turn() {
    let promise = js_sys::Promise::new(&mut |done, _| {
        if let Some(window) = web_sys::window() {
            // a page without a window waits for nothing
            let _ = window.set_timeout_with_callback_and_timeout_and_arguments_0(&done, 4);
        }
    });
    // the promise is never refused
    let _ = wasm_bindgen_futures::JsFuture::from(promise).await;
}
