//! The files that say where lines may lie, and where not.

use crate::call::not_a_number;
use crate::exit::Exit;
use crate::show;
use clap::ArgMatches;
use std::fs::File;
use std::io::Read as _;
use std::path::Path;
use tautline_engine::length::DecimalMark;
use tautline_exchange::Source;
use tautline_exchange::boundary::{Asked, Purpose, read};
use tautline_exchange::limits::LARGEST_BOUNDARY;
use tautline_ground::site::Site;
use tautline_survey::boundary::{Boundary, Reference};
use tautline_survey::measure::Measure;
use tautline_survey::message::Message;
use tautline_words::Words;

type Refused = (String, Exit);

/// The site of all files that were handed in, and its name where one of them holds it; what was repaired is said aside.
pub(super) fn site(asked: &ArgMatches, words: &Words) -> Result<(Site, Option<String>), Refused> {
    let file = asked.get_one::<String>("boundary").map_or("", String::as_str);
    let reference = reference(asked, words)?;
    let mut files = vec![(file, Purpose::Ground)];
    for written in asked.get_many::<String>("keep-out").into_iter().flatten() {
        files.push(kept_out(written, words)?);
    }
    files.extend(
        asked.get_many::<String>("there").into_iter().flatten().map(|file| (file.as_str(), Purpose::There)),
    );
    let mut boundary = Boundary::default();
    let mut used = false;
    for (file, purpose) in files {
        let stratum = asked.get_one::<String>("stratum-from").map_or("stratum", String::as_str).to_owned();
        let (source, beside) = opened(file, words)?;
        let found = read(&source, &beside, &Asked { purpose, stratum, reference })
            .map_err(|message| refused(file, message, words))?;
        used |= found.asked_reference;
        for &part in &found.boundary.left_out {
            show::aside(&words.say(&Message::new("boundary-left-out").with("file", file).with("part", part)));
        }
        // a mistake is looked for in each file by itself, so that its name can be said
        if purpose == Purpose::Ground {
            Site::of(&found.boundary).map_err(|error| refused(file, error.message(), words))?;
        }
        boundary.join(found.boundary);
    }
    let also_for_from = asked.get_one::<String>("from").is_some();
    if let (Some(reference), false) = (reference, used || also_for_from) {
        let message = Message::new("boundary-datum-unused").with("datum", reference.to_string());
        return Err((words.say(&message), Exit::NotUnderstood));
    }
    let site = Site::of(&boundary).map_err(|error| refused(file, error.message(), words))?;
    for repair in &site.repaired {
        show::aside(&words.say(&repair.message(file)));
    }
    if site.error > 0 {
        show::aside(
            &words.say(&Message::new("boundary-position-error").with("metres", u64::from(site.error))),
        );
    }
    Ok((site, boundary.site))
}

/// The reference that was asked for.
pub(super) fn reference(asked: &ArgMatches, words: &Words) -> Result<Option<Reference>, Refused> {
    let Some(found) = asked.get_one::<String>("datum") else { return Ok(None) };
    let unknown =
        || (words.say(&Message::new("option-datum").with("found", found.as_str())), Exit::NotUnderstood);
    Reference::read(found).ok_or_else(unknown).map(Some)
}

/// `roads.kml`, `roads.kml, 15 m`, or `fence.kml, 5 m, not crossed`.
fn kept_out<'a>(written: &'a str, words: &Words) -> Result<(&'a str, Purpose), Refused> {
    let (mut file, mut buffer, mut crossed) = (written, 0, None);
    while let Some((before, last)) = file.rsplit_once(',').filter(|_| !Path::new(file).exists()) {
        match last.trim() {
            "crossed" => crossed = Some(true),
            "not crossed" => crossed = Some(false),
            length => {
                buffer = millimetres(length).ok_or_else(|| not_a_number(length, "--keep-out", words))?;
            }
        }
        file = before.trim();
    }
    Ok((file, Purpose::KeepOut { buffer, crossed }))
}

/// A length of ten kilometres at most.
fn millimetres(written: &str) -> Option<i64> {
    let length = Measure::read(written, None, DecimalMark::Point).ok()?;
    let millimetres = (length.length().nanometres() + 500_000) / 1_000_000;
    Some(millimetres).filter(|millimetres| (0..=10_000_000).contains(millimetres))
}

/// A file, and the other files of a shapefile.
fn opened(file: &str, words: &Words) -> Result<(Source, Vec<Source>), Refused> {
    let unreadable = |error: std::io::Error| {
        let message = Message::new("file-unreadable").with("file", file).with("why", error.to_string());
        (words.say(&message), Exit::File)
    };
    let open = |path: &Path| -> std::io::Result<Source> {
        let mut bytes = Vec::new();
        // one more than is read, so that what is larger is told apart
        File::open(path)?.take(LARGEST_BOUNDARY + 1).read_to_end(&mut bytes)?;
        Ok(Source { name: path.display().to_string(), bytes })
    };
    let path = Path::new(file);
    let source = open(path).map_err(unreadable)?;
    let mut beside = Vec::new();
    if path.extension().is_some_and(|ending| ending.eq_ignore_ascii_case("shp")) {
        for ending in ["dbf", "prj", "DBF", "PRJ"] {
            let other = path.with_extension(ending);
            if other.exists() {
                beside.push(open(&other).map_err(unreadable)?);
            }
        }
    }
    Ok((source, beside))
}

fn refused(file: &str, why: Message, words: &Words) -> Refused {
    let about = Message::new("boundary-refused").with("file", file).with("why", why);
    (words.say(&about), Exit::NotUnderstood)
}
