//! A mixed model of lines over years, in process, as the comparison's T5 asks for it.
//!
//! `mixed DATA SIZE RUNS WARM lines|years|sites [OUT]` fits DATA/t5_SIZE.csv (line, year, cover) and prints one line of JSON with
//! the seconds of each run: `lines` with a level and a slope of each line; `years` with what each year did to all lines too; `sites`
//! fits 10,000 invented sites of 10 lines and 8 years, level and years, on all cores.

use std::env;
use std::error::Error;
use std::fs;
use std::num::NonZero;
use std::thread::{available_parallelism, scope};
use std::time::Instant;
use tautline_engine::seed::Seed;
use tautline_engine::trend::mixed::{Fit, NoFit, Reading, Terms, fit};

/// The comparison's years lie between −3.5 and 3.5.
const MIDDLE: f64 = 3.5;
const SITES: usize = 10_000;

fn readings(name: &str) -> Result<Vec<Reading>, Box<dyn Error>> {
    let text = fs::read_to_string(name)?;
    let rows = text.lines().skip(1).map(|row| {
        let [line, year, cover] = row.split(',').collect::<Vec<_>>()[..] else {
            return Err(format!("not three cells: {row}").into());
        };
        #[expect(clippy::cast_possible_truncation, reason = "years counted from 0 to 7")]
        let year = (year.parse::<f64>()? + MIDDLE) as i32;
        Ok(Reading { site: 0, line: line.parse()?, year, value: cover.parse()? })
    });
    rows.collect()
}

/// Ten lines of each site over eight years.
fn sites() -> Vec<Vec<Reading>> {
    (0..SITES)
        .map(|site| {
            let mut random =
                Seed::from_purpose("bench sites", &[u64::try_from(site).unwrap_or_default()]).stream();
            let swings: Vec<f64> = (0..8).map(|_| 1.5 * random.normal()).collect();
            let mut own = Vec::with_capacity(80);
            for line in 0..10 {
                let level = 20.0 + 5.0 * random.normal();
                for (year, swing) in (0..8).zip(&swings) {
                    let value = level + 0.3 * f64::from(year) + swing + random.normal();
                    own.push(Reading { site: 0, line, year, value });
                }
            }
            own
        })
        .collect()
}

/// How many of the sites have a trend.
fn all_sites(sites: &[Vec<Reading>]) -> usize {
    let threads = available_parallelism().unwrap_or(NonZero::<usize>::MIN).get();
    let terms = Terms { year: true, ..Terms::default() };
    let told = |part: &[Vec<Reading>]| {
        part.iter()
            .filter(|site| fit(site, MIDDLE, terms).is_ok_and(|fit| fit.slope().p().is_finite()))
            .count()
    };
    scope(|scope| {
        let parts: Vec<_> =
            sites.chunks(sites.len().div_ceil(threads)).map(|part| scope.spawn(move || told(part))).collect();
        parts.into_iter().map(|part| part.join().unwrap_or_default()).sum()
    })
}

fn told(fitted: &Fit) -> String {
    let (level, slope, of) = (fitted.level(MIDDLE), fitted.slope(), fitted.variances());
    format!(
        "{{\"intercept\": {}, \"year\": {}, \"se_intercept\": {}, \"se_year\": {}, \"v_int\": {}, \"cov\": {}, \
         \"v_year\": {}, \"v_res\": {}, \"loglik\": {}}}\n",
        level.value,
        slope.value,
        level.plain_se,
        slope.plain_se,
        of.level,
        of.level_and_slope.unwrap_or_default(),
        of.slope.unwrap_or_default(),
        of.left,
        fitted.ln_likelihood()
    )
}

fn main() -> Result<(), Box<dyn Error>> {
    let arguments: Vec<String> = env::args().skip(1).collect();
    let [data, size, runs, warm, what, out @ ..] = arguments.as_slice() else {
        return Err("mixed DATA SIZE RUNS WARM lines|years|sites [OUT]".into());
    };
    let (runs, warm): (usize, usize) = (runs.parse()?, warm.parse()?);
    let many = if what == "sites" { sites() } else { Vec::new() };
    let readings = if what == "sites" { Vec::new() } else { readings(&format!("{data}/t5_{size}.csv"))? };
    let terms = Terms { slope: true, year: what == "years", site_year: false };
    let mut times = Vec::new();
    let mut found = Err(NoFit::OneYear);
    for run in 0..runs + warm {
        let begun = Instant::now();
        if what == "sites" {
            let fitted = all_sites(&many);
            if fitted != SITES {
                return Err(format!("{fitted} of {SITES} sites have a trend").into());
            }
        } else {
            found = fit(&readings, MIDDLE, terms);
        }
        if run >= warm {
            times.push(format!("{:.7}", begun.elapsed().as_secs_f64()));
        }
    }
    let peer = if what == "lines" { "tautline".to_owned() } else { format!("tautline/{what}") };
    let line = format!(
        "{{\"task\": \"T5\", \"peer\": \"{peer}\", \"size\": \"{size}\", \"times\": [{}]}}\n",
        times.join(", ")
    );
    std::io::Write::write_all(&mut std::io::stdout(), line.as_bytes())?;
    if let ([out], true) = (out, what != "sites") {
        let fitted = found.map_err(|why| format!("{why:?}"))?;
        fs::create_dir_all(out)?;
        fs::write(format!("{out}/fit.json"), told(&fitted))?;
    }
    Ok(())
}
