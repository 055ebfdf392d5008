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
