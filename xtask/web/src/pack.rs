//! Packed copies beside the files, and how much the first load transfers.

use crate::Done;
use std::fmt::Write as _;
use std::fs;
use std::io::Write as _;
use std::path::Path;

/// What the first load may transfer at most, packed, with all that the worker fetches so that the next needs no network: on a weak signal at the edge of a town that is some ten seconds.
/// It is nearly three times that: said by every build until it no longer holds.
const WANTED: usize = 300 * 1024;

/// What it transfers at most today. Beyond this nothing is added before something is taken away; it only ever falls.
const MOST: usize = 832 * 1024;

/// Packs every file that grows smaller by it; refuses a first load that grew.
pub(crate) fn pack(out: &Path, made: &[String]) -> Done<String> {
    let mut said = format!("{}\n", out.display());
    let mut first = 0;
    for name in made {
        let path = out.join(name);
        let bytes = fs::read(&path).map_err(|why| format!("{}: {why}", path.display()))?;
        let packed = brotli(&bytes).map_err(|why| format!("{}: {why}", path.display()))?;
        let smaller = packed.len() < bytes.len();
        if smaller {
            fs::write(out.join(format!("{name}.br")), &packed)
                .map_err(|why| format!("{}: {why}", path.display()))?;
        }
        let sent = if smaller { packed.len() } else { bytes.len() };
        // writing to a String can't fail
        let _ = writeln!(said, "{:>9} {sent:>8}  {name}", bytes.len());
        first += sent;
    }
    let _ = write!(said, "the first load transfers {first} bytes packed; wanted are {WANTED} at most");
    // the build with the suite of the store is given out to nobody
    if first > MOST && !out.ends_with("web-conformance") {
        return Err(format!("{said}\nMore than the {MOST} of before: look for what grew."));
    }
    Ok(said)
}

fn brotli(bytes: &[u8]) -> std::io::Result<Vec<u8>> {
    let mut packed = Vec::new();
    let mut writer = brotli::CompressorWriter::new(&mut packed, 1 << 16, 11, 24);
    writer.write_all(bytes)?;
    drop(writer);
    Ok(packed)
}
