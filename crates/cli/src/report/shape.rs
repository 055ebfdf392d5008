//! The shapes that a report or a packet can have, and how each is made.

use crate::call::unwritable;
use crate::exit::Exit;
use clap::ArgMatches;
use std::path::Path;
use tautline_report::packet::Packet;
use tautline_report::{Telling, made_of, packet, page_of, text_of};
use tautline_words::Words;

type Refused = (String, Exit);

/// A page for a browser, plain text, or PDF.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Shape {
    Page,
    Text,
    Pdf,
}

impl Shape {
    /// By the name that `--as` takes.
    pub(crate) fn named(name: &str) -> Option<Self> {
        [Self::Page, Self::Text, Self::Pdf].into_iter().find(|shape| shape.name() == name)
    }

    fn name(self) -> &'static str {
        match self {
            Self::Page => "html",
            Self::Text => "text",
            Self::Pdf => "pdf",
        }
    }

    /// By the ending of a file; nothing for a folder.
    pub(crate) fn of_file(file: &str) -> Option<Self> {
        let ending = Path::new(file).extension()?.to_str()?.to_lowercase();
        match ending.as_str() {
            "html" | "htm" => Some(Self::Page),
            "txt" => Some(Self::Text),
            "pdf" => Some(Self::Pdf),
            _ => None,
        }
    }

    /// The ending of its files.
    pub(crate) fn ending(self) -> &'static str {
        match self {
            Self::Page => "html",
            Self::Text => "txt",
            Self::Pdf => "pdf",
        }
    }
}

/// A report in its shape.
pub(crate) struct Made {
    /// The file.
    pub(crate) bytes: Vec<u8>,
    /// How many sheets, where it has any.
    pub(crate) pages: usize,
}

/// Makes reports in one shape.
pub(crate) struct Press {
    pub(crate) shape: Shape,
    #[cfg(feature = "pdf")]
    typeset: Option<(tautline_report::print::Press, tautline_report::print::Setting)>,
}

impl Press {
    /// What a report is made of, by which a later run knows that it would come out the same.
    pub(crate) fn mark(&self, telling: &Telling) -> String {
        let made = made_of(telling);
        format!("{made}-{}", self.setting())
    }
}

#[cfg(not(feature = "pdf"))]
impl Press {
    /// A press for the shape that was asked for.
    ///
    /// # Errors
    /// this command was built without PDF
    pub(crate) fn asked(_: &ArgMatches, shape: Shape, words: &Words) -> Result<Self, Refused> {
        match shape {
            Shape::Pdf => Err((words.word("built-without-pdf"), Exit::NotUnderstood)),
            shape => Ok(Self { shape }),
        }
    }

    /// How reports are shown.
    fn setting(&self) -> String {
        self.shape.name().to_owned()
    }

    /// The report in the press's shape.
    ///
    /// # Errors
    /// none: pages and texts are always made
    #[expect(clippy::unnecessary_wraps, reason = "with PDF a template may be at fault")]
    pub(crate) fn made(&self, telling: &Telling) -> Result<Made, Refused> {
        Ok(as_letters(self.shape, telling))
    }

    /// A packet in the press's shape.
    ///
    /// # Errors
    /// none: a page is always made
    #[expect(clippy::unnecessary_wraps, clippy::unused_self, reason = "with PDF a template may be at fault")]
    pub(crate) fn packed(&self, packet: &Packet, words: &Words) -> Result<Made, Refused> {
        Ok(packed_as_page(packet, words))
    }
}

#[cfg(feature = "pdf")]
impl Press {
    /// A press for the shape that was asked for, with the template and the paper that were.
    ///
    /// # Errors
    /// the template can't be read, or the day isn't one
    pub(crate) fn asked(asked: &ArgMatches, shape: Shape, words: &Words) -> Result<Self, Refused> {
        use tautline_report::print::{Paper, Setting, Template};
        if shape != Shape::Pdf {
            return Ok(Self { shape, typeset: None });
        }
        // `assess` has fewer options than `report`
        let text = |name: &str| asked.try_get_one::<String>(name).ok().flatten().map(String::as_str);
        let template = match text("template") {
            Some(folder) => Template::in_folder(Path::new(folder))
                .map_err(|error| (words.say(&error.message), Exit::File))?,
            None => Template::shipped(),
        };
        let day = |found: &str| {
            let day = tautline_survey::date::Date::read(found);
            let message = tautline_survey::message::Message::new("option-not-a-day").with("found", found);
            day.ok_or_else(|| (words.say(&message), Exit::NotUnderstood))
        };
        let setting = Setting {
            paper: Paper::named(text("paper")),
            day: text("day").map(day).transpose()?,
            archival: asked.try_get_one::<bool>("archival").ok().flatten().copied().unwrap_or_default(),
        };
        Ok(Self { shape, typeset: Some((tautline_report::print::Press::new(template), setting)) })
    }

    /// How reports are shown, and typeset.
    fn setting(&self) -> String {
        let typeset = self.typeset.as_ref().map(|(press, setting)| press.mark(setting));
        typeset.unwrap_or_else(|| self.shape.name().to_owned())
    }

    /// The report in the press's shape.
    ///
    /// # Errors
    /// what is wrong with the template, and where
    pub(crate) fn made(&self, telling: &Telling) -> Result<Made, Refused> {
        let Some((press, setting)) = &self.typeset else { return Ok(as_letters(self.shape, telling)) };
        made(press.print(telling, setting), telling.words)
    }

    /// A packet in the press's shape.
    ///
    /// # Errors
    /// what is wrong with the template, and where
    pub(crate) fn packed(&self, packet: &Packet, words: &Words) -> Result<Made, Refused> {
        let Some((press, setting)) = &self.typeset else { return Ok(packed_as_page(packet, words)) };
        made(press.packet(packet, setting, words), words)
    }
}

#[cfg(feature = "pdf")]
fn made(
    printed: Result<tautline_report::print::Printed, tautline_report::print::TemplateError>,
    words: &Words,
) -> Result<Made, Refused> {
    let printed = printed.map_err(|error| (words.say(&error.message), Exit::NotUnderstood))?;
    Ok(Made { bytes: printed.bytes, pages: printed.pages })
}

fn packed_as_page(packet: &Packet, words: &Words) -> Made {
    Made { bytes: packet::html(packet, words).into_bytes(), pages: 0 }
}

/// A page or a text.
fn as_letters(shape: Shape, telling: &Telling) -> Made {
    let text = if shape == Shape::Text { text_of(telling) } else { page_of(telling) };
    Made { bytes: text.into_bytes(), pages: 0 }
}

/// Writes a file whole or not at all.
pub(crate) fn write(file: &Path, bytes: &[u8], words: &Words) -> Result<(), Refused> {
    let mut beside = file.as_os_str().to_owned();
    beside.push(".part");
    let written = std::fs::write(&beside, bytes).and_then(|()| std::fs::rename(&beside, file));
    written.map_err(|error| {
        let _ = std::fs::remove_file(&beside); // it may not be there
        unwritable(&file.display().to_string(), &error, words)
    })
}
