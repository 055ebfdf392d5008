//! What a person has typed so far. It is kept on this device at each pause, beside the notebook and never part of it.

use crate::device::here;
use crate::session::Session;
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use leptos::prelude::*;
use serde::{Deserialize, Serialize};
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::time::Duration;
use tautline_exchange::Source;

/// The name under which it lies on the device.
const NAME: &str = "plan";

/// Typing has paused after so long.
const PAUSE: Duration = Duration::from_millis(500);

thread_local! {
    /// What was typed on the step before: a screen goes, and what was written on it stays.
    static LAST: RefCell<Option<Sitting>> = const { RefCell::new(None) };
}

/// Everything that the steps ask for, as typed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub(super) struct Sitting {
    pub(super) site: String,
    pub(super) aim: Aim,
    pub(super) number: Number,
    pub(super) ground: Ground,
    pub(super) layout: Layout,
    pub(super) packet: Packet,
}

/// What is wanted.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub(super) struct Aim {
    pub(super) name: String,
    /// plot, site, pasture, allotment.
    pub(super) about: String,
    pub(super) subject: String,
    /// at least, at most, between.
    pub(super) relation: String,
    pub(super) low: String,
    pub(super) high: String,
    pub(super) direction: String,
    pub(super) by: String,
    pub(super) confidence: String,
    pub(super) smallest: String,
    pub(super) false_alarm: String,
    pub(super) missed: String,
    pub(super) reason: String,
    pub(super) source: String,
    pub(super) agreed: String,
    /// The goal of the notebook that this changes, by site and name; a new one where there is none.
    pub(super) changes: Option<(String, String)>,
    /// Why it changes.
    pub(super) why_changed: String,
}

/// How many lines.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub(super) struct Number {
    /// The stand is described, not taken from readings.
    pub(super) described: bool,
    pub(super) cover: String,
    pub(super) spread: String,
    pub(super) power: String,
    pub(super) half_width: String,
    pub(super) change: String,
    pub(super) correlation: String,
    pub(super) trend: String,
    pub(super) visits: String,
    pub(super) between_years: String,
    pub(super) shows: String,
    pub(super) walk: String,
    pub(super) lay: String,
    pub(super) read: String,
    pub(super) budget: String,
    pub(super) simulate: bool,
    /// The spread of each stratum, where it isn't that of the whole.
    pub(super) spreads: BTreeMap<String, String>,
    /// The number of lines that is laid out, and why.
    pub(super) lines: String,
    pub(super) why: String,
}

/// The ground.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub(super) struct Ground {
    pub(super) files: Vec<Handed>,
    pub(super) outlines: Vec<Outline>,
    pub(super) stratum_from: String,
    /// Where the plane on which corners are set down has its middle, and how wide it is.
    pub(super) middle: String,
    pub(super) wide: String,
}

/// A file that was handed in.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub(super) struct Handed {
    #[serde(flatten)]
    pub(super) file: Kept,
    /// The table and the reference of a shapefile.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) beside: Vec<Kept>,
    /// ground, keep-out, there.
    pub(super) purpose: String,
    /// Metres to stay away.
    pub(super) buffer: String,
    /// Whether the walk crosses it: crossed, not crossed; nothing where that goes by its shape.
    pub(super) crossed: String,
    /// On which datum it is, where the file leaves that to whoever hands it in.
    pub(super) datum: Option<String>,
}

/// What a file holds, as it is kept: text, or else bytes in base64.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub(super) struct Kept {
    pub(super) name: String,
    text: String,
    #[serde(skip_serializing_if = "String::is_empty")]
    base64: String,
}

impl Kept {
    pub(super) fn of(source: Source) -> Self {
        let Source { name, bytes } = source;
        match String::from_utf8(bytes) {
            Ok(text) => Self { name, text, base64: String::new() },
            Err(error) => Self { name, text: String::new(), base64: STANDARD.encode(error.as_bytes()) },
        }
    }

    pub(super) fn source(&self) -> Source {
        let bytes = if self.base64.is_empty() {
            self.text.clone().into_bytes()
        } else {
            // what was damaged meanwhile is refused by whoever reads it
            STANDARD.decode(&self.base64).unwrap_or_default()
        };
        Source { name: self.name.clone(), bytes }
    }
}

/// An outline by its corners.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub(super) struct Outline {
    /// ground, keep-out.
    pub(super) purpose: String,
    pub(super) stratum: String,
    pub(super) buffer: String,
    /// Whether the walk crosses it, as of a file.
    pub(super) crossed: String,
    pub(super) corners: String,
    /// On which datum the corners are; that of GPS where nobody says.
    pub(super) datum: String,
}

/// How lines are laid out.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub(super) struct Layout {
    pub(super) length: String,
    pub(super) reserve: String,
    pub(super) design: String,
    pub(super) bearing: String,
    /// The same of each stratum, where it isn't that of all.
    pub(super) bearings: BTreeMap<String, String>,
    pub(super) edge: String,
    pub(super) apart: String,
    /// How strata share the lines: by area, or by area and spread.
    pub(super) shares: String,
    /// Lines by themselves where it is empty, spokes, baseline.
    pub(super) shape: String,
    pub(super) spokes: String,
    /// How far from a plot's centre its spokes begin.
    pub(super) offset: String,
    /// Where a baseline begins, which way it runs and how far; where along it lines begin, and to which sides they run.
    pub(super) baseline_from: String,
    pub(super) baseline_bearing: String,
    pub(super) baseline_length: String,
    pub(super) starts: String,
    pub(super) sides: String,
    /// Lines before the next look of a sequential plan.
    pub(super) batch: String,
    pub(super) seed: String,
    pub(super) from: String,
    pub(super) names: String,
    pub(super) judged: String,
}

