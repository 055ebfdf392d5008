//! Devices and the notebook that they share in meet in any order, with messages lost, repeated and late, and with either
//! end dying or being set back to a backup: in the end all hold the same, and nothing that anybody held is lost.
//!
//! The revisions are invented.

#![expect(clippy::unwrap_used, reason = "the memory refuses nothing that is whole")]

use proptest::prelude::*;
use std::collections::BTreeSet;
use tautline_store::conformance::Invented;
use tautline_store::desk::exchange;
use tautline_store::{Cursor, Keep, Memory, Sqlite};
use tautline_survey::record::Records;
use tautline_survey::revision::{DeviceId, Revision};
use tautline_survey::sync::{Answer, Ask, Asked, Badge, FORMAT, MOST_LINES, Name, NotTaken, State, VERSION};

/// So few at once that several exchanges are needed.
const FEW: usize = 3;

struct Device {
    id: DeviceId,
    keep: Memory,
    state: State,
    hand: Invented,
    backup: Option<(Memory, State)>,
    /// Answers on their way, which may come late or again.
    under_way: Vec<(Asked, Answer)>,
}

struct World {
    desk: Memory,
    backup: Memory,
    devices: Vec<Device>,
    asks: Vec<Ask>,
    set_back: bool,
}

#[derive(Clone, Copy, Debug)]
enum Fate {
    Whole,
    AskLost,
    AnswerLost,
    DiesBeforeTheStateIsKept,
    AnswerComesLate,
}

#[derive(Clone, Debug)]
enum Step {
    Write(usize, prop::sample::Index),
    Erase(usize, prop::sample::Index),
    Exchange(usize, Fate),
    AskAgain(prop::sample::Index),
    AnswerAgain(usize, prop::sample::Index),
    DeskBackup,
    DeskSetBack,
    DeviceBackup(usize),
    DeviceSetBack(usize),
}

fn steps() -> impl Strategy<Value = Vec<Step>> {
    use prop::sample::Index;
    let fate = prop_oneof![
        3 => Just(Fate::Whole),
        1 => Just(Fate::AskLost),
        1 => Just(Fate::AnswerLost),
        1 => Just(Fate::DiesBeforeTheStateIsKept),
        1 => Just(Fate::AnswerComesLate),
    ];
    let step = prop_oneof![
        6 => (0_usize..3, any::<Index>()).prop_map(|(device, at)| Step::Write(device, at)),
        1 => (0_usize..3, any::<Index>()).prop_map(|(device, at)| Step::Erase(device, at)),
        8 => (0_usize..3, fate).prop_map(|(device, fate)| Step::Exchange(device, fate)),
        1 => any::<Index>().prop_map(Step::AskAgain),
        1 => (0_usize..3, any::<Index>()).prop_map(|(device, at)| Step::AnswerAgain(device, at)),
        1 => Just(Step::DeskBackup),
        1 => Just(Step::DeskSetBack),
        1 => (0_usize..3).prop_map(Step::DeviceBackup),
        1 => (0_usize..3).prop_map(Step::DeviceSetBack),
    ];
    prop::collection::vec(step, 1..60)
}

impl Device {
    fn new(number: u8) -> Self {
        Self {
            id: DeviceId::made(0, [number; 10]),
            keep: Memory::default(),
            state: State::default(),
            hand: Invented::device(u64::from(number)),
            backup: None,
            under_way: Vec::new(),
        }
    }

    fn ask(&self, most: usize) -> Asked {
        let log = self.keep.log(Cursor(self.state.sent()), most).unwrap();
        let whole = log.len() < most;
        self.state.ask(self.id, &log, whole)
    }

    /// Takes an answer; whether each has what the other has.
    fn take(&mut self, asked: &Asked, answer: &Answer, dies: bool) -> bool {
        let taken = self.state.take(asked, answer).unwrap();
        self.keep.append(&taken.revisions).unwrap();
        if !dies {
            self.state = taken.state;
        }
        taken.done && !dies
    }

    fn waiting(&self) -> usize {
        self.state.waiting(&self.keep.log(Cursor(self.state.sent()), usize::MAX).unwrap())
    }

    fn badge(&self) -> Badge {
        Badge::of(&self.state, self.waiting(), 0)
    }
}

impl World {
    fn new() -> Self {
        let devices = (1..=3).map(Device::new).collect();
        Self {
            desk: Memory::default(),
            backup: Memory::default(),
            devices,
            asks: Vec::new(),
            set_back: false,
        }
    }

