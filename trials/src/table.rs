//! The data file: one row for each case and method, comma-separated, with a heading.

use crate::tally::{GOALS, Tally};

/// The heading, in the order of [`Row::written`].
pub const HEADING: &str = "set,clumping,cover,length,lines,figure,method,truth,intercepts,surveys,none,below,above,\
                           width,below_bound,above_bound,met_70,met_90,met_110,met_130,not_met_70,not_met_90,\
                           not_met_110,not_met_130";

/// One case under one method.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// Set of stands.
    pub set: String,
    /// Degree of clumping.
    pub clumping: String,
    /// Wanted cover in per cent.
    pub cover: u32,
    /// Length of the lines in metres, or `mixed`.
    pub length: String,
    /// Lines in a survey.
    pub lines: u32,
    /// `canopy` or `sum`.
    pub figure: String,
    /// The method.
    pub method: String,
    /// Mean true figure of the stands.
    pub truth: f64,
    /// Stretches of canopy that a survey meets on average.
    pub intercepts: f64,
    /// Mean width of the intervals.
    pub width: f64,
    /// Everything that was counted.
    pub tally: Tally,
}

impl Row {
    /// The row as text; figures are rounded here and nowhere else.
    pub fn written(&self) -> String {
        let tally = &self.tally;
        let counts = |counts: [u32; GOALS.len()]| counts.map(|count| count.to_string()).join(",");
        format!(
            "{},{},{},{},{},{},{},{:.4},{:.1},{},{},{},{},{:.4},{},{},{},{}",
            self.set,
            self.clumping,
            self.cover,
            self.length,
            self.lines,
            self.figure,
            self.method,
            self.truth,
            self.intercepts,
            tally.surveys,
            tally.none,
            tally.below,
            tally.above,
            self.width,
            tally.below_bound,
            tally.above_bound,
            counts(tally.met),
            counts(tally.not_met),
        )
    }

    /// Reads a row back.
    ///
    /// # Errors
    /// the row, where it isn't one
    pub fn read(text: &str) -> Result<Self, String> {
        let cells: Vec<&str> = text.split(',').collect();
        let refused = || format!("not a row of the trials: {text}");
        let whole = |at: usize| cells[at].parse::<u32>().map_err(|_| refused());
        let real = |at: usize| cells[at].parse::<f64>().map_err(|_| refused());
        if cells.len() != HEADING.split(',').count() {
            return Err(refused());
        }
        let goals = |from: usize| -> Result<[u32; GOALS.len()], String> {
            let mut counts = [0; GOALS.len()];
            for (at, count) in counts.iter_mut().enumerate() {
                *count = whole(from + at)?;
            }
            Ok(counts)
        };
        let (surveys, none, width) = (whole(9)?, whole(10)?, real(13)?);
        let tally = Tally {
            surveys,
            none,
            below: whole(11)?,
            above: whole(12)?,
            widths: width * f64::from(surveys.saturating_sub(none)),
            below_bound: whole(14)?,
            above_bound: whole(15)?,
            met: goals(16)?,
            not_met: goals(16 + GOALS.len())?,
        };
        Ok(Self {
            set: cells[0].to_owned(),
            clumping: cells[1].to_owned(),
            cover: whole(2)?,
            length: cells[3].to_owned(),
            lines: whole(4)?,
            figure: cells[5].to_owned(),
            method: cells[6].to_owned(),
            truth: real(7)?,
            intercepts: real(8)?,
            width,
            tally,
        })
    }

    /// A count as a share of the surveys.
    pub fn share(&self, count: u32) -> f64 {
        f64::from(count) / f64::from(self.tally.surveys)
    }

    /// Share of the surveys whose interval held the truth; one without an interval did not.
    pub fn coverage(&self) -> f64 {
        let tally = &self.tally;
        self.share(tally.surveys - tally.none - tally.below - tally.above)
    }

    /// Share of the surveys that allowed an interval whose interval held the truth.
    pub fn coverage_where_any(&self) -> f64 {
        let tally = &self.tally;
        let any = tally.surveys - tally.none;
        f64::from(any - tally.below - tally.above) / f64::from(any)
    }

    /// Which case it is, in words.
    pub fn case(&self) -> String {
        let length =
            if self.length == "mixed" { "mixed lengths".to_owned() } else { format!("{} m", self.length) };
        let stand = match self.clumping.as_str() {
            "random" => "at random",
            "mild" => "mildly clumped",
            "strong" => "strongly clumped",
            "patches" => "in patches",
            other => other,
        };
        format!("{} lines of {length}, {} % {stand} ({})", self.lines, self.cover, self.set)
    }
}

/// The whole file.
pub fn written(rows: &[Row]) -> String {
    let mut text = format!("{HEADING}\n");
    for row in rows {
        text.push_str(&row.written());
        text.push('\n');
    }
    text
}

/// Reads the whole file back.
///
/// # Errors
/// the first row that isn't one, or a heading other than ours
pub fn read(text: &str) -> Result<Vec<Row>, String> {
    let mut rows = text.lines();
    match rows.next() {
        Some(heading) if heading == HEADING => rows.map(Row::read).collect(),
        other => Err(format!("not the heading of the trials: {other:?}")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_row_survives() {
        let text = "choose,random,10,30,8,canopy,student-t,0.1002,24.6,10000,3,380,702,0.0912,811,1290,8123,5021,41,2,\
                    0,90,4410,8020";
        let row = Row::read(text).unwrap();
        assert_eq!(row.written(), text);
        assert!((row.coverage() - 0.8915).abs() < 1e-12);
        assert!(Row::read("choose,random").is_err());
        assert!(Row::read(&text.replace("380", "many")).is_err());
        assert_eq!(read(&written(std::slice::from_ref(&row))), Ok(vec![row]));
    }
}
