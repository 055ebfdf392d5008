//! How long opening a notebook takes, step by step: `cargo run --release -p tautline-store --example open -- FILE`

#![expect(clippy::print_stdout, reason = "it prints")]

use std::path::Path;
use std::time::Instant;
use tautline_store::{Keep as _, Sqlite};
use tautline_survey::notebook::current::Current;

fn main() -> Result<(), String> {
    let file = std::env::args().nth(1).ok_or("which file?")?;
    let begun = Instant::now();
    let keep = Sqlite::open(Path::new(&file)).map_err(|why| format!("{why:?}"))?;
    println!("{:.3} s until it is open and checked", begun.elapsed().as_secs_f64());
    let heads = keep.heads().map_err(|why| format!("{why:?}"))?;
    println!("{:.3} s until its {} heads are read", begun.elapsed().as_secs_f64(), heads.len());
    let current = Current::of(heads);
    println!("{:.3} s until it is known what stands", begun.elapsed().as_secs_f64());
    let (input, _) = current.into_input();
    println!(
        "{:.3} s until its {} visits can be worked with",
        begun.elapsed().as_secs_f64(),
        input.visits.len()
    );
    Ok(())
}