    fn exchange(&mut self, device: usize, fate: Fate) -> bool {
        let asked = self.devices[device].ask(FEW);
        if matches!(fate, Fate::AskLost) {
            return false;
        }
        // as it travels: text, and read again
        let ask: Ask = serde_json::from_str(&serde_json::to_string(&asked.ask).unwrap()).unwrap();
        let answer = exchange(&mut self.desk, &ask, FEW).unwrap();
        let answer: Answer = serde_json::from_str(&serde_json::to_string(&answer).unwrap()).unwrap();
        self.asks.push(ask);
        let own = &mut self.devices[device];
        match fate {
            Fate::AnswerLost | Fate::AskLost => false,
            Fate::AnswerComesLate => {
                own.under_way.push((asked, answer));
                false
            }
            Fate::Whole => own.take(&asked, &answer, false),
            Fate::DiesBeforeTheStateIsKept => own.take(&asked, &answer, true),
        }
    }

    fn step(&mut self, step: &Step) {
        match step {
            Step::Write(device, at) => {
                let own = &mut self.devices[*device];
                let known: Vec<Revision> = own.keep.records().revisions().cloned().collect();
                // one in so many begins a record, the others follow what the device happens to know
                let parent = known.get(at.index(known.len() + 2));
                let parents: Vec<_> = parent.map(Revision::id).into_iter().collect();
                let made = own.hand.revision(parent.map(Revision::record), &parents, "invented");
                own.keep.append(&[made]).unwrap();
            }
            Step::Erase(device, at) => {
                let own = &mut self.devices[*device];
                let known: Vec<Revision> = own.keep.records().revisions().cloned().collect();
                if !known.is_empty() {
                    own.keep.append(&[at.get(&known).erased()]).unwrap();
                }
            }
            Step::Exchange(device, fate) => {
                self.exchange(*device, *fate);
            }
            Step::AskAgain(at) if !self.asks.is_empty() => {
                exchange(&mut self.desk, at.get(&self.asks), FEW).unwrap();
            }
            Step::AnswerAgain(device, at) if !self.devices[*device].under_way.is_empty() => {
                let own = &mut self.devices[*device];
                let (asked, answer) = at.get(&own.under_way).clone();
                own.take(&asked, &answer, false);
            }
            Step::AskAgain(_) | Step::AnswerAgain(..) => {}
            Step::DeskBackup => self.backup = self.desk.clone(),
            Step::DeskSetBack => {
                self.desk = self.backup.clone();
                self.set_back = true;
            }
            Step::DeviceBackup(device) => {
                let own = &mut self.devices[*device];
                own.backup = Some((own.keep.clone(), own.state.clone()));
            }
            Step::DeviceSetBack(device) => {
                let own = &mut self.devices[*device];
                if let Some((keep, state)) = own.backup.clone() {
                    (own.keep, own.state) = (keep, state);
                    // a connection doesn't outlive the device's being set back
                    own.under_way.clear();
                }
            }
        }
    }

    /// Everything that anybody holds.
    fn everything(&self) -> Records {
        let mut all = self.desk.records().clone();
        for device in &self.devices {
            all.union(device.keep.records());
        }
        all
    }

    fn meet_until_done(&mut self, device: usize) {
        for _ in 0..500 {
            if self.exchange(device, Fate::Whole) {
                return;
            }
        }
        panic!("device {device} never comes to an end");
    }
}

fn names(records: &Records) -> BTreeSet<(String, String)> {
    records.revisions().map(|one| (one.id().to_string(), one.sha256().to_owned())).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn all_come_to_hold_the_same_and_nothing_is_lost(steps in steps()) {
        let mut world = World::new();
        for step in &steps {
            world.step(step);
            if !world.set_back {
                // what a device counts as sent is in the shared notebook
                let held = names(world.desk.records());
                for device in &world.devices {
                    let log = device.keep.log(Cursor::START, usize::MAX).unwrap();
                    let alone = log.iter().filter(|entry| {
                        let name = Name::of(&entry.revision);
                        !held.contains(&(name.id.to_string(), name.sha256))
                    });
                    prop_assert!(alone.count() <= device.waiting());
                }
            }
        }
        let all = world.everything();
        for _ in 0..2 {
            for device in 0..3 {
                world.meet_until_done(device);
            }
        }
        prop_assert_eq!(world.desk.records(), &all);
        for device in &world.devices {
            prop_assert_eq!(device.keep.records(), &all);
            prop_assert_eq!(device.waiting(), 0);
            // where nobody ever wrote anything there is nothing to have been sent
            let nothing = all.revisions().next().is_none();
            prop_assert_eq!(device.badge(), if nothing { Badge::Here(0) } else { Badge::Sent });
        }
    }
}

