//! All blocks, side by side, each kept on disk as soon as it is done: what was broken off goes on where it stopped.

use crate::block::{Block, Plan};
use crate::table::{self, Row};
use rayon::prelude::*;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

/// How far a run is.
#[derive(Clone, Debug)]
pub enum Sign {
    /// A block had been done by an earlier run.
    Kept(String),
    /// A block is done.
    Done(String),
}

/// Runs every block, or takes it from `work` where this very program did it before.
///
/// The rows and their order don't depend on the number of threads.
///
/// # Errors
/// what the disk says
pub fn run(blocks: &[Block], plan: Plan, work: &Path, tell: &(dyn Fn(Sign) + Sync)) -> io::Result<Vec<Row>> {
    let kept = work.join(fingerprint(plan)?);
    fs::create_dir_all(&kept)?;
    let parts: Vec<Vec<Row>> = blocks
        .par_iter()
        .map(|block| {
            let file = kept.join(format!("{}.csv", block.name()));
            if let Some(rows) = fs::read_to_string(&file).ok().and_then(|text| table::read(&text).ok()) {
                tell(Sign::Kept(block.name()));
                return Ok(rows);
            }
            let text = table::written(&block.rows(plan));
            put(&file, &text)?;
            tell(Sign::Done(block.name()));
            table::read(&text).map_err(io::Error::other)
        })
        .collect::<io::Result<_>>()?;
    Ok(parts.into_iter().flatten().collect())
}

/// Writes a file whole or not at all.
fn put(file: &Path, text: &str) -> io::Result<()> {
    let half: PathBuf = file.with_extension("half");
    fs::write(&half, text)?;
    fs::rename(half, file)
}

/// A folder's name that changes with the program and the plan, so that no block of other code is taken for this one's.
fn fingerprint(plan: Plan) -> io::Result<String> {
    let program = fs::read(std::env::current_exe()?)?;
    let hash = program.iter().fold(0xcbf2_9ce4_8422_2325_u64, |hash, &byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3)
    });
    Ok(format!("{hash:016x}-{}-{}", plan.stands, plan.surveys))
}
