//! Seen by the system's own eyes: between a device's message and the answer to it, the log beside the notebook is synced
//! to the disk. Needs strace, so that `./test --long` alone runs it.

#![cfg(all(target_os = "linux", feature = "serve"))]
#![expect(clippy::unwrap_used, reason = "a test that can't call the command has failed")]

use std::io::{BufRead as _, BufReader};
use std::process::{Command, Stdio};
use tautline_server::trial::Device;

const MESSAGES: usize = 50;

#[test]
fn no_answer_leaves_before_the_disk_has_it() {
    let folder = tempfile::tempdir().unwrap();
    let seen = folder.path().join("seen");
    let mut child = Command::new("strace")
        .args(["--follow-forks", "--decode-fds=path", "--trace=fdatasync,fsync,write,writev,sendto,sendmsg"])
        .arg("--output")
        .arg(&seen)
        .arg(env!("CARGO_BIN_EXE_tautline"))
        .args(["serve", "--port", "0", "--notebook", "n.tautline"])
        .current_dir(folder.path())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let mut lines = BufReader::new(child.stdout.take().unwrap());
    let mut first = String::new();
    lines.read_line(&mut first).unwrap();
    let address = first.split("http://").nth(1).and_then(|rest| rest.split('/').next()).unwrap();
    let mut device = Device::new(1);
    for reading in 0..MESSAGES {
        device.begin(&reading.to_string()).unwrap();
        assert!(device.exchange(address.parse().unwrap()).unwrap());
    }
    // strace passes the signal on and ends with what it watches
    let pid = std::fs::read_to_string(&seen).unwrap();
    let pid = pid.split_whitespace().next().unwrap();
    assert!(Command::new("kill").args(["-INT", pid]).status().unwrap().success());
    child.wait().unwrap();
    let seen = std::fs::read_to_string(&seen).unwrap();
    let (mut answers, mut synced) = (0, false);
    for line in seen.lines() {
        if (line.contains("fdatasync") || line.contains("fsync")) && line.ends_with("= 0") {
            synced = true;
        } else if line.contains("200 OK") {
            assert!(synced, "answer {answers} left before the disk had what it acknowledges:\n{seen}");
            (answers, synced) = (answers + 1, false);
        }
    }
    assert_eq!(answers, MESSAGES);
    assert!(seen.lines().any(|line| line.contains("sync(") && line.contains("n.tautline-wal>")));
}
