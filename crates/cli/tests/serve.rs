//! `tautline serve` as a person starts and ends it.

#![cfg(all(unix, feature = "serve"))]
#![expect(clippy::unwrap_used, reason = "a test that can't call the command has failed")]

use std::io::{BufRead as _, BufReader, Read as _, Write as _};
use std::net::TcpStream;
use std::process::{Child, Command, Stdio};

fn begin(folder: &std::path::Path, arguments: &[&str]) -> Child {
    Command::new(env!("CARGO_BIN_EXE_tautline"))
        .current_dir(folder)
        .args([&["serve"], arguments].concat())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap()
}

#[test]
fn a_notebook_is_served_until_it_is_told_to_end() {
    let folder = tempfile::tempdir().unwrap();
    let mut child = begin(folder.path(), &["--port", "0"]);
    let mut lines = BufReader::new(child.stdout.take().unwrap());
    let mut first = String::new();
    lines.read_line(&mut first).unwrap();
    let origin = first.split("http://").nth(1).unwrap().split('/').next().unwrap().to_owned();
    let mut to = TcpStream::connect(&origin).unwrap();
    write!(to, "GET /api/version HTTP/1.0\r\nHost: {origin}\r\n\r\n").unwrap();
    let mut answered = String::new();
    to.read_to_string(&mut answered).unwrap();
    assert!(answered.contains("\"format\":\"tautline.server\""), "{answered}");
    // a second one on the same notebook finds the port taken, and says so
    let second = begin(folder.path(), &[]).wait_with_output().unwrap();
    assert_eq!(second.status.code(), Some(4));
    assert!(String::from_utf8_lossy(&second.stderr).contains("Another program listens on port"));
    let told = Command::new("kill").args(["-INT", &child.id().to_string()]).status().unwrap();
    assert!(told.success());
    let mut rest = String::new();
    lines.read_to_string(&mut rest).unwrap();
    assert!(rest.contains("all that was acknowledged is in notebook.tautline"), "{rest}");
    assert_eq!(child.wait().unwrap().code(), Some(0));
    // ended well, it leaves one file behind
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 1);
}
