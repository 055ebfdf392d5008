//! How the server bears many devices: so many requests a second for so long, each with one new reading, and how long
//! each waited for its answer. Beside it how often this disk can be synced at all, since no answer leaves before a sync.
//!
//! `cargo run --release -p tautline-server --example load -- [REQUESTS A SECOND] [SECONDS] [FOLDER]`

#![expect(clippy::print_stdout, reason = "it prints")]

use std::error::Error;
use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::sync::mpsc;
use std::time::{Duration, Instant};
use tautline_server::trial::Device;
use tautline_server::{Server, Setup};
use tautline_store::{Keep as _, Sqlite};

/// Each sends its share, whether or not the others have been answered.
const DEVICES: u8 = 40;

fn main() -> Result<(), Box<dyn Error>> {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let word = |at: usize, silent: u32| words.get(at).map_or(Ok(silent), |text| text.parse());
    let (rate, seconds) = (word(0, 200)?, word(1, 10)?);
    let folder = words.get(2).map_or_else(std::env::temp_dir, PathBuf::from);
    let folder = folder.join(format!("tautline-load-{}", std::process::id()));
    std::fs::create_dir(&folder)?;
    let done = load(&folder, rate, seconds);
    std::fs::remove_dir_all(&folder)?;
    done
}

fn load(folder: &Path, rate: u32, seconds: u32) -> Result<(), Box<dyn Error>> {
    println!("{:.0} syncs a second of 4 KiB each", syncs_a_second(folder)?);
    let notebook = folder.join("load.tautline");
    let setup = Setup { notebook: notebook.clone(), port: Some(0), app: None, share: None };
    let server = Server::begin(&setup).map_err(|why| format!("{why:?}"))?;
    let (address, stop) = (server.address(), server.stop());
    let running = std::thread::spawn(move || server.run());
    let (tell, told) = mpsc::channel();
    let begun = Instant::now();
    let own = Duration::from_secs(1) * u32::from(DEVICES) / rate;
    let walking: Vec<_> = (0..DEVICES)
        .map(|number| {
            let tell = tell.clone();
            std::thread::spawn(move || -> Result<(), String> {
                let mut device = Device::new(number);
                // spread over the first interval, then at a fixed beat, late or not
                let mut next = begun + own * u32::from(number) / u32::from(DEVICES);
                while next < begun + Duration::from_secs(u64::from(seconds)) {
                    std::thread::sleep(next.saturating_duration_since(Instant::now()));
                    device.begin("a reading").map_err(|why| format!("{why:?}"))?;
                    device.exchange(address).map_err(|why| why.to_string())?;
                    // from when it was due, so that a server that holds everybody up can't look fast
                    tell.send(next.elapsed()).map_err(|why| why.to_string())?;
                    next += own;
                }
                Ok(())
            })
        })
        .collect();
    drop(tell);
    let mut waited: Vec<Duration> = told.iter().collect();
    for one in walking {
        one.join().map_err(|_| "a device broke off")??;
    }
    let took = begun.elapsed().as_secs_f64();
    stop.stop();
    running.join().map_err(|_| "the server broke off")??;
    waited.sort_unstable();
    let at =
        |share: usize| waited[(waited.len() * share / 1000).min(waited.len() - 1)].as_secs_f64() * 1000.0;
    let kept = Sqlite::open(&notebook).map_err(|why| format!("{why:?}"))?;
    let revisions = kept.len().map_err(|why| format!("{why:?}"))?;
    let end = kept.end().map_err(|why| format!("{why:?}"))?.map_or(0, |end| end.at);
    println!(
        "{} requests in {took:.1} s, {:.0} a second: half within {:.1} ms, 99 % within {:.1} ms, all within {:.1} ms",
        waited.len(),
        f64::from(u32::try_from(waited.len())?) / took,
        at(500),
        at(990),
        at(1000)
    );
    println!("{revisions} revisions kept, the log ends at {end}");
    Ok(())
}

/// How often a file here can be written and synced.
fn syncs_a_second(folder: &Path) -> std::io::Result<f64> {
    let mut file = std::fs::File::create(folder.join("synced"))?;
    let (begun, mut times) = (Instant::now(), 0_u32);
    while begun.elapsed() < Duration::from_secs(1) {
        file.write_all(&[0; 4096])?;
        file.sync_data()?;
        times += 1;
    }
    Ok(f64::from(times) / begun.elapsed().as_secs_f64())
}
