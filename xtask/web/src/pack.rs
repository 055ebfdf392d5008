//! Packed copies beside the files, and how much the first load transfers.

use crate::Done;
use crate::folder::Made;
use std::fmt::Write as _;
use std::fs;
use std::io::Write as _;
use std::path::Path;

/// What the first load may transfer at most, packed, both languages: on a weak signal at the edge of a town some ten seconds.
const MOST: usize = 300 * 1024;

/// Packs every file that grows smaller by it; refuses a first load that grew.
pub(crate) fn pack(out: &Path, made: &Made) -> Done<String> {
    let mut said = format!("{}\n", out.display());
    let first = packed(out, &made.first, &mut said)?;
    said += "and once it is open:\n";
    let later = packed(out, &made.later, &mut said)?;
    // writing to a String can't fail
    let _ = write!(
        said,
        "the first load transfers {first} bytes packed, of {MOST} at most; {later} more come once the app is open"
    );
    // the build with the suite of the store is given out to nobody
    if first > MOST && !out.ends_with("web-conformance") {
        return Err(format!("{said}\nMore than that: look for what grew."));
    }
    Ok(said)
}

/// Packs files, and says how much they come to.
fn packed(out: &Path, names: &[String], said: &mut String) -> Done<usize> {
    let mut all = 0;
    for name in names {
        let path = out.join(name);
        let bytes = fs::read(&path).map_err(|why| format!("{}: {why}", path.display()))?;
        let packed = brotli(&bytes).map_err(|why| format!("{}: {why}", path.display()))?;
        let smaller = packed.len() < bytes.len();
        if smaller {
            fs::write(out.join(format!("{name}.br")), &packed)
                .map_err(|why| format!("{}: {why}", path.display()))?;
        }
        let sent = if smaller { packed.len() } else { bytes.len() };
        let _ = writeln!(said, "{:>9} {sent:>8}  {name}", bytes.len());
        all += sent;
    }
    Ok(all)
}

fn brotli(bytes: &[u8]) -> std::io::Result<Vec<u8>> {
    let mut packed = Vec::new();
    let mut writer = brotli::CompressorWriter::new(&mut packed, 1 << 16, 11, 24);
    writer.write_all(bytes)?;
    drop(writer);
    Ok(packed)
}
