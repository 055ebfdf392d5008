use super::*;
use tautline_engine::place::baseline::{Sides, Starts};
use tautline_engine::place::layout::Bearing;
use tautline_survey::boundary::{Boundary, Part, Reference, Role, Shape as Outline};

pub(crate) fn site() -> Site {
    let part = |number, name: &str, west: f64, east: f64| Part {
        number,
        reference: Reference::default(),
        role: Role::Stratum(Some(name.to_owned())),
        shape: Outline::Areas(vec![vec![vec![
            [west, 42.30],
            [east, 42.30],
            [east, 42.31],
            [west, 42.31],
            [west, 42.30],
        ]]]),
    };
    let parts = vec![part(1, "flat", -113.70, -113.68), part(2, "wash", -113.68, -113.675)];
    Site::of(&Boundary { parts, ..Boundary::default() }).unwrap()
}

pub(crate) fn wanted(lines: usize) -> Wanted {
    Wanted {
        name: "Invented".into(),
        names: String::new(),
        ask: Ask {
            design: Design::Balanced,
            wanted: lines,
            reserve: 4,
            shape: Shape::Line,
            length: 50_000,
            bearing: Bearing::Random,
            edge: Edge::Turn,
            apart: 50_000,
        },
        shares: Vec::new(),
        bearings: Vec::new(),
        line_length: "50 m".into(),
        seed: 1,
        compass: Some((Date::new(2026, 6, 1).unwrap(), 1500.0)),
        batch: None,
        from: None,
        baseline: None,
        take_in: false,
        judged: None,
    }
}

/// Neyman's numbers, or anybody's, are laid out as they are; strata must be named, each once.
#[test]
fn strata_get_the_lines_that_were_said() {
    let shares = |flat: usize, wash: usize| vec![("wash".to_owned(), wash), ("flat".to_owned(), flat)];
    let said = lay(&site(), &Wanted { shares: shares(5, 9), ..wanted(14) }).unwrap();
    let placed: Vec<_> = said.strata.iter().map(|one| (one.name.as_deref().unwrap(), one.placed)).collect();
    assert_eq!(placed, [("flat", 5), ("wash", 9)]);
    let one = Wanted { shares: shares(5, 1), ..wanted(6) };
    assert_eq!(lay(&site(), &one).unwrap_err(), LayError::TooFewForStrata(4));
    let strata = LayError::Shares(vec!["flat".into(), "wash".into()]);
    for shares in [vec![("flat".to_owned(), 6)], [shares(5, 9), vec![("draw".to_owned(), 2)]].concat()] {
        assert_eq!(lay(&site(), &Wanted { shares, ..wanted(14) }).unwrap_err(), strata);
    }
}

/// Where the flat falls to 40° and the wash to 130°, lines across the slope lie along 130° or 310° on the one and along 40° or 220° on the
/// other; a stratum of which nothing is said goes by what is said of all; one that isn't there is refused.
#[test]
fn each_stratum_has_its_own_way_down() {
    let mut wanted = wanted(10);
    wanted.ask.bearing = Bearing::Across(40);
    wanted.bearings = vec![("wash".to_owned(), Bearing::Across(130))];
    let layout = lay(&site(), &wanted).unwrap();
    for line in &layout.lines {
        let across = if line.stratum.as_deref() == Some("wash") { [40, 220] } else { [130, 310] };
        assert!(across.contains(&line.true_bearing), "{line:?}");
    }
    wanted.bearings = vec![("draw".to_owned(), Bearing::Random)];
    assert_eq!(lay(&site(), &wanted).unwrap_err(), LayError::Bearings(vec!["flat".into(), "wash".into()]));
}

/// A baseline of 300 m to the east: every line runs north or south from it, in order, at least 5 m apart, and the whole drawing
/// lies inside; one that leaves the site gives nothing.
#[test]
fn lines_at_right_angles_to_a_baseline() {
    let site = site();
    let from = Position::new(42.305, -113.695).unwrap();
    let walked = Walked { from, bearing: 90, length: 300_000, starts: Starts::Random, sides: Sides::Either };
    let mut wanted = Wanted { baseline: Some(walked), ..wanted(8) };
    wanted.ask.apart = 5_000;
    let layout = lay(&site, &wanted).unwrap();
    assert_eq!((layout.lines.len(), layout.design.as_str()), (8, "baseline"));
    let east = |line: &LaidLine| {
        let start = Position::new(line.start.latitude, line.start.longitude).unwrap();
        let (metres, bearing) = from.to(start);
        assert!((bearing - 90.0).abs() < 0.01 && metres < 300.001, "{metres} {bearing}");
        assert!(line.true_bearing == 0 || line.true_bearing == 180);
        metres
    };
    let along: Vec<f64> = layout.lines.iter().map(east).collect();
    assert!(along.windows(2).all(|pair| pair[1] - pair[0] > 4.999), "{along:?}");
    let outside = Walked { from: Position::new(42.3099, -113.695).unwrap(), sides: Sides::Left, ..walked };
    let none = lay(&site, &Wanted { baseline: Some(outside), ..wanted.clone() });
    assert_eq!(none.unwrap_err(), LayError::Baseline(BaselineError::NoRoom));
    let short = Walked { length: 30_000, ..walked };
    let none = lay(&site, &Wanted { baseline: Some(short), ..wanted });
    assert_eq!(none.unwrap_err(), LayError::Baseline(BaselineError::TooShort));
}

