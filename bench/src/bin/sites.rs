//! Site estimates from a table of intercepts, under the names that the comparison gives its columns.
//!
//! `sites READINGS SPECIES OUT` does what `tautline sites READINGS SPECIES --unit m --protocol bench/shrubs-5cm.toml
//! --method student-t --csv` does, with the same library call, and writes the comparison's columns.

use std::env;
use std::error::Error;
use std::fmt::Write;
use std::fs;
use std::num::NonZero;
use std::thread::available_parallelism;
use tautline_engine::confidence::{self, Method, NoBound, Tail};
use tautline_engine::estimate::{Estimate, SamplingError};
use tautline_engine::length::{Bare, Unit};
use tautline_exchange::stream::{Content, Table, Way, sites};
use tautline_exchange::{Options, protocol};
use tautline_survey::assess::Question;
use tautline_survey::sites::{SiteCover, SiteRow};

/// The comparison's own limits. It counts n − 1 degrees of freedom where tautline takes the effective number of lines of
/// unequal length, and where all lines are alike it wants the point itself; tautline gives no interval there and says why.
fn ends(row: &SiteRow, cover: &SiteCover) -> Option<[f64; 2]> {
    let SamplingError::Known { se, .. } = cover.error else { return None };
    let df = f64::from(u32::try_from(row.lines).ok()?) - 1.0;
    let estimate = Estimate {
        value: cover.low,
        error: SamplingError::Known { se, df },
        lines: row.lines,
        units: row.lines,
        method: cover.estimator.clone(),
    };
    match confidence::ends(&estimate, Method::StudentT, Tail::of_interval(0.9)) {
        Ok((low, high)) => Some([low, high]),
        Err(NoBound::NothingFound | NoBound::NoSpread) => Some([cover.low, cover.low]),
        Err(_) => None,
    }
}

fn main() -> Result<(), Box<dyn Error>> {
    let arguments: Vec<String> = env::args().skip(1).collect();
    let [readings, species, out] = arguments.as_slice() else {
        return Err("sites READINGS SPECIES OUT".into());
    };
    let table = |name: &String| Table { name: name.clone(), content: Content::File(name.into()) };
    let (protocol, findings) = protocol::read("shrubs-5cm.toml", include_str!("../../shrubs-5cm.toml"));
    if !findings.is_empty() {
        return Err(format!("{findings:?}").into());
    }
    let options =
        Options { unit: Some(Bare::Unit(Unit::Metre)), protocol: Some(protocol), ..Options::default() };
    let question = Question { method: Some(Method::StudentT), ..Question::default() };
    let threads = available_parallelism().unwrap_or(NonZero::<usize>::MIN);
    let way = Way { threads, progress: &|_| {} };
    let found = sites(&[table(readings), table(species)], &options, &question, &way)
        .map_err(|unreadable| format!("{}: {}", unreadable.name, unreadable.why))?;

    let mut text = String::from("site_id,n_lines,total_length_m,cover_pct,se_pct,lo90,hi90\n");
    for row in &found.rows {
        let Some(cover) = &row.cover else { continue };
        let per_cent = |share: f64| format!("{}", 100.0 * share);
        let se = match cover.error {
            SamplingError::Known { se, .. } => per_cent(se),
            SamplingError::Unknown(_) => String::new(),
        };
        let [low, high] = ends(row, cover).map_or([String::new(), String::new()], |ends| ends.map(per_cent));
        let length = row.length.in_unit(Unit::Metre);
        let (site, lines, cover) = (&row.site, row.lines, per_cent(cover.low));
        writeln!(text, "{site},{lines},{length},{cover},{se},{low},{high}")?;
    }
    fs::write(out, text)?;
    Ok(())
}
