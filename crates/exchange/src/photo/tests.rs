//! What a camera writes, written here byte by byte as the standard has it: Exif 2.32 (CIPA DC-008-2019), 4.5 and 4.6, on
//! TIFF 6.0. The values are invented.

use super::*;

/// One entry of a directory: tag, type, count, and its bytes (a pointer where they are more than four).
struct Entry(u16, u16, u32, Vec<u8>);

const ASCII: u16 = 2;
const SHORT: u16 = 3;
const LONG: u16 = 4;
const RATIONAL: u16 = 5;

fn ascii(tag: u16, text: &str) -> Entry {
    let bytes = [text.as_bytes(), b"\0"].concat();
    Entry(tag, ASCII, u32::try_from(bytes.len()).unwrap(), bytes)
}

fn fractions(tag: u16, parts: &[(u32, u32)]) -> Entry {
    let bytes = parts.iter().flat_map(|(num, denom)| [num.to_be_bytes(), denom.to_be_bytes()].concat());
    Entry(tag, RATIONAL, u32::try_from(parts.len()).unwrap(), bytes.collect())
}

/// A directory that stands at an offset, with what its entries point to behind it.
fn directory(at: usize, entries: &[Entry]) -> Vec<u8> {
    let mut own = u16::try_from(entries.len()).unwrap().to_be_bytes().to_vec();
    let mut behind: Vec<u8> = Vec::new();
    let first = at + 2 + 12 * entries.len() + 4;
    for Entry(tag, kind, count, bytes) in entries {
        own.extend(tag.to_be_bytes());
        own.extend(kind.to_be_bytes());
        own.extend(count.to_be_bytes());
        if bytes.len() <= 4 {
            own.extend(bytes.iter().chain(&[0; 4]).take(4));
        } else {
            own.extend(u32::try_from(first + behind.len()).unwrap().to_be_bytes());
            behind.extend(bytes);
        }
    }
    own.extend([0; 4]);
    own.extend(behind);
    own
}

/// A JPEG of one grey pixel row's worth of nothing with such Exif; big-endian.
fn jpeg(own: &[Entry], place: &[Entry], orientation: u16) -> Vec<u8> {
    let pointer = |tag, to: usize| Entry(tag, LONG, 1, u32::try_from(to).unwrap().to_be_bytes().to_vec());
    let up = || Entry(0x0112, SHORT, 1, orientation.to_be_bytes().to_vec());
    let (main_at, own_at) = (8, 8 + 2 + 3 * 12 + 4);
    let own = directory(own_at, own);
    let place_at = own_at + own.len();
    let main = directory(main_at, &[up(), pointer(0x8769, own_at), pointer(0x8825, place_at)]);
    let tiff = [b"MM\0*\0\0\0\x08".to_vec(), main, own, directory(place_at, place)].concat();
    let app1 = [b"Exif\0\0".as_slice(), &tiff].concat();
    let length = u16::try_from(app1.len() + 2).unwrap().to_be_bytes();
    // SOI, APP1, SOF0 of 4 by 3 pixels, SOS with one byte of data, EOI (ISO/IEC 10918-1, annex B)
    let rest = [
        b"\xFF\xC0\x00\x0B\x08\x00\x03\x00\x04\x01\x01\x11\x00".as_slice(),
        b"\xFF\xDA\x00\x08\x01\x01\x00\x00\x3F\x00\x37\xFF\xD9",
    ];
    [b"\xFF\xD8\xFF\xE1".as_slice(), &length, &app1, rest[0], rest[1]].concat()
}

/// 42° 18′ 30.6″ N is 42 + 18/60 + 30.6/3600 = 42.3085; 113° 41.7′ W is 113 + 41.7/60 = 113.695.
fn invented(orientation: u16) -> Vec<u8> {
    jpeg(
        &[ascii(0x9003, "2026:06:09 14:03:22")],
        &[
            ascii(1, "N"),
            fractions(2, &[(42, 1), (18, 1), (306, 10)]),
            ascii(3, "W"),
            fractions(4, &[(113, 1), (417, 10), (0, 1)]),
            ascii(0x10, "T"),
            fractions(0x11, &[(3505, 10)]),
        ],
        orientation,
    )
}

#[test]
fn time_place_and_bearing_as_the_camera_wrote_them() {
    assert_eq!(
        written(&invented(6)),
        Written {
            date: Date::read("2026-06-09"),
            time: "14:03:22".into(),
            place: Some(Spot { latitude: 42_308_500_000, longitude: -113_695_000_000 }),
            bearing: Some(3_505_000),
            orientation: 6,
        }
    );
}

#[test]
fn a_third_of_a_second_is_rounded_once_and_what_makes_no_sense_is_left_out() {
    let at = |latitude: &[(u32, u32)], side: &str| {
        let place = [
            ascii(1, side),
            fractions(2, latitude),
            ascii(3, "E"),
            fractions(4, &[(1, 1), (0, 1), (0, 1)]),
            ascii(0x10, "M"),
            fractions(0x11, &[(10, 1)]),
        ];
        written(&jpeg(&[ascii(0x9003, "0000:00:00 00:00:00")], &place, 1))
    };
    // 1/3 of a second is 1/10800 of a degree, 0.0000925925925…
    let south = at(&[(0, 1), (0, 1), (1, 3)], "S");
    assert_eq!(south.place.unwrap().latitude, -92_593);
    assert_eq!((south.date, south.time.as_str()), (None, ""));
    assert_eq!(south.bearing, None, "a compass bearing is none from true north");
    assert_eq!(at(&[(91, 1), (0, 1), (0, 1)], "N").place, None);
    assert_eq!(at(&[(1, 0), (0, 1), (0, 1)], "N").place, None);
    assert_eq!(at(&[(1, 1), (0, 1), (0, 1)], "?").place, None);
    for bytes in [b"".as_slice(), b"\xFF\xD8\xFF\xE1\x00\x04Ex", b"\x89PNG\r\n\x1A\n", b"site,line\n"] {
        assert_eq!(written(bytes), Written { orientation: 1, ..Written::default() });
    }
}