/// What a crew takes along.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub(super) struct Packet {
    /// Site and names of the layout.
    pub(super) layout: String,
    pub(super) protocol: String,
    pub(super) unit: String,
    pub(super) paper: String,
    pub(super) date: String,
    pub(super) elevation: String,
    /// Where the walk begins, where the layout doesn't know.
    pub(super) from: String,
    pub(super) cautions: String,
    pub(super) calls: String,
}

impl Default for Aim {
    fn default() -> Self {
        let text = str::to_owned;
        let none = String::new;
        Self {
            name: none(),
            about: text("site"),
            subject: text("canopy"),
            relation: text("at least"),
            low: none(),
            high: none(),
            direction: none(),
            by: none(),
            confidence: text("90"),
            smallest: none(),
            false_alarm: text("10"),
            missed: text("20"),
            reason: none(),
            source: none(),
            agreed: none(),
            changes: None,
            why_changed: none(),
        }
    }
}

impl Default for Number {
    fn default() -> Self {
        let text = str::to_owned;
        let none = String::new;
        Self {
            described: false,
            cover: text("20"),
            spread: text("8"),
            power: text("80"),
            half_width: text("4"),
            change: none(),
            correlation: text("0.5"),
            trend: none(),
            visits: text("5"),
            between_years: none(),
            shows: none(),
            walk: none(),
            lay: none(),
            read: none(),
            budget: none(),
            simulate: false,
            spreads: BTreeMap::new(),
            lines: none(),
            why: none(),
        }
    }
}

impl Default for Layout {
    fn default() -> Self {
        let text = str::to_owned;
        let none = String::new;
        Self {
            length: text("50 m"),
            reserve: none(),
            design: text("balanced"),
            bearing: text("random"),
            bearings: BTreeMap::new(),
            edge: text("turn"),
            apart: none(),
            shares: text("area"),
            shape: text("line"),
            spokes: text("3"),
            offset: none(),
            baseline_from: none(),
            baseline_bearing: none(),
            baseline_length: none(),
            starts: text("random"),
            sides: text("either"),
            batch: none(),
            seed: text("1"),
            from: none(),
            names: none(),
            judged: none(),
        }
    }
}

impl Default for Sitting {
    fn default() -> Self {
        Self {
            site: String::new(),
            aim: Aim::default(),
            number: Number::default(),
            ground: Ground::default(),
            layout: Layout::default(),
            packet: Packet { date: here::today(), ..Packet::default() },
        }
    }
}

/// The sitting of a screen.
#[derive(Clone, Copy)]
pub(super) struct Held {
    sitting: RwSignal<Sitting>,
    is_read: RwSignal<bool>,
    pub(super) session: Session,
}

impl Held {
    /// What was typed before, from the step before or from the device.
    pub(super) fn here() -> Self {
        let last = LAST.with(|last| last.borrow().clone());
        let held = Self {
            is_read: RwSignal::new(last.is_some()),
            sitting: RwSignal::new(last.unwrap_or_default()),
            session: Session::here(),
        };
        if !held.is_read.get_untracked() {
            held.session.with_device(
                async |device| device.text(NAME).await.ok().flatten(),
                move |text| {
                    let kept = text.and_then(|text| serde_json::from_str(&text).ok());
                    // a screen that was left meanwhile has no signals any more
                    held.sitting.try_set(kept.unwrap_or_default());
                    held.is_read.try_set(true);
                },
            );
        }
        held.keep();
        held
    }

    /// Keeps what is typed, at each pause.
    fn keep(self) {
        let pausing = StoredValue::new(None::<TimeoutHandle>);
        Effect::new(move |before: Option<()>| {
            let sitting = self.sitting.get();
            if !self.is_read.get() {
                return;
            }
            LAST.with(|last| *last.borrow_mut() = Some(sitting));
            if before.is_none() {
                return;
            }
            if let Some(earlier) = pausing.get_value() {
                earlier.clear();
            }
            let session = self.session;
            let write = move || {
                let text =
                    LAST.with(|last| last.borrow().as_ref().and_then(|all| serde_json::to_string(all).ok()));
                // what can't be kept is typed again next time; nothing of the notebook hangs on it
                session.with_device(
                    async move |device| device.keep_text(NAME, text.as_deref()).await.is_ok(),
                    |_| (),
                );
            };
            pausing.set_value(set_timeout_with_handle(write, PAUSE).ok());
        });
    }

    /// The device has been asked, and the notebook read.
    pub(super) fn is_read(self) -> bool {
        self.is_read.get() && self.session.is_read.get()
    }

    /// Something of it; whoever reads it follows it.
    pub(super) fn with<T>(self, read: impl FnOnce(&Sitting) -> T) -> T {
        self.sitting.with(read)
    }

    /// The same, for what is done once.
    pub(super) fn with_untracked<T>(self, read: impl FnOnce(&Sitting) -> T) -> T {
        self.sitting.with_untracked(read)
    }

    pub(super) fn update(self, change: impl FnOnce(&mut Sitting)) {
        self.sitting.update(change);
    }

    /// Begins anew; what is in the notebook stays there.
    pub(super) fn begin_anew(self) {
        self.sitting.set(Sitting::default());
    }
}
