use super::*;

type Light = [f64; 3];

fn linear(hex: &str) -> Light {
    [1, 3, 5].map(|at| {
        let part = f64::from(u8::from_str_radix(&hex[at..at + 2], 16).unwrap()) / 255.0;
        if part <= 0.040_45 { part / 12.92 } else { ((part + 0.055) / 1.055).powf(2.4) }
    })
}

/// WCAG 2.2, "contrast ratio" and "relative luminance".
fn contrast(a: &str, b: &str) -> f64 {
    let luminance = |hex| {
        let [r, g, b] = linear(hex);
        0.2126 * r + 0.7152 * g + 0.0722 * b
    };
    let (a, b) = (luminance(a), luminance(b));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

fn times(matrix: &[Light; 3], [r, g, b]: Light) -> Light {
    matrix.map(|[x, y, z]| (x * r + y * g + z * b).clamp(0.0, 1.0))
}

/// Distance in Oklab (Ottosson 2020).
#[expect(clippy::many_single_char_names, reason = "the letters of the published transform")]
fn distance(a: Light, b: Light) -> f64 {
    let lab = |[r, g, b]: Light| {
        let l = (0.412_221_470_8 * r + 0.536_332_536_3 * g + 0.051_445_992_9 * b).cbrt();
        let m = (0.211_903_498_2 * r + 0.680_699_545_1 * g + 0.107_396_956_6 * b).cbrt();
        let s = (0.088_302_461_9 * r + 0.281_718_837_6 * g + 0.629_978_700_5 * b).cbrt();
        [
            0.210_454_255_3 * l + 0.793_617_785_0 * m - 0.004_072_046_8 * s,
            1.977_998_495_1 * l - 2.428_592_205_0 * m + 0.450_593_709_9 * s,
            0.025_904_037_1 * l + 0.782_771_766_2 * m - 0.808_675_766_0 * s,
        ]
    };
    let (a, b) = (lab(a), lab(b));
    a.iter().zip(b).map(|(a, b)| (a - b).powi(2)).sum::<f64>().sqrt()
}

fn value(colour: Colour, theme: usize) -> &'static str {
    Colour::ALL.iter().find(|(found, _)| *found == colour).unwrap().1[theme]
}

/// WCAG 2.2, success criteria 1.4.3 (text, 4.5) and 1.4.11 (marks, 3).
#[test]
fn text_and_marks_stand_out_from_what_they_lie_on() {
    use Colour::{Canopy, Dead, Edge, Goal, Ground, Ink, Met, Quiet, Tape, Unknown};
    for theme in 0..3 {
        for (text, ground) in [(Ink, Ground), (Quiet, Ground), (Ink, Tape), (Ink, Met), (Goal, Ground)] {
            let found = contrast(value(text, theme), value(ground, theme));
            assert!(found >= 4.5, "{text:?} on {ground:?} in theme {theme}: {found:.2}");
        }
        let tones = (0..6).map(|number| (Tone(number).into(), Ground));
        let marks = [(Canopy, Tape), (Edge, Ground), (Dead, Ground), (Unknown, Ground), (Goal, Met)];
        for (mark, ground) in tones.chain(marks) {
            let found = contrast(value(mark, theme), value(ground, theme));
            assert!(found >= 3.0, "{mark:?} on {ground:?} in theme {theme}: {found:.2}");
        }
    }
}

/// Full loss of one kind of cone as in Machado, Oliveira and Fernandes 2009, table of severity 1.0 (matrices
/// from memory; each row adds up to 1). The limit of 0.1 in Oklab is ours: common practice, no source.
#[test]
fn species_colours_stay_apart_for_colour_blind_readers() {
    let eyes = [
        [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]],
        [
            [0.152_286, 1.052_583, -0.204_868],
            [0.114_503, 0.786_281, 0.099_216],
            [-0.003_882, -0.048_116, 1.051_998],
        ],
        [
            [0.367_322, 0.860_646, -0.227_968],
            [0.280_085, 0.672_501, 0.047_413],
            [-0.011_820, 0.042_940, 0.968_881],
        ],
        [
            [1.255_528, -0.076_749, -0.178_779],
            [-0.078_411, 0.930_809, 0.147_602],
            [0.004_733, 0.691_367, 0.303_900],
        ],
    ];
    for theme in 0..3 {
        for eye in &eyes {
            let seen = [0, 1, 2, 3, 4, 5].map(|number| times(eye, linear(value(Tone(number).into(), theme))));
            for (at, &first) in seen.iter().enumerate() {
                for (other, &second) in seen.iter().enumerate().skip(at + 1) {
                    let found = distance(first, second);
                    assert!(found >= 0.1, "tones {at} and {other} in theme {theme}: {found:.3}");
                }
            }
        }
    }
}

#[test]
fn every_colour_has_its_rules_in_every_theme() {
    for (colour, [light, dark, print]) in Colour::ALL {
        let name = colour.name();
        for rule in [format!(".figure-fill-{name}{{fill:var("), format!(".figure-line-{name}{{stroke:var(")] {
            assert_eq!(STYLESHEET.matches(&rule).count(), 1, "{rule}");
        }
        let declared = |value: &str| STYLESHEET.matches(&format!("--figure-{name}:{value};")).count();
        assert!(declared(light) >= 2 && declared(dark) >= 2 && declared(print) >= 2, "{name}");
        assert_eq!(STYLESHEET.matches(&format!("--figure-{name}:")).count(), 7, "{name}");
    }
    assert_eq!(STYLESHEET.matches('{').count(), STYLESHEET.matches('}').count());
}

#[test]
fn the_screen_gets_classes_and_paper_gets_colours() {
    let (fill, line) = (Some(Colour::Tape), Some(Colour::Edge));
    assert_eq!(Palette::screen().attributes(fill, line), " class=\"figure-fill-tape figure-line-edge\"");
    assert_eq!(Palette::print().attributes(fill, line), " fill=\"#f5ecd0\" stroke=\"#6b5a2a\"");
}
