//! A Darwin Core archive: each reading of a line as an event, each species on it as an occurrence with its cover, and
//! what the survey looked for by the Humboldt terms.
//!
//! # Source
//! Darwin Core text guide (TDWG, 2021); Darwin Core terms and Humboldt Extension for Ecological Inventories (TDWG, 2024,
//! terms as of 2025); Ecological Metadata Language 2.2.0 (2019)

mod about;
mod rows;

use crate::{File, Whole};
use std::io::{Cursor, Write as _};
use tautline_exchange::table::row;
use tautline_survey::message::Message;
use tautline_words::Words;
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, ZipWriter};

/// A table of the archive: its file, the class of its rows, its terms with their namespaces, and its rows.
struct Part {
    file: &'static str,
    class: &'static str,
    terms: &'static [&'static str],
    rows: Vec<Vec<String>>,
}

const DARWIN_CORE: &str = "http://rs.tdwg.org/dwc/terms/";
const HUMBOLDT: &str = "http://rs.tdwg.org/eco/terms/";

pub(crate) fn files(whole: &Whole, words: &Words) -> Result<Vec<File>, Message> {
    let parts = rows::parts(whole, words);
    if parts[0].rows.is_empty() {
        return Err(Message::new("export-no-such-list"));
    }
    let mut files: Vec<File> = parts.iter().map(|part| File::text(part.file, text(part))).collect();
    files.push(File::text("meta.xml", meta(&parts)));
    files.push(File::text("eml.xml", about::eml(whole, words)));
    let packed =
        packed(&files).map_err(|error| Message::new("export-not-made").with("why", error.to_string()))?;
    Ok(vec![File { name: "darwin-core.zip".to_owned(), bytes: packed }])
}

fn text(part: &Part) -> String {
    let heads: Vec<&str> = part.terms.iter().map(|term| term.rsplit('/').next().unwrap_or(term)).collect();
    // the first column is the event that a row hangs on, in the core the event's own
    let heads: Vec<&str> = std::iter::once("id").chain(heads).collect();
    row(&heads) + &part.rows.iter().map(|cells| row(cells)).collect::<String>()
}

/// Which column is which term.
fn meta(parts: &[Part]) -> String {
    let part = |part: &Part, element: &str, id: &str| {
        let fields: Vec<String> = (1..)
            .zip(part.terms)
            .map(|(index, term)| format!("    <field index=\"{index}\" term=\"{term}\"/>\n"))
            .collect();
        format!(
            "  <{element} encoding=\"UTF-8\" fieldsTerminatedBy=\",\" linesTerminatedBy=\"\\n\" fieldsEnclosedBy=\"&quot;\" \
             ignoreHeaderLines=\"1\" rowType=\"{}\">\n    <files><location>{}</location></files>\n    <{id} index=\"0\"/>\n{}  </{element}>\n",
            part.class,
            part.file,
            fields.concat()
        )
    };
    let extensions: String = parts[1..].iter().map(|one| part(one, "extension", "coreid")).collect();
    format!(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<archive xmlns=\"http://rs.tdwg.org/dwc/text/\" metadata=\"eml.xml\">\n{}{extensions}</archive>\n",
        part(&parts[0], "core", "id")
    )
}

fn packed(files: &[File]) -> Result<Vec<u8>, zip::result::ZipError> {
    let mut out = ZipWriter::new(Cursor::new(Vec::new()));
    let options = SimpleFileOptions::default().compression_method(CompressionMethod::Deflated);
    for file in files {
        out.start_file(file.name.as_str(), options)?;
        out.write_all(&file.bytes)?;
    }
    Ok(out.finish()?.into_inner())
}
