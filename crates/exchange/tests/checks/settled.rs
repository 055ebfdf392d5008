//! A person's word settles a finding, and only what a word can settle.

use super::{codes, looked_through, of};

const SHEET: &str = "site,line,line length,date,reader,species,start (m),stop (m)\n\
    Invented,1,30 m,2026-06-09,Reader A,AAAA,1,2\nInvented,1,30 m,2026-06-09,Reader A,AAAA,1.5,3\n\
    Invented,2,30 m,2026-06-09,Reader A,AAAA,5 cm,9\nInvented,2,30 m,2026-06-09,Reader A,AAAA,31,32\n\
    Invented,3,30 m,2026-06-09,Reader A,AAAA,4,3\n";

fn with(rows: &str) -> tautline_survey::input::Input {
    let settled = format!("finding,site,line,date,species,file,row,settled by,settled on,reason\n{rows}");
    looked_through(&[("some/folder/sheet.csv", SHEET), ("settled.csv", &settled)])
}

#[test]
fn a_word_settles_and_the_line_speaks_again() {
    let input = with("");
    assert_eq!(
        codes(&input),
        [
            ("overlap-within-species", 3),
            ("wholly-beyond-the-tape", 5),
            ("read-but-no-readings", 6),
            ("stop-before-start", 6)
        ]
    );
    assert_eq!(input.held.len(), 2);
    let input = with(
        "overlap-within-species,Invented,1,,,,,Reader A,2026-06-20,grown into each other\n\
         wholly-beyond-the-tape,,,,,other/sheet.csv,5,Reader A,,read past the stake\n",
    );
    let settled: Vec<&str> =
        input.findings.iter().filter(|one| one.settled.is_some()).map(|one| one.message.code).collect();
    assert_eq!(settled, ["wholly-beyond-the-tape", "overlap-within-species"]);
    assert_eq!(
        of(&input, "overlap-within-species")[0].settled.as_ref().unwrap().reason,
        "grown into each other"
    );
    // line 2 speaks again, line 3 doesn't
    assert_eq!(input.held.iter().copied().collect::<Vec<_>>(), [2]);
}

#[test]
fn words_that_settle_nothing_are_named() {
    let input = with("overlap-within-species,Invented,7,,,,,Reader A,,fine\n");
    assert_eq!(of(&input, "settles-nothing").len(), 1);
    let input = with("stop-before-start,Invented,3,,,,,Reader A,,fine\n");
    assert_eq!(of(&input, "needs-correction").len(), 1);
    assert!(of(&input, "stop-before-start")[0].settled.is_none());
    let input = with(
        "no-such-thing,Invented,1,,,,,Reader A,,fine\noverlap-within-species,Invented,1,,,,,Reader A,,\noverlap-within-species,,,,,,,Reader A,,fine\noverlap-within-species,Invented,1,,,,x,Reader A,,fine\n",
    );
    for code in ["finding-not-known", "reason-missing", "settled-where", "row-not-a-number"] {
        assert_eq!(of(&input, code).len(), 1, "{code}");
    }
    // nobody has signed this one yet
    assert_eq!(codes(&with("overlap-within-species,Invented,1,,,,,,,\n")), codes(&with("")));
}

#[test]
fn looking_again_adds_nothing() {
    let mut input = with(
        "overlap-within-species,Invented,1,,,,,Reader A,,fine\nstop-before-start,Invented,3,,,,,Reader A,,fine\n",
    );
    let (findings, held) = (input.findings.clone(), input.held.clone());
    tautline_survey::check::check(&mut input);
    assert_eq!((input.findings, input.held), (findings, held));
}