/// A staked line of 50 m to the north keeps its name and its coordinates, and stands in the walk; its name taken is refused.
#[test]
fn staked_lines_are_taken_in() {
    let mut site = site();
    let start = Position::new(42.302, -113.685).unwrap();
    let ends = [start, start.on(0.0, 50.0)];
    let segment = Segment { from: site.local.onto(ends[0]), to: site.local.onto(ends[1]) };
    site.there.push(There { name: "K1".into(), segment, ends });
    let layout = lay(&site, &Wanted { take_in: true, ..wanted(10) }).unwrap();
    let staked = layout.lines.iter().find(|line| line.staked).unwrap();
    assert_eq!(
        (staked.line.as_str(), staked.stratum.as_deref(), staked.true_bearing),
        ("K1", Some("flat"), 0)
    );
    let at = Position::new(staked.start.latitude, staked.start.longitude).unwrap();
    assert!(at == start && layout.walk.contains(&"K1".to_owned()));
    // eight points on 1111 by 1649 m, two on a quarter of that
    let dense = layout.strata[0].points_per_hectare.unwrap();
    assert!((dense * layout.strata[0].area_m2 / 1e4 - 8.0).abs() < 1e-9);
    site.there[0].name = "3".into();
    assert_eq!(
        lay(&site, &Wanted { take_in: true, ..wanted(10) }).unwrap_err(),
        LayError::NameTaken("3".into())
    );
}

/// Strata of 4 to 1 share ten lines 8 to 2, and each line is as long, and runs as true, as it says.
#[test]
fn lines_are_shared_by_area_and_laid_as_they_say() {
    let layout = lay(&site(), &wanted(10)).unwrap();
    let shares: Vec<usize> = layout.strata.iter().map(|stratum| stratum.placed).collect();
    assert_eq!(shares, [8, 2]);
    assert_eq!(layout.lines.len(), 14);
    let declination = layout.declination.unwrap();
    for line in &layout.lines {
        let at = |end: &End| Position::new(end.latitude, end.longitude).unwrap();
        let (metres, bearing) = at(&line.start).to(at(&line.end));
        assert!((metres - 50.0).abs() < 0.001, "{metres}");
        assert!((bearing - f64::from(line.true_bearing) + 180.0).rem_euclid(360.0) - 180.0 < 0.001);
        let off = f64::from(line.true_bearing) - line.magnetic_bearing.unwrap() - declination.degrees;
        assert!(((off + 180.0).rem_euclid(360.0) - 180.0).abs() < 0.051, "{off}");
    }
}

/// Every line that is read stands in the walk once; in batches of four, each four in the order of their names.
#[test]
fn the_walk_keeps_to_its_batches() {
    let layout = lay(&site(), &wanted(10)).unwrap();
    let sorted = |names: &[String]| {
        let mut names: Vec<usize> = names.iter().map(|name| name.parse().unwrap()).collect();
        names.sort_unstable();
        names
    };
    assert_eq!(sorted(&layout.walk), (1..=10).collect::<Vec<_>>());
    let batched = lay(&site(), &Wanted { batch: Some(4), ..wanted(10) }).unwrap();
    for (batch, names) in (0..).zip(batched.walk.chunks(4)) {
        assert_eq!(sorted(names), (4 * batch + 1..=4 * batch + names.len()).collect::<Vec<_>>());
    }
    let map = crate::map::map(&site(), &layout);
    assert_eq!(map.lines.len(), 14);
    for line in &map.lines {
        let [east, north] = [line.to[0] - line.from[0], line.to[1] - line.from[1]];
        assert!((east.hypot(north) - 50.0).abs() < 0.01, "{line:?}");
    }
    let latitudes = map.degrees.iter().filter(|one| one.latitude).count();
    assert!((2..=5).contains(&latitudes), "{:?}", map.degrees);
}

#[test]
fn what_cannot_be_is_said() {
    assert_eq!(lay(&site(), &wanted(3)).unwrap_err(), LayError::TooFewForStrata(4));
    let mut late = wanted(10);
    late.compass = Some((Date::new(2040, 1, 1).unwrap(), 0.0));
    assert_eq!(lay(&site(), &late).unwrap_err(), LayError::NoDeclination(NoDeclination::OutsideTheModel));
}
