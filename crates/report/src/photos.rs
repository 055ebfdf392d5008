//! Photos: the same view year by year, side by side; then what was met on the visits of the year.

use crate::document::{Block, Shot, heading, quiet};
use crate::page::Page;
use crate::telling::Reader;
use std::collections::BTreeMap;
use std::sync::Arc;
use tautline_survey::assess::{Assessment, natural_order};
use tautline_survey::date::Date;
use tautline_survey::message::{Message, Value};
use tautline_survey::photo::{Photo, Shows};

/// A photo and its bytes, without what a camera wrote beside the picture.
#[derive(Clone, Debug, PartialEq)]
pub struct Photograph {
    /// What is said of it.
    pub photo: Photo,
    /// Its bytes, or why there are none.
    pub bytes: Bytes,
}

/// The bytes of a photo, or why they can't stand in a report.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Bytes {
    /// A JPEG, PNG or WebP.
    Here(Arc<[u8]>),
    /// They aren't in this copy of the notebook.
    Lacking,
    /// They are more than a report should weigh.
    TooMany,
    /// They are no picture.
    Damaged,
}

impl Bytes {
    const fn why_not(&self) -> Option<&'static str> {
        match self {
            Self::Here(_) => None,
            Self::Lacking => Some("report-photo-lacking"),
            Self::TooMany => Some("report-photo-too-large"),
            Self::Damaged => Some("report-photo-damaged"),
        }
    }
}

/// The photos that a report shows: of each view the last of each year, and all that was met on visits.
///
/// They come in the order of sites, lines, views and days.
pub fn worth_showing<'a>(photos: impl IntoIterator<Item = &'a Photo>) -> Vec<&'a Photo> {
    let mut kept: Vec<&Photo> = photos.into_iter().collect();
    kept.sort_by(|a, b| {
        let rest = |one: &Photo| (one.shows, one.date, one.time.clone(), one.sha256.clone());
        natural_order(&a.site, &b.site)
            .then_with(|| natural_order(&a.line, &b.line))
            .then_with(|| rest(a).cmp(&rest(b)))
    });
    let view = |one: &Photo| (one.site.clone(), one.line.clone(), one.shows, one.date.map(Date::year));
    let last = |at: usize| kept.get(at + 1).is_none_or(|next| view(kept[at]) != view(next));
    let wanted = |at: usize| kept[at].shows == Shows::Visit || last(at);
    (0..kept.len()).filter(|&at| wanted(at)).map(|at| kept[at]).collect()
}

/// One view of a site: a line (none for the site at large) and what is shown of it.
type View<'a> = (usize, &'a str, Shows);

/// The photos of a site up to the assessment's year where it is the newest, else those met on the visits of its year.
pub(crate) fn section(assessment: &Assessment, newest: bool, page: &Page) -> Vec<Block> {
    let is_here = |photo: &Photo| {
        photo.site == assessment.site
            && (assessment.plot.is_none() || assessment.lines.iter().any(|line| line.line == photo.line))
            && year(photo).is_none_or(|own| assessment.year.is_none_or(|year| own <= year))
    };
    let own: Vec<&Photograph> = page.photos.iter().filter(|one| is_here(&one.photo)).collect();
    let (met, views): (Vec<&Photograph>, Vec<&Photograph>) =
        own.into_iter().partition(|one| one.photo.shows == Shows::Visit);
    if page.reader == Reader::Landowner {
        return if newest { then_and_now(&by_view(&views), page) } else { Vec::new() };
    }
    let mut blocks = Vec::new();
    if newest {
        for (view, photos) in by_view(&views) {
            blocks.extend(side_by_side(name(view, page), &photos, page));
        }
    }
    let met: Vec<&Photograph> = met.into_iter().filter(|one| year(&one.photo) == assessment.year).collect();
    if !met.is_empty() {
        blocks.extend(side_by_side(page.word("report-photos-met"), &met, page));
    }
    if !blocks.is_empty() && page.keeps_back(Some(&assessment.site)) {
        blocks.insert(0, quiet(page.word("report-photos-places")));
    }
    blocks
}

fn year(photo: &Photo) -> Option<u16> {
    photo.date.map(Date::year)
}

