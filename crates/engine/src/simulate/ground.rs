//! A stand made ready for very many tapes: crowns sorted by place, so that a tape meets only those near it.

use super::stand::{Crown, Disc, Stand};
use super::tape::{Tape, under};
use crate::num::{count, sum::sum};
use core::f64::consts::PI;

/// The counted crowns of a stand, sorted into square cells by their centres.
///
/// The rectangle joins at opposite edges without end: a tape may start anywhere, run in any direction and be of any
/// length, and every place of the ground is as likely under it as any other.
#[derive(Clone, Debug)]
pub struct Ground {
    width: f64,
    height: f64,
    /// Largest radius of a counted crown.
    reach: f64,
    east: Axis,
    north: Axis,
    /// Where each cell's discs begin, row by row from the south; one more for the end of the last.
    starts: Vec<usize>,
    discs: Vec<Disc>,
}

/// Cells along one side of the rectangle.
#[derive(Clone, Copy, Debug)]
struct Axis {
    cells: i64,
    cell: f64,
}

impl Axis {
    fn over(extent: f64, at_least: f64) -> Self {
        let cells = whole(extent / at_least).max(1);
        Self { cells, cell: extent / real(cells) }
    }

    /// The cell of a place, counted on beyond the rectangle's edges.
    fn of(self, at: f64) -> i64 {
        whole(at / self.cell)
    }

    /// The same cell inside the rectangle, and how far it was moved to get there.
    fn inside(self, cell: i64) -> (usize, f64) {
        let inside = cell.rem_euclid(self.cells);
        (index(inside), real(cell - inside) * self.cell)
    }
}

fn whole(x: f64) -> i64 {
    #[expect(clippy::cast_possible_truncation, reason = "numbers of cells are far below 2^53")]
    let whole = x.floor() as i64;
    whole
}

fn index(cells: i64) -> usize {
    usize::try_from(cells).expect("a number of cells isn't negative")
}

fn real(n: i64) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "numbers of cells are far below 2^53")]
    let real = n as f64;
    real
}

impl Ground {
    /// Sorts the crowns of a stand that count, by their outlines; openings are canopy here.
    pub fn of(stand: &Stand, counts: impl Fn(&Crown) -> bool) -> Self {
        let (width, height) = (stand.width, stand.height);
        let inside = |disc: &Disc| (0.0..width).contains(&disc.x) && (0.0..height).contains(&disc.y);
        // a crown over the edge is in the stand once on each side: the one whose centre is inside stands for all
        let discs: Vec<Disc> =
            stand.crowns.iter().filter(|crown| counts(crown)).map(|crown| crown.outline).collect();
        let mut discs: Vec<Disc> = discs.into_iter().filter(inside).collect();
        let reach = discs.iter().fold(0.0_f64, |reach, disc| reach.max(disc.radius));
        let cell = reach.max(width.max(height) / 1_000.0);
        let (east, north) = (Axis::over(width, cell), Axis::over(height, cell));
        let mut ground = Self { width, height, reach, east, north, starts: Vec::new(), discs: Vec::new() };
        discs.sort_by_key(|disc| ground.cell(disc));
        let cells = index(east.cells * north.cells);
        ground.starts =
            (0..=cells).map(|cell| discs.partition_point(|disc| ground.cell(disc) < cell)).collect();
        ground.discs = discs;
        ground
    }

    fn cell(&self, disc: &Disc) -> usize {
        let (column, row) =
            (self.east.inside(self.east.of(disc.x)).0, self.north.inside(self.north.of(disc.y)).0);
        self.number(column, row)
    }

    fn number(&self, column: usize, row: usize) -> usize {
        row * index(self.east.cells) + column
    }

