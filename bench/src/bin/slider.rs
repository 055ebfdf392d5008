//! What somebody waits for who moves a slider of a plan, timed in process on one thread as in a browser: the closed forms, the
//! first surveys, and all of them, of normal lines and of an uneven stand, with the longest piece between two turns of a screen.
//!
//! `slider [LINES]`: 40 lines where nobody says; the middle of nine runs in milliseconds.

use std::env;
use std::error::Error;
use std::hint::black_box;
use std::io::Write as _;
use std::time::Instant;
use tautline_survey::effort::simulated::Simulating;
use tautline_survey::effort::{Ask, Foreseen, answers};
use tautline_survey::goal::{Percent, Relation, Subject, Wanted};

const RUNS: usize = 9;
/// Surveys of a piece, as the app draws them before it lets the screen have its turn.
const PIECE: u64 = 100;

fn middle(mut work: impl FnMut()) -> f64 {
    let once = |()| {
        let begun = Instant::now();
        work();
        begun.elapsed().as_secs_f64() * 1000.0
    };
    let mut times: Vec<f64> = [(); RUNS].map(once).to_vec();
    times.sort_by(f64::total_cmp);
    times[RUNS / 2]
}

fn main() -> Result<(), Box<dyn Error>> {
    let lines = env::args().nth(1).map_or(Ok(40), |lines| lines.parse())?;
    let foreseen =
        Foreseen { subject: Subject::Canopy, cover: 0.2, deviation: 0.08, pilot: None, lines: Vec::new() };
    let ask = Ask {
        goals: vec![Wanted::Cover(Relation::AtLeast(Percent(150_000)))],
        half_width: Some(0.04),
        change: Some(0.04),
        trend: Some((0.01, 5)),
        correlation: 0.6,
        confidence: 0.9,
        power: 0.8,
        lines: Some(lines),
        ..Ask::default()
    };
    for (stand, cover, deviation, change) in
        [("an even stand", 0.2, 0.08, 0.04), ("a sparse stand", 0.03, 0.04, 0.012)]
    {
        let foreseen = Foreseen { cover, deviation, ..foreseen.clone() };
        let ask = Ask { change: Some(change), ..ask.clone() };
        let begin = || Simulating::new(&foreseen, &ask, lines, 30.0).ok_or("no change is asked");
        begin()?;
        let closed = middle(|| drop(black_box(answers(&foreseen, &ask))));
        let first = middle(|| {
            if let Ok(mut simulating) = begin() {
                simulating.run(PIECE);
                black_box(simulating.so_far());
            }
        });
        let mut longest = 0.0_f64;
        let all = middle(|| {
            let Ok(mut simulating) = begin() else { return };
            let mut own = 0.0_f64;
            while !simulating.is_done() {
                let begun = Instant::now();
                simulating.run(PIECE);
                own = own.max(begun.elapsed().as_secs_f64() * 1000.0);
            }
            longest = own;
        });
        writeln!(
            std::io::stdout(),
            "{stand}, {lines} lines: closed forms {closed:.2} ms; the first {PIECE} surveys {first:.2} ms; \
             all of both kinds {all:.1} ms in pieces of {longest:.1} ms at most"
        )?;
    }
    Ok(())
}
