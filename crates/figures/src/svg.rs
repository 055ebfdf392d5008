//! One drawing: shapes and texts in the order they are drawn, finished into an SVG element.

use crate::frame::Frame;
use crate::hatch::{self, Hatch};
use crate::palette::Colour;
use crate::text::{self, coordinate, escape, fragment};
use std::collections::BTreeSet;
use std::fmt::Write as _;

/// How a shape is filled and outlined.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Look {
    fill: Option<Fill>,
    line: Option<(Colour, f64)>,
    dashed: bool,
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Fill {
    Flat(Colour),
    Hatched(Hatch),
}

impl Look {
    pub(crate) const fn fill(colour: Colour) -> Self {
        Self { fill: Some(Fill::Flat(colour)), line: None, dashed: false }
    }

    pub(crate) const fn hatch(hatch: Hatch) -> Self {
        Self { fill: Some(Fill::Hatched(hatch)), line: None, dashed: false }
    }

    pub(crate) const fn line(colour: Colour, width: f64) -> Self {
        Self { fill: None, line: Some((colour, width)), dashed: false }
    }

    pub(crate) const fn outlined(mut self, colour: Colour, width: f64) -> Self {
        self.line = Some((colour, width));
        self
    }

    pub(crate) const fn dashed(mut self) -> Self {
        self.dashed = true;
        self
    }
}

/// A rectangle that stands upright.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Area {
    pub(crate) x: f64,
    pub(crate) y: f64,
    pub(crate) width: f64,
    pub(crate) height: f64,
}

/// Size, weight and colour of a text.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Lettering {
    pub(crate) size: f64,
    pub(crate) bold: bool,
    pub(crate) colour: Colour,
}

impl Lettering {
    pub(crate) const NAME: Self = Self { size: 13.5, bold: true, colour: Colour::Ink };
    pub(crate) const FIGURE: Self = Self { size: 13.5, bold: false, colour: Colour::Ink };
    pub(crate) const LABEL: Self = Self { size: 12.0, bold: false, colour: Colour::Ink };
    pub(crate) const CAPTION: Self = Self { size: 12.0, bold: false, colour: Colour::Quiet };
    pub(crate) const NUMBER: Self = Self { size: 11.0, bold: false, colour: Colour::Quiet };
    pub(crate) const ON_TAPE: Self = Self { size: 11.0, bold: false, colour: Colour::Ink };

    pub(crate) fn width(self, text: &str) -> f64 {
        text::width(text, self.size) * if self.bold { 1.12 } else { 1.0 }
    }

    pub(crate) fn row_height(self) -> f64 {
        self.size * 1.3
    }

    fn rows(self, text: &str, room: f64) -> Vec<String> {
        text::wrap(text, if self.bold { self.size * 1.12 } else { self.size }, room)
    }

    /// How high a paragraph of this lettering becomes.
    pub(crate) fn height(self, text: &str, room: f64) -> f64 {
        self.rows(text, room).iter().map(|_| self.row_height()).sum()
    }
}

/// Which end of a text stands at its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Anchor {
    Start,
    Middle,
    End,
}

/// A picture in the making.
pub(crate) struct Drawing<'a> {
    frame: &'a Frame,
    id: String,
    body: String,
    hatches: BTreeSet<Hatch>,
    masks: usize,
}

/// The free margin on every side.
pub(crate) const MARGIN: f64 = 8.0;

impl<'a> Drawing<'a> {
    pub(crate) fn new(frame: &'a Frame) -> Self {
        Self { frame, id: fragment(&frame.id), body: String::new(), hatches: BTreeSet::new(), masks: 0 }
    }

    /// The whole width.
    pub(crate) fn width(&self) -> f64 {
        f64::from(self.frame.width.clamp(240, 2000))
    }

    /// Where the margin on the left ends.
    #[expect(clippy::unused_self, reason = "the pair of left and right reads alike at every use")]
    pub(crate) const fn left(&self) -> f64 {
        MARGIN
    }

    /// Where the margin on the right begins.
    pub(crate) fn right(&self) -> f64 {
        self.width() - MARGIN
    }

    pub(crate) fn area(&mut self, area: Area, look: Look) {
        let [x, y, width, height] = [area.x, area.y, area.width, area.height].map(coordinate);
        let look = self.attributes(look);
        self.write(format_args!("<rect x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\"{look}/>\n"));
    }

    /// Many areas of one look as a single shape.
    pub(crate) fn areas(&mut self, areas: impl IntoIterator<Item = Area>, look: Look) {
        let mut outline = String::new();
        for Area { x, y, width, height } in areas {
            let [left, top, right, bottom] = [x, y, x + width, y + height].map(coordinate);
            outline += &["M", &left, " ", &top, "H", &right, "V", &bottom, "H", &left, "Z"].concat();
        }
        self.outline(&outline, look);
    }

    /// Lines through the points of each, as a single shape.
    pub(crate) fn strokes(&mut self, lines: impl IntoIterator<Item = impl AsRef<[(f64, f64)]>>, look: Look) {
        let outline: String = lines.into_iter().map(|line| way(line.as_ref())).collect();
        self.outline(&outline, look);
    }

    /// A line through all the points.
    pub(crate) fn through(&mut self, points: &[(f64, f64)], look: Look) {
        self.outline(&way(points), look);
    }

