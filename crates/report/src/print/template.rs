//! Where a template's files come from, and what is said of one that fails.

use std::collections::BTreeMap;
use std::path::Path;
use tautline_survey::canonical::sha256_hex;
use tautline_survey::message::{Message, Value};
use typst::foundations::Bytes;
use typst::text::Font;

/// The files that come with the software.
const SHIPPED: [(&str, &str); 4] = [
    ("report.typ", include_str!("../../templates/report.typ")),
    ("packet.typ", include_str!("../../templates/packet.typ")),
    ("house.typ", include_str!("../../templates/house.typ")),
    ("letterhead.typ", include_str!("../../templates/letterhead.typ")),
];

/// Endings of the files that a template may be made of.
const USED: [&str; 9] = ["typ", "json", "csv", "toml", "txt", "svg", "png", "jpg", "jpeg"];
const FONTS: [&str; 3] = ["ttf", "otf", "ttc"];

/// More than this in one file is no template's.
const LARGEST: u64 = 32 * 1024 * 1024;

/// The files of a template, read once: those of an office's folder, and the shipped ones for what the folder lacks.
#[derive(Clone, Debug)]
pub struct Template {
    files: BTreeMap<String, Bytes>,
    /// The software's own, then those of the folder.
    fonts: Vec<Font>,
    shipped_fonts: usize,
    /// Files of the office's own, which a fault may lie in.
    folder: Option<String>,
}

impl Template {
    /// The template that comes with the software.
    pub fn shipped() -> Self {
        let files = SHIPPED.map(|(name, text)| (name.to_owned(), Bytes::new(text.as_bytes())));
        let fonts: Vec<Font> = typst_assets::fonts().flat_map(|data| Font::iter(Bytes::new(data))).collect();
        Self { files: files.into(), shipped_fonts: fonts.len(), fonts, folder: None }
    }

    /// The shipped template with the files of a folder in the place of its own; one folder deep, for pictures and fonts.
    ///
    /// # Errors
    /// the folder or a file of it can't be read, or the file is too large to be a template's
    pub fn in_folder(folder: &Path) -> Result<Self, TemplateError> {
        let mut template = Self { folder: Some(folder.display().to_string()), ..Self::shipped() };
        let unreadable = |path: &Path, error: &std::io::Error| TemplateError::unreadable(path, error);
        let mut paths = Vec::new();
        for entry in std::fs::read_dir(folder).map_err(|error| unreadable(folder, &error))? {
            let path = entry.map_err(|error| unreadable(folder, &error))?.path();
            if path.is_dir() {
                let inner = std::fs::read_dir(&path).map_err(|error| unreadable(&path, &error))?;
                paths.extend(inner.filter_map(|entry| Some(entry.ok()?.path())));
            } else {
                paths.push(path);
            }
        }
        paths.sort(); // the order of fonts is the same on every machine
        for path in paths {
            let ending =
                path.extension().and_then(|ending| ending.to_str()).unwrap_or_default().to_lowercase();
            let is_font = FONTS.contains(&ending.as_str());
            // a link could lead out of the folder
            let plain = std::fs::symlink_metadata(&path).is_ok_and(|found| found.is_file());
            if !plain || !(is_font || USED.contains(&ending.as_str())) {
                continue;
            }
            let bytes = read(&path)?;
            if is_font {
                template.fonts.extend(Font::iter(bytes));
            } else {
                let name = path.strip_prefix(folder).unwrap_or(&path);
                let name =
                    name.components().map(|part| part.as_os_str().to_string_lossy()).collect::<Vec<_>>();
                template.files.insert(name.join("/"), bytes);
            }
        }
        Ok(template)
    }

    pub(crate) fn file(&self, name: &str) -> Option<Bytes> {
        self.files.get(name).cloned()
    }

    pub(crate) fn fonts(&self) -> &[Font] {
        &self.fonts
    }

    /// A fingerprint of the files and of the fonts that the folder brought.
    pub fn print(&self) -> String {
        let files = self.files.iter().map(|(name, bytes)| format!("{name} {}\n", sha256_hex(bytes)));
        let fonts = self.fonts[self.shipped_fonts..].iter().map(|font| sha256_hex(font.data()) + "\n");
        sha256_hex(files.chain(fonts).collect::<String>().as_bytes())
    }

    /// The folder as it was named, before a file of it.
    pub(crate) fn place_of(&self, name: &str) -> String {
        self.folder.as_ref().map_or_else(|| name.to_owned(), |folder| format!("{folder}/{name}"))
    }
}

fn read(path: &Path) -> Result<Bytes, TemplateError> {
    let unreadable = |error| TemplateError::unreadable(path, &error);
    let length = std::fs::metadata(path).map_err(unreadable)?.len();
    if length > LARGEST {
        let message = Message::new("template-too-large").with("file", path.display().to_string());
        return Err(TemplateError { message: message.with("most", (LARGEST / (1024 * 1024)) as usize) });
    }
    Ok(Bytes::new(std::fs::read(path).map_err(unreadable)?))
}

/// Why a report could not be typeset.
#[derive(Clone, Debug, PartialEq)]
pub struct TemplateError {
    /// What is wrong, where it stands, and what would help.
    pub message: Message,
}

impl TemplateError {
    fn unreadable(path: &Path, error: &std::io::Error) -> Self {
        let message = Message::new("file-unreadable").with("file", path.display().to_string());
        Self { message: message.with("why", error.to_string()) }
    }

    pub(crate) fn of_data(error: &serde_json::Error) -> Self {
        Self::nowhere(&error.to_string(), "")
    }

    /// A fault at a row and column of a file.
    pub(crate) fn at(file: String, (row, column): (usize, usize), said: &str, hint: &str) -> Self {
        let message = Message::new("template-wrong").with("file", file);
        let message = message.with("row", row.to_string()).with("column", column.to_string());
        Self { message: message.with("said", said).with("hint", hinted(hint)) }
    }

    /// A fault that stands nowhere in particular.
    pub(crate) fn nowhere(said: &str, hint: &str) -> Self {
        Self { message: Message::new("template-nowhere").with("said", said).with("hint", hinted(hint)) }
    }
}

/// A hint as a sentence behind another; nothing where there is none.
fn hinted(hint: &str) -> Value {
    if hint.is_empty() { Value::from("") } else { Message::new("template-hint").with("hint", hint).into() }
}
