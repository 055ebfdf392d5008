//! Power by simulation, timed in process on all cores, under the comparison's names.
//!
//! `power RUNS WARM [OUT]`: for 3 to 40 paired lines 10,000 surveys each, every survey's lines drawn one by one on both
//! visits, and tested two-sided at 5 %.

use std::env;
use std::error::Error;
use std::fmt::Write;
use std::fs;
use std::num::NonZero;
use std::sync::Mutex;
use std::thread::available_parallelism;
use std::time::Instant;
use tautline_engine::effort::power::Sides;
use tautline_engine::effort::simulated::{NormalLines, Simulation};
use tautline_engine::seed::Seed;

const SURVEYS: u64 = 10_000;
const LINES: std::ops::RangeInclusive<usize> = 3..=40;

/// The chance for a number of lines.
fn chance(units: usize, run: u64) -> f64 {
    let seed = Seed::from_purpose("bench power", &[run, units as u64]);
    let lines = NormalLines::new((20.0, 16.0), 8.0, 0.6, seed);
    let mut simulation = Simulation::new(lines, units, Sides::Two, 0.05);
    simulation.run(SURVEYS);
    simulation.chance().value
}

/// All of them; each thread takes the largest number of lines that is left.
fn chances(threads: NonZero<usize>, run: u64) -> Vec<(usize, f64)> {
    let left = Mutex::new(LINES);
    let work = || {
        let mut done = Vec::new();
        while let Some(units) = left.lock().ok().and_then(|mut left| left.next_back()) {
            done.push((units, chance(units, run)));
        }
        done
    };
    let mut all: Vec<(usize, f64)> = std::thread::scope(|scope| {
        let parts: Vec<_> = (0..threads.get()).map(|_| scope.spawn(work)).collect();
        parts.into_iter().flat_map(|part| part.join().expect("drawing doesn't panic")).collect()
    });
    all.sort_by_key(|&(units, _)| units);
    all
}

fn main() -> Result<(), Box<dyn Error>> {
    let arguments: Vec<String> = env::args().skip(1).collect();
    let [runs, warm, ..] = arguments.as_slice() else { return Err("power RUNS WARM [OUT]".into()) };
    let (runs, warm) = (runs.parse::<u64>()?, warm.parse::<u64>()?);
    let threads = available_parallelism().unwrap_or(NonZero::<usize>::MIN);
    let mut times = Vec::new();
    let mut found = Vec::new();
    for run in 0..runs + warm {
        let begun = Instant::now();
        found = chances(threads, run);
        if run >= warm {
            times.push(format!("{:.6}", begun.elapsed().as_secs_f64()));
        }
    }
    let line = format!(
        "{{\"task\": \"T4\", \"peer\": \"tautline\", \"size\": \"{} n x {SURVEYS}\", \"times\": [{}]}}\n",
        LINES.count(),
        times.join(", ")
    );
    std::io::Write::write_all(&mut std::io::stdout(), line.as_bytes())?;
    if let Some(out) = arguments.get(2) {
        let mut text = String::from("n,power\n");
        for (units, chance) in &found {
            writeln!(text, "{units},{chance}")?;
        }
        fs::create_dir_all(out)?;
        fs::write(format!("{out}/power.csv"), text)?;
    }
    Ok(())
}