    /// The stretches of a tape under each crown, in the order of their starts, written over `stretches`.
    ///
    /// [`overlap_once`] makes the canopy of them.
    ///
    /// # Units
    /// metres from the tape's zero
    pub fn along(&self, tape: &Tape, stretches: &mut Vec<(f64, f64)>) {
        stretches.clear();
        let heading = tape.heading();
        self.near(tape, |disc| {
            if let Some((start, stop)) = under(disc, tape, heading) {
                let (start, stop) = (start.max(0.0), stop.min(tape.length));
                if start < stop {
                    stretches.push((start, stop));
                }
            }
        });
        stretches.sort_unstable_by(|a, b| a.0.total_cmp(&b.0));
    }

    /// The discs near a tape, each moved to where the tape meets it.
    ///
    /// Strips of cells across the tape's steeper side are walked; in each lie those within reach of the tape's line.
    fn near(&self, tape: &Tape, mut meet: impl FnMut(&Disc)) {
        let heading = tape.heading();
        let eastward = heading.east.abs() >= heading.north.abs();
        let (along, across) = if eastward { (self.east, self.north) } else { (self.north, self.east) };
        let (from, aside, ahead, drift) = if eastward {
            (tape.x, tape.y, heading.east, heading.north)
        } else {
            (tape.y, tape.x, heading.north, heading.east)
        };
        let (slope, wide) = (drift / ahead, self.reach / ahead.abs());
        let to = from + tape.length * ahead;
        for strip in along.of(from.min(to) - self.reach)..=along.of(from.max(to) + self.reach) {
            let edge = |strip: i64| aside + (real(strip) * along.cell - from) * slope;
            let (one, other) = (edge(strip), edge(strip + 1));
            for cell in across.of(one.min(other) - wide)..=across.of(one.max(other) + wide) {
                let (column, row) = if eastward { (strip, cell) } else { (cell, strip) };
                let ((column, east), (row, north)) = (self.east.inside(column), self.north.inside(row));
                let number = self.number(column, row);
                for disc in &self.discs[self.starts[number]..self.starts[number + 1]] {
                    meet(&Disc { x: disc.x + east, y: disc.y + north, ..*disc });
                }
            }
        }
    }

    /// The sum of all crowns' areas as a share of the rectangle, overlap counted as often as it is there.
    pub fn sum(&self) -> f64 {
        sum(self.discs.iter().map(|disc| PI * disc.radius * disc.radius)) / (self.width * self.height)
    }

    /// The cover that is really there: share of the rectangle under the crowns, overlap counted once.
    ///
    /// The rectangle is swept by exact lines to the east, about `spacing` apart.
    ///
    /// # Units
    /// share of the ground; `spacing` in metres, far smaller than a crown
    pub fn cover(&self, spacing: f64) -> f64 {
        let sweeps = index(whole(self.height / spacing).max(1));
        let mut stretches = Vec::new();
        let covered = (0..sweeps).map(|sweep| {
            let y = self.height * (count(sweep) + 0.5) / count(sweeps);
            self.along(&Tape { x: 0.0, y, direction: 0.0, length: self.width }, &mut stretches);
            overlap_once(&mut stretches);
            sum(stretches.iter().map(|(start, stop)| stop - start))
        });
        sum(covered) / (count(sweeps) * self.width)
    }
}

