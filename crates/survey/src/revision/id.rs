//! Ids: UUIDs of version 7, a type for each kind, made outside and handed in.
//!
//! The time inside an id spreads the rows of a file well; nothing is ordered or merged by it.

use core::fmt;
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use uuid::Uuid;

/// Reads an id without keeping its text.
struct Text;

impl serde::de::Visitor<'_> for Text {
    type Value = Uuid;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("id")
    }

    fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<Uuid, E> {
        read(text).ok_or_else(|| E::custom("not-an-id"))
    }
}

/// The usual 36 characters, and no other way to write a UUID.
fn read(text: &str) -> Option<Uuid> {
    Some(text).filter(|text| text.len() == 36).and_then(|text| Uuid::try_parse(text).ok())
}

macro_rules! id {
    ($(#[$said:meta])* $name:ident) => {
        $(#[$said])*
        #[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name(Uuid);

        impl $name {
            /// The id made of a time in milliseconds since 1970 and ten random bytes, as whoever has a clock and
            /// a source of randomness hands them in.
            ///
            /// # Source
            /// RFC 9562, section 5.7
            pub fn made(milliseconds: u64, random: [u8; 10]) -> Self {
                Self(uuid::Builder::from_unix_timestamp_millis(milliseconds, &random).into_uuid())
            }

            /// Reads the usual 36 characters.
            pub fn read(text: &str) -> Option<Self> {
                read(text).map(Self)
            }

            /// Its last eight characters, which are random: enough for a person to name it by.
            pub fn short(self) -> String {
                self.to_string()[28..].to_owned()
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                self.0.hyphenated().fmt(f)
            }
        }

        impl fmt::Debug for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                write!(f, "{}({self})", stringify!($name))
            }
        }

        impl Serialize for $name {
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.collect_str(self)
            }
        }

        impl<'de> Deserialize<'de> for $name {
            fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                deserializer.deserialize_str(Text).map(Self)
            }
        }

        #[cfg(feature = "schema")]
        impl schemars::JsonSchema for $name {
            fn schema_name() -> std::borrow::Cow<'static, str> {
                stringify!($name).into()
            }
            fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
                schemars::json_schema!({ "type": "string", "format": "uuid" })
            }
        }
    };
}

id! {
    /// Names one revision.
    ///
    /// # Example
    /// ```
    /// use tautline_survey::revision::RevisionId;
    /// // RFC 9562, appendix A.6: the example of version 7
    /// let id = RevisionId::made(0x017F_22E2_79B0, [0x0C, 0xC3, 0x18, 0xC4, 0xDC, 0x0C, 0x0C, 0x07, 0x39, 0x8F]);
    /// assert_eq!(id.to_string(), "017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
    /// assert_eq!(RevisionId::read("017f22e2-79b0-7cc3-98c4-dc0c0c07398f"), Some(id));
    /// ```
    RevisionId
}
id! {
    /// Names one record: a visit, a planned line, a plant list, through all its revisions.
    RecordId
}
id! {
    /// Names one thing that a person did, such as an import, with all revisions that it made.
    ActionId
}
id! {
    /// Names one copy of a notebook on one computer or phone.
    DeviceId
}
