//! A place that is kept back stands in no byte of any form.

use super::Made;
use std::io::{Cursor, Read as _};
use tautline_travel::{Form, Whole, write};
use tautline_words::Words;

/// Digits of every place of the two sites that are kept back, and of their UTM; notes hold them too.
const KEPT_BACK: [&str; 14] = [
    "621234567",
    "312345671",
    "621498001",
    "622345678",
    "313456782",
    "622608002",
    "731234561",
    "412345672",
    "731498003",
    "732345672",
    "413456783",
    "732697004",
    "4277215",
    "4289645",
];
const OPEN: [&str; 3] = ["512345678", "204561234", "516789123"];

/// The bytes of each file, and doubles as they are stored, most and least significant first.
fn holds(bytes: &[u8], digits: &str) -> bool {
    let stands = |part: &[u8]| bytes.windows(part.len()).any(|window| window == part);
    let doubles: Vec<f64> = [38.0, -113.0]
        .iter()
        .map(|degree: &f64| degree.abs() + digits.parse::<f64>().unwrap() / 1e9)
        .flat_map(|degrees| [degrees, -degrees])
        .collect();
    stands(digits.as_bytes())
        || doubles.iter().any(|double| stands(&double.to_le_bytes()) || stands(&double.to_be_bytes()))
}

#[test]
fn what_is_kept_back_stands_in_no_form() {
    let made = Made::new();
    for &form in Form::ALL {
        let files = made.files(form);
        let all: Vec<u8> = files.iter().flat_map(|file| unpacked(&file.bytes)).collect();
        for digits in KEPT_BACK {
            assert!(!holds(&all, digits), "{form:?} tells {digits}");
        }
        // the same search finds what may be told, so that it can fail
        if tells_places(form) {
            assert!(OPEN.iter().all(|digits| holds(&all, digits)), "{form:?}");
        }
    }
}

#[test]
fn a_full_copy_tells_all_places_and_says_so() {
    let made = Made::new();
    let whole = Whole { full: true, ..made.whole() };
    for form in Form::ALL.iter().copied().filter(|&form| tells_places(form)) {
        let files = write(form, &whole, &Words::english()).unwrap();
        let all: Vec<u8> = files.iter().flat_map(|file| unpacked(&file.bytes)).collect();
        assert!(holds(&all, "621234567") && holds(&all, "731234561"), "{form:?}");
        assert!(all.windows(11).any(|part| part == b"A full copy"), "{form:?}");
    }
    assert!(tautline_travel::said(&whole).iter().any(|said| said.code == "export-full-said"));
}

const fn tells_places(form: Form) -> bool {
    !matches!(form, Form::Plants | Form::Protocols)
}

/// Packed files as their parts.
fn unpacked(bytes: &[u8]) -> Vec<u8> {
    let mut all = bytes.to_vec();
    if bytes.starts_with(b"PK") {
        let mut packed = zip::ZipArchive::new(Cursor::new(bytes)).unwrap();
        for at in 0..packed.len() {
            packed.by_index(at).unwrap().read_to_end(&mut all).unwrap();
        }
    }
    all
}
