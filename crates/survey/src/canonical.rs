//! Canonical bytes of a record and their fingerprint: JSON by RFC 8785, without floats, and SHA-256.

use core::fmt::Write as _;
use serde_json::Value;
use sha2::{Digest, Sha256};

/// The canonical bytes of a JSON value: keys sorted by UTF-16 code units, no white space, shortest escapes.
///
/// # Errors
/// `None` where the value holds a number that isn't whole, since records hold none
/// # Source
/// RFC 8785, JSON Canonicalization Scheme, sections 3.2.2 and 3.2.3
/// # Example
/// ```
/// let value = serde_json::json!({ "b": [1, true], "a": "é\n" });
/// assert_eq!(tautline_survey::canonical::bytes(&value).unwrap(), "{\"a\":\"é\\n\",\"b\":[1,true]}".as_bytes());
/// ```
pub fn bytes(value: &Value) -> Option<Vec<u8>> {
    let mut text = String::new();
    write(value, &mut text)?;
    Some(text.into_bytes())
}

/// SHA-256 of bytes, in lower-case hexadecimal.
pub fn sha256_hex(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().fold(String::with_capacity(64), |mut hex, byte| {
        // writing to a String can't fail
        let _ = write!(hex, "{byte:02x}");
        hex
    })
}

fn write(value: &Value, text: &mut String) -> Option<()> {
    match value {
        Value::Number(number) if number.is_f64() => return None,
        // serde_json writes null, booleans and whole numbers as RFC 8785 wants them, and strings with its escapes
        Value::Null | Value::Bool(_) | Value::Number(_) | Value::String(_) => {
            text.push_str(&value.to_string());
        }
        Value::Array(items) => {
            text.push('[');
            for (i, item) in items.iter().enumerate() {
                if i > 0 {
                    text.push(',');
                }
                write(item, text)?;
            }
            text.push(']');
        }
        Value::Object(map) => {
            let mut entries: Vec<_> = map.iter().collect();
            entries.sort_by(|(a, _), (b, _)| a.encode_utf16().cmp(b.encode_utf16()));
            text.push('{');
            for (i, (key, item)) in entries.into_iter().enumerate() {
                if i > 0 {
                    text.push(',');
                }
                text.push_str(&Value::String(key.clone()).to_string());
                text.push(':');
                write(item, text)?;
            }
            text.push('}');
        }
    }
    Some(())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// RFC 8785, section 3.2.3: the property names of its sorting example and their order.
    #[test]
    fn keys_sort_by_utf16() {
        let value = serde_json::json!({
            "\u{20ac}": "Euro Sign", "\r": "Carriage Return", "\u{fb33}": "Hebrew Letter Dalet With Dagesh",
            "1": "One", "\u{1f600}": "Emoji: Grinning Face", "\u{80}": "Control", "\u{f6}": "Latin Small Letter O With Diaeresis"
        });
        let text = String::from_utf8(bytes(&value).unwrap()).unwrap();
        let order = ["Carriage Return", "One", "Control", "Latin Small", "Euro", "Emoji", "Hebrew"];
        let places: Vec<usize> = order.iter().map(|name| text.find(name).unwrap()).collect();
        assert!(places.is_sorted(), "{text}");
    }

    #[test]
    fn no_floats_in_records() {
        assert_eq!(bytes(&serde_json::json!([1.5])), None);
    }

    /// FIPS 180-2, appendix B.1: SHA-256 of "abc".
    #[test]
    fn sha256_of_abc() {
        assert_eq!(sha256_hex(b"abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    }
}
