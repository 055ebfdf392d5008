use super::Made;
use tautline_exchange::{Options, Source, protocol};
use tautline_travel::Form;

#[test]
fn a_plant_list_and_protocols_come_back_as_they_were() {
    let made = Made::new();
    let sources: Vec<Source> = made
        .files(Form::Plants)
        .into_iter()
        .filter(|file| file.name != "readme.txt")
        .map(|file| Source { name: file.name, bytes: file.bytes })
        .collect();
    let back = tautline_exchange::read(&sources, &Options::default()).input;
    assert_eq!(back.plants, made.read.input.plants);
    assert_eq!(back.findings, []);
    for file in made.files(Form::Protocols).iter().filter(|file| file.name != "readme.txt") {
        let (read, findings) = protocol::read(&file.name, core::str::from_utf8(&file.bytes).unwrap());
        assert_eq!(findings, []);
        assert_eq!(made.read.input.protocols.get(&read.fingerprint()), Some(&read));
    }
}
