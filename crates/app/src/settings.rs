//! What a person set on this device: kept beside the notebook, never part of it.

use crate::device::{Author, Device};
use serde::{Deserialize, Serialize};

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

/// The settings of this device.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub(crate) struct Settings {
    pub(crate) theme: Theme,
    /// Who writes on this device.
    pub(crate) name: String,
    /// What they call it.
    pub(crate) device: String,
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

    /// Who writes.
    pub(crate) fn author(&self) -> Author {
        Author { name: self.name.clone(), device: self.device.clone() }
    }
}
