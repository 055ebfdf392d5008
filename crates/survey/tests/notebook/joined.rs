//! Sets of revisions form a semilattice, and what stands doesn't depend on who came first.

use super::{Device, add_all, sheet, standing, visit};
use proptest::prelude::*;
use serde_json::json;
use std::collections::BTreeSet;
use tautline_survey::notebook::amend::{self};
use tautline_survey::notebook::gather::gather;
use tautline_survey::notebook::hand::Draft;
use tautline_survey::record::{Records, heads, history};
use tautline_survey::revision::{self, Kind, LineError, Revision, RevisionError};

/// Revisions of a few records by two devices, each following what it happens to know; some blanked.
fn stories() -> impl Strategy<Value = Vec<Revision>> {
    let step = (1_u64..3, 0_usize..4, prop::collection::vec(0_usize..40, 0..3), prop::bool::weighted(0.1));
    prop::collection::vec(step, 1..25).prop_map(|steps| {
        let mut devices = [Device::new(1), Device::new(2)];
        let mut made: Vec<Revision> = Vec::new();
        for (number, record, parents, blank) in steps {
            let own: Vec<Revision> = made.iter().skip(record).step_by(4).cloned().collect();
            let first = own.first().map(Revision::record);
            let parents: BTreeSet<_> = parents
                .iter()
                .filter_map(|&at| own.get(at))
                .filter(|one| Some(one.record()) == first)
                .map(Revision::id)
                .collect();
            let draft = Draft {
                record: first,
                parents,
                kind: Kind("invented".into()),
                version: 1,
                payload: Some(json!(made.len())),
            };
            let next = devices[usize::try_from(number).unwrap() - 1].write("invent", vec![draft]).remove(0);
            if blank {
                made.push(next.erased());
            }
            made.push(next);
        }
        made
    })
}

fn set(revisions: &[Revision], chosen: &[prop::sample::Index]) -> Records {
    let mut records = Records::default();
    for index in chosen {
        records.add(index.get(revisions).clone());
    }
    records
}

fn joined(a: &Records, b: &Records) -> Records {
    let mut both = a.clone();
    both.union(b);
    both
}

proptest! {
    #[test]
    fn union_is_commutative_associative_and_idempotent(
        story in stories(),
        chosen in prop::collection::vec(prop::collection::vec(any::<prop::sample::Index>(), 0..20), 3),
    ) {
        let [a, b, c] = [0, 1, 2].map(|at| set(&story, &chosen[at]));
        prop_assert_eq!(joined(&a, &b), joined(&b, &a));
        prop_assert_eq!(joined(&joined(&a, &b), &c), joined(&a, &joined(&b, &c)));
        prop_assert_eq!(joined(&a, &a), a.clone());
        prop_assert_eq!(joined(&joined(&a, &b), &b), joined(&a, &b));
    }

    #[test]
    fn order_of_arrival_changes_nothing_that_stands(story in stories(), seed in any::<u64>()) {
        let mut shuffled = story.clone();
        let length = shuffled.len();
        for at in 0..length {
            shuffled.swap(at, usize::try_from(seed.rotate_left(u32::try_from(at).unwrap()) % length as u64).unwrap());
        }
        let [mut one, mut other] = [Records::default(), Records::default()];
        add_all(&mut one, story.clone());
        for revision in shuffled.iter().chain(&story) {
            other.add(revision.clone());
        }
        prop_assert_eq!(&one, &other);
        let order = |records: &Records| -> Vec<String> {
            let record = story[0].record();
            history(&records.of(record)).iter().map(|revision| revision.sha256().to_owned()).collect()
        };
        prop_assert_eq!(order(&one), order(&other));
        prop_assert_eq!(standing(&one).findings(), standing(&other).findings());
    }

    #[test]
    fn parents_come_before_children_and_every_record_has_a_head(story in stories()) {
        let mut records = Records::default();
        add_all(&mut records, story.clone());
        for revision in records.revisions() {
            let own = records.of(revision.record());
            prop_assert!(!heads(&own).is_empty());
            let ordered = history(&own);
            for (at, one) in ordered.iter().enumerate() {
                prop_assert!(ordered[at..].iter().all(|later| !one.head().parents.contains(&later.id())));
            }
        }
    }

    #[test]
    fn a_line_of_json_reads_back_the_same_and_a_changed_one_is_refused(story in stories()) {
        for revision in &story {
            let line = revision::line(revision);
            prop_assert_eq!(&revision::read_line(&line).unwrap(), revision);
            let other = line.replace("\"version\":1", "\"version\":2");
            prop_assert_eq!(revision::read_line(&other), Err(LineError::Revision(RevisionError::OtherHash)));
        }
    }

    /// A full copy is the notebook: every revision, blanked ones and conflicts among them, and what stands on them.
    #[test]
    fn a_full_copy_read_back_is_the_same_notebook(story in stories(), stops in prop::collection::vec(2_u32..60, 1..6)) {
        let mut records = Records::default();
        add_all(&mut records, story);
        let mut devices = [Device::new(3), Device::new(4)];
        for (at, &stop) in stops.iter().enumerate() {
            devices[at % 2].import(&mut records, &sheet("a.csv", vec![visit("1", stop), visit("2", 62 - stop)]));
        }
        let copy: Vec<String> = records.revisions().map(revision::line).collect();
        let mut back = Records::default();
        for line in copy.iter().rev() {
            back.add(revision::read_line(line).unwrap());
        }
        prop_assert_eq!(&back, &records);
        let says = |records: &Records| {
            let (input, goals) = standing(records).into_input();
            (input.visits, input.plan, input.findings, goals)
        };
        prop_assert_eq!(says(&back), says(&records));
    }

    /// A whole import that is undone leaves what stood before it, whatever it brought; the same import twice brings nothing.
    #[test]
    fn an_import_undone_leaves_what_stood_and_a_second_one_adds_nothing(
        before in prop::collection::vec(2_u32..60, 0..5),
        after in prop::collection::vec(2_u32..60, 1..6),
    ) {
        let (mut device, mut records) = (Device::new(5), Records::default());
        let lines = |stops: &[u32]| {
            let named = stops.iter().enumerate().map(|(at, &stop)| visit(&at.to_string(), stop + 3));
            sheet(&format!("{stops:?}"), named.collect())
        };
        device.import(&mut records, &lines(&before));
        let says = |records: &Records| {
            let (input, goals) = standing(records).into_input();
            (input.visits, input.plan, input.files, input.findings, goals)
        };
        let stood = says(&records);
        let drafts = gather(&standing(&records), &lines(&after), &[]).drafts;
        let made = device.write("import", drafts);
        let action = made.first().map(|one| one.head().action.id);
        let touched: BTreeSet<_> = made.iter().map(Revision::record).collect();
        add_all(&mut records, made);
        prop_assert_eq!(device.import(&mut records, &lines(&after)), 0);
        // nothing new came where each of its lines stood already
        prop_assert_eq!(action.is_none(), before.starts_with(&after));
        if let Some(action) = action {
            let undone: Vec<Draft> =
                touched.iter().filter_map(|&record| amend::undo(&records.of(record), action)).collect();
            add_all(&mut records, device.write("undo", undone));
        }
        prop_assert_eq!(says(&records), stood);
    }
}
