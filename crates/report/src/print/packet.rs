//! The packet that a crew carries, typeset.

use super::world::Given;
use super::{Press, Printed, Setting, TemplateError};
use crate::packet::{Packet, booklet};
use crate::pictures::PRINTED_FONT;
use std::collections::BTreeMap;
use tautline_words::Words;

impl Press {
    /// Typesets a packet on the setting's paper. Its day is that of the compass where none is given.
    ///
    /// # Errors
    /// what is wrong with the template, and where
    pub fn packet(
        &self,
        packet: &Packet,
        setting: &Setting,
        words: &Words,
    ) -> Result<Printed, TemplateError> {
        let booklet = booklet::told(packet, PRINTED_FONT, words);
        let given = Given {
            main: "packet.typ",
            name: "packet.json",
            data: serde_json::to_vec(&booklet).map_err(|error| TemplateError::of_data(&error))?,
            photos: BTreeMap::new(),
            ident: format!("{} {}", booklet.title, booklet.about),
            keywords: Vec::new(),
            language: booklet.language,
        };
        self.set(given, *setting, setting.day.or(packet.layout.declination.map(|found| found.date)))
    }
}
