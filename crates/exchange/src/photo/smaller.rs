//! A camera's photo made smaller, as the app does it: its longest edge [`EDGE`] pixels at most, as JPEG.

use super::files::{picture, upright};
use jpeg_encoder::{ColorType, Encoder};
use resize::Pixel::RGB8;
use resize::Type::Lanczos3;
use rgb::FromSlice as _;
use tautline_survey::message::Message;
use tautline_survey::photo::Media;
use zune_jpeg::JpegDecoder;
use zune_jpeg::zune_core::bytestream::ZCursor;
use zune_jpeg::zune_core::colorspace::ColorSpace;
use zune_jpeg::zune_core::options::DecoderOptions;

/// The longest edge of what is kept, in pixels.
pub const EDGE: usize = 1600;

/// How closely JPEG keeps to the picture, of 100.
const QUALITY: u8 = 85;

/// Pixels of a photo that is opened: three bytes each while it is made smaller.
const MOST_PIXELS: u64 = 120_000_000;

/// A JPEG whose longest edge is beyond [`EDGE`] made smaller; nothing where it isn't, or is a PNG or a WebP, which no camera makes.
///
/// What the camera wrote beside the picture is not in what comes out, but for which side is up and what its colours mean.
///
/// # Errors
/// the photo is larger than is opened, or can't be
pub fn smaller(bytes: &[u8]) -> Result<Option<Vec<u8>>, Message> {
    if Media::of(bytes) != Some(Media::Jpeg) {
        return Ok(None);
    }
    let size = imagesize::blob_size(bytes).map_err(|_| Message::new("photo-no-picture"))?;
    if size.width.max(size.height) <= EDGE {
        return Ok(None);
    }
    if size.width as u64 * size.height as u64 > MOST_PIXELS {
        return Err(Message::new("photo-too-many-pixels").with("most", MOST_PIXELS / 1_000_000));
    }
    drawn_anew(bytes).map(Some).ok_or(Message::new("photo-not-opened"))
}

fn drawn_anew(bytes: &[u8]) -> Option<Vec<u8>> {
    // strictly: one that is broken off would come out grey below, and nobody would know
    let options = DecoderOptions::default().set_strict_mode(true).set_max_width(usize::from(u16::MAX));
    let options = options.set_max_height(usize::from(u16::MAX)).jpeg_set_out_colorspace(ColorSpace::RGB);
    let mut decoder = JpegDecoder::new_with_options(ZCursor::new(bytes), options);
    let pixels = decoder.decode().ok()?;
    let (width, height) = decoder.dimensions()?;
    let (less_wide, less_high) = fitted(width, height);
    let mut drawn = vec![0; less_wide * less_high * 3];
    let mut resizer = resize::new(width, height, less_wide, less_high, RGB8, Lanczos3).ok()?;
    resizer.resize(pixels.as_rgb(), drawn.as_rgb_mut()).ok()?;
    drop(pixels);
    let mut out = Vec::new();
    let mut encoder = Encoder::new(&mut out, QUALITY);
    if let Some(colours) = decoder.icc_profile() {
        encoder.add_icc_profile(&colours).ok()?;
    }
    let orientation = super::written(bytes).orientation;
    if let Some(side) = (orientation != 1).then(|| upright(orientation)).flatten() {
        encoder.add_exif_metadata(&side).ok()?;
    }
    let (wide, high) = (u16::try_from(less_wide).ok()?, u16::try_from(less_high).ok()?);
    encoder.encode(&drawn, wide, high, ColorType::Rgb).ok()?;
    picture(&out).is_ok().then_some(out)
}

/// The size within [`EDGE`], in the same proportion, to the nearest pixel.
fn fitted(width: usize, height: usize) -> (usize, usize) {
    let longest = width.max(height);
    let part = |length: usize| ((2 * length * EDGE + longest) / (2 * longest)).max(1);
    (part(width), part(height))
}
