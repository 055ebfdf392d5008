//! The protocols that are shipped: rules found in handbooks and papers, each with its source, none of them the right one.

use super::read;
use tautline_survey::protocol::Protocol;

pub(super) const FILES: [(&str, &str); 8] = [
    ("live-canopy-2.5in", include_str!("../../protocols/live-canopy-2.5in.toml")),
    ("canopy-2in", include_str!("../../protocols/canopy-2in.toml")),
    ("live-or-dead-5cm", include_str!("../../protocols/live-or-dead-5cm.toml")),
    ("live-or-dead-10cm", include_str!("../../protocols/live-or-dead-10cm.toml")),
    ("live-or-dead-15cm", include_str!("../../protocols/live-or-dead-15cm.toml")),
    ("live-foliage-5cm", include_str!("../../protocols/live-foliage-5cm.toml")),
    ("strict-foliar", include_str!("../../protocols/strict-foliar.toml")),
    ("smooth-outline", include_str!("../../protocols/smooth-outline.toml")),
];

/// The shipped protocols, each with the short name that options take.
pub fn shipped() -> Vec<(&'static str, Protocol)> {
    // a test holds that each of them is read without a finding
    FILES.iter().map(|(key, text)| (*key, read(key, text).0)).collect()
}

/// The shipped protocol with this short name, or with this name in full; letter case aside.
///
/// # Example
/// ```
/// use tautline_exchange::protocol::find;
/// assert_eq!(find("Canopy-2in").unwrap().gap.limit.unwrap().typed(), "2 in");
/// assert!(find("ours").is_none());
/// ```
pub fn find(name: &str) -> Option<Protocol> {
    let wanted = name.trim();
    shipped()
        .into_iter()
        .find(|(key, protocol)| {
            key.eq_ignore_ascii_case(wanted) || protocol.name.eq_ignore_ascii_case(wanted)
        })
        .map(|(_, protocol)| protocol)
}
