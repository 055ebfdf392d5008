//! Photo files: what a camera wrote beside the picture, what the bytes are, and the picture without what was written.

use exif::{Exif, In, Rational, Reader, Tag, Value};
use std::io::Cursor;
use tautline_survey::date::Date;
use tautline_survey::photo::Spot;

/// What a camera wrote beside a picture.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Written {
    /// The day, by the camera's clock.
    pub date: Option<Date>,
    /// The time of that day, such as `14:03:22`; empty where there is none.
    pub time: String,
    /// Where.
    pub place: Option<Spot>,
    /// Which way it looked, in ten-thousandths of a degree from true north. A bearing by the compass isn't taken for one.
    pub bearing: Option<u32>,
    /// How the picture is to be turned, from 1 (as it is) to 8.
    pub orientation: u16,
}

/// Reads what a camera wrote into a JPEG, PNG or WebP. What isn't there, or makes no sense, is left out.
///
/// # Source
/// Exif 2.32 (CIPA DC-008-2019), 4.6: DateTimeOriginal, the GPS attributes, Orientation
pub fn written(bytes: &[u8]) -> Written {
    let Ok(exif) = Reader::new().read_from_container(&mut Cursor::new(bytes)) else {
        return Written { orientation: 1, ..Written::default() };
    };
    let taken = exif.get_field(Tag::DateTimeOriginal, In::PRIMARY).and_then(|field| match &field.value {
        Value::Ascii(parts) => std::str::from_utf8(parts.first()?).ok().and_then(moment),
        _ => None,
    });
    let orientation = exif.get_field(Tag::Orientation, In::PRIMARY).and_then(|field| field.value.get_uint(0));
    let (date, time) = taken.unzip();
    Written {
        date,
        time: time.unwrap_or_default(),
        place: place(&exif),
        bearing: bearing(&exif),
        orientation: orientation
            .and_then(|one| u16::try_from(one).ok())
            .filter(|one| (1..=8).contains(one))
            .unwrap_or(1),
    }
}

/// `2026:06:09 14:03:22`, as cameras write it.
fn moment(text: &str) -> Option<(Date, String)> {
    let (date, time) = text.trim_matches(['\0', ' ']).split_once(' ')?;
    let date = Date::read(&date.replace(':', "-"))?;
    let parts: Vec<&str> = time.split(':').collect();
    let below = |part: &str, most: u8| {
        part.len() == 2
            && part.bytes().all(|b| b.is_ascii_digit())
            && part.parse::<u8>().is_ok_and(|n| n < most)
    };
    match parts[..] {
        [hour, minute, second] if below(hour, 24) && below(minute, 60) && below(second, 60) => {
            Some((date, time.to_owned()))
        }
        _ => None,
    }
}

fn place(exif: &Exif) -> Option<Spot> {
    let latitude = degrees(exif, Tag::GPSLatitude, Tag::GPSLatitudeRef, [b'N', b'S'], 90)?;
    let longitude = degrees(exif, Tag::GPSLongitude, Tag::GPSLongitudeRef, [b'E', b'W'], 180)?;
    // a receiver that had no fix writes noughts
    Some(Spot { latitude, longitude }).filter(|_| latitude != 0 || longitude != 0)
}

/// Degrees, minutes and seconds as whole thousand-millionths of a degree; none beyond `most` degrees.
fn degrees(exif: &Exif, tag: Tag, side: Tag, [plus, minus]: [u8; 2], most: i128) -> Option<i64> {
    const BILLION: i128 = 1_000_000_000;
    let parts = rationals(exif, tag).filter(|parts| parts.len() == 3)?;
    let mut sum = 0_i128;
    for (part, share) in parts.iter().zip([1, 60, 3600]) {
        // to a thousandth of what is kept, so that three roundings don't add up to one
        sum += i128::from(part.num) * BILLION * 1000 / (i128::from(part.denom) * share);
    }
    let size = (sum + 500) / 1000;
    let letter = match &exif.get_field(side, In::PRIMARY)?.value {
        Value::Ascii(text) => *text.first()?.first()?,
        _ => return None,
    };
    let sign = if letter == plus { 1 } else { -1 };
    (size <= most * BILLION && (letter == plus || letter == minus)).then_some(())?;
    i64::try_from(sign * size).ok()
}

fn bearing(exif: &Exif) -> Option<u32> {
    let direction = rationals(exif, Tag::GPSImgDirection)?.first().copied()?;
    let is_true = match &exif.get_field(Tag::GPSImgDirectionRef, In::PRIMARY)?.value {
        Value::Ascii(text) => text.first()?.first() == Some(&b'T'),
        _ => false,
    };
    let parts =
        (u64::from(direction.num) * 10_000 + u64::from(direction.denom) / 2) / u64::from(direction.denom);
    u32::try_from(parts).ok().filter(|&parts| is_true && parts <= 3_600_000).map(|parts| parts % 3_600_000)
}

