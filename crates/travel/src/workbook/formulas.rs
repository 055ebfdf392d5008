//! The formulas of a spreadsheet: each says what our own arithmetic did, in cells.
//!
//! # Source
//! The same as the engine's: Cochran 1977 §2.4–2.6 (mean of lines), §6.4 eq. 6.13 (ratio of sums), §5.3–5.4 (strata); the
//! functions of OASIS OpenDocument 1.3 part 4, §6

use crate::Whole;
use crate::table::{Cell, Column, Holds, Table};
use crate::tables::results::{is_canopy, numbered};
use std::collections::HashMap;
use std::ops::Range;
use tautline_engine::confidence::{Method, Tail, ends};
use tautline_engine::estimate::Method as Estimator;

/// Rows of a sheet as a spreadsheet counts them, from 1, the heading among them.
type Rows = Range<u32>;

/// What the formulas of each row refer to.
pub(super) struct Formulas {
    /// Column letters by sheet and column.
    letters: HashMap<(&'static str, &'static str), String>,
    /// For each part, the rows of its lines, and whether it is a ratio of sums.
    parts: Vec<Option<(Rows, bool)>>,
    /// For each result, the rows of its parts.
    results: HashMap<u32, Rows>,
    /// The rows of `line_cover` whose canopy is made of stretches.
    stretched: Vec<bool>,
    last_stretch: u32,
}

/// Adds a t interval to the results, which anybody can follow whatever method the interval beside it was made by.
pub(super) fn add_t_interval(all: &mut [Table], whole: &Whole) {
    let Some(results) = all.iter_mut().find(|table| table.name == "results") else { return };
    results.columns.extend([Column::new("t_low", Holds::Number), Column::new("t_high", Holds::Number)]);
    let confidences = whole.assessments.iter().flat_map(|one| one.figures.iter().map(|_| one.confidence));
    for ((row, (_, figure)), confidence) in results.rows.iter_mut().zip(numbered(whole)).zip(confidences) {
        let t = ends(&figure.estimate, Method::StudentT, Tail::of_interval(confidence)).ok();
        let t = t.filter(|_| figure.is_cover());
        row.extend([Cell::number(t.map(|(low, _)| low)), Cell::number(t.map(|(_, high)| high))]);
    }
}

impl Formulas {
    pub(super) fn of(all: &[Table], whole: &Whole) -> Self {
        let letters = all.iter().flat_map(|table| {
            (0..).zip(&table.columns).map(|(at, column)| ((table.name, column.name), letter(at)))
        });
        let mut parts = Vec::new();
        let mut results = HashMap::new();
        let mut stretched = Vec::new();
        let (mut line_row, mut part_row, mut result) = (2, 2, 0);
        for assessment in whole.assessments {
            let begin = line_row;
            for figure in &assessment.figures {
                result += 1;
                if !is_canopy(figure) {
                    continue;
                }
                let first = part_row;
                for part in &figure.parts {
                    let lines = u32::try_from(part.lines.len()).unwrap_or(0);
                    let rows = line_row..line_row + lines;
                    parts.push(match part.estimate.method {
                        Estimator::MeanOfLines => Some((rows, false)),
                        Estimator::RatioOfSums => Some((rows, true)),
                        _ => None,
                    });
                    line_row += lines;
                    part_row += 1;
                    let own = part.lines.iter().map(|&at| &assessment.lines[at]);
                    stretched.extend(own.map(|line| {
                        line.cover.is_some()
                            && !line.cover.as_ref().is_some_and(|cover| cover.canopy.is_empty())
                    }));
                }
                let whole_of_parts = match &figure.estimate.method {
                    Estimator::MeanOfLines | Estimator::RatioOfSums => figure.parts.len() == 1,
                    Estimator::Strata(_) => true,
                    _ => false,
                };
                if whole_of_parts {
                    results.insert(result + 1, first..part_row);
                }
            }
            let settled = assessment.lines.iter().filter(|line| !line.unsettled).count();
            let settled = u32::try_from(settled).unwrap_or(u32::MAX);
            // lines that belong to no part follow, without formulas
            let others = (begin + settled).saturating_sub(line_row);
            stretched.extend((0..others).map(|_| false));
            line_row += others;
        }
        let stretches =
            all.iter().find(|table| table.name == "stretches").map_or(0, |table| table.rows.len());
        let last_stretch = u32::try_from(stretches).unwrap_or(u32::MAX).saturating_add(1);
        Self { letters: letters.collect(), parts, results, stretched, last_stretch }
    }

