//! Laws of a layout, its balance against simple random points, and what each edge rule does to the ground at the edge.

use super::layout::{Ask, Bearing, Edge, Layout, Shape, lay_out};
use super::plane::{Point, Segment};
use super::points::Design;
use super::region::{KeepOut, Polygon, Region, Shape as KeepOutShape};
use crate::num::count;
use crate::num::sum::{mean, variance};
use crate::seed::Seed;

fn region(points: &[(i64, i64)]) -> Region {
    let metres = |&(x, y): &(i64, i64)| Point { x: 1000 * x, y: 1000 * y };
    Region { polygons: vec![Polygon { rings: vec![points.iter().map(metres).collect()] }] }
}

fn square() -> Region {
    region(&[(0, 0), (400, 0), (400, 400), (0, 400)])
}

/// A site with a bay and a nose.
fn odd() -> Region {
    region(&[(0, 0), (500, 0), (500, 180), (320, 200), (330, 420), (120, 380), (180, 210), (20, 240)])
}

const ASK: Ask = Ask {
    design: Design::Balanced,
    wanted: 10,
    reserve: 4,
    shape: Shape::Line,
    length: 50_000,
    bearing: Bearing::Random,
    edge: Edge::Turn,
    apart: 20_000,
};

fn drawn(region: &Region, keep_out: &[KeepOut], ask: &Ask, seed: u64) -> Layout {
    lay_out(region, keep_out, &[], ask, Seed::from_purpose("test layout", &[seed]))
}

const DESIGNS: [Design; 3] = [Design::Balanced, Design::Random, Design::Systematic];

#[test]
fn every_line_is_inside_away_from_roads_and_from_each_other() {
    let road = [(250_000, -10_000), (260_000, 600_000)].map(|(x, y)| Point { x, y });
    let road = KeepOut { shape: KeepOutShape::Way(road.to_vec()), buffer: 15_000, crossed: true };
    let shapes = [Shape::Line, Shape::Middle, Shape::Spokes { lines: 3, offset: 5_000 }];
    for design in DESIGNS {
        for (shape, length) in shapes.into_iter().zip([50_000, 50_000, 20_000]) {
            for edge in [Edge::Redraw, Edge::Turn] {
                let ask = Ask { design, shape, length, edge, ..ASK };
                let layout = drawn(&odd(), core::slice::from_ref(&road), &ask, 1);
                assert_eq!((layout.placed.len(), layout.reserve.len()), (10, 4), "{ask:?}");
                let all: Vec<_> = layout.placed.iter().chain(&layout.reserve).collect();
                for (at, one) in all.iter().enumerate() {
                    for (line, _) in &one.lines {
                        assert!(odd().contains_all_of(*line) && !road.bars(*line));
                        let others = all.iter().skip(at + 1).flat_map(|other| &other.lines);
                        assert!(others.clone().all(|(other, _)| !other.nearer(*line, ask.apart)));
                    }
                }
            }
        }
    }
}

#[test]
fn the_same_seed_is_the_same_layout_and_the_reserve_only_follows() {
    for design in [Design::Balanced, Design::Random] {
        let ask = Ask { design, ..ASK };
        let layout = drawn(&odd(), &[], &ask, 7);
        assert_eq!(layout, drawn(&odd(), &[], &ask, 7));
        assert_ne!(layout.placed, drawn(&odd(), &[], &ask, 8).placed);
        let more = drawn(&odd(), &[], &Ask { reserve: 9, ..ask }, 7);
        assert_eq!((&layout.placed, &layout.reserve[..]), (&more.placed, &more.reserve[..4]));
    }
}

#[test]
fn lines_that_are_there_are_kept_away_from() {
    let there = Segment { from: Point { x: 100_000, y: 200_000 }, to: Point { x: 300_000, y: 200_000 } };
    let layout = lay_out(
        &square(),
        &[],
        &[there],
        &Ask { apart: 60_000, ..ASK },
        Seed::from_purpose("test there", &[]),
    );
    assert!(layout.placed.iter().all(|one| !one.lines[0].0.nearer(there, 60_000)));
    assert!(layout.given_up.too_near > 0);
}

#[test]
fn no_room_is_said_and_not_forced() {
    let small = region(&[(0, 0), (40, 0), (40, 40), (0, 40)]);
    for design in DESIGNS {
        let layout = drawn(&small, &[], &Ask { design, length: 60_000, ..ASK }, 1);
        assert!(layout.placed.is_empty() && layout.given_up.edge > 0, "{design:?}");
    }
    let nothing = Region { polygons: Vec::new() };
    assert!(drawn(&nothing, &[], &ASK, 1).placed.is_empty());
}

