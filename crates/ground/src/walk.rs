//! The walk from line to line: round what is kept out of and over the site's own ground, where that is possible.

use crate::lay::end;
use crate::mend::put_together;
use crate::position::Position;
use crate::site::Site;
use std::collections::BTreeMap;
use tautline_engine::place::around::{Stand, Walkable, Way};
use tautline_engine::place::plane::{Point, Segment, apart};
use tautline_engine::place::region::{Polygon, Region};
use tautline_engine::place::route::route;
use tautline_survey::layout::{End, LaidLine, Leg, Over};

/// So many lines are put in order by the ways between them; the order of more goes by how far they lie apart.
const MOST_LINES: usize = 100;

/// The ground of a site as it is walked.
pub(crate) struct Walking<'a> {
    site: &'a Site,
    own: Region,
    /// Over the site's own ground, and over any.
    inside: Walkable,
    anywhere: Walkable,
    /// What a leg costs more for which no way was found over the site's own ground: there shall be few of them.
    beyond: f64,
}

/// A place as it is seen on either ground.
struct Place {
    point: Point,
    inside: Stand,
    anywhere: Stand,
}

impl<'a> Walking<'a> {
    pub(crate) fn of(site: &'a Site) -> Self {
        let polygons: Vec<Polygon> =
            site.strata.iter().flat_map(|(_, region)| region.polygons.iter().cloned()).collect();
        let own = Region { polygons: put_together(&polygons) };
        let beyond = own.frame().map_or(0.0, |(low, high)| apart(low, high));
        Self {
            site,
            inside: Walkable::new(&site.keep_out, Some(&own)),
            anywhere: Walkable::new(&site.keep_out, None),
            own,
            beyond,
        }
    }

    /// The names of lines in the order in which they are walked, batch by batch.
    pub(crate) fn order(&self, lines: &[&LaidLine], batch: usize, from: Option<Position>) -> Vec<String> {
        let mut at = from.map(|from| self.site.local.onto(from));
        let mut names = Vec::with_capacity(lines.len());
        for batch in lines.chunks(batch.max(1)) {
            let tapes: Vec<Segment> = batch.iter().map(|line| self.tape(line)).collect();
            let Some(first) = tapes.first() else { break };
            let order = self.ordered(at.unwrap_or(first.from), &tapes);
            at = order.last().map(|&last| tapes[last].to);
            names.extend(order.into_iter().map(|line| batch[line].line.clone()));
        }
        names
    }

    fn ordered(&self, start: Point, tapes: &[Segment]) -> Vec<usize> {
        let ends = |from: Option<usize>| from.map_or(start, |from| tapes[from].to);
        if tapes.len() > MOST_LINES {
            return route(tapes.len(), |from, to| apart(ends(from), tapes[to].from));
        }
        let zeros: Vec<Place> = tapes.iter().map(|tape| self.place(tape.from)).collect();
        let cost = |from: Option<usize>| -> Vec<f64> {
            let from = self.place(ends(from));
            zeros.iter().map(|zero| self.cost(&from, zero)).collect()
        };
        let from_start = cost(None);
        let costs: Vec<Vec<f64>> = (0..tapes.len()).map(|line| cost(Some(line))).collect();
        route(tapes.len(), |from, to| from.map_or(&from_start, |from| &costs[from])[to])
    }

    fn cost(&self, from: &Place, to: &Place) -> f64 {
        let (way, over) = self.way(from, to);
        way.length + if over.is_some() { self.beyond } else { 0.0 }
    }

    /// The legs of a walk over lines in their order.
    pub(crate) fn legs(&self, lines: &[LaidLine], walk: &[String], from: Option<Position>) -> Vec<Leg> {
        let by_name: BTreeMap<&str, &LaidLine> =
            lines.iter().map(|line| (line.line.as_str(), line)).collect();
        let mut at = from.map(|from| (None, self.site.local.onto(from)));
        let mut legs = Vec::with_capacity(walk.len());
        for line in walk.iter().filter_map(|name| by_name.get(name.as_str())) {
            let tape = self.tape(line);
            if let Some((from, point)) = at {
                legs.push(self.leg(from, point, line, tape.from));
            }
            at = Some((Some(line.line.clone()), tape.to));
        }
        legs
    }

    fn leg(&self, from: Option<String>, start: Point, to: &LaidLine, zero: Point) -> Leg {
        let (way, over) = self.way(&self.place(start), &self.place(zero));
        Leg {
            from,
            to: to.line.clone(),
            metres: (way.length / 100.0).round() / 10.0,
            points: way.points.iter().map(|&point| end(self.site.local.back(point))).collect(),
            over,
        }
    }

    /// Over the site's own ground where a way is found there; else over any; else straight.
    fn way(&self, from: &Place, to: &Place) -> (Way, Option<Over>) {
        if let Some(way) = self.inside.way(&from.inside, &to.inside) {
            return (way, None);
        }
        if let Some(way) = self.anywhere.way(&from.anywhere, &to.anywhere) {
            // who comes from elsewhere has to come onto the site
            let comes = !self.own.contains(from.point) || !self.own.contains(to.point);
            return (way, (!comes).then_some(Over::Outside));
        }
        let points = vec![from.point, to.point];
        (Way { length: apart(from.point, to.point), points }, Some(Over::KeptOut))
    }

    fn place(&self, point: Point) -> Place {
        Place { point, inside: self.inside.stand(point), anywhere: self.anywhere.stand(point) }
    }

    fn tape(&self, line: &LaidLine) -> Segment {
        let place = |end: &End| {
            let position = Position::new(end.latitude, end.longitude).unwrap_or(self.site.middle);
            self.site.local.onto(position)
        };
        Segment { from: place(&line.start), to: place(&line.end) }
    }
}

#[cfg(test)]
mod tests;
