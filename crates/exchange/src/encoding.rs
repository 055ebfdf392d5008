//! The two encodings beside UTF-8 in which offices save tables: UTF-16 and Windows-1252.
//!
//! The general library for this carries the tables of every script's older encodings, more than all of our own code for
//! a browser together; these two need thirty-two characters.

/// What Windows-1252 has between 0x80 and 0x9f; every other byte is the character of the same number.
///
/// # Source
/// WHATWG Encoding Standard, index-windows-1252
const WINDOWS_1252: [char; 32] = [
    '\u{20ac}', '\u{81}', '\u{201a}', '\u{192}', '\u{201e}', '\u{2026}', '\u{2020}', '\u{2021}', '\u{2c6}',
    '\u{2030}', '\u{160}', '\u{2039}', '\u{152}', '\u{8d}', '\u{17d}', '\u{8f}', '\u{90}', '\u{2018}',
    '\u{2019}', '\u{201c}', '\u{201d}', '\u{2022}', '\u{2013}', '\u{2014}', '\u{2dc}', '\u{2122}', '\u{161}',
    '\u{203a}', '\u{153}', '\u{9d}', '\u{17e}', '\u{178}',
];

/// Text in Windows-1252; every byte is a character.
pub(crate) fn windows_1252(bytes: &[u8]) -> String {
    let character = |&byte: &u8| match byte {
        0x80..=0x9f => WINDOWS_1252[usize::from(byte - 0x80)],
        byte => char::from(byte),
    };
    bytes.iter().map(character).collect()
}

/// Which end of a UTF-16 unit comes first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Order {
    LittleFirst,
    BigFirst,
}

/// The order that the mark at the beginning of a file names.
pub(crate) const fn utf_16_mark(bytes: &[u8]) -> Option<Order> {
    match bytes {
        [0xff, 0xfe, ..] => Some(Order::LittleFirst),
        [0xfe, 0xff, ..] => Some(Order::BigFirst),
        _ => None,
    }
}

/// Text in UTF-16 behind its mark, and whether something in it is no character: then it stands as U+FFFD.
pub(crate) fn utf_16(bytes: &[u8], order: Order) -> (String, bool) {
    let (units, odd) = bytes.get(2..).unwrap_or_default().as_chunks::<2>();
    let units = units.iter().map(|&unit| match order {
        Order::LittleFirst => u16::from_le_bytes(unit),
        Order::BigFirst => u16::from_be_bytes(unit),
    });
    let mut damaged = !odd.is_empty();
    let mut text: String = char::decode_utf16(units)
        .map(|read| {
            read.unwrap_or_else(|_| {
                damaged = true;
                char::REPLACEMENT_CHARACTER
            })
        })
        .collect();
    if !odd.is_empty() {
        text.push(char::REPLACEMENT_CHARACTER);
    }
    (text, damaged)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// WHATWG Encoding Standard, index-windows-1252: 0x80 is the euro, 0x92 the right quotation mark, 0x9f Ÿ.
    #[test]
    fn windows_1252_has_signs_where_latin_1_has_controls() {
        assert_eq!(windows_1252(b"5 \x80, \x93Fr\xfchling\x94, \x9f\x81"), "5 €, “Frühling”, Ÿ\u{81}");
    }

    /// RFC 2781, section 3.3: U+12345 "=Ra" in either order.
    #[test]
    fn utf_16_in_either_order() {
        let big = b"\xfe\xff\xd8\x08\xdf\x45\x00\x3d\x00\x52\x00\x61";
        let little = b"\xff\xfe\x08\xd8\x45\xdf\x3d\x00\x52\x00\x61\x00";
        for bytes in [big, little] {
            let order = utf_16_mark(bytes).expect("both begin with a mark");
            assert_eq!(utf_16(bytes, order), ("\u{12345}=Ra".to_owned(), false));
        }
        assert_eq!(utf_16(b"\xff\xfea", Order::LittleFirst), ("\u{fffd}".to_owned(), true));
        assert_eq!(utf_16(b"\xff\xfe\x08\xd8a\0", Order::LittleFirst), ("\u{fffd}a".to_owned(), true));
    }
}
