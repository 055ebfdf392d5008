//! What the typesetter may see: the template's files, what is set as data, its photos, the fonts, one day. No disk, no network,
//! no clock.

use super::{Paper, Template, TemplateError};
use std::collections::BTreeMap;
use tautline_survey::date::Date;
use typst::diag::{FileError, FileResult, SourceDiagnostic};
use typst::foundations::{Bytes, Datetime, Dict, Duration, OneOrMultiple, Str, Value};
use typst::model::DocumentElem;
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World, WorldExt};

/// What is set.
pub(crate) struct Given {
    /// The file that the template begins with.
    pub(crate) main: &'static str,
    /// The name under which it finds the data.
    pub(crate) name: &'static str,
    /// The data, as JSON.
    pub(crate) data: Vec<u8>,
    /// The photos by their names.
    pub(crate) photos: BTreeMap<String, Bytes>,
    /// What tells this file from others.
    pub(crate) ident: String,
    /// The words under which it is filed.
    pub(crate) keywords: Vec<String>,
    /// The language of its words.
    pub(crate) language: String,
}

/// The typesetter's desk for one file.
pub(crate) struct Desk<'a> {
    template: &'a Template,
    library: LazyHash<Library>,
    book: &'a LazyHash<FontBook>,
    name: &'static str,
    data: Bytes,
    photos: BTreeMap<String, Bytes>,
    main: FileId,
    today: Option<Datetime>,
}

impl<'a> Desk<'a> {
    pub(crate) fn new(
        template: &'a Template,
        book: &'a LazyHash<FontBook>,
        given: Given,
        paper: Paper,
        day: Option<Date>,
    ) -> Self {
        let inputs: Dict = [("paper", sheet(paper)), ("language", given.language.as_str())]
            .into_iter()
            .map(|(name, value)| (Str::from(name), Value::Str(value.into())))
            .collect();
        let mut library = Library::builder().with_inputs(inputs).build();
        let keywords = given.keywords.iter().map(|one| one.as_str().into()).collect();
        library.styles.set(DocumentElem::keywords, OneOrMultiple(keywords));
        Self {
            template,
            library: LazyHash::new(library),
            book,
            name: given.name,
            data: Bytes::new(given.data),
            photos: given.photos,
            main: id(given.main),
            today: day.and_then(|day| Datetime::from_ymd(i32::from(day.year()), day.month(), day.day())),
        }
    }

    /// The first fault of several, by its place.
    pub(crate) fn fault(&self, found: &[SourceDiagnostic]) -> TemplateError {
        let Some(first) = found.first() else { return TemplateError::nowhere("", "") };
        let hint = first.hints.first().map(|hint| hint.v.to_string()).unwrap_or_default();
        let Some((source, at)) = first.span.id().and_then(|id| {
            let source = self.source(id).ok()?;
            let range = self.range(first.span)?;
            Some((source, range.start))
        }) else {
            return TemplateError::nowhere(&first.message, &hint);
        };
        let (row, column) = source.lines().byte_to_line_column(at).unwrap_or_default();
        let file = self.template.place_of(source.id().vpath().get_without_slash());
        TemplateError::at(file, (row + 1, column + 1), &first.message, &hint)
    }
}

/// The name of a sheet's size in a template.
const fn sheet(paper: Paper) -> &'static str {
    match paper {
        Paper::A4 => "a4",
        Paper::Letter => "us-letter",
    }
}

fn id(name: &str) -> FileId {
    // a plain file name is a path within any root
    #[expect(clippy::expect_used, reason = "the names are constants of `print`")]
    let path = VirtualPath::new(name).expect("a plain file name");
    RootedPath::new(VirtualRoot::Project, path).intern()
}

impl World for Desk<'_> {
    fn library(&self) -> &LazyHash<Library> {
        &self.library
    }

    fn book(&self) -> &LazyHash<FontBook> {
        self.book
    }

    fn main(&self) -> FileId {
        self.main
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        let bytes = self.file(id)?;
        let text = std::str::from_utf8(&bytes).map_err(|_| FileError::InvalidUtf8)?;
        Ok(Source::new(id, text.to_owned()))
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        let name = id.get().vpath().get_without_slash();
        match id.get().root() {
            VirtualRoot::Package(_) => Err(FileError::Other(Some("nothing is fetched".into()))),
            VirtualRoot::Project if name == self.name => Ok(self.data.clone()),
            VirtualRoot::Project if self.photos.contains_key(name) => Ok(self.photos[name].clone()),
            VirtualRoot::Project => self.template.file(name).ok_or(FileError::NotFound(name.into())),
        }
    }

    fn font(&self, index: usize) -> Option<Font> {
        self.template.fonts().get(index).cloned()
    }

    fn today(&self, _: Option<Duration>) -> Option<Datetime> {
        self.today
    }
}