#[cfg(feature = "photos")]
#[test]
fn the_plain_picture_says_nothing_but_which_side_is_up() {
    use tautline_survey::photo::Media;
    let whole = invented(6);
    let seen = picture(&whole).unwrap();
    // stored 4 wide and 3 high, on its side
    assert_eq!((seen.media, seen.width, seen.height), (Media::Jpeg, 3, 4));
    let plain = plain(&whole).unwrap();
    assert_eq!(written(&plain), Written { orientation: 6, ..Written::default() });
    assert_eq!(picture(&plain), Ok(seen));
    for told in [b"2026".as_slice(), &306_u32.to_be_bytes()] {
        assert!(whole.windows(4).any(|part| part == told) && !plain.windows(4).any(|part| part == told));
    }
    assert_eq!(picture(b"<svg/>").unwrap_err().code, "photo-no-picture");
}

/// Photos that are made smaller. What comes out is opened by a decoder that knows nothing of ours.
#[cfg(feature = "photos")]
mod made_smaller {
    use super::*;
    use jpeg_encoder::{ColorType, Encoder};
    use zune_jpeg::JpegDecoder;
    use zune_jpeg::zune_core::bytestream::ZCursor;

    /// A JPEG whose left half is dark red and whose right half is light blue, with what a camera writes behind its beginning.
    fn halves(width: u16, height: u16, orientation: u16) -> Vec<u8> {
        let row: Vec<u8> =
            (0..width).flat_map(|x| if x < width / 2 { [120, 10, 20] } else { [90, 160, 240] }).collect();
        let mut plain = Vec::new();
        Encoder::new(&mut plain, 95)
            .encode(&row.repeat(usize::from(height)), width, height, ColorType::Rgb)
            .unwrap();
        let place = [ascii(1, "N"), fractions(2, &[(38, 1), (30, 1), (1512, 100)])];
        let camera = jpeg(&[ascii(0x9003, "2026:06:09 14:03:22")], &place, orientation);
        let length = usize::from(u16::from_be_bytes([camera[4], camera[5]]));
        [&plain[..2], &camera[2..4 + length], &plain[2..]].concat()
    }

    fn opened(bytes: &[u8]) -> (usize, usize, Vec<u8>) {
        let mut decoder = JpegDecoder::new(ZCursor::new(bytes));
        let pixels = decoder.decode().unwrap();
        let (width, height) = decoder.dimensions().unwrap();
        (width, height, pixels)
    }

    #[test]
    fn a_large_one_keeps_its_picture_and_its_upper_side_and_nothing_that_the_camera_wrote() {
        for ((width, height), wanted) in [((4000, 3000), (1600, 1200)), ((1000, 2500), (640, 1600))] {
            let large = halves(width, height, 6);
            assert_eq!(written(&large).time, "14:03:22");
            let small = smaller(&large).unwrap().unwrap();
            let (wide, high, pixels) = opened(&small);
            assert_eq!((wide, high), wanted);
            // JPEG at this quality is off by a few shades of 255 in an even area
            for (x, wanted) in [(wide / 4, [120, 10, 20]), (3 * wide / 4, [90, 160, 240])] {
                let at = 3 * (high / 2 * wide + x);
                for (found, wanted) in pixels[at..at + 3].iter().zip(wanted) {
                    assert!(found.abs_diff(wanted) <= 6, "{found} for {wanted} at {x}");
                }
            }
            let left = written(&small);
            assert_eq!((left.orientation, left.date, left.place), (6, None, None));
            let looked_at = picture(&small).unwrap();
            assert_eq!(
                (looked_at.width as usize, looked_at.height as usize),
                (high, wide),
                "it lies on its side"
            );
        }
    }

    #[test]
    fn others_stay_as_they_are_and_what_cannot_be_opened_is_said() {
        assert_eq!(smaller(&halves(1600, 900, 1)), Ok(None));
        assert_eq!(smaller(b"\x89PNG\r\n\x1a\n"), Ok(None));
        let large = halves(2000, 1500, 1);
        let code = |bytes: &[u8]| smaller(bytes).unwrap_err().code;
        assert_eq!(code(&large[..large.len() / 2]), "photo-not-opened");
        // a head that claims 65500 by 65500 pixels, 12 GB if it were opened
        let mut claims = large.clone();
        let frame = claims.windows(4).position(|w| w[..2] == [0xFF, 0xC0] && w[2] == 0).unwrap();
        claims[frame + 5..frame + 9].copy_from_slice(&[0xFF, 0xDC, 0xFF, 0xDC]);
        assert_eq!(code(&claims), "photo-too-many-pixels");
    }
}
