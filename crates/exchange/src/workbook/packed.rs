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
const ENDINGS: [&str; 11] =
    ["csv", "tsv", "txt", "sheet", "toml", "xlsx", "ods", "gpx", "kml", "geojson", "gpkg"];

/// A shapefile's shapes, its table and its reference.
const OF_SHAPES: [&str; 3] = ["shp", "dbf", "prj"];

/// A packed file whose parts were all unpacked once, into nothing: whole, unlocked, and no larger than can be read.
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
        let is_streamed = part.name().map_err(|error| why(&error))?.starts_with("xl/worksheets/");
        let most = if is_streamed { room.unpacked } else { room.unpacked.min(LARGEST_FILE) };
        let took = io::copy(&mut part.take(most + 1), &mut io::sink()).map_err(|_| "packed-damaged")?;
        if took > most {
            return Err("packed-too-large");
        }
        room.unpacked -= took;
    }
    Ok(archive)
}

/// The parts with one of these endings, by name, if together they have no more than so many bytes; everything packed is sized
/// first.
#[cfg(feature = "boundaries")]
pub(crate) fn with_endings(
    bytes: &[u8],
    endings: &[&str],
    most: u64,
) -> Result<Vec<(String, Vec<u8>)>, Refusal> {
    let mut archive = sized(bytes, &mut Room::new())?;
    let (mut parts, mut left) = (Vec::new(), most);
    for (at, name) in names(&mut archive)?.into_iter().enumerate() {
        let ending = name.rsplit_once('.').map_or("", |(_, ending)| ending);
        if endings.iter().any(|known| ending.eq_ignore_ascii_case(known)) && !name.starts_with("__MACOSX/") {
            let bytes = unpacked(&mut archive, at, left)?;
            left -= bytes.len() as u64;
            parts.push((name, bytes));
        }
    }
    Ok(parts)
}

/// The names of the parts.
pub(super) fn names(archive: &mut Archive) -> Result<Vec<String>, Refusal> {
    (0..archive.len()).map(|at| name(archive, at)).collect()
}

/// Looks at every part, unpacked as it is read.
pub(super) fn each(
    archive: &mut Archive,
    mut look: impl FnMut(&mut dyn io::Read) -> Result<(), Refusal>,
) -> Result<(), Refusal> {
    (0..archive.len()).try_for_each(|at| look(&mut archive.by_index(at).map_err(|error| why(&error))?))
}

/// One part, by its name.
pub(super) fn part(archive: &mut Archive, wanted: &str) -> Result<Vec<u8>, Refusal> {
    let at = names(archive)?.iter().position(|name| name == wanted).ok_or("packed-damaged")?;
    unpacked(archive, at, LARGEST_FILE)
}

/// The files of a packed folder by name, and the names of what is of another kind.
pub(super) fn files(outer: &str, archive: &mut Archive) -> Result<(Vec<Source>, Vec<String>), Refusal> {
    let (mut files, mut others) = (Vec::new(), Vec::new());
    let shapes: Vec<String> = names(archive)?.iter().filter_map(|name| stem_of(name, "shp")).collect();
    for at in 0..archive.len() {
        let name = name(archive, at)?;
        let own = name.rsplit(['/', '\\']).next().unwrap_or_default();
        let (stem, ending) = own.rsplit_once('.').unwrap_or((own, ""));
        // folders, and what systems put beside files for themselves
        if own.is_empty() || own.starts_with('.') || name.starts_with("__MACOSX/") {
            continue;
        }
        let is = |known: &&str| ending.eq_ignore_ascii_case(known);
        let is_of_shapes = stem_of(&name, ending).is_some_and(|stem| shapes.contains(&stem));
        let is_read = ENDINGS.iter().any(is) || is_of_shapes && OF_SHAPES.iter().any(is);
        // what other programs keep beside shapes is nobody's loss
        if is_of_shapes && !is_read {
            continue;
        }
        if is_read && !stem.to_lowercase().starts_with("readme") {
            let bytes = unpacked(archive, at, LARGEST_FILE)?;
            files.push(Source { name: format!("{outer}/{name}"), bytes });
        } else {
            others.push(name);
        }
    }
    files.sort_by(|one, other| one.name.cmp(&other.name));
    Ok((files, others))
}

/// A name without this ending; none where it has another.
fn stem_of(name: &str, ending: &str) -> Option<String> {
    let (stem, own) = name.rsplit_once('.')?;
    own.eq_ignore_ascii_case(ending).then(|| stem.to_lowercase())
}

fn name(archive: &mut Archive, at: usize) -> Result<String, Refusal> {
    let part = archive.by_index(at).map_err(|error| why(&error))?;
    let name = part.name().map_err(|error| why(&error))?;
    Ok(name.into_owned())
}

/// One part whole, if it has no more than so many bytes.
fn unpacked(archive: &mut Archive, at: usize, most: u64) -> Result<Vec<u8>, Refusal> {
    let part = archive.by_index(at).map_err(|error| why(&error))?;
    let mut bytes = Vec::new();
    part.take(most + 1).read_to_end(&mut bytes).map_err(|_| "packed-damaged")?;
    if bytes.len() as u64 > most { Err("packed-too-large") } else { Ok(bytes) }
}

fn why(error: &ZipError) -> Refusal {
    match error {
        ZipError::UnsupportedArchive(_) | ZipError::InvalidPassword => "packed-locked",
        _ => "packed-damaged",
    }
}
