//! GPX and KML.
//!
//! # Source
//! GPX 1.1 schema, topografix.com/GPX/1/1; OGC KML 2.2 (07-147r2). Both hold degrees on WGS 84.

use super::feature::Feature;
use crate::limits::MOST_NODES;
use crate::shown::short;
use roxmltree::{Document, Error, Node, ParsingOptions};
use tautline_survey::boundary::{Pair, Shape};
use tautline_survey::message::Message;

pub(super) fn features(text: &str) -> Result<Vec<Feature>, Message> {
    if deepest(text) > DEEPEST {
        return Err(Message::new("boundary-too-deep"));
    }
    let options = ParsingOptions { nodes_limit: MOST_NODES, ..ParsingOptions::default() };
    let document = Document::parse_with_options(text, options).map_err(|error| match error {
        Error::NodesLimitReached => Message::new("boundary-too-large"),
        error => Message::new("boundary-not-xml")
            .with("row", u64::from(error.pos().row))
            .with("character", u64::from(error.pos().col)),
    })?;
    let root = document.root_element();
    match root.tag_name().name() {
        "gpx" => gpx(root),
        "kml" => kml(root),
        found => Err(Message::new("boundary-other-xml").with("found", short(found))),
    }
}

/// Elements within elements: KML folders go a few deep.
const DEEPEST: usize = 100;

/// How deep elements could lie within each other at most, by their brackets alone, so that no parser runs out of stack.
fn deepest(text: &str) -> usize {
    let (mut deep, mut most) = (0_usize, 0);
    for piece in text.split('<').skip(1) {
        if piece.starts_with('/') {
            deep = deep.saturating_sub(1);
        } else if !piece.starts_with(['!', '?'])
            && !piece.split('>').next().unwrap_or_default().ends_with('/')
        {
            deep += 1;
            most = most.max(deep);
        }
    }
    most
}

fn named<'a>(node: Node<'a, 'a>, name: &'static str) -> impl Iterator<Item = Node<'a, 'a>> {
    node.children().filter(move |child| child.tag_name().name() == name)
}

fn text<'a>(node: Node<'a, 'a>, name: &'static str) -> &'a str {
    named(node, name).find_map(|child| child.text()).unwrap_or_default()
}

/// Each route, each stretch of a track, and each waypoint.
fn gpx(root: Node) -> Result<Vec<Feature>, Message> {
    let mut features = Vec::new();
    for node in root.children().filter(Node::is_element) {
        let ways: Vec<Vec<Node>> = match node.tag_name().name() {
            "wpt" => vec![vec![node]],
            "rte" => vec![named(node, "rtept").collect()],
            "trk" => named(node, "trkseg").map(|stretch| named(stretch, "trkpt").collect()).collect(),
            _ => continue,
        };
        let number = features.len() + 1;
        let pair = |place: &Node| -> Result<Pair, Message> {
            let degrees = |name| place.attribute(name).and_then(|text| text.trim().parse::<f64>().ok());
            let row = || place.document().text_pos_at(place.range().start).row;
            match (degrees("lon"), degrees("lat")) {
                (Some(longitude), Some(latitude)) => Ok([longitude, latitude]),
                _ => {
                    Err(Message::new("boundary-no-number").with("part", number).with("row", u64::from(row())))
                }
            }
        };
        let mut shapes = Vec::new();
        for way in ways.iter().filter(|way| !way.is_empty()) {
            shapes.push(Shape::Way(way.iter().map(pair).collect::<Result<_, _>>()?));
        }
        let walked = node.tag_name().name() != "wpt";
        let fields = vec![("name".to_owned(), text(node, "name").to_owned())];
        features.push(Feature { number, fields, shapes, walked, ..Feature::default() });
    }
    Ok(features)
}

/// Each placemark, with its own name and its extended data.
fn kml(root: Node) -> Result<Vec<Feature>, Message> {
    let marks = root.descendants().filter(|node| node.tag_name().name() == "Placemark");
    let mut features = Vec::new();
    for (number, mark) in (1..).zip(marks) {
        let mut fields = Vec::new();
        for node in mark.descendants() {
            let held = match node.tag_name().name() {
                "Data" => text(node, "value"),
                "SimpleData" => node.text().unwrap_or_default(),
                _ => continue,
            };
            fields.push((node.attribute("name").unwrap_or_default().to_owned(), held.to_owned()));
        }
        fields.push(("name".to_owned(), text(mark, "name").to_owned()));
        let mut shapes = Vec::new();
        for node in mark.descendants() {
            let way = |node: Node| coordinates(node, number);
            match node.tag_name().name() {
                "Polygon" => {
                    let sides = ["outerBoundaryIs", "innerBoundaryIs"];
                    let rings = sides
                        .into_iter()
                        .flat_map(|side| named(node, side))
                        .flat_map(|one| named(one, "LinearRing"));
                    let rings: Vec<Vec<Pair>> = rings.map(way).collect::<Result<_, _>>()?;
                    shapes.push(Shape::Areas(vec![rings]));
                }
                "LineString" | "Point" => shapes.push(Shape::Way(way(node)?)),
                _ => {}
            }
        }
        features.push(Feature { number, fields, shapes, ..Feature::default() });
    }
    Ok(features)
}

/// `longitude,latitude[,height]`, set apart by spaces.
fn coordinates(node: Node, number: usize) -> Result<Vec<Pair>, Message> {
    let pair = |written: &str| {
        let mut numbers = written.split(',').map(|number| number.trim().parse::<f64>().ok());
        Some([numbers.next()??, numbers.next()??])
    };
    let way: Option<Vec<Pair>> = text(node, "coordinates").split_whitespace().map(pair).collect();
    way.filter(|way| !way.is_empty()).ok_or_else(|| {
        let row = node.document().text_pos_at(node.range().start).row;
        Message::new("boundary-no-number").with("part", number).with("row", u64::from(row))
    })
}
