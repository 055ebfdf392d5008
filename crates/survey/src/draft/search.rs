//! Species by a few letters: over code, common and scientific name, the recent ones first.

use super::sheet::Sheet;
use crate::plants::{Plant, PlantList};

/// The species of this line, the last read first, then those of earlier lines, each once.
pub fn recent(sheet: &Sheet, earlier: &[String]) -> Vec<String> {
    let mut recent: Vec<String> = Vec::new();
    let own = sheet.standing().rev().map(|row| &row.species);
    for species in own.chain(earlier).filter(|species| !species.is_empty()) {
        if !recent.contains(species) {
            recent.push(species.clone());
        }
    }
    recent
}

/// How well a plant fits what was typed, the best first.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Fit {
    /// The code itself.
    Code,
    /// The beginning of the code or of a word of a name.
    Beginning,
    /// Somewhere inside.
    Inside,
}

/// The plants that fit the letters: the code itself, then beginnings of codes and words, then what holds the letters
/// anywhere; among alike, those recently read, then by the order of the list.
///
/// Several words fit where each begins a word of the name, in order: `at ca` is Atriplex canescens.
///
/// # Example
/// ```
/// use tautline_survey::draft::search::search;
/// use tautline_survey::plants::{GrowthForm, Plant, PlantList};
/// let plant = |code: &str, name: &str, common: &str| Plant {
///     name: name.into(),
///     common: common.into(),
///     ..Plant::new(code, GrowthForm::Shrub)
/// };
/// let list = PlantList {
///     plants: vec![
///         plant("ATCA2", "Atriplex canescens", "fourwing saltbush"),
///         plant("ATCO", "Atriplex confertifolia", "shadscale"),
///         plant("KRLA2", "Krascheninnikovia lanata", "winterfat"),
///     ],
/// };
/// let codes = |letters, recent: &[&str]| -> Vec<String> {
///     let recent: Vec<String> = recent.iter().map(|code| (*code).to_owned()).collect();
///     search(letters, &list, &recent).into_iter().map(|plant| plant.code.clone()).collect()
/// };
/// assert_eq!(codes("at", &[]), ["ATCA2", "ATCO", "KRLA2"]); // the last holds the letters inside
/// assert_eq!(codes("at", &["ATCO"]), ["ATCO", "ATCA2", "KRLA2"]);
/// assert_eq!(codes("at can", &[]), ["ATCA2"]);
/// assert_eq!(codes("WINTÉR", &[]), ["KRLA2"]);
/// ```
pub fn search<'a>(letters: &str, plants: &'a PlantList, recent: &[String]) -> Vec<&'a Plant> {
    let wanted = folded(letters.trim());
    if wanted.is_empty() {
        return Vec::new();
    }
    let mut found: Vec<(Fit, usize, usize, &Plant)> = plants
        .plants
        .iter()
        .enumerate()
        .filter_map(|(at, plant)| {
            let is = |name: &String| [&plant.code, &plant.name, &plant.common].contains(&name);
            let lately = recent.iter().position(is).unwrap_or(usize::MAX);
            Some((fit(&wanted, plant)?, lately, at, plant))
        })
        .collect();
    found.sort_by_key(|&(fit, lately, at, _)| (fit, lately, at));
    found.into_iter().map(|(.., plant)| plant).collect()
}

fn fit(wanted: &str, plant: &Plant) -> Option<Fit> {
    let [code, name, common] = [&plant.code, &plant.name, &plant.common].map(|text| folded(text));
    if code == wanted {
        return Some(Fit::Code);
    }
    if code.starts_with(wanted) || begin_words(wanted, &name) || begin_words(wanted, &common) {
        return Some(Fit::Beginning);
    }
    [code, name, common].iter().any(|text| text.contains(wanted)).then_some(Fit::Inside)
}

/// Whether each word typed begins a word of the name, in order.
fn begin_words(wanted: &str, name: &str) -> bool {
    let mut words = name.split(|c: char| !c.is_alphanumeric());
    wanted.split_whitespace().all(|part| words.any(|word| word.starts_with(part)))
}

/// Small letters without their marks: accents are lost on a phone's keyboard and in other people's lists.
///
/// # Example
/// ```
/// assert_eq!(tautline_survey::draft::search::folded("Güereque Ñandú"), "guereque nandu");
/// ```
pub fn folded(text: &str) -> String {
    text.chars()
        .flat_map(char::to_lowercase)
        .filter(|c| !('\u{300}'..='\u{36f}').contains(c)) // marks that stand by themselves
        .map(plain)
        .collect()
}

const fn plain(c: char) -> char {
    match c {
        'à'..='å' | 'ā' | 'ă' | 'ą' => 'a',
        'ç' | 'ć' | 'ĉ' | 'ċ' | 'č' => 'c',
        'ď' | 'đ' => 'd',
        'è'..='ë' | 'ē' | 'ĕ' | 'ė' | 'ę' | 'ě' => 'e',
        'ĝ' | 'ğ' | 'ġ' | 'ģ' => 'g',
        'ì'..='ï' | 'ĩ' | 'ī' | 'ĭ' | 'į' | 'ı' => 'i',
        'ĺ' | 'ļ' | 'ľ' | 'ł' => 'l',
        'ñ' | 'ń' | 'ņ' | 'ň' => 'n',
        'ò'..='ö' | 'ø' | 'ō' | 'ŏ' | 'ő' => 'o',
        'ŕ' | 'ŗ' | 'ř' => 'r',
        'ś' | 'ŝ' | 'ş' | 'š' => 's',
        'ţ' | 'ť' => 't',
        'ù'..='ü' | 'ũ' | 'ū' | 'ŭ' | 'ů' | 'ű' | 'ų' => 'u',
        'ý' | 'ÿ' => 'y',
        'ź' | 'ż' | 'ž' => 'z',
        other => other,
    }
}
