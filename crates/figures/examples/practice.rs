//! Writes a practice line of each level as a page, to look at: `cargo run -p tautline-figures --example practice > page.html`.

#![expect(clippy::print_stdout, reason = "an example that writes a page")]

use tautline_engine::length::{Division, Length, Notation, Unit};
use tautline_engine::practice::level::{Level, Wanted, draw};
use tautline_figures::practice::{Sight, Strips, Words, draw_line, draw_sight};
use tautline_figures::{Frame, Palette, STYLESHEET};

fn main() {
    println!(
        "<!DOCTYPE html><meta charset=\"utf-8\"><style>{STYLESHEET} body{{max-width:720px;margin:auto}}</style>"
    );
    let tape = Notation { unit: Unit::Inch, feet_and_inches: true, division: Division::Fraction(2) };
    for level in Level::ALL {
        let gap = Length::from_nanometres(63_500_000);
        let line = draw(&Wanted { level, length: Length::from_units(20, Unit::Foot), tape, gap, seed: 11 });
        let words = |text: &str| text.to_owned();
        let words = Words {
            species: ["fourwing saltbush", "shadscale", "winterfat", "greasewood"].map(words).to_vec(),
            dead: words("dead"),
            others: ["grass", "flower", "flower stalks", "litter", "rock"].map(words),
            edge: words("The edge that is read is the dark line."),
        };
        let each = Length::from_units(5, Unit::Foot);
        let strips = Strips { line: &line, from: Length::ZERO, to: line.length, each, words };
        let id = format!("level-{}", level.number());
        println!("{}", draw_line(&strips, &Frame::new(&id, 720, Palette::screen())));
    }
    let sight = Sight {
        height: Length::from_units(60, Unit::Centimetre),
        degrees: 20.0,
        height_words: "60 cm".to_owned(),
        angle_words: "20° from straight down".to_owned(),
        off_words: "60 cm × tan 20° = 22 cm further on".to_owned(),
        right_words: "straight above".to_owned(),
    };
    println!("{}", draw_sight(&sight, &Frame::new("sight", 480, Palette::screen())));
}
