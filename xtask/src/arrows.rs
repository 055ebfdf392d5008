//! Which room may use which: the house's order, held against what cargo says.

use serde_json::Value;

use crate::Outcome;
use crate::cargo::{packages, text};

/// Each room of the house and what it may use of ours.
///
/// An arrow points one way only. A room that is missing here may not be built: give it a row, and say in its
/// `lib.rs` why it is a room of its own. Tests may use what the room may, and no more.
const MAY_USE: &[(&str, &[&str])] = &[
    ("tautline-engine", &[]),
    ("tautline-survey", &["tautline-engine"]),
    ("tautline-ground", &["tautline-engine", "tautline-survey"]),
    ("tautline-words", &["tautline-engine", "tautline-survey"]),
    ("tautline-exchange", &["tautline-engine", "tautline-survey"]),
    ("tautline-demo", &["tautline-engine", "tautline-survey", "tautline-exchange"]),
    ("tautline-store", &["tautline-engine", "tautline-survey"]),
    ("tautline-server", &["tautline-survey", "tautline-words", "tautline-store"]),
    ("tautline-figures", &["tautline-engine", "tautline-survey", "tautline-words"]),
    ("tautline-report", &["tautline-engine", "tautline-survey", "tautline-words", "tautline-figures"]),
    ("tautline-travel", &["tautline-engine", "tautline-survey", "tautline-words", "tautline-exchange"]),
    ("tautline-handbook", &["tautline-engine", "tautline-survey", "tautline-ground", "tautline-exchange"]),
    (
        "tautline-cli",
        &[
            "tautline-engine",
            "tautline-survey",
            "tautline-ground",
            "tautline-words",
            "tautline-exchange",
            "tautline-demo",
            "tautline-figures",
            "tautline-report",
            "tautline-store",
            "tautline-travel",
            "tautline-server",
            "tautline-handbook",
        ],
    ),
    ("bench", &["tautline-engine", "tautline-survey", "tautline-exchange"]),
    ("golden", &["tautline-engine"]),
    ("tautline-trials", &["tautline-engine"]),
    ("xtask", &["tautline-survey"]),
];

/// Fails with every edge that the table doesn't allow.
pub(crate) fn check() -> Outcome {
    let edges = edges(&packages(&["--no-deps"])?);
    let strays = strays(&edges, MAY_USE);
    if strays.is_empty() {
        return Ok(format!("{} arrows between rooms, all as the house has them", edges.len()));
    }
    Err(strays.join("\n"))
}

/// A room and one that it uses.
type Edge = (String, String);

/// Every dependency of one of our packages on another, whether to run, to build or to test.
fn edges(packages: &[Value]) -> Vec<Edge> {
    let ours: Vec<&str> = packages.iter().map(|package| text(package, "name")).collect();
    packages
        .iter()
        .flat_map(|package| {
            package["dependencies"]
                .as_array()
                .into_iter()
                .flatten()
                .map(|used| text(used, "name"))
                .filter(|used| ours.contains(used))
                .map(|used| (text(package, "name").to_owned(), used.to_owned()))
        })
        .collect()
}

/// What is wrong with the edges, one sentence each.
fn strays(edges: &[Edge], may_use: &[(&str, &[&str])]) -> Vec<String> {
    edges
        .iter()
        .filter_map(|(room, used)| match may_use.iter().find(|(name, _)| name == room) {
            None => Some(format!("{room} has no row in xtask's table of arrows, and uses {used}")),
            Some((_, allowed)) if allowed.contains(&used.as_str()) => None,
            Some((_, allowed)) => Some(format!("{room} uses {used}; it may use: {}", listed(allowed))),
        })
        .collect()
}

fn listed(rooms: &[&str]) -> String {
    if rooms.is_empty() { "none of our rooms".to_owned() } else { rooms.join(", ") }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn edge(room: &str, used: &str) -> Edge {
        (room.to_owned(), used.to_owned())
    }

    #[test]
    fn an_arrow_that_points_the_wrong_way_is_named() {
        let table: &[(&str, &[&str])] = &[("engine", &[]), ("survey", &["engine"])];
        assert!(strays(&[edge("survey", "engine")], table).is_empty());
        assert_eq!(
            strays(&[edge("engine", "survey")], table),
            ["engine uses survey; it may use: none of our rooms"]
        );
        assert_eq!(strays(&[edge("attic", "engine")], table).len(), 1);
    }

    #[test]
    fn the_table_itself_has_no_circle() {
        // Rows stand in the house's order: each uses only rooms of earlier rows.
        for (position, (room, allowed)) in MAY_USE.iter().enumerate() {
            for used in *allowed {
                let earlier = MAY_USE[..position].iter().any(|(name, _)| name == used);
                assert!(earlier, "{room} uses {used}, which does not come before it");
            }
        }
    }

    #[test]
    fn edges_are_read_from_cargo_s_description() {
        let packages = [
            serde_json::json!({"name": "engine", "dependencies": [{"name": "libm"}]}),
            serde_json::json!({"name": "survey", "dependencies": [{"name": "engine"}, {"name": "serde"}]}),
        ];
        assert_eq!(edges(&packages), [edge("survey", "engine")]);
    }
}
