//! The photos that reports show, out of a notebook, and where the lines of each site lie, on its ground where a layout drew it.

use crate::exit::Exit;
use crate::notebook;
use clap::ArgMatches;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::{Mutex, PoisonError};
use tautline_exchange::photo::plain;
use tautline_ground::map::of_places;
use tautline_ground::site::Site;
use tautline_report::{Bytes, Photograph, worth_showing};
use tautline_store::{Keep as _, Sqlite};
use tautline_survey::boundary::Boundary;
use tautline_survey::drawn::DrawnLayout;
use tautline_survey::input::Input;
use tautline_survey::layout::MapOutput;
use tautline_survey::notebook::layouts::layouts;
use tautline_survey::photo::Photo;
use tautline_survey::place::LinePlace;
use tautline_words::Words;

/// The photos of one report weigh no more than this together, so that a page still opens on a phone: about a hundred of those
/// that the app makes smaller.
const MOST: usize = 32 << 20;

/// What a notebook holds for reports beside its readings; nothing where files were read.
#[derive(Default)]
pub(super) struct Album {
    photos: Option<(String, Vec<Photo>, Mutex<Sqlite>)>,
    /// The ground of each site, by the newest layout on it.
    grounds: BTreeMap<String, Boundary>,
}

impl Album {
    /// That of the notebook that the call names.
    ///
    /// # Errors
    /// the notebook can't be read
    pub(super) fn of(asked: &ArgMatches, words: &Words) -> Result<Self, (String, Exit)> {
        let Some(file) = asked.get_one::<String>("notebook") else { return Ok(Self::default()) };
        let (current, keep) = notebook::standing(file, words)?;
        let mut layouts: Vec<&DrawnLayout> = layouts(&current).collect();
        layouts.sort_by_key(|layout| layout.date);
        let grounds = layouts.into_iter().map(|layout| (layout.site.clone(), layout.boundary())).collect();
        let photos: Vec<Photo> = current.photos().into_iter().cloned().collect();
        let photos = (!photos.is_empty()).then(|| (file.clone(), photos, Mutex::new(keep)));
        Ok(Self { photos, grounds })
    }

    /// The photos of the input's sites, without what a camera wrote beside them: it may say where that was.
    ///
    /// # Errors
    /// the notebook can't be read
    pub(super) fn photos(&self, input: &Input, words: &Words) -> Result<Vec<Photograph>, (String, Exit)> {
        let Some((file, photos, keep)) = &self.photos else { return Ok(Vec::new()) };
        let sites: BTreeSet<&str> = input.visits.iter().map(|visit| visit.site.as_str()).collect();
        let own = photos.iter().filter(|photo| sites.contains(photo.site.as_str()));
        let keep = keep.lock().unwrap_or_else(PoisonError::into_inner);
        let mut left = MOST;
        let mut found = Vec::new();
        for photo in worth_showing(own) {
            let room = usize::try_from(photo.bytes).is_ok_and(|bytes| bytes <= left);
            let stored = if room {
                keep.photo(&photo.sha256).map_err(|error| notebook::refused(file, &error, words))?
            } else {
                None
            };
            // what can't be taken apart can't be freed of what stands beside it
            let bytes = match stored.map(|bytes| plain(&bytes)) {
                Some(Ok(bytes)) => {
                    left = left.saturating_sub(bytes.len());
                    Bytes::Here(bytes.into())
                }
                Some(Err(_)) => Bytes::Damaged,
                None if room => Bytes::Lacking,
                None => Bytes::TooMany,
            };
            found.push(Photograph { photo: photo.clone(), bytes });
        }
        Ok(found)
    }

    /// The lines of each site on a plane, where their places are known.
    pub(super) fn maps(&self, input: &Input) -> BTreeMap<String, MapOutput> {
        let mut places: BTreeMap<&str, Vec<&LinePlace>> = BTreeMap::new();
        for place in &input.places {
            places.entry(&place.site).or_default().push(place);
        }
        let map = |(site, places): (&str, Vec<&LinePlace>)| {
            // it was laid on this ground once, so that it can be again
            let ground = self.grounds.get(site).and_then(|boundary| Site::of(boundary).ok());
            Some((site.to_owned(), of_places(places, ground.as_ref())?))
        };
        places.into_iter().filter_map(map).collect()
    }
}
