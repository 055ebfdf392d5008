//! What the readings give the mixed model once and for all: sums over each line and over all.

use super::{Reading, Terms};
use crate::num::square::Square;
use std::collections::BTreeMap;
use std::ops::Range;

/// A symmetric two-by-two matrix, or its two-by-two neighbours.
pub(super) type Two = [[f64; 2]; 2];

/// Columns of the fixed part: level and slope.
pub(super) const FIXED: usize = 2;

/// Sums over one line; Z has a column of ones and one of times.
#[derive(Clone, Debug)]
pub(super) struct LineSums {
    pub(super) readings: f64,
    /// ZᵀZ
    pub(super) zz: Two,
    /// Zᵀy
    pub(super) zy: [f64; 2],
    /// Zᵀ of each column that the line has a part in: years, site-years, then level and slope.
    pub(super) columns: Vec<(usize, [f64; 2])>,
}

/// Sums over all readings. C has a column for each year, each site's year, and the two of the fixed part.
#[derive(Clone, Debug)]
pub(super) struct Sums {
    pub(super) readings: f64,
    pub(super) lines: Vec<LineSums>,
    /// Columns of years and of site-years, those that the model has.
    pub(super) outer: Vec<Range<usize>>,
    /// All columns.
    pub(super) width: usize,
    /// CᵀC
    pub(super) cc: Square,
    /// Cᵀy
    pub(super) cy: Vec<f64>,
    pub(super) yy: f64,
    /// What was taken off every value so that sums keep their digits.
    pub(super) middle: f64,
    pub(super) slope: bool,
}

fn numbered<K: Ord + Copy>(keys: impl Iterator<Item = K>) -> BTreeMap<K, usize> {
    let mut numbers: BTreeMap<K, usize> = keys.map(|key| (key, 0)).collect();
    for (number, place) in numbers.values_mut().enumerate() {
        *place = number;
    }
    numbers
}

impl Sums {
    pub(super) fn of(readings: &[Reading], origin: f64, terms: Terms) -> Self {
        let line_of = numbered(readings.iter().map(|one| (one.site, one.line)));
        let year_of = numbered(readings.iter().map(|one| one.year));
        let site_year_of = numbered(readings.iter().map(|one| (one.site, one.year)));
        let years = if terms.year { year_of.len() } else { 0 };
        let site_years = if terms.site_year { site_year_of.len() } else { 0 };
        let (level, width) = (years + site_years, years + site_years + FIXED);
        let number = crate::num::count(readings.len());
        let middle = crate::num::sum::sum(readings.iter().map(|one| one.value)) / number;
        let none = LineSums { readings: 0.0, zz: [[0.0; 2]; 2], zy: [0.0; 2], columns: Vec::new() };
        let mut sums = Self {
            readings: number,
            lines: vec![none; line_of.len()],
            outer: [0..years, years..level].into_iter().filter(|range| !range.is_empty()).collect(),
            width,
            cc: Square::zero(width),
            cy: vec![0.0; width],
            yy: 0.0,
            middle,
            slope: terms.slope,
        };
        for reading in readings {
            let z = [1.0, f64::from(reading.year) - origin];
            let value = reading.value - middle;
            let mut columns = Vec::with_capacity(4);
            if terms.year {
                columns.push((year_of[&reading.year], 1.0));
            }
            if terms.site_year {
                columns.push((years + site_year_of[&(reading.site, reading.year)], 1.0));
            }
            columns.extend([(level, z[0]), (level + 1, z[1])]);
            sums.add(line_of[&(reading.site, reading.line)], z, value, &columns);
        }
        sums
    }

    fn add(&mut self, line: usize, z: [f64; 2], value: f64, columns: &[(usize, f64)]) {
        let line = &mut self.lines[line];
        line.readings += 1.0;
        for row in 0..2 {
            line.zy[row] += z[row] * value;
            for column in 0..2 {
                line.zz[row][column] += z[row] * z[column];
            }
        }
        for &(column, entry) in columns {
            let of_line = match line.columns.binary_search_by_key(&column, |(own, _)| *own) {
                Ok(place) => &mut line.columns[place].1,
                Err(place) => {
                    line.columns.insert(place, (column, [0.0; 2]));
                    &mut line.columns[place].1
                }
            };
            of_line[0] += z[0] * entry;
            of_line[1] += z[1] * entry;
            self.cy[column] += entry * value;
            for &(other, other_entry) in columns {
                self.cc.add(column, other, entry * other_entry);
            }
        }
        self.yy += value * value;
    }

    /// How many variances and covariances lines have: the level's; with slopes the covariance and the slope's too.
    pub(super) fn line_parts(&self) -> usize {
        if self.slope { 3 } else { 1 }
    }
}
