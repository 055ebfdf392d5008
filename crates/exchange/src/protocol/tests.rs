use super::*;
use tautline_survey::finding::{Finding, Weight};
use tautline_survey::protocol::{Bridge, Counts, Dead, Protocol, Unknown};

/// The protocol, and nothing was wrong with it.
fn sound(text: &str) -> Protocol {
    let (protocol, findings) = read("ours.toml", text);
    assert_eq!(findings, []);
    protocol
}

fn findings(text: &str) -> Vec<(&'static str, u64)> {
    let found = read("ours.toml", text).1;
    let in_short = |finding: &Finding| {
        assert_eq!(finding.weight, Weight::MustSettle);
        (finding.message.code, finding.place.as_ref().unwrap().row)
    };
    found.iter().map(in_short).collect()
}

#[test]
fn shipped_protocols_come_back_from_their_own_files() {
    let shipped = shipped();
    for (key, text) in shipped::FILES {
        assert_eq!(read(key, text).1, [], "{key}");
    }
    for (key, protocol) in &shipped {
        assert_eq!(&sound(&to_toml(protocol)), protocol, "{key}");
        assert!(!protocol.name.is_empty() && !protocol.source.is_empty(), "{key}");
    }
    let mut prints: Vec<String> = shipped.iter().map(|(_, protocol)| protocol.fingerprint()).collect();
    prints.sort();
    prints.dedup();
    assert_eq!(prints.len(), shipped.len(), "two shipped protocols mean the same");
}

/// Boyd, Bates and Miller 2007 compared gaps of 5, 10 and 15 cm and let short dead canopy join live.
#[test]
fn the_published_variants_say_what_their_sources_say() {
    for (key, millimetres) in
        [("live-or-dead-5cm", 50), ("live-or-dead-10cm", 100), ("live-or-dead-15cm", 150)]
    {
        let protocol = find(key).unwrap();
        assert_eq!(protocol.dead, Some(Dead::ShortJoinsLive));
        assert_eq!(protocol.gap.limit.unwrap().length().nanometres(), millimetres * 1_000_000);
        assert_eq!(protocol.gap.equal, None, "the paper doesn't say");
    }
    // TR 1734-4: closed until the gap exceeds 2 in (50.8 mm), from memory
    let two_inches = find("canopy-2in").unwrap();
    assert!(two_inches.from_memory);
    assert_eq!(two_inches.gap.limit.unwrap().length().nanometres(), 50_800_000);
    assert_eq!(two_inches.gap.equal, Some(Bridge::Bridged));
    assert_eq!(find("smooth-outline").unwrap().gap.limit, None);
}

#[test]
fn every_key_is_read_and_written_back() {
    let text = "
        Name = \"ours, \\\"quoted\\\"\"
        from_memory = true
        cover = \"basal\"
        dead = \"apart\"
        shortest = \"1 cm\"
        overlap = \"once\"
        side = \"left\"
        finest_division = \"1/4 in\"
        reading-window = \"full leaf\"
        alive-without-leaves = \"green under the bark\"
        flower-stalks = \"left out\"
        tape = \"below the canopy\"
        wind-limit = \"5 m/s\"
        heights = \"tallest live part\"
        [counts]
        forms = [\"shrub\", \"half-shrub\"]
        also = [\"YUCCA\"]
        except = [\"GUSA2\"]
        [gap]
        limit = \"2.5 in\"
        equal = \"bridged\"
        two-plants = \"breaks\"
        across-species = \"bridged\"
        between-species = \"breaks\"
        across-dead = \"breaks\"
        line-end = \"bridged\"";
    let protocol = sound(text);
    assert_eq!(sound(&to_toml(&protocol)), protocol);
    // every rule that a fingerprint can cover is stated in this file
    assert_eq!(protocol.meaning().len(), 20);
    assert_eq!(protocol.gap.line_end, Some(Bridge::Bridged));
}

#[test]
fn woody_is_short_for_its_growth_forms() {
    let woody = sound("name = \"a\"\n[counts]\nwoody = true");
    assert_eq!(woody.counts, Some(Counts::woody()));
}

#[test]
fn what_is_wrong_is_named_with_its_line_and_all_of_it() {
    assert_eq!(
        findings(
            "name = \"a\"\ncolour = \"red\"\n[gap]\nlimt = \"2 in\"\nequal = \"perhaps\"\nline-end = true"
        ),
        [
            ("protocol-unknown-rule", 2),
            ("protocol-rule-misspelt", 4),
            ("protocol-unknown-word", 5),
            ("protocol-unknown-word", 6)
        ]
    );
    assert_eq!(findings("name = \"a\"\ngap = \"2 in\""), [("protocol-not-a-section", 2)]);
    assert_eq!(findings("name = \"a\"\n[gap]\nlimit = 2.5"), [("protocol-not-a-length", 3)]);
    assert_eq!(findings("name = 5"), [("protocol-not-text", 1)]);
    assert_eq!(findings("name = \"a\"\nfrom-memory = \"yes\""), [("protocol-not-true-or-false", 2)]);
    assert_eq!(findings("name = \"a\"\n[counts]\nforms = \"shrub\""), [("protocol-not-a-list", 3)]);
    assert_eq!(findings("name = \"a\"\n[counts]\nforms = [\"bush\"]"), [("protocol-unknown-word", 3)]);
    assert_eq!(findings("name = \"a\"\nname = \"b\""), [("protocol-not-toml", 2)]);
    assert_eq!(findings("cover = \"foliar\""), [("protocol-without-name", 1)]);
}

#[test]
fn the_empty_protocol_writes_an_empty_file() {
    assert_eq!(to_toml(&Protocol::default()), "");
}

/// What somebody looked for and didn't find is written down as such, and read back to the same.
#[test]
fn what_is_unknown_is_no_silence() {
    let file = "name = \"old sheets\"\ndead = \"unknown\"\ncover = \"Unknown\"\n\n[gap]\nlimit = \"unknown up to 6 in\"\n";
    let (protocol, findings) = read("old.toml", file);
    assert_eq!(findings, []);
    assert!(protocol.is_unknown(Unknown::Dead) && protocol.is_unknown(Unknown::Cover));
    // 6 in are 15.24 cm
    assert_eq!(protocol.gap.unknown().unwrap().length().nanometres(), 152_400_000);
    let (again, _) = read("again.toml", &to_toml(&protocol));
    assert_eq!(again.fingerprint(), protocol.fingerprint());
    let (plain, _) = read("plain.toml", "name = \"old\"\n[gap]\nlimit = \"unknown\"\n");
    assert_eq!(plain.gap.unknown().unwrap().length().nanometres(), 150_000_000);
    let (_, wrong) = read("wrong.toml", "name = \"old\"\n[gap]\nlimit = \"unknown up to a lot\"\n");
    assert_eq!((wrong[0].message.code, wrong[0].place.as_ref().unwrap().row), ("protocol-not-a-length", 3));
}
