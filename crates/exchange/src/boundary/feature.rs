//! A feature of any format, and what its fields make it.

use super::{Asked, Purpose};
use crate::shown::short;
use tautline_survey::boundary::{Boundary, Part, Reference, Role, Shape};
use tautline_survey::message::Message;

/// A feature as it was read.
#[derive(Clone, Debug, Default)]
pub(super) struct Feature {
    /// Its number in the file, from 1.
    pub number: usize,
    /// Its fields by name.
    pub fields: Vec<(String, String)>,
    /// Its shapes.
    pub shapes: Vec<Shape>,
    /// In which coordinates they are.
    pub reference: Reference,
    /// The file said nothing of it, and what was asked for was taken.
    pub reference_asked: bool,
    /// A way that somebody walked: round the ground where nothing else is said.
    pub walked: bool,
}

/// Ten kilometres.
const MOST_BUFFER: f64 = 10_000.0;

impl Feature {
    /// A field that isn't empty; upper and lower case are one, as tables beside shapefiles know upper case alone.
    pub(super) fn field(&self, name: &str) -> Option<&str> {
        let fits =
            |(own, text): &&(String, String)| own.eq_ignore_ascii_case(name) && !text.trim().is_empty();
        self.fields.iter().find(fits).map(|(_, text)| text.trim())
    }

    fn about(&self, code: &'static str) -> Message {
        Message::new(code).with("part", self.number)
    }

    fn role(&self, asked: &Asked) -> Result<Role, Message> {
        let named = |name: Option<&str>| name.map(str::to_owned);
        let line = || {
            Role::Line(
                named(self.field("line").or(self.field("name"))).unwrap_or_else(|| self.number.to_string()),
            )
        };
        let stratum = || Role::Stratum(named(self.field(&asked.stratum)));
        Ok(match self.field("use").map(str::to_lowercase).as_deref() {
            None => match asked.purpose {
                Purpose::Ground => stratum(),
                Purpose::KeepOut { buffer, crossed } => self.keep_out(buffer, crossed)?,
                Purpose::There => line(),
            },
            Some("stratum" | "site") => stratum(),
            Some("keep out") => self.keep_out(0, None)?,
            Some("line") => line(),
            Some(found) => return Err(self.about("geojson-use").with("found", short(found))),
        })
    }

    /// What its own fields say of it goes before what was said of the file.
    fn keep_out(&self, buffer: i64, crossed: Option<bool>) -> Result<Role, Message> {
        let own = match self.field("crossed").map(str::to_lowercase).as_deref() {
            None => None,
            Some("yes" | "true" | "1") => Some(true),
            Some("no" | "false" | "0") => Some(false),
            Some(found) => return Err(self.about("boundary-crossed").with("found", short(found))),
        };
        Ok(Role::KeepOut { buffer: self.buffer()?.unwrap_or(buffer), crossed: own.or(crossed) })
    }

    /// The buffer in millimetres, where one is written.
    fn buffer(&self) -> Result<Option<i64>, Message> {
        let Some(written) = self.field("buffer") else { return Ok(None) };
        let metres = written.parse().ok().filter(|metres| (0.0..=MOST_BUFFER).contains(metres));
        let metres: f64 = metres.ok_or_else(|| self.about("geojson-buffer"))?;
        #[expect(clippy::cast_possible_truncation, reason = "10 km at most")]
        let buffer = (metres * 1000.0).round() as i64;
        Ok(Some(buffer))
    }

    /// What it adds to a boundary.
    pub(super) fn into_parts(self, asked: &Asked) -> Result<Boundary, Message> {
        let role = self.role(asked)?;
        let mut boundary = Boundary { site: self.field("site").map(str::to_owned), ..Boundary::default() };
        let says_nothing = self.field("use").is_none();
        for shape in self.shapes {
            let shape = match (&role, shape) {
                (Role::Stratum(_), Shape::Way(way)) if says_nothing && way.len() == 1 => {
                    boundary.left_out.push(self.number);
                    continue;
                }
                // a way back to its beginning goes round ground
                (Role::Stratum(_), Shape::Way(way))
                    if self.walked || way.len() > 3 && way.first() == way.last() =>
                {
                    Shape::Rings(vec![way])
                }
                (_, shape) => shape,
            };
            boundary.parts.push(Part {
                number: self.number,
                reference: self.reference,
                role: role.clone(),
                shape,
            });
        }
        Ok(boundary)
    }
}
