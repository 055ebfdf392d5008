//! BCa limits of many sites, timed in process on all cores, under the comparison's names.
//!
//! `bootstrap DATA RUNS WARM mean|ratio [OUT]` reads `DATA/t3.csv`, a site a row, a line's cover in per cent a cell.
//! `ratio` takes the lines as 30, 50 and 20 m long in turn.

use std::env;
use std::error::Error;
use std::fmt::Write;
use std::fs;
use std::num::NonZero;
use std::thread::available_parallelism;
use std::time::Instant;
use tautline_engine::confidence::Tail;
use tautline_engine::confidence::bootstrap::{Group, Resampled};
use tautline_engine::estimate::Line;
use tautline_survey::limits::RESAMPLES;

/// The confidence of the comparison.
const LEVEL: f64 = 0.95;
const LENGTHS: [f64; 3] = [30.0, 50.0, 20.0];

/// The limits of each site, each thread its own part of the sites.
fn limits(sites: &[Group], threads: NonZero<usize>) -> Vec<(f64, f64)> {
    let one = |site: &Group| {
        let drawn = Resampled::of(std::slice::from_ref(site), RESAMPLES);
        drawn.map_or((f64::NAN, f64::NAN), |drawn| drawn.ends(Tail::of_interval(LEVEL)))
    };
    let share = sites.len().div_ceil(threads.get()).max(1);
    std::thread::scope(|scope| {
        let parts: Vec<_> = sites
            .chunks(share)
            .map(|part| scope.spawn(move || part.iter().map(one).collect::<Vec<_>>()))
            .collect();
        parts.into_iter().flat_map(|part| part.join().expect("limits of sound lines")).collect()
    })
}

fn main() -> Result<(), Box<dyn Error>> {
    let arguments: Vec<String> = env::args().skip(1).collect();
    let (data, runs, warm, what) = match arguments.as_slice() {
        [data, runs, warm, what, ..] => (data, runs.parse::<usize>()?, warm.parse::<usize>()?, what.as_str()),
        _ => return Err("bootstrap DATA RUNS WARM mean|ratio [OUT]".into()),
    };
    let length = |line: usize| if what == "ratio" { LENGTHS[line % LENGTHS.len()] } else { 100.0 };
    let mut sites = Vec::new();
    for row in fs::read_to_string(format!("{data}/t3.csv"))?.lines() {
        let covers: Vec<f64> = row.split(',').map(str::parse).collect::<Result<_, _>>()?;
        let lines = covers.iter().enumerate();
        let units = lines.map(|(at, cover)| Line::new(cover / 100.0 * length(at), length(at))).collect();
        sites.push(Group { weight: 1.0, units });
    }
    let threads = available_parallelism().unwrap_or(NonZero::<usize>::MIN);
    let mut times = Vec::new();
    let mut found = Vec::new();
    for run in 0..runs + warm {
        let begun = Instant::now();
        found = limits(&sites, threads);
        if run >= warm {
            times.push(format!("{:.6}", begun.elapsed().as_secs_f64()));
        }
    }
    let (peer, size) = (if what == "ratio" { "tautline/ratio" } else { "tautline" }, sites.len());
    let line = format!(
        "{{\"task\": \"T3\", \"peer\": \"{peer}\", \"size\": \"{size} sites\", \"times\": [{}]}}\n",
        times.join(", ")
    );
    std::io::Write::write_all(&mut std::io::stdout(), line.as_bytes())?;
    if let Some(out) = arguments.get(4) {
        let mut text = String::from("site,mean,lo,hi\n");
        for (site, (group, (low, high))) in sites.iter().zip(&found).enumerate() {
            let whole = |of: fn(&Line) -> f64| group.units.iter().map(of).sum::<f64>();
            let cover = 100.0 * whole(|line| line.intercept) / whole(|line| line.length);
            writeln!(text, "{},{cover},{},{}", site + 1, 100.0 * low, 100.0 * high)?;
        }
        fs::create_dir_all(out)?;
        fs::write(format!("{out}/ci.csv"), text)?;
    }
    Ok(())
}