/// Joins stretches that overlap or touch, given in the order of their starts.
pub fn overlap_once(stretches: &mut Vec<(f64, f64)>) {
    stretches.dedup_by(|next, before| {
        let joins = next.0 <= before.1;
        if joins {
            before.1 = before.1.max(next.1);
        }
        joins
    });
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::num::math::{cos, sin};
    use crate::seed::Seed;
    use crate::simulate::{Openings, Pattern, Species};

    fn stand() -> Stand {
        let pattern = Pattern::Clumped { clumps: 0.02, spread: 2.0 };
        let species = Species {
            density: 0.3,
            diameter: 0.8,
            diameter_spread: 0.4,
            dead: 0.2,
            pattern,
            openings: Openings::NONE,
        };
        Stand::draw(&[species], 40.0, 30.0, Seed::from_purpose("test ground", &[]))
    }

    /// The same stretches as from all crowns one by one, for tapes inside the rectangle.
    #[test]
    fn nothing_near_a_tape_is_missed() {
        let (stand, mut found) = (stand(), Vec::new());
        let ground = Ground::of(&stand, |crown| crown.live);
        let mut random = Seed::from_purpose("test tapes", &[]).stream();
        let mut met = 0;
        for _ in 0..2_000 {
            let direction = 6.3 * random.uniform();
            let length = 14.0 * random.uniform();
            let (x, y) = (15.0 + 10.0 * random.uniform(), 15.0);
            let tape = Tape { x, y, direction, length };
            ground.along(&tape, &mut found);
            overlap_once(&mut found);
            let mut expected: Vec<(f64, f64)> = Vec::new();
            for chord in stand.along(&tape).iter().filter(|chord| chord.live) {
                match expected.last_mut() {
                    Some(last) if chord.start <= last.1 => last.1 = last.1.max(chord.stop),
                    _ => expected.push((chord.start, chord.stop)),
                }
            }
            assert_eq!(found.len(), expected.len(), "{tape:?}");
            for (found, expected) in found.iter().zip(&expected) {
                assert!(
                    (found.0 - expected.0).abs() < 1e-9 && (found.1 - expected.1).abs() < 1e-9,
                    "{tape:?}"
                );
            }
            met += found.len();
        }
        assert!(met > 1_000, "{met}");
    }

    /// A tape once around the rectangle reads the same wherever its zero lies, and meets what stands at the edge.
    #[test]
    fn the_ground_joins_at_its_edges() {
        let ground = Ground::of(&stand(), |crown| crown.live);
        let covered = |x: f64, y: f64, direction: f64, length: f64| {
            let mut found = Vec::new();
            ground.along(&Tape { x, y, direction, length }, &mut found);
            overlap_once(&mut found);
            found.iter().map(|(start, stop)| stop - start).sum::<f64>()
        };
        for step in 0..30 {
            let y = f64::from(step);
            let once = covered(0.0, y, 0.0, 40.0);
            assert!((covered(-17.3, y, 0.0, 40.0) - once).abs() < 1e-9);
            assert!((covered(120.0, y - 60.0, 0.0, 80.0) - 2.0 * once).abs() < 1e-9);
            let back = (3.0 + 25.0 * cos(1.1), y + 25.0 * sin(1.1), 1.1 + PI);
            assert!((covered(3.0, y, 1.1, 25.0) - covered(back.0, back.1, back.2, 25.0)).abs() < 1e-9);
        }
    }

    #[test]
    fn cover_is_the_stand_s() {
        let stand = stand();
        let ground = Ground::of(&stand, |crown| crown.live);
        assert!((ground.cover(0.01) - stand.cover(0.01, true, |crown| crown.live)).abs() < 1e-9);
        let bare = Ground::of(&stand, |_| false);
        assert!(bare.cover(1.0) == 0.0);
    }

    /// Two discs of radius 1 on 4 m × 4 m, one upon the other: 2π/16 in all, on a tape through both 4 m of 2 m.
    #[test]
    fn the_sum_counts_overlap_as_often_as_it_is_there() {
        let disc = Disc { x: 2.0, y: 2.0, radius: 1.0 };
        let crown = Crown { plant: 0, species: 0, live: true, outline: disc, openings: Vec::new() };
        let ground =
            Ground::of(&Stand { width: 4.0, height: 4.0, crowns: vec![crown.clone(), crown] }, |_| true);
        assert!((ground.sum() - PI / 8.0).abs() < 1e-12);
        let mut found = Vec::new();
        ground.along(&Tape { x: 0.0, y: 2.0, direction: 0.0, length: 4.0 }, &mut found);
        assert_eq!(found, [(1.0, 3.0), (1.0, 3.0)]);
        overlap_once(&mut found);
        assert_eq!(found, [(1.0, 3.0)]);
    }
}
