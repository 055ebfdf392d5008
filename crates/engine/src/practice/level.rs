//! Practice lines drawn by level of difficulty, each with a known answer.

use super::line::{Other, PracticeLine, Round, Shrub, nearest};
use crate::length::{Length, Notation, Unit};
use crate::seed::{Random, Seed};
use crate::stretch::Stretch;

/// How hard a line is. Each level keeps what the one before it has.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Level {
    /// Whole shrubs of two species, clear ground between them.
    One,
    /// Openings in the crowns, some under the gap rule and some over it; grass.
    Two,
    /// Dead parts and dead shrubs; litter and rock.
    Three,
    /// Crowns of two species over each other, crowns that only hang over the tape, small shrubs under large ones;
    /// flowers and flower stalks.
    Four,
    /// Four species, a slope, neighbours closer than the gap rule, openings of exactly the rule.
    Five,
}

impl Level {
    /// Every level, easiest first.
    pub const ALL: [Self; 5] = [Self::One, Self::Two, Self::Three, Self::Four, Self::Five];

    /// The level with this number.
    pub fn from_number(number: u8) -> Option<Self> {
        Self::ALL.into_iter().find(|level| level.number() == number)
    }

    /// Its number, from 1.
    pub const fn number(self) -> u8 {
        self as u8 + 1
    }

    const fn species(self) -> u32 {
        match self {
            Self::One | Self::Two => 2,
            Self::Three | Self::Four => 3,
            Self::Five => 4,
        }
    }
}

/// What a practice line is to be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Wanted {
    /// How hard.
    pub level: Level,
    /// How long.
    pub length: Length,
    /// How the tape is numbered and divided.
    pub tape: Notation,
    /// The gap rule that openings are drawn about; zero for none.
    pub gap: Length,
    /// The number of the line: the same number is the same line.
    pub seed: u64,
}

/// Draws a practice line.
///
/// # Semantics
/// every edge stands on a division of the tape, so that whoever reads well reads the key exactly
/// # Example
/// ```
/// use tautline_engine::length::{Length, Notation, Unit};
/// use tautline_engine::practice::level::{Level, Wanted, draw};
/// let wanted = Wanted {
///     level: Level::Three,
///     length: Length::from_units(20, Unit::Metre),
///     tape: Notation::decimals(Unit::Centimetre, 0),
///     gap: Length::from_units(5, Unit::Centimetre),
///     seed: 7,
/// };
/// assert_eq!(draw(&wanted), draw(&wanted));
/// assert!(draw(&wanted).shrubs.len() > 5);
/// ```
pub fn draw(wanted: &Wanted) -> PracticeLine {
    let nanometres = |length: Length| length.nanometres().unsigned_abs();
    let data =
        [u64::from(wanted.level.number()), wanted.seed, nanometres(wanted.length), nanometres(wanted.gap)];
    let mut pen = Pen {
        wanted,
        random: Seed::from_purpose("practice line", &data).stream(),
        line: PracticeLine {
            length: wanted.length,
            tape: wanted.tape,
            width: nearest(0.013, Length::from_nanometres(1_000_000)),
            slope: 0,
            species: wanted.level.species(),
            shrubs: Vec::new(),
            others: Vec::new(),
        },
    };
    if wanted.level >= Level::Five {
        pen.line.slope = 2 * u8::try_from(2 + pen.random.below(9)).unwrap_or(2);
    }
    pen.fill();
    pen.line
}

struct Pen<'a> {
    wanted: &'a Wanted,
    random: Random,
    line: PracticeLine,
}

