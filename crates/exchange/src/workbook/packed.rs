//! Packed files: what they hold is counted while it is unpacked into nothing, so that a small file that unpacks to a huge
//! one is refused whatever it says about itself.

use super::Refusal;
use super::grid::Room;
use crate::limits::{LARGEST_FILE, MOST_PACKED};
use crate::source::Source;
use std::io::{self, Cursor, Read as _};
use zip::ZipArchive;
use zip::result::ZipError;

/// A packed file in memory.
pub(super) type Archive<'a> = ZipArchive<Cursor<&'a [u8]>>;

/// The endings of files that are taken out of a packed folder.
const ENDINGS: [&str; 7] = ["csv", "tsv", "txt", "sheet", "toml", "xlsx", "ods"];

/// A packed file whose parts were all unpacked once, into nothing: whole, unlocked, and together no larger than a file may be.
pub(super) fn sized<'a>(bytes: &'a [u8], room: &mut Room) -> Result<Archive<'a>, Refusal> {
    if bytes.len() as u64 > LARGEST_FILE {
        return Err("file-too-large");
    }
    let mut archive = ZipArchive::new(Cursor::new(bytes)).map_err(|_| "packed-damaged")?;
    if archive.len() > MOST_PACKED {
        return Err("packed-too-large");
    }
    for at in 0..archive.len() {
        let part = archive.by_index(at).map_err(|error| why(&error))?;
        let took =
            io::copy(&mut part.take(room.unpacked + 1), &mut io::sink()).map_err(|_| "packed-damaged")?;
        room.unpacked = room.unpacked.checked_sub(took).ok_or("packed-too-large")?;
    }
    Ok(archive)
}

/// The names of the parts.
pub(super) fn names(archive: &mut Archive) -> Result<Vec<String>, Refusal> {
    (0..archive.len()).map(|at| name(archive, at)).collect()
}

/// One part, by its name.
pub(super) fn part(archive: &mut Archive, wanted: &str) -> Result<Vec<u8>, Refusal> {
    let at = names(archive)?.iter().position(|name| name == wanted).ok_or("packed-damaged")?;
    unpacked(archive, at)
}

/// The files of a packed folder by name, and the names of what is of another kind.
pub(super) fn files(outer: &str, archive: &mut Archive) -> Result<(Vec<Source>, Vec<String>), Refusal> {
    let (mut files, mut others) = (Vec::new(), Vec::new());
    for at in 0..archive.len() {
        let name = name(archive, at)?;
        let own = name.rsplit(['/', '\\']).next().unwrap_or_default();
        let (stem, ending) = own.rsplit_once('.').unwrap_or((own, ""));
        // folders, and what systems put beside files for themselves
        if own.is_empty() || own.starts_with('.') || name.starts_with("__MACOSX/") {
            continue;
        }
        let is_read = ENDINGS.iter().any(|known| ending.eq_ignore_ascii_case(known));
        if is_read && !stem.to_lowercase().starts_with("readme") {
            let bytes = unpacked(archive, at)?;
            files.push(Source { name: format!("{outer}/{name}"), bytes });
        } else {
            others.push(name);
        }
    }
    files.sort_by(|one, other| one.name.cmp(&other.name));
    Ok((files, others))
}

fn name(archive: &mut Archive, at: usize) -> Result<String, Refusal> {
    let part = archive.by_index(at).map_err(|error| why(&error))?;
    let name = part.name().map_err(|error| why(&error))?;
    Ok(name.into_owned())
}

/// One part whole; [`sized`] has seen how large it is.
fn unpacked(archive: &mut Archive, at: usize) -> Result<Vec<u8>, Refusal> {
    let part = archive.by_index(at).map_err(|error| why(&error))?;
    let mut bytes = Vec::new();
    part.take(LARGEST_FILE).read_to_end(&mut bytes).map_err(|_| "packed-damaged")?;
    Ok(bytes)
}

fn why(error: &ZipError) -> Refusal {
    match error {
        ZipError::UnsupportedArchive(_) | ZipError::InvalidPassword => "packed-locked",
        _ => "packed-damaged",
    }
}