/// The views with their photos by day, the site at large first, then line by line.
fn by_view<'a>(photos: &[&'a Photograph]) -> BTreeMap<View<'a>, Vec<&'a Photograph>> {
    let mut lines: Vec<&str> = photos.iter().map(|one| one.photo.line.as_str()).collect();
    lines.sort_by(|a, b| natural_order(a, b));
    lines.dedup();
    let mut views: BTreeMap<View, Vec<&Photograph>> = BTreeMap::new();
    for &one in photos {
        let place = lines.iter().position(|line| *line == one.photo.line).unwrap_or_default();
        views.entry((place, one.photo.line.as_str(), one.photo.shows)).or_default().push(one);
    }
    views
}

/// The view that was photographed over the longest time: its first photo and its last.
fn then_and_now(views: &BTreeMap<View, Vec<&Photograph>>, page: &Page) -> Vec<Block> {
    let shown = |photos: &[&Photograph]| -> Vec<Date> {
        let here = photos.iter().filter(|one| matches!(one.bytes, Bytes::Here(_)));
        here.filter_map(|one| one.photo.date).collect()
    };
    let span = |photos: &[&Photograph]| {
        let days = shown(photos);
        match (days.iter().min(), days.iter().max()) {
            (Some(first), Some(last)) => Some(last.year() - first.year()),
            _ => None,
        }
    };
    // of views that reach equally far back the first is taken
    let longest = views.iter().rev().max_by_key(|(_, photos)| span(photos));
    let Some((view, photos)) = longest.filter(|(_, photos)| span(photos).is_some()) else {
        return Vec::new();
    };
    let dated = photos.iter().filter(|one| one.photo.date.is_some() && matches!(one.bytes, Bytes::Here(_)));
    let dated: Vec<&Photograph> = dated.copied().collect();
    let pair: Vec<&Photograph> = match dated.as_slice() {
        [first, .., last] if year(&first.photo) != year(&last.photo) => vec![first, last],
        [.., last] => vec![last],
        [] => return Vec::new(),
    };
    side_by_side(name(*view, page), &pair, page).into()
}

/// What a view is called.
fn name((_, line, shows): View, page: &Page) -> String {
    let shows = Value::Word(shows.code());
    if line.is_empty() {
        return page.say(&Message::new("report-photos-site").with("shows", shows));
    }
    page.say(&Message::new("report-photos-line").with("line", line).with("shows", shows))
}

fn side_by_side(title: String, photos: &[&Photograph], page: &Page) -> [Block; 2] {
    let shots = photos.iter().map(|one| shot(&title, one, page)).collect();
    [heading(4, title), Block::Photos { shots }]
}

fn shot(view: &str, one: &Photograph, page: &Page) -> Shot {
    let photo = &one.photo;
    let day = photo.date.map_or_else(|| page.word("report-undated"), |day| day.to_string());
    let mut said = vec![day.clone()];
    // what a person wrote may say where it was; who is seen on it is for nobody to read
    if !page.keeps_back(Some(&photo.site)) {
        said.extend(Some(photo.caption.clone()).filter(|caption| !caption.is_empty()));
        said.extend(photo.place.map(|spot| {
            #[expect(clippy::cast_precision_loss, reason = "180 degrees are 1.8e11, far below 2^53")]
            let degrees = |billionths: i64| Value::Number(billionths as f64 / 1e9, 5);
            let place = Message::new("report-photo-place").with("latitude", degrees(spot.latitude));
            page.say(&place.with("longitude", degrees(spot.longitude)))
        }));
    }
    said.extend(photo.bearing.map(|parts| {
        let degrees = Value::Number(f64::from(parts) / 10_000.0, 0);
        page.say(&Message::new("report-photo-bearing").with("degrees", degrees))
    }));
    said.extend(one.bytes.why_not().map(|code| page.word(code)));
    let description = Message::new("report-photo-said").with("view", view).with("day", day);
    let (file, bytes) = match &one.bytes {
        Bytes::Here(bytes) => {
            (Some(format!("photo-{}.{}", photo.sha256, photo.media.ending())), Arc::clone(bytes))
        }
        Bytes::Lacking | Bytes::TooMany | Bytes::Damaged => (None, Arc::default()),
    };
    Shot {
        caption: said.join(" · "),
        description: page.say(&description),
        width: photo.width,
        height: photo.height,
        file,
        media: photo.media.name(),
        bytes,
    }
}
