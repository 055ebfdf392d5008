//! `docs/planning.md`: every command of the page, in its order, in an empty folder, as a new user would type it.

use std::process::Command;

/// The commands of the page's blocks, lines that end in a backslash taken together.
fn commands(page: &str) -> Vec<String> {
    let blocks = page.split("```sh\n").skip(1).filter_map(|block| block.split("```").next());
    let whole: String = blocks.collect::<Vec<_>>().concat().replace("\\\n", " ");
    whole.lines().map(str::to_owned).collect()
}

/// Words, those in double quotes taken whole.
fn parts(command: &str) -> Vec<String> {
    let quoted = command.split('"').enumerate();
    quoted
        .flat_map(|(at, piece)| match at % 2 {
            0 => piece.split_whitespace().map(str::to_owned).collect::<Vec<_>>(),
            _ => vec![piece.to_owned()],
        })
        .collect()
}

#[test]
fn the_page_runs_as_it_stands() {
    let folder = tempfile::tempdir().unwrap();
    let commands = commands(include_str!("../../../docs/planning.md"));
    assert_eq!(commands.len(), 9);
    let mut said = Vec::new();
    for command in &commands {
        let parts = parts(command);
        assert_eq!(parts[0], "tautline");
        let output = Command::new(env!("CARGO_BIN_EXE_tautline"))
            .args(&parts[1..])
            .current_dir(folder.path())
            .output()
            .unwrap();
        let told = String::from_utf8_lossy(&output.stdout).split_whitespace().collect::<Vec<_>>().join(" ");
        let aside = String::from_utf8_lossy(&output.stderr).into_owned();
        assert_eq!(output.status.code(), Some(0), "{command}: {told} {aside}");
        said.push(told);
    }
    let packet = std::fs::read_to_string(folder.path().join("packet/packet.html")).unwrap();
    assert!(packet.contains("Hollow Flat (invented)"));
    let lines = std::fs::read_to_string(folder.path().join("packet/lines.csv")).unwrap();
    assert_eq!(lines.lines().count(), 1 + 24);
    assert!(
        said[1].contains("No match") && said[8].contains("“no more than 8 %” is not reached"),
        "{said:?}"
    );
    assert!(folder.path().join("flat.html").exists());
}