    /// The formula of a cell, if it has one; `row` counts from 1, the first row below the heading.
    pub(super) fn at(&self, table: &Table, row: u32, column: &str) -> Option<String> {
        let here = row + 1;
        let own = |name: &str| format!("{}{here}", self.letter(table.name, name));
        let index = usize::try_from(row - 1).ok()?;
        match (table.name, column) {
            ("intercepts", "length_m") => {
                let at = table.columns.iter().position(|column| column.name == "start_m")?;
                let has_edges = table.rows[index][at] != Cell::Empty;
                has_edges.then(|| format!("={}-{}", own("stop_m"), own("start_m")))
            }
            ("stretches", "length_m") => Some(format!("={}-{}", own("stop_m"), own("start_m"))),
            ("line_cover", "canopy_m") => self.stretched.get(index).copied()?.then(|| {
                let all = |name| self.range("stretches", name, &(2..self.last_stretch + 1));
                format!("=SUMIFS({},{},{})", all("length_m"), all("visit"), own("visit"))
            }),
            ("line_cover", "canopy_cover" | "sum_cover" | "dead_cover") => {
                Some(format!("={}/{}", own(&column.replace("cover", "m")), own("read_m")))
            }
            ("parts", "estimate" | "standard_error") => self.part(index, column == "estimate"),
            ("results", "estimate" | "standard_error") => {
                let rows = self.results.get(&here)?;
                let of = |name| self.range("parts", name, rows);
                let (weight, value, se) = (of("weight"), of("estimate"), of("standard_error"));
                Some(if column == "estimate" {
                    format!("=SUMPRODUCT({weight},{value})/SUM({weight})")
                } else {
                    format!("=SQRT(SUMPRODUCT({weight},{weight},{se},{se}))/SUM({weight})")
                })
            }
            ("results", "t_low" | "t_high") => {
                let sign = if column == "t_low" { '-' } else { '+' };
                Some(format!(
                    "={}{sign}TINV(1-{}/100,{})*{}",
                    own("estimate"),
                    own("confidence_percent"),
                    own("degrees_of_freedom"),
                    own("standard_error")
                ))
                // a spreadsheet cuts the degrees of freedom to a whole number
                .filter(|_| has_whole_degrees(table, index))
            }
            _ => None,
        }
    }

    /// Mean of the lines' covers, or the sum of their canopy over that of their lengths; and the error of each.
    fn part(&self, index: usize, estimate: bool) -> Option<String> {
        let (rows, is_ratio) = self.parts.get(index)?.as_ref()?;
        let of = |name| self.range("line_cover", name, rows);
        let (cover, canopy, read) = (of("canopy_cover"), of("canopy_m"), of("read_m"));
        Some(match (is_ratio, estimate) {
            (false, true) => format!("=AVERAGE({cover})"),
            (false, false) => format!("=STDEV({cover})/SQRT(COUNT({cover}))"),
            (true, true) => format!("=SUM({canopy})/SUM({read})"),
            (true, false) => {
                let own = format!("{}{}", self.letter("parts", "estimate"), index + 2);
                let n = format!("COUNT({read})");
                format!("=SQRT(SUMPRODUCT(({canopy}-{own}*{read})^2)/({n}*({n}-1)))/AVERAGE({read})")
            }
        })
    }

    fn letter(&self, table: &str, column: &str) -> &str {
        self.letters.iter().find(|((t, c), _)| *t == table && *c == column).map_or("A", |(_, letter)| letter)
    }

    /// Cells of a column on its sheet.
    fn range(&self, table: &str, column: &str, rows: &Rows) -> String {
        let letter = self.letter(table, column);
        format!("{table}!${letter}${}:${letter}${}", rows.start, rows.end.saturating_sub(1))
    }
}

fn has_whole_degrees(table: &Table, index: usize) -> bool {
    let at = table.columns.iter().position(|column| column.name == "degrees_of_freedom");
    at.is_some_and(|at| matches!(table.rows[index][at], Cell::Number(df) if df.fract() == 0.0))
}

/// A column as a spreadsheet names it: A to Z, then AA.
fn letter(at: usize) -> String {
    let one = |at: usize| char::from(b'A' + u8::try_from(at % 26).unwrap_or(0));
    if at < 26 { one(at).to_string() } else { format!("{}{}", one(at / 26 - 1), one(at)) }
}