    /// A closed shape with these corners.
    pub(crate) fn corners(&mut self, points: &[(f64, f64)], look: Look) {
        self.outline(&format!("{}Z", way(points)), look);
    }

    fn outline(&mut self, outline: &str, look: Look) {
        if outline.is_empty() {
            return;
        }
        let look = self.attributes(look);
        self.write(format_args!("<path d=\"{outline}\"{look}/>\n"));
    }

    /// Everything that `draw` draws, but for what lies in the closed shapes `holes`: there, what was drawn before shows.
    pub(crate) fn but_for(&mut self, holes: &[Vec<(f64, f64)>], within: Area, draw: impl FnOnce(&mut Self)) {
        if holes.is_empty() {
            draw(self);
            return;
        }
        self.masks += 1;
        let id = format!("{}-holes-{}", self.id, self.masks);
        let [x, y, width, height] = [within.x, within.y, within.width, within.height].map(coordinate);
        let outline: String = holes.iter().map(|hole| way(hole) + "Z").collect();
        self.write(format_args!(
            "<mask id=\"{id}\" maskUnits=\"userSpaceOnUse\" x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\">\
             <rect x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\" fill=\"#fff\"/>\
             <path d=\"{outline}\" fill=\"#000\"/></mask>\n<g mask=\"url(#{id})\">\n"
        ));
        draw(self);
        self.write(format_args!("</g>\n"));
    }

    /// One row of text on a base line.
    pub(crate) fn text(&mut self, (x, base): (f64, f64), anchor: Anchor, lettering: Lettering, text: &str) {
        let [x, base, size] = [x, base, lettering.size].map(coordinate);
        let colour = self.frame.palette.attributes(Some(lettering.colour), None);
        let weight = if lettering.bold { " font-weight=\"bold\"" } else { "" };
        let anchor = match anchor {
            Anchor::Start => "",
            Anchor::Middle => " text-anchor=\"middle\"",
            Anchor::End => " text-anchor=\"end\"",
        };
        let text = escape(text);
        self.write(format_args!(
            "<text x=\"{x}\" y=\"{base}\" font-size=\"{size}\"{weight}{anchor}{colour}>{text}</text>\n"
        ));
    }

    /// As many rows as a text needs, from `top` down; gives back where they end.
    pub(crate) fn paragraph(
        &mut self,
        (x, top): (f64, f64),
        anchor: Anchor,
        lettering: Lettering,
        text: &str,
        room: f64,
    ) -> f64 {
        let mut y = top;
        for row in lettering.rows(text, room) {
            self.text((x, y + lettering.size), anchor, lettering, &row);
            y += lettering.row_height();
        }
        y
    }

    /// The finished picture, `height` high.
    pub(crate) fn finish(self, height: f64) -> String {
        let Self { frame, id, body, hatches, .. } = self;
        let [title, description] = [&frame.title, &frame.description].map(|text| escape(text));
        let width = f64::from(frame.width.clamp(240, 2000));
        let [wide, high] = [width, height].map(coordinate);
        let font = frame
            .palette
            .font()
            .map(|family| format!(" font-family=\"{}\"", escape(family)))
            .unwrap_or_default();
        let ground = frame.palette.attributes(Some(Colour::Ground), None);
        let defs: String = hatches.iter().map(|&hatch| hatch::pattern(hatch, &id, &frame.palette)).collect();
        let defs = if defs.is_empty() { defs } else { format!("<defs>\n{defs}</defs>\n") };
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"figure\" viewBox=\"0 0 {wide} {high}\" \
             width=\"100%\" role=\"img\" aria-labelledby=\"{id}-title\" aria-describedby=\"{id}-desc\"{font}>\n\
             <title id=\"{id}-title\">{title}</title>\n<desc id=\"{id}-desc\">{description}</desc>\n\
             {defs}<rect x=\"0\" y=\"0\" width=\"{wide}\" height=\"{high}\"{ground}/>\n{body}</svg>\n"
        )
    }

    fn attributes(&mut self, look: Look) -> String {
        let flat = match look.fill {
            Some(Fill::Flat(colour)) => Some(colour),
            _ => None,
        };
        let line = look.line.map(|(colour, _)| colour);
        let colours = self.frame.palette.attributes(flat, line);
        let fill = match look.fill {
            None => " fill=\"none\"".to_owned(),
            Some(Fill::Hatched(hatch)) => {
                self.hatches.insert(hatch);
                format!(" fill=\"url(#{})\"", hatch::id(hatch, &self.id))
            }
            Some(Fill::Flat(_)) => String::new(),
        };
        let width = look.line.map(|(_, width)| format!(" stroke-width=\"{}\"", coordinate(width)));
        let dashes = if look.dashed { " stroke-dasharray=\"4 3\"" } else { "" };
        format!("{colours}{fill}{}{dashes}", width.unwrap_or_default())
    }

    fn write(&mut self, element: std::fmt::Arguments<'_>) {
        self.body.write_fmt(element).expect("writing into a String cannot fail");
    }
}

/// A path that moves to the first point and draws on through the others.
fn way(points: &[(f64, f64)]) -> String {
    let step = |(at, &(x, y)): (usize, &(f64, f64))| {
        format!("{}{} {}", if at == 0 { 'M' } else { 'L' }, coordinate(x), coordinate(y))
    };
    points.iter().enumerate().map(step).collect()
}
