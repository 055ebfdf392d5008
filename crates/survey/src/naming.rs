//! Plants that were read under a working name, and the name they get once somebody knows it.

use crate::input::Input;
use crate::visit::Visit;

/// Names under which something was read and which the plant list has not, each with its number of rows, the most frequent first;
/// nothing where there is no list to hold them against.
pub fn unnamed(input: &Input) -> Vec<(String, usize)> {
    let mut found: Vec<(String, usize)> = Vec::new();
    if input.plants.plants.is_empty() {
        return found;
    }
    for row in input.visits.iter().flat_map(|visit| &visit.intercepts) {
        if row.species.is_empty() || input.plants.find(&row.species).is_some() {
            continue;
        }
        match found.iter_mut().find(|(name, _)| *name == row.species) {
            Some((_, rows)) => *rows += 1,
            None => found.push((row.species.clone(), 1)),
        }
    }
    found.sort_by_key(|(_, rows)| core::cmp::Reverse(*rows));
    found
}

/// A visit with one name in place of another; nothing where it has no row of that name.
#[must_use]
pub fn renamed(visit: &Visit, was: &str, now: &str) -> Option<Visit> {
    let mut visit = visit.clone();
    let mut rows = visit.intercepts.iter_mut().filter(|row| row.species == was).peekable();
    rows.peek()?;
    for row in rows {
        now.clone_into(&mut row.species);
    }
    Some(visit)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::draft::{Key, LineDraft, Setup};
    use crate::plants::{GrowthForm, Plant, PlantList};
    use tautline_engine::length::{Bare, Unit};

    fn visit(species: &[&str]) -> Visit {
        let mut draft = LineDraft::new(Setup {
            site: "Hollow Flat".into(),
            line: "1".into(),
            length: None,
            unit: Bare::Unit(Unit::Inch),
            comma: false,
            protocol: String::new(),
            reader: "A".into(),
            recorder: String::new(),
            date: None,
            pass: String::new(),
            blind: false,
        });
        for (at, name) in species.iter().enumerate() {
            draft.press(Key::Species((*name).to_owned()));
            for edge in [2 * at, 2 * at + 1] {
                draft.press(Key::Digit(u8::try_from(edge).unwrap()));
                draft.press(Key::Done);
            }
        }
        draft.visit()
    }

    #[test]
    fn what_the_list_has_not_waits_for_a_name_and_gets_it_in_every_row() {
        let listed = Plant {
            name: "Atriplex canescens".into(),
            common: "fourwing saltbush".into(),
            ..Plant::new("ATCA2", GrowthForm::Shrub)
        };
        let mut input = Input {
            visits: vec![visit(&["ATCA2", "grey thorny", "new plant 1"]), visit(&["new plant 1"])],
            plants: PlantList { plants: vec![listed] },
            ..Input::default()
        };
        assert_eq!(unnamed(&input), [("new plant 1".to_owned(), 2), ("grey thorny".to_owned(), 1)]);
        let named = renamed(&input.visits[0], "new plant 1", "ATCA2").unwrap();
        let species: Vec<&str> = named.intercepts.iter().map(|row| row.species.as_str()).collect();
        assert_eq!(species, ["ATCA2", "grey thorny", "ATCA2"]);
        assert_eq!(renamed(&input.visits[1], "grey thorny", "ATCA2"), None);
        input.plants = PlantList::default();
        assert!(unnamed(&input).is_empty());
    }
}