#[test]
fn what_is_sent_is_not_sent_back_and_not_sent_again() {
    let mut world = World::new();
    for _ in 0..10 {
        let made = world.devices[0].hand.revision(None, &[], "invented");
        world.devices[0].keep.append(&[made]).unwrap();
    }
    assert_eq!(world.devices[0].badge(), Badge::Here(10));
    while !world.exchange(0, Fate::Whole) {}
    let sent: usize = world.asks.iter().map(|ask| ask.lines.len()).sum();
    assert_eq!((sent, world.devices[0].keep.log(Cursor::START, 99).unwrap().len()), (10, 10));
    // the other device reads all of it and sends nothing of it back
    world.asks.clear();
    while !world.exchange(1, Fate::Whole) {}
    while !world.exchange(1, Fate::Whole) {}
    assert!(world.asks.iter().all(|ask| ask.lines.is_empty()));
    assert_eq!(world.devices[1].keep.records(), world.desk.records());
    assert_eq!(world.devices[1].badge(), Badge::Sent);
}

/// A file takes a day's work of a crew in steps, and gives it to a device that was never there.
#[test]
fn a_file_serves_more_than_one_message_holds() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = Sqlite::open_or_begin(&folder.path().join("desk.tautline")).unwrap();
    let (mut one, mut other) = (Device::new(1), Device::new(2));
    let made: Vec<Revision> =
        (0..1200).map(|number| one.hand.revision(None, &[], &number.to_string())).collect();
    one.keep.append(&made).unwrap();
    let mut asks = Vec::new();
    for device in [&mut one, &mut other] {
        loop {
            let asked = device.ask(MOST_LINES);
            let answer = exchange(&mut desk, &asked.ask, MOST_LINES).unwrap();
            asks.push((asked.ask.lines.len(), answer.lines.len()));
            if device.take(&asked, &answer, false) {
                break;
            }
        }
    }
    assert_eq!(asks, [(500, 0), (500, 0), (200, 0), (0, 500), (0, 500), (0, 200), (0, 0)]);
    assert_eq!(other.keep.records(), one.keep.records());
}

#[test]
fn a_damaged_line_is_named_and_the_others_are_taken() {
    let mut device = Device::new(1);
    let made: Vec<Revision> =
        (0..3).map(|number| device.hand.revision(None, &[], &number.to_string())).collect();
    device.keep.append(&made).unwrap();
    let mut asked = device.ask(MOST_LINES);
    let text = asked.ask.lines[1].get().replace("\"payload\":\"1\"", "\"payload\":\"7\"");
    asked.ask.lines[1] = serde_json::value::RawValue::from_string(text).unwrap();
    let mut desk = Memory::default();
    let answer = exchange(&mut desk, &asked.ask, MOST_LINES).unwrap();
    assert_eq!((answer.refused[0].line, answer.refused[0].why.as_str()), (1, "revision-other-hash"));
    assert_eq!(desk.log(Cursor::START, 9).unwrap().len(), 2);
    assert!(device.take(&asked, &answer, false));
    assert_eq!(device.state.refused().keys().copied().collect::<Vec<_>>(), [made[1].id()]);
    assert_eq!(device.badge(), Badge::ToSettle(1));
}

#[test]
fn a_message_from_the_future_is_refused_and_unknown_fields_are_not() {
    let text = |version: u32| {
        format!(
            "{{\"format\":\"{FORMAT}\",\"version\":{version},\"device\":\"{}\",\"read\":null,\"held\":null,\
             \"lines\":[],\"of-a-newer-version\":true}}",
            DeviceId::made(0, [1; 10])
        )
    };
    let read = |version: u32| -> Ask { serde_json::from_str(&text(version)).unwrap() };
    assert_eq!(read(VERSION).check(), Ok(()));
    assert_eq!(read(VERSION + 1).check(), Err(NotTaken::Newer(VERSION + 1)));
    assert_eq!(Ask { format: "other".into(), ..read(VERSION) }.check(), Err(NotTaken::NotSync));
}

/// Kinds and versions of records that nobody here knows travel as they are.
#[test]
fn what_nobody_knows_travels_unread() {
    let mut world = World::new();
    let unknown = world.devices[0].hand.of_kind("of-a-newer-version", None, &[], "unread");
    world.devices[0].keep.append(std::slice::from_ref(&unknown)).unwrap();
    world.meet_until_done(0);
    world.meet_until_done(1);
    assert_eq!(world.devices[1].keep.log(Cursor::START, 9).unwrap()[0].revision, unknown);
}
