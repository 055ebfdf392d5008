use super::*;
use crate::num::math::sqrt;

fn at((x, y): (i64, i64)) -> Point {
    Point { x: x * 1000, y: y * 1000 }
}

fn ring(places: &[(i64, i64)]) -> Polygon {
    Polygon { rings: vec![places.iter().copied().map(at).collect()] }
}

fn square(low: i64, high: i64) -> Polygon {
    ring(&[(low, low), (high, low), (high, high), (low, high)])
}

fn area(polygon: Polygon, metres: i64) -> KeepOut {
    KeepOut { shape: Shape::Area(polygon), buffer: metres * 1000, crossed: false }
}

fn length(walkable: &Walkable, from: (i64, i64), to: (i64, i64)) -> Option<f64> {
    let way = walkable.way(&walkable.stand(at(from)), &walkable.stand(at(to)))?;
    let ends = (way.points.first().copied(), way.points.last().copied());
    assert_eq!(ends, (Some(at(from)), Some(at(to))));
    let sum: f64 = way.points.windows(2).map(|pair| apart(pair[0], pair[1])).sum();
    assert!((sum - way.length).abs() < 1e-6);
    for pair in way.points.windows(2) {
        assert!(walkable.is_free(Segment { from: pair[0], to: pair[1] }));
    }
    Some(way.length / 1000.0)
}

/// By Pythagoras: past a square of 60 m, 40 m off its middle on either side, round two corners: 50 + 60 + 50 m. With a buffer of
/// 10 m the corners stand 10 m off both ways: 2 · √(30² + 40²) + 80 = 180 m. Round one corner alone: 50 + 50 m.
#[test]
fn round_a_square_in_the_way() {
    for turned in [false, true] {
        let mut pond = square(0, 60);
        if turned {
            pond.rings[0].reverse();
        }
        let walkable = Walkable::new(&[area(pond.clone(), 0)], None);
        assert!((length(&walkable, (-40, 30), (100, 30)).unwrap() - 160.0).abs() < 0.02);
        assert!((length(&walkable, (-30, 20), (20, -30)).unwrap() - sqrt(5000.0)).abs() < 0.02, "beside it");
        assert!((length(&walkable, (-30, 40), (40, -30)).unwrap() - 100.0).abs() < 0.02);
        let buffered = Walkable::new(&[area(pond, 10)], None);
        assert!((length(&buffered, (-40, 30), (100, 30)).unwrap() - 180.0).abs() < 0.02);
    }
}

/// A fence of 80 m is gone round at its nearer end, 30 m away: 2 · √(40² + 30²) m; one that is crossed, as a road is, straight.
#[test]
fn a_fence_is_gone_round_and_a_road_crossed() {
    let fence =
        |crossed| KeepOut { shape: Shape::Way([(0, -30), (0, 50)].map(at).to_vec()), buffer: 0, crossed };
    let round = Walkable::new(&[fence(false)], None);
    assert!((length(&round, (-40, 0), (40, 0)).unwrap() - 100.0).abs() < 0.02);
    let over = Walkable::new(&[fence(true)], None);
    assert!((length(&over, (-40, 0), (40, 0)).unwrap() - 80.0).abs() < 1e-9);
}

/// A site like a U of 100 m, 20 m wide in its arms, its gap 60 m wide and 80 m deep: from arm to arm through the bottom, past the two
/// corners that stand into the site, √(10² + 30²) + 60 + √(10² + 30²) m; without the site's edge 80 m straight.
#[test]
fn within_the_site_where_that_is_possible() {
    let site = ring(&[(0, 0), (100, 0), (100, 100), (80, 100), (80, 20), (20, 20), (20, 100), (0, 100)]);
    let region = Region { polygons: vec![site] };
    let walkable = Walkable::new(&[], Some(&region));
    let wanted = 60.0 + 2.0 * sqrt(10.0 * 10.0 + 30.0 * 30.0);
    assert!((length(&walkable, (10, 50), (90, 50)).unwrap() - wanted).abs() < 0.02);
    assert!((length(&Walkable::new(&[], None), (10, 50), (90, 50)).unwrap() - 80.0).abs() < 1e-9);
    // along the edge itself, and over a crack of a millimetre between two strata
    assert!(length(&walkable, (20, 20), (80, 20)).is_some());
    let mut second = square(100, 200);
    for point in &mut second.rings[0] {
        point.x += 1;
        point.y -= 100_000;
    }
    let two = Region { polygons: vec![square(0, 100), second] };
    assert!((length(&Walkable::new(&[], Some(&two)), (50, 50), (150, 50)).unwrap() - 100.0).abs() < 1e-9);
}

/// No way leads out of a moat, none to a site apart, and none from within what is kept out of.
#[test]
fn where_no_way_leads() {
    let mut moat = square(0, 100);
    moat.rings.push(square(20, 80).rings.remove(0));
    let walkable = Walkable::new(&[area(moat, 0)], None);
    assert_eq!(length(&walkable, (50, 50), (150, 50)), None);
    assert!((length(&walkable, (30, 50), (70, 50)).unwrap() - 40.0).abs() < 1e-9, "on the island");
    assert_eq!(length(&walkable, (10, 50), (150, 50)), None);
    let apart = Region { polygons: vec![square(0, 100), square(200, 300)] };
    assert_eq!(length(&Walkable::new(&[], Some(&apart)), (50, 50), (250, 250)), None);
}

/// A round lake of 50 m with a ragged shore is gone round by the corners of its hull where the others are too many. Seen from 94.34 m
/// off its middle, tangents of √(94.34² − 50²) = 80 m touch it, and between them lies an arc of 2 · atan(50 / 80): 160 + 55.86 m.
#[test]
fn a_shore_of_many_corners() {
    let lake = |corners: i32| {
        let place = |corner: i32| {
            let angle = 2.0 * PI * f64::from(corner) / f64::from(corners);
            let far = [50_000.0, 46_000.0, 48_000.0, 46_000.0][usize::try_from(corner % 4).unwrap()];
            #[expect(clippy::cast_possible_truncation, reason = "a lake")]
            let whole = |share: f64| (far * share).round() as i64;
            Point { x: whole(cos(angle)), y: whole(sin(angle)) }
        };
        area(Polygon { rings: vec![(0..corners).map(place).collect()] }, 0)
    };
    let places = [-94_340, 94_340].map(|x| Point { x, y: 0 });
    let found = |walkable: &Walkable| {
        let [from, to] = places.map(|place| walkable.stand(place));
        walkable.way(&from, &to).map(|way| way.length / 1000.0)
    };
    let few = Walkable::new(&[lake(400)], None);
    assert_eq!(few.corners.len(), 100);
    let length = found(&few).unwrap();
    assert!((length / 215.86 - 1.0).abs() < 0.002, "{length}");
    let many = Walkable::new(&[lake(1000)], None);
    assert!(many.corners.is_empty() && found(&many).is_none());
}
