//! The command, called with arguments and with what it reads from standard input.

use std::io::Write;
use std::process::{Command, Output, Stdio};

pub(crate) fn tautline(arguments: &[&str], input: &str) -> Output {
    let mut child = Command::new(env!("CARGO_BIN_EXE_tautline"))
        .args(arguments)
        .env("LC_ALL", "C") // whatever language the tester speaks
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // a call that refuses its arguments may close its input before reading it
    let _ = child.stdin.take().unwrap().write_all(input.as_bytes());
    child.wait_with_output().unwrap()
}
