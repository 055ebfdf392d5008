//! Layouts: lines and plots drawn on an odd site, and a baseline, to the millimetre.

use tautline_engine::place::baseline::{Baseline, Sides, Starts};
use tautline_engine::place::layout::{Ask, Bearing, Edge, Placed, Shape, lay_out};
use tautline_engine::place::plane::Point;
use tautline_engine::place::points::Design;
use tautline_engine::place::region::{KeepOut, Polygon, Region, Shape as KeepOutShape};
use tautline_engine::seed::Seed;

use crate::table::Table;

pub(crate) fn rows(table: &mut Table) {
    let metres = |(x, y): (i64, i64)| Point { x: 1000 * x, y: 1000 * y };
    let ring = [(0, 0), (500, 0), (500, 180), (320, 200), (330, 420), (120, 380), (180, 210), (20, 240)];
    let region = Region { polygons: vec![Polygon { rings: vec![ring.map(metres).to_vec()] }] };
    let road = [(250, -10), (260, 600)].map(metres).to_vec();
    let roads = [KeepOut { shape: KeepOutShape::Way(road), buffer: 15_000, crossed: true }];
    for design in [Design::Balanced, Design::Random, Design::Systematic] {
        for (shape, length) in [(Shape::Line, 50_000), (Shape::Spokes { lines: 3, offset: 5_000 }, 20_000)] {
            let ask = Ask {
                design,
                wanted: 6,
                reserve: 2,
                shape,
                length,
                bearing: Bearing::Random,
                edge: Edge::Turn,
                apart: 20_000,
            };
            let layout = lay_out(&region, &roads, &[], &ask, Seed::from_purpose("golden", &[1]));
            for placed in layout.placed.iter().chain(&layout.reserve) {
                placed_rows(table, &format!("place {design:?} {length}").to_lowercase(), placed);
            }
        }
    }
    let baseline = Baseline {
        from: Point { x: 0, y: 0 },
        bearing: 77,
        length: 100_000,
        lines: 5,
        line_length: 30_000,
        apart: 10_000,
        starts: Starts::Random,
        sides: Sides::Either,
    };
    for (along, line, bearing) in baseline.lines(Seed::from_purpose("golden", &[2])).into_iter().flatten() {
        table.row("baseline", format_args!("{along} {} {} {bearing}", line.to.x, line.to.y));
    }
}

fn placed_rows(table: &mut Table, label: &str, placed: &Placed) {
    for (line, bearing) in &placed.lines {
        let (from, to) = (line.from, line.to);
        table.row(label, format_args!("{} {} {} {} {} {bearing}", placed.draw, from.x, from.y, to.x, to.y));
    }
}
