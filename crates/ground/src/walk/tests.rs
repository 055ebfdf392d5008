use super::*;
use crate::local::Local;
use tautline_survey::boundary::{Boundary, Pair, Part, Reference, Role, Shape};

/// Places in metres about a middle.
fn place(x: i64, y: i64) -> Position {
    Local::about(Position::new(42.3, -113.7).unwrap()).back(Point { x: x * 1000, y: y * 1000 })
}

fn ring(corners: &[(i64, i64)]) -> Vec<Pair> {
    let pair = |&(x, y): &(i64, i64)| [place(x, y).longitude(), place(x, y).latitude()];
    corners.iter().chain(corners.first()).map(pair).collect()
}

fn site(parts: Vec<(Role, Shape)>) -> Site {
    let part = |(number, (role, shape))| Part { number, reference: Reference::default(), role, shape };
    let parts = (1..).zip(parts).map(part).collect();
    Site::of(&Boundary { parts, ..Boundary::default() }).unwrap()
}

fn ground(corners: &[(i64, i64)]) -> (Role, Shape) {
    (Role::Stratum(None), Shape::Areas(vec![vec![ring(corners)]]))
}

fn kept(shape: Shape, crossed: Option<bool>) -> (Role, Shape) {
    (Role::KeepOut { buffer: 0, crossed }, shape)
}

const SQUARE: [(i64, i64); 4] = [(-1000, -1000), (1000, -1000), (1000, 1000), (-1000, 1000)];

/// A lake of 600 by 600 m in the middle.
fn lake() -> Shape {
    Shape::Areas(vec![vec![ring(&[(-300, -300), (300, -300), (300, 300), (-300, 300)])]])
}

fn line(name: &str, from: (i64, i64), to: (i64, i64)) -> LaidLine {
    LaidLine {
        line: name.to_owned(),
        stratum: None,
        plot: None,
        reserve: false,
        start: end(place(from.0, from.1)),
        end: end(place(to.0, to.1)),
        true_bearing: 0,
        magnetic_bearing: None,
        draw: 0,
        turned: false,
        staked: false,
    }
}

/// From 400 m west of a lake's middle round two of its corners to 400 m east of it: √(100² + 300²) + 600 + √(100² + 300²) =
/// 1232.5 m by Pythagoras; over one that is crossed 800 m.
#[test]
fn a_leg_goes_round_a_lake_and_over_a_meadow() {
    let lines = [line("1", (-450, 0), (-400, 0)), line("2", (400, 0), (450, 0))];
    let walk = ["1".to_owned(), "2".to_owned()];
    for (crossed, metres, points) in [(None, 1232.5, 4), (Some(true), 800.0, 2)] {
        let site = site(vec![ground(&SQUARE), kept(lake(), crossed)]);
        let legs = Walking::of(&site).legs(&lines, &walk, None);
        let [leg] = &legs[..] else { panic!("{legs:?}") };
        assert_eq!((leg.from.as_deref(), leg.to.as_str(), leg.over), (Some("1"), "2", None));
        assert!((leg.metres - metres).abs() < 0.11 && leg.points.len() == points, "{leg:?}");
    }
}

/// By Pythagoras: straight, 1 – 2 – 3 is 800 + 1238.0 m and 1 – 3 – 2 is 900 + 1171.5 m. Round the lake the first is 1232.5 + 1257.4 m,
/// the second 900 + 1200.8 m.
#[test]
fn the_order_goes_by_what_is_walked() {
    let lines = [
        line("1", (-450, 0), (-400, 0)),
        line("2", (400, 0), (450, 0)),
        line("3", (-400, -900), (-350, -900)),
    ];
    let order = |site: &Site| {
        let read: Vec<&LaidLine> = lines.iter().collect();
        Walking::of(site).order(&read, 3, Some(place(-450, 0)))
    };
    assert_eq!(order(&site(vec![ground(&SQUARE)])), ["1", "2", "3"]);
    assert_eq!(order(&site(vec![ground(&SQUARE), kept(lake(), None)])), ["1", "3", "2"]);
}

/// A fence from edge to edge that isn't crossed leaves no way round on the site, one beside it; a moat leaves none at all. Two fields
/// apart are walked between, and that is said; whoever comes from the road comes onto the site and nothing is said.
#[test]
fn what_no_way_was_found_round_is_said() {
    let lines = [line("1", (-450, 0), (-400, 0)), line("2", (400, 0), (450, 0))];
    let walk = ["1".to_owned(), "2".to_owned()];
    let over = |site: Site, from: Option<Position>| -> Vec<Option<Over>> {
        Walking::of(&site).legs(&lines, &walk, from).iter().map(|leg| leg.over).collect()
    };
    let fence = |from: i64, to: i64| Shape::Way(ring(&[(0, from), (0, to)])[..2].to_vec());
    let open = site(vec![ground(&SQUARE), kept(fence(-1000, 900), Some(false))]);
    assert_eq!(over(open, None), [None]);
    let closed = site(vec![ground(&SQUARE), kept(fence(-1100, 1100), Some(false))]);
    assert_eq!(over(closed, None), [Some(Over::Outside)]);
    let road = site(vec![ground(&SQUARE), kept(fence(-1100, 1100), None)]);
    assert_eq!(over(road, Some(place(-1500, 0))), [None, None]);
    let moat = Shape::Areas(vec![vec![
        ring(&[(-800, -300), (-100, -300), (-100, 300), (-800, 300)]),
        ring(&[(-700, -200), (-200, -200), (-200, 200), (-700, 200)]),
    ]]);
    assert_eq!(over(site(vec![ground(&SQUARE), kept(moat, None)]), None), [Some(Over::KeptOut)]);
    let west = [(-1000, -1000), (-100, -1000), (-100, 1000), (-1000, 1000)];
    let east = west.map(|(x, y)| (-x, y));
    assert_eq!(over(site(vec![ground(&west), ground(&east)]), None), [Some(Over::Outside)]);
}