/// The fractions of a field, none of them over nought.
fn rationals(exif: &Exif, tag: Tag) -> Option<Vec<Rational>> {
    match &exif.get_field(tag, In::PRIMARY)?.value {
        Value::Rational(parts) if parts.iter().all(|part| part.denom > 0) => Some(parts.clone()),
        _ => None,
    }
}

#[cfg(feature = "photos")]
pub use files::{Picture, picture, plain};
#[cfg(feature = "photos")]
pub use smaller::{EDGE, smaller};

#[cfg(feature = "photos")]
mod smaller;

#[cfg(feature = "photos")]
mod files {
    use super::written;
    use exif::experimental::Writer;
    use exif::{Field, In, Tag, Value};
    use img_parts::jpeg::{Jpeg, markers};
    use img_parts::png::Png;
    use img_parts::webp::WebP;
    use img_parts::{Bytes, ImageEXIF};
    use std::io::Cursor;
    use tautline_survey::message::Message;
    use tautline_survey::photo::{LONGEST, Media};

    /// What the bytes of a photo are.
    #[derive(Clone, Copy, Debug, PartialEq, Eq)]
    pub struct Picture {
        /// Of what kind.
        pub media: Media,
        /// How many pixels wide, as it is looked at.
        pub width: u32,
        /// How many pixels high.
        pub height: u32,
    }

    /// Looks at the bytes of a photo.
    ///
    /// # Errors
    /// what it isn't
    pub fn picture(bytes: &[u8]) -> Result<Picture, Message> {
        if bytes.len() > LONGEST {
            return Err(Message::new("photo-too-long").with("most", LONGEST >> 20));
        }
        let media = Media::of(bytes).ok_or(Message::new("photo-no-picture"))?;
        let size = imagesize::blob_size(bytes).map_err(|_| Message::new("photo-no-picture"))?;
        let (width, height) = (u32::try_from(size.width), u32::try_from(size.height));
        let (Ok(width), Ok(height)) = (width, height) else { return Err(Message::new("photo-no-picture")) };
        // from 5 on it is stored lying on its side
        let lies = written(bytes).orientation >= 5;
        let (width, height) = if lies { (height, width) } else { (width, height) };
        Ok(Picture { media, width, height })
    }

    /// The picture with nothing beside it that was written down by the camera or any program (place, time, camera, caption,
    /// a small copy), but for which side is up and what its colours mean.
    ///
    /// # Errors
    /// where it can't be taken apart
    pub fn plain(bytes: &[u8]) -> Result<Vec<u8>, Message> {
        let no_picture = |_| Message::new("photo-no-picture");
        let orientation = written(bytes).orientation;
        let beside = (orientation != 1).then(|| upright(orientation)).flatten();
        let own = Bytes::copy_from_slice(bytes);
        let out = match Media::of(bytes).ok_or(Message::new("photo-no-picture"))? {
            Media::Jpeg => {
                let mut jpeg = Jpeg::from_bytes(own).map_err(no_picture)?;
                jpeg.segments_mut().retain(|segment| match segment.marker() {
                    markers::APP0 | markers::APP14 => true,
                    markers::APP2 => segment.contents().starts_with(b"ICC_PROFILE\0"),
                    marker => !(markers::APP0..=markers::APP15).contains(&marker) && marker != markers::COM,
                });
                jpeg.set_exif(beside);
                jpeg.encoder().bytes()
            }
            Media::Png => {
                let mut png = Png::from_bytes(own).map_err(no_picture)?;
                let written = [*b"eXIf", *b"tEXt", *b"iTXt", *b"zTXt", *b"tIME"];
                png.chunks_mut().retain(|chunk| !written.contains(&chunk.kind()));
                png.set_exif(beside);
                png.encoder().bytes()
            }
            Media::Webp => {
                let mut webp = WebP::from_bytes(own).map_err(no_picture)?;
                webp.chunks_mut().retain(|chunk| ![*b"EXIF", *b"XMP "].contains(&chunk.id()));
                webp.set_exif(beside);
                webp.encoder().bytes()
            }
        };
        Ok(out.to_vec())
    }

    /// Which side is up and nothing else.
    pub(super) fn upright(orientation: u16) -> Option<Bytes> {
        let field =
            Field { tag: Tag::Orientation, ifd_num: In::PRIMARY, value: Value::Short(vec![orientation]) };
        let mut writer = Writer::new();
        writer.push_field(&field);
        let mut out = Cursor::new(Vec::new());
        writer.write(&mut out, false).ok()?;
        Some(Bytes::from(out.into_inner()))
    }
}

#[cfg(test)]
mod tests;