#[test]
fn bearings_are_as_asked() {
    let bearings = |bearing| -> Vec<u16> {
        let layout = drawn(&square(), &[], &Ask { bearing, edge: Edge::Redraw, wanted: 12, ..ASK }, 3);
        layout.placed.iter().map(|one| one.lines[0].1).collect()
    };
    assert!(bearings(Bearing::Fixed(40)).iter().all(|&bearing| bearing == 40));
    let across = bearings(Bearing::Across(20));
    assert!(across.contains(&110) && across.contains(&290) && across.iter().all(|b| [110, 290].contains(b)));
    let spokes = Ask { shape: Shape::Spokes { lines: 3, offset: 5_000 }, bearing: Bearing::Fixed(10), ..ASK };
    let plot = &drawn(&square(), &[], &Ask { apart: 5_000, ..spokes }, 1).placed[0];
    let turned = if plot.turned { 180 } else { 0 };
    let spokes: Vec<u16> = plot.lines.iter().map(|line| (line.1 + turned) % 360).collect();
    assert_eq!(spokes, [10, 130, 250]);
    assert_eq!(plot.lines[0].0.from, plot.point.on(10 + turned, 5_000));
}

/// Stevens and Olsen's measure: ground is given to its nearest point; the variance of what each point gets, next to
/// that of simple random points, is well below 1 for balanced ones (Robertson et al. 2013 print about 0.1 to 0.3).
///
/// # Source
/// Stevens, D.L. and A.R. Olsen 2004. Spatially balanced sampling of natural resources. JASA 99:262–278
#[test]
fn balanced_points_are_far_more_even_than_random_ones() {
    let ground: Vec<Point> = (0..50)
        .flat_map(|x| (0..50).map(move |y| Point { x: 10_000 * x + 5_000, y: 10_000 * y + 5_000 }))
        .filter(|&point| odd().contains(point))
        .collect();
    let unevenness = |design| -> f64 {
        let surveys: Vec<f64> = (0..150)
            .map(|seed| {
                let ask = Ask { design, wanted: 16, reserve: 0, length: 1, apart: 0, ..ASK };
                let points: Vec<Point> =
                    drawn(&odd(), &[], &ask, seed).placed.iter().map(|one| one.point).collect();
                assert_eq!(points.len(), 16);
                let mut share = [0.0; 16];
                for place in &ground {
                    let square = |a: i64, b: i64| (a - b) * (a - b);
                    let nearest = (0..points.len())
                        .min_by_key(|&at| square(points[at].x, place.x) + square(points[at].y, place.y));
                    share[nearest.expect("sixteen points")] += 16.0 / count(ground.len());
                }
                variance(&share)
            })
            .collect();
        mean(&surveys)
    };
    let random = unevenness(Design::Random);
    let (balanced, systematic) = (unevenness(Design::Balanced), unevenness(Design::Systematic));
    assert!(balanced / random < 0.4, "{balanced} {random}");
    assert!(systematic / random < 0.4, "{systematic} {random}");
}

/// Share of all line length that lies within 25 m of the west and of the east edge of a square of 400 m.
fn at_the_edges(ask: &Ask) -> [f64; 2] {
    let mut near = [0.0, 0.0];
    let mut all = 0.0;
    for seed in 0..400 {
        for one in drawn(&square(), &[], ask, seed).placed {
            for (line, _) in one.lines {
                for step in 0..50_i64 {
                    // the middle of each fiftieth of the line
                    let x = line.from.x + (line.to.x - line.from.x) * (2 * step + 1) / 100;
                    all += 1.0;
                    near[0] += if x < 25_000 { 1.0 } else { 0.0 };
                    near[1] += if x >= 375_000 { 1.0 } else { 0.0 };
                }
            }
        }
    }
    near.map(|share| share / all)
}

/// By hand, lines of 50 m to the east from starts anywhere on a square of 400 m. Redrawn: starts lie on 350 m; at x < 25
/// the chance to be read is x/50 of the inside's, so the strip of 25 m gets 25 · 12.5 / (350 · 50) = 1.79 % of the
/// length, on either side; an even share were 6.25 %. Turned: lines from the last 50 m run west, so the west strip gets
/// 25 · 12.5 / (400 · 50) = 1.56 % and the east strip 25 · 25 / (400 · 50) = 3.13 %.
#[test]
fn what_edge_rules_do_with_one_bearing_by_hand() {
    let ask = Ask {
        design: Design::Random,
        bearing: Bearing::Fixed(90),
        edge: Edge::Redraw,
        wanted: 20,
        reserve: 0,
        apart: 0,
        ..ASK
    };
    // 8000 lines; a line has up to half of its length in a strip: standard error below 0.0012
    let [west, east] = at_the_edges(&ask);
    assert!((west - 0.0179).abs() < 0.004 && (east - 0.0179).abs() < 0.004, "{west} {east}");
    let [west, east] = at_the_edges(&Ask { edge: Edge::Turn, ..ask });
    assert!((west - 0.0156).abs() < 0.004 && (east - 0.0313).abs() < 0.004, "{west} {east}");
}

/// With bearings drawn at random, turning reads the ground at the edge more evenly than redrawing (docs/plan.md).
#[test]
fn turning_is_kinder_to_the_edge_than_redrawing() {
    let ask = Ask { design: Design::Random, wanted: 20, reserve: 0, apart: 0, edge: Edge::Redraw, ..ASK };
    let [redrawn, _] = at_the_edges(&ask);
    let [turned, _] = at_the_edges(&Ask { edge: Edge::Turn, ..ask });
    assert!(turned > redrawn, "{turned} {redrawn}");
}
