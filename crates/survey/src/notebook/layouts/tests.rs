use super::*;
use crate::drawn::{Ground, Why};
use crate::notebook::hand::Hand;
use crate::place::Position;
use crate::record::Records;
use crate::revision::{DeviceId, Stamp};
use crate::visit::Visit;

/// A notebook in memory, written by one invented device.
#[derive(Default)]
struct Notebook {
    records: Records,
    drawn: u8,
    counter: u64,
}

impl Notebook {
    fn write(&mut self, drafts: Vec<Draft>) {
        let drawn = &mut self.drawn;
        let mut random = |bytes: &mut [u8]| {
            for byte in bytes {
                *drawn = drawn.wrapping_mul(13).wrapping_add(7);
                *byte = *drawn;
            }
        };
        self.counter += 1;
        let mut hand = Hand {
            author: "invented".into(),
            reason: String::new(),
            device: DeviceId::made(0, [1; 10]),
            device_name: "tablet".into(),
            time: Stamp::new("2026-06-09T20:03:07Z", -360).unwrap(),
            milliseconds: 1_781_000_000_000 + self.counter * 1_000,
            counter: self.counter,
            random: &mut random,
        };
        // ids are of time and chance; the chance here is small, so each revision has a time of its own
        for draft in drafts {
            hand.milliseconds += 1;
            for revision in hand.write("test", vec![draft]).unwrap() {
                self.records.add(revision);
            }
        }
    }

    fn current(&self) -> Current {
        Current::of(self.records.heads().into_iter().cloned().collect())
    }

    fn planned(&self) -> Vec<String> {
        self.current().into_input().0.plan.into_iter().map(|line| line.line).collect()
    }
}

fn line(name: &str, at: i64, reserve: bool) -> DrawnLine {
    let start = Position { latitude: 42_300_000_000 + at, longitude: -113_700_000_000 };
    DrawnLine {
        line: name.into(),
        stratum: None,
        plot: None,
        start,
        end: start,
        bearing: 90,
        reserve,
        draw: 1,
        turned: false,
        staked: false,
    }
}

fn layout(lines: Vec<DrawnLine>) -> DrawnLayout {
    DrawnLayout {
        site: "Invented".into(),
        length: "50 m".into(),
        ground: vec![Ground::default()],
        lines,
        ..DrawnLayout::default()
    }
}

fn word(line: &str) -> Replaced {
    Replaced {
        site: "Invented".into(),
        line: line.into(),
        by: None,
        why: Why::NoPermission,
        note: String::new(),
        date: None,
    }
}

fn visit(line: &str) -> Payload {
    Payload::Visit(Box::new(Visit {
        site: "Invented".into(),
        line: line.into(),
        date: None,
        reader: String::new(),
        recorder: String::new(),
        pass: String::new(),
        protocol: String::new(),
        length: None,
        outcome: Outcome::Read,
        intercepts: Vec::new(),
        set_aside: 0,
        conditions: Vec::new(),
        place: None,
    }))
}

#[test]
fn a_line_leaves_the_plan_and_the_reserve_comes_in_its_order() {
    let mut notebook = Notebook::default();
    let drawn =
        layout(vec![line("1", 0, false), line("2", 1, false), line("R1", 2, true), line("R2", 3, true)]);
    notebook.write(keep(&notebook.current(), &drawn).unwrap());
    assert_eq!(notebook.planned(), ["1", "2"]);
    assert_eq!(keep(&notebook.current(), &drawn).unwrap(), [], "kept twice is kept once");
    for (given_up, by, left) in
        [("2", Some("R1"), vec!["1", "R1"]), ("R1", Some("R2"), vec!["1", "R2"]), ("1", None, vec!["R2"])]
    {
        let done = replace(&notebook.current(), word(given_up)).unwrap();
        assert_eq!(done.word.by.as_deref(), by);
        notebook.write(done.drafts);
        assert_eq!(notebook.planned(), left, "after {given_up}");
    }
    let code = |line: &str| replace(&notebook.current(), word(line)).unwrap_err().code;
    assert_eq!(code("2"), "replace-not-planned");
    assert_eq!(code("99"), "replace-not-drawn");
    notebook.write(stand(&notebook.current(), &visit("R2")));
    assert_eq!(replace(&notebook.current(), word("R2")).unwrap_err().code, "replace-read");
    assert_eq!(notebook.current().conflicts.len(), 0);
}

#[test]
fn drawn_anew_before_anybody_read_and_refused_after() {
    let mut notebook = Notebook::default();
    notebook
        .write(keep(&notebook.current(), &layout(vec![line("1", 0, false), line("2", 1, false)])).unwrap());
    let smaller = layout(vec![line("1", 5, false)]);
    notebook.write(keep(&notebook.current(), &smaller).unwrap());
    assert_eq!(notebook.planned(), ["1"]);
    notebook.write(stand(&notebook.current(), &visit("1")));
    assert!(keep(&notebook.current(), &smaller).is_ok(), "the same ground under the same name");
    let other = layout(vec![line("1", 9, false)]);
    assert_eq!(keep(&notebook.current(), &other).unwrap_err().code, "layout-names-taken");
    let named = DrawnLayout { names: "27-".into(), ..layout(vec![line("27-1", 9, false)]) };
    notebook.write(keep(&notebook.current(), &named).unwrap());
    assert_eq!(notebook.planned(), ["1", "27-1"]);
}