impl Pen<'_> {
    fn at_least(&self, level: Level) -> bool {
        self.wanted.level >= level
    }

    fn chance(&mut self, share: f64) -> bool {
        self.random.uniform() < share
    }

    /// A length between two, in metres, on a division of the tape and at least one division long.
    fn length(&mut self, least: f64, most: f64) -> Length {
        let metres = least + (most - least) * self.random.uniform();
        nearest(metres, self.wanted.tape.step()).max(self.wanted.tape.step())
    }

    fn fill(&mut self) {
        let mut from = self.length(0.15, 0.8);
        loop {
            let size = self.length(0.22, 1.1);
            let Some(cut) = Stretch::new(from, from + size).filter(|cut| cut.stop() < self.wanted.length)
            else {
                return;
            };
            let stop = self.clump(cut);
            let gap = self.clear();
            from = stop + gap;
            if self.at_least(Level::Two) {
                self.between(stop, gap);
            }
        }
    }

    fn on_a_division(&self, length: Length) -> bool {
        length.nanometres() % self.wanted.tape.step().nanometres() == 0
    }

    /// Bare ground that no gap rule closes, or, on the hardest level, now and then a gap that it does.
    fn clear(&mut self) -> Length {
        let step = self.wanted.tape.step().in_unit(Unit::Metre);
        let rule = self.wanted.gap.in_unit(Unit::Metre);
        if self.at_least(Level::Five) && rule > 4.0 * step && self.chance(0.12) {
            return self.length(3.0 * step, rule - step);
        }
        let least = (rule + 8.0 * step).max(0.12);
        self.length(least, least + 1.1)
    }

    /// One shrub and what belongs to it; gives back where it all ends.
    fn clump(&mut self, cut: Stretch) -> Length {
        let species = self.species();
        let size = cut.length().in_unit(Unit::Metre);
        // a crown whose middle stands far off only hangs over
        let hangs_over = self.at_least(Level::Four) && self.chance(0.25);
        let (least, most) = if hangs_over { (0.5, 0.9) } else { (0.0, 0.3) };
        let aside = self.aside(least * size, most * size);
        let height = self.length(0.3, 1.2);
        let mut shrub = Shrub {
            species,
            crown: Round { cut, aside },
            openings: Vec::new(),
            dead: Vec::new(),
            alive: true,
            height,
        };
        if self.at_least(Level::Three) && self.chance(0.12) {
            shrub.alive = false;
        } else {
            if self.at_least(Level::Two) && self.chance(0.6) {
                self.open(&mut shrub);
            }
            if self.at_least(Level::Three) && shrub.openings.is_empty() && self.chance(0.7) {
                self.kill(&mut shrub);
            }
        }
        let whole = shrub.alive && shrub.dead.is_empty();
        self.line.shrubs.push(shrub);
        let mut stop = cut.stop();
        if whole && self.at_least(Level::Four) {
            let what = self.random.uniform();
            if what < 0.45 {
                stop = stop.max(self.second(cut, species, height));
            } else if what < 0.65 {
                stop = stop.max(self.beside(Other::Stalks, cut.stop(), 0.06, 0.16));
            }
        }
        stop
    }

    fn species(&mut self) -> u32 {
        u32::try_from(self.random.below(u64::from(self.line.species))).unwrap_or(0)
    }

    fn aside(&mut self, least: f64, most: f64) -> Length {
        let length = self.length(least, most);
        if self.chance(0.5) { length } else { Length::ZERO - length }
    }

    /// A stretch inside another, some divisions away from its ends.
    fn inside(&mut self, cut: Stretch, size: Length) -> Option<Stretch> {
        let step = self.wanted.tape.step().in_unit(Unit::Metre);
        let margin = (5.0 * step).max(0.05);
        let room = (cut.length() - size).in_unit(Unit::Metre) - 2.0 * margin;
        if room < 0.0 {
            return None;
        }
        let start = cut.start() + self.length(margin, margin + room);
        Stretch::new(start, start + size)
    }

    /// An opening in the crown, under the gap rule or over it.
    fn open(&mut self, shrub: &mut Shrub) {
        let step = self.wanted.tape.step().in_unit(Unit::Metre);
        let rule = self.wanted.gap.in_unit(Unit::Metre);
        let size = if rule <= 3.0 * step {
            self.length(3.0 * step, 0.15)
        } else if self.at_least(Level::Five) && self.on_a_division(self.wanted.gap) && self.chance(0.15) {
            self.wanted.gap
        } else if self.chance(0.5) {
            self.length((rule * 0.4).max(3.0 * step), (rule - step).max(3.0 * step))
        } else {
            self.length(rule + 3.0 * step, rule * 2.5)
        };
        if let Some(cut) = self.inside(shrub.crown.cut, size) {
            let aside = self.aside(0.0, size.in_unit(Unit::Metre) * 0.2);
            shrub.openings.push(Round { cut, aside });
        }
    }

    /// A dead part: at one end of the crown or inside it.
    fn kill(&mut self, shrub: &mut Shrub) {
        let crown = shrub.crown.cut;
        let width = crown.length().in_unit(Unit::Metre);
        let size = self.length(width * 0.25, width * 0.5);
        let at_end = Stretch::new(crown.stop() - size, crown.stop());
        let cut = if self.chance(0.6) { at_end } else { self.inside(crown, size).or(at_end) };
        let aside = self.aside(0.0, size.in_unit(Unit::Metre) * 0.15);
        shrub.dead.extend(cut.map(|cut| Round { cut, aside }));
    }

    /// Another species over or under the first; gives back where it ends.
    fn second(&mut self, first: Stretch, species: u32, height: Length) -> Length {
        let width = first.length().in_unit(Unit::Metre);
        let other = (species + 1) % self.line.species;
        let tall = height.in_unit(Unit::Metre);
        let under = self.chance(0.5);
        let (cut, height) = if under {
            let size = self.length(width * 0.3, width * 0.6);
            (self.inside(first, size), self.length(0.15, tall * 0.6))
        } else {
            let start = first.stop() - self.length(width * 0.2, width * 0.6);
            let size = self.length(0.3, 0.9);
            (
                Stretch::new(start, (start + size).max(first.stop() + self.wanted.tape.step())),
                self.length(tall * 1.1, tall * 1.6),
            )
        };
        let Some(cut) = cut.filter(|cut| cut.stop() < self.wanted.length) else { return first.stop() };
        let aside = self.aside(0.0, 0.3 * cut.length().in_unit(Unit::Metre));
        let (openings, dead) = (Vec::new(), Vec::new());
        self.line.shrubs.push(Shrub {
            species: other,
            crown: Round { cut, aside },
            openings,
            dead,
            alive: true,
            height,
        });
        cut.stop()
    }

    /// Something that doesn't count, from a place on; gives back where it ends.
    fn beside(&mut self, what: Other, from: Length, least: f64, most: f64) -> Length {
        let size = self.length(least, most);
        let Some(cut) = Stretch::new(from, from + size).filter(|cut| cut.stop() < self.wanted.length) else {
            return from;
        };
        let aside = self.aside(0.0, 0.3 * size.in_unit(Unit::Metre));
        self.line.others.push((what, Round { cut, aside }));
        cut.stop()
    }

    /// What lies on the clear ground between two shrubs.
    fn between(&mut self, from: Length, gap: Length) {
        let room = gap.in_unit(Unit::Metre);
        // so far from either shrub that reading it as canopy makes an intercept of its own
        let margin =
            self.wanted.gap.in_unit(Unit::Metre) + 4.0 * self.wanted.tape.step().in_unit(Unit::Metre);
        let space = room - 2.0 * margin;
        if space < 0.06 || !self.chance(0.6) {
            return;
        }
        let what: &[Other] = match self.wanted.level {
            Level::One | Level::Two => &[Other::Grass],
            Level::Three => &[Other::Grass, Other::Litter, Other::Rock],
            Level::Four | Level::Five => &[Other::Grass, Other::Flower, Other::Litter, Other::Rock],
        };
        let pick = usize::try_from(self.random.below(what.len() as u64)).unwrap_or(0);
        let start = from + self.length(margin, margin + space * 0.4);
        self.beside(what[pick], start, space * 0.3, space * 0.55);
    }
}
