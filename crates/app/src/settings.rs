//! What a person set on this device: kept beside the notebook, never part of it.

use crate::device::{Author, Device};
use serde::{Deserialize, Serialize};
use tautline_words::Lengths;

const NAME: &str = "settings";

/// How light the screen is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub(crate) enum Theme {
    /// As the device has it.
    #[default]
    Device,
    /// Dark on light.
    Light,
    /// Light on dark.
    Dark,
    /// Black on white, for full sun.
    Sunlight,
}

impl Theme {
    pub(crate) const ALL: [Self; 4] = [Self::Device, Self::Light, Self::Dark, Self::Sunlight];

    /// Its name in the stylesheet, and the end of its key in the catalogue.
    pub(crate) const fn code(self) -> &'static str {
        match self {
            Self::Device => "device",
            Self::Light => "light",
            Self::Dark => "dark",
            Self::Sunlight => "sunlight",
        }
    }
}

/// How large the letters are.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub(crate) enum Letters {
    /// As the browser has them.
    #[default]
    Usual,
    /// A quarter larger.
    Larger,
    /// Half as large again.
    Large,
    /// Twice as large.
    Twice,
}

impl Letters {
    pub(crate) const ALL: [Self; 4] = [Self::Usual, Self::Larger, Self::Large, Self::Twice];

    /// Their name in the stylesheet.
    pub(crate) const fn code(self) -> &'static str {
        match self {
            Self::Usual => "usual",
            Self::Larger => "larger",
            Self::Large => "large",
            Self::Twice => "twice",
        }
    }

    /// Their share of the usual size.
    pub(crate) const fn share(self) -> f64 {
        match self {
            Self::Usual => 1.0,
            Self::Larger => 1.25,
            Self::Large => 1.5,
            Self::Twice => 2.0,
        }
    }
}

/// The settings of this device.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub(crate) struct Settings {
    pub(crate) theme: Theme,
    pub(crate) letters: Letters,
    /// The language, by its code; the browser's own where none is set.
    pub(crate) language: String,
    /// In which units results are said, by their code.
    pub(crate) lengths: String,
    /// Who writes on this device.
    pub(crate) name: String,
    /// What they call it.
    pub(crate) device: String,
    /// By how many points two readers of a line may differ in this office, as typed.
    pub(crate) tolerance: String,
    /// How many days a calibration lasts in this office, as typed.
    pub(crate) span: String,
}

impl Settings {
    /// Those kept on this device.
    pub(crate) async fn kept(device: &Device) -> Self {
        let text = device.text(NAME).await.ok().flatten();
        text.and_then(|text| serde_json::from_str(&text).ok()).unwrap_or_default()
    }

    /// Keeps them.
    pub(crate) async fn keep(&self, device: &Device) {
        if let Ok(text) = serde_json::to_string(self) {
            // what can't be kept is asked for again next time
            let _ = device.keep_text(NAME, Some(&text)).await;
        }
    }

    /// The languages to look for words in, the one wanted most first. Where the browser names a country of the language that
    /// was set, numbers are written as they are there.
    pub(crate) fn languages(&self) -> Vec<String> {
        let of_browser = languages().into_iter().filter(|named| named.starts_with(&self.language));
        of_browser.chain([self.language.clone(), "en".to_owned()]).collect()
    }

    /// In which units results are said.
    pub(crate) fn lengths(&self) -> Lengths {
        Lengths::from_code(&self.lengths).unwrap_or_default()
    }

    /// Who writes.
    pub(crate) fn author(&self) -> Author {
        Author { name: self.name.clone(), device: self.device.clone() }
    }
}

/// The languages that the browser asks for, the one liked best first.
fn languages() -> Vec<String> {
    let asked = web_sys::window().map(|window| window.navigator().languages()).unwrap_or_default();
    asked.iter().filter_map(|one| one.as_string()).collect()
}
