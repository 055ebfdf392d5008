//! The plant list: codes, names and growth forms. Growth form decides what is woody; no species is hard-wired.

use serde::{Deserialize, Serialize};

/// The growth form of a plant.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum GrowthForm {
    /// A tree.
    Tree,
    /// A shrub.
    Shrub,
    /// A subshrub or half-shrub: woody at the base.
    Subshrub,
    /// A cactus, yucca or other succulent.
    Succulent,
    /// A vine.
    Vine,
    /// A grass, sedge or rush.
    Grass,
    /// A forb.
    Forb,
    /// Moss, lichen, alga or crust.
    Crust,
    /// Something else, or not known.
    Other,
}

impl GrowthForm {
    /// Every growth form, in the order they are listed in.
    pub const ALL: [Self; 9] = [
        Self::Tree,
        Self::Shrub,
        Self::Subshrub,
        Self::Succulent,
        Self::Vine,
        Self::Grass,
        Self::Forb,
        Self::Crust,
        Self::Other,
    ];

    /// Trees, shrubs and subshrubs are woody. Doubtful plants are named one by one in the protocol.
    pub const fn is_woody(self) -> bool {
        matches!(self, Self::Tree | Self::Shrub | Self::Subshrub)
    }

    /// The word in files and options, and the code of the catalogue's word.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Tree => "tree",
            Self::Shrub => "shrub",
            Self::Subshrub => "subshrub",
            Self::Succulent => "succulent",
            Self::Vine => "vine",
            Self::Grass => "grass",
            Self::Forb => "forb",
            Self::Crust => "crust",
            Self::Other => "other",
        }
    }

    /// The growth form that a word stands for.
    pub fn from_word(word: &str) -> Option<Self> {
        let plain: String = word.to_lowercase().chars().filter(|c| c.is_alphabetic()).collect();
        Some(match plain.as_str() {
            "tree" | "trees" => Self::Tree,
            "shrub" | "shrubs" => Self::Shrub,
            "subshrub" | "subshrubs" | "halfshrub" | "halfshrubs" => Self::Subshrub,
            "succulent" | "succulents" | "cactus" => Self::Succulent,
            "vine" | "vines" => Self::Vine,
            "grass" | "grasses" | "graminoid" | "sedge" | "rush" => Self::Grass,
            "forb" | "forbs" | "herb" => Self::Forb,
            "crust" | "moss" | "lichen" => Self::Crust,
            "other" | "unknown" => Self::Other,
            _ => return None,
        })
    }
}

/// One plant of the list.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Plant {
    /// The code written on sheets.
    pub code: String,
    /// The scientific name.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub name: String,
    /// The common name.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub common: String,
    /// The growth form.
    pub form: GrowthForm,
    /// Groups of the user's own: browse, natives, sagebrush.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub groups: Vec<String>,
    /// By what it is told from its like on the ground, in the user's own words.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub key_features: String,
}

impl Plant {
    /// A plant of which no more is known than its code and growth form.
    ///
    /// # Example
    /// ```
    /// use tautline_survey::plants::{GrowthForm, Plant};
    /// let plant = Plant { common: "winterfat".into(), ..Plant::new("KRLA2", GrowthForm::Subshrub) };
    /// assert!(plant.form.is_woody() && plant.name.is_empty() && plant.key_features.is_empty());
    /// ```
    pub fn new(code: impl Into<String>, form: GrowthForm) -> Self {
        Self {
            code: code.into(),
            name: String::new(),
            common: String::new(),
            form,
            groups: Vec::new(),
            key_features: String::new(),
        }
    }
}

/// The plants that a survey may meet.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PlantList {
    /// The plants, in the order of the list.
    pub plants: Vec<Plant>,
}

impl PlantList {
    /// The plant with this code or scientific or common name, letter case aside.
    pub fn find(&self, code: &str) -> Option<&Plant> {
        let wanted = code.trim();
        // asked for each row of each line, so plain letters are compared where they stand
        let is = |text: &str| {
            if text.is_ascii() && wanted.is_ascii() {
                text.eq_ignore_ascii_case(wanted)
            } else {
                text.to_lowercase() == wanted.to_lowercase()
            }
        };
        self.plants
            .iter()
            .find(|plant| is(&plant.code))
            .or_else(|| self.plants.iter().find(|plant| is(&plant.name) || is(&plant.common)))
    }

    /// The list's code for what was written, or what was written, in capitals.
    pub fn code(&self, written: &str) -> String {
        self.find(written).map_or_else(|| written.trim().to_uppercase(), |plant| plant.code.clone())
    }

    /// Every group that some plant belongs to, sorted.
    pub fn groups(&self) -> Vec<&str> {
        let mut groups: Vec<&str> =
            self.plants.iter().flat_map(|plant| plant.groups.iter().map(String::as_str)).collect();
        groups.sort_unstable();
        groups.dedup();
        groups
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A list without key features is written as it was before there were any, so that its hash stays what it was.
    #[test]
    fn what_is_not_known_is_not_written() {
        let mut plant = Plant::new("KRLA2", GrowthForm::Subshrub);
        let text = |plant: &Plant| serde_json::to_string(plant).unwrap();
        assert_eq!(text(&plant), r#"{"code":"KRLA2","form":"subshrub"}"#);
        assert_eq!(serde_json::from_str::<Plant>(&text(&plant)).unwrap(), plant);
        plant.key_features = "woolly seed heads".into();
        assert_eq!(text(&plant), r#"{"code":"KRLA2","form":"subshrub","key_features":"woolly seed heads"}"#);
    }
}
