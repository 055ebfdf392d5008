//! `tautline report`: one file or one for each site, for each reader and in each language, and whether the readings behind a
//! report still stand.

#![expect(clippy::unwrap_used, reason = "a test that can't call the command has failed")]

mod call;

use call::tautline;
use std::path::{Path, PathBuf};
use std::process::Output;

fn folder(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("report").join(name);
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).unwrap();
    folder
}

fn text(output: &Output) -> String {
    let both = [output.stdout.clone(), output.stderr.clone()].concat();
    String::from_utf8(both).unwrap().replace('\u{a0}', " ")
}

fn called(arguments: &[&str], input: &str) -> String {
    let output = tautline(arguments, input);
    assert_eq!(output.status.code(), Some(0), "{arguments:?}: {}", text(&output));
    text(&output)
}

/// Two invented sites with two lines each; 2 of 10 m and 3 of 10 m are 25 %, common practice, no source.
const READINGS: &str = "site,line,line length,date,species,start (m),stop (m)\n\
    Hollow Flat (invented),1,10 m,2026-06-03,ATCA,1,3\nHollow Flat (invented),2,10 m,2026-06-03,ATCA,4,7\n\
    Rim Draw (invented),1,10 m,2026-06-04,KRLA,0,1\nRim Draw (invented),2,10 m,2026-06-04,KRLA,2,3.5\n";

const WHAT: [&str; 6] = ["--count", "ATCA,KRLA", "--goal", "at least 15 %", "--gap-rule", "0 m"];

fn reported(more: &[&str], input: &str) -> String {
    called(&[&["report", "-"], &WHAT[..], more].concat(), input)
}

fn read(path: &Path) -> String {
    std::fs::read_to_string(path).unwrap().replace('\u{a0}', " ")
}

#[test]
fn the_shape_is_that_of_the_file_s_name() {
    let folder = folder("shapes");
    let file = |name: &str| folder.join(name).to_str().unwrap().to_owned();
    reported(&["--into", &file("both.html")], READINGS);
    reported(&["--into", &file("both.txt")], READINGS);
    assert!(read(&folder.join("both.html")).starts_with("<!DOCTYPE html>"));
    let plain = read(&folder.join("both.txt"));
    assert!(plain.contains("On the lines that were read, canopy cover comes to 25.0 %."), "{plain}");
    let board = file("board.txt");
    reported(&["--into", &board, "--for", "board"], READINGS);
    let board = read(Path::new(&board));
    assert!(board.contains("comes to 25.0 %") && !board.contains("Appendix"), "{board}");
}

#[test]
fn what_is_said_is_said_in_spanish_and_so_is_the_help() {
    let folder = folder("spanish");
    let file = folder.join("ambos.txt");
    let place = file.to_str().unwrap();
    reported(&["--into", place, "--language", "es"], READINGS);
    let plain = read(&file);
    assert!(plain.contains("En las líneas leídas, la cifra de cobertura de copa es 25,0 %."), "{plain}");
    assert!(called(&["report", "--help", "--language", "es"], "").contains("Para quién"));
    let refused = tautline(&["cover", "-", "--language", "tlh"], READINGS);
    assert_eq!(refused.status.code(), Some(2));
}

#[test]
fn each_site_gets_a_file_and_a_second_run_leaves_alone_what_stands() {
    let folder = folder("each");
    let place = folder.to_str().unwrap();
    let said = reported(&["--into", place, "--as", "text"], READINGS);
    assert!(said.contains("2 reports written"), "{said}");
    let mut files: Vec<String> =
        std::fs::read_dir(&folder).unwrap().map(|e| e.unwrap().file_name().into_string().unwrap()).collect();
    files.sort();
    assert_eq!(files, ["Hollow-Flat-invented.txt", "Rim-Draw-invented.txt"]);
    let flat = read(&folder.join(&files[0]));
    assert!(flat.contains("25.0 %") && !flat.contains("Rim Draw"), "{flat}");
    let again = reported(&["--into", place, "--as", "text", "--resume"], READINGS);
    assert!(again.contains("0 reports written, 2 left as they were"), "{again}");
    let corrected = READINGS.replace("KRLA,2,3.5", "KRLA,2,3");
    let third = reported(&["--into", place, "--as", "text", "--resume"], &corrected);
    assert!(third.contains("One report written, 1 left as they were"), "{third}");
    let asked = ["report", "-", "--into", place, "--as", "text", "--resume", "--goal", "at least 16 %"];
    let fourth = called(&[&asked[..], &["--count", "ATCA,KRLA", "--gap-rule", "0 m"]].concat(), &corrected);
    assert!(fourth.contains("2 reports written: "), "another goal: {fourth}");
}

/// In every shape that this command can make: a new photo is a new report of its site, and of no other.
#[test]
fn a_second_run_writes_anew_where_a_photo_is_new() {
    let folder = folder("resumed");
    let at = |name: &str| folder.join(name).to_str().unwrap().to_owned();
    let (notebook, photo) = (at("n.tautline"), at("zero.jpg"));
    std::fs::write(at("readings.csv"), READINGS).unwrap();
    std::fs::write(&photo, PHOTO).unwrap();
    called(&["import", "--notebook", &notebook, &at("readings.csv")], "");
    let shapes = if cfg!(feature = "pdf") { &["html", "text", "pdf"][..] } else { &["html", "text"] };
    let run = |shape: &str| {
        let asked = ["report", "--notebook", &notebook, "--into", &at(shape), "--as", shape, "--resume"];
        called(&[&asked[..], &WHAT[..]].concat(), "")
    };
    for shape in shapes {
        assert!(run(shape).contains("2 reports written"));
        assert!(run(shape).contains("0 reports written, 2 left as they were"), "{shape}");
    }
    let of = ["--site", "Rim Draw (invented)", "--line", "1", "--at", "start", "--date", "2026-06-03"];
    called(&[&["photo", "add", &photo, "--notebook", &notebook], &of[..]].concat(), "");
    for shape in shapes {
        let said = run(shape);
        // a shape with sheets counts them in between
        assert!(
            said.contains("One report written") && said.contains("1 left as they were"),
            "{shape}: {said}"
        );
    }
}

#[test]
fn a_report_is_held_against_files_and_against_a_notebook() {
    let folder = folder("verify");
    let at = |name: &str| folder.join(name).to_str().unwrap().to_owned();
    let (report, sheet, notebook) = (at("both.html"), at("readings.csv"), at("flat.tautline"));
    std::fs::write(&sheet, READINGS).unwrap();
    reported(&["--into", &report], READINGS);
    // by another file name, and by a notebook that took it in
    for from in [vec![sheet.as_str()], vec!["--notebook", notebook.as_str()]] {
        if from.len() == 2 {
            called(&["import", "--notebook", &notebook, &sheet], "");
        }
        let said = called(&[&["report", "--verify", &report], &from[..]].concat(), "");
        assert_eq!(said.matches("the readings stand as they did").count(), 2, "{said}");
    }
    let corrected = READINGS.replace("ATCA,4,7", "ATCA,4,6.9");
    let differs = tautline(&["report", "--verify", &report, "-"], &corrected);
    assert_eq!(differs.status.code(), Some(1), "{}", text(&differs));
    assert!(text(&differs).contains("nothing here is like that now"), "{}", text(&differs));
    assert!(text(&differs).contains("Rim Draw (invented), 2026: the readings stand"), "{}", text(&differs));
    let none = tautline(&["report", "--verify", &sheet, &sheet], "");
    assert_eq!(none.status.code(), Some(3));
}

/// A JPEG of 4 by 3 pixels without any: SOI, SOF0, SOS, EOI (ISO/IEC 10918-1, annex B), and behind SOI an APP1 segment that ends
/// in digits of a place.
const PHOTO: &[u8] = b"\xFF\xD8\xFF\xE1\x00\x16Exif\x00\x0038.512345678\x00\x00\xFF\xC0\x00\x0B\x08\x00\x03\x00\x04\x01\x01\x11\x00\xFF\xDA\x00\x08\x01\x01\x00\x00\x3F\x00\x37\xFF\xD9";

#[test]
fn a_notebook_s_photos_and_places_stand_in_its_reports_as_far_as_they_may() {
    let folder = folder("photos");
    let at = |name: &str| folder.join(name).to_str().unwrap().to_owned();
    let (notebook, photo) = (at("n.tautline"), at("zero.jpg"));
    std::fs::write(at("readings.csv"), READINGS).unwrap();
    let places = "site,line,start latitude,start longitude,places\n\
        Hollow Flat (invented),1,38.512345678,-113.287654321,withheld\n\
        Hollow Flat (invented),2,38.513345678,-113.287654321,\nRim Draw (invented),1,38.612345678,-113.387654321,\n";
    std::fs::write(at("lines.csv"), places).unwrap();
    std::fs::write(&photo, PHOTO).unwrap();
    called(&["import", "--notebook", &notebook, &at("readings.csv"), &at("lines.csv")], "");
    for site in ["Hollow Flat (invented)", "Rim Draw (invented)"] {
        let of = ["--site", site, "--line", "1", "--at", "start", "--date", "2026-06-03"];
        called(&[&["photo", "add", &photo, "--notebook", &notebook], &of[..]].concat(), "");
    }
    let page = |name: &str, more: &[&str]| {
        let book = ["report", "--notebook", &notebook, "--into", name];
        called(&[&book[..], &WHAT[..], more].concat(), "");
    };
    page(&at("both.html"), &[]);
    let told = read(Path::new(&at("both.html")));
    // the same picture for two sites, without what the camera wrote
    assert_eq!(told.matches("<img src=\"data:image/jpeg;base64,").count(), 2);
    assert!(!told.contains("12345678") && !told.contains("OC41MTIz"), "a place is told");
    assert!(
        told.contains("is kept back, as the site&#39;s setting says")
            && told.contains("38.612346 -113.387654")
    );
    page(&at("full.html"), &["--full"]);
    let full = read(Path::new(&at("full.html")));
    assert!(full.contains("38.512346 -113.287654") && full.contains("it is not for handing on"));
    page(&at("each"), &["--for", "landowner"]);
    let flat = read(&folder.join("each").join("Hollow-Flat-invented.html"));
    assert_eq!(flat.matches("<img ").count(), 1);
    // a report of each site knows of its places what the report of all knows
    page(&at("every"), &[]);
    let flat = read(&folder.join("every").join("Hollow-Flat-invented.html"));
    assert!(!flat.contains("12345678") && !flat.contains("38.51234"), "a place is told");
    assert!(flat.contains("is kept back, as the site&#39;s setting says"));
    let rim = read(&folder.join("every").join("Rim-Draw-invented.html"));
    assert!(rim.contains("38.612346 -113.387654") && !rim.contains("kept back"));
    // files have no photos
    called(&[&["report", &at("readings.csv"), "--into", &at("files.html")], &WHAT[..]].concat(), "");
    assert!(!read(Path::new(&at("files.html"))).contains("<img"));
}

#[cfg(not(feature = "pdf"))]
#[test]
fn without_pdf_the_command_says_how_to_build_it() {
    let place = folder("without").join("both.pdf");
    let refused = tautline(&["report", "-", "--into", place.to_str().unwrap()], READINGS);
    assert_eq!(refused.status.code(), Some(2));
    assert!(text(&refused).contains("--features pdf"), "{}", text(&refused));
    assert!(!place.exists());
}

#[cfg(feature = "pdf")]
#[test]
fn a_pdf_is_written_whole_is_known_again_and_a_template_that_fails_is_named() {
    let folder = folder("pdf");
    let at = |name: &str| folder.join(name).to_str().unwrap().to_owned();
    let report = at("both.pdf");
    reported(&["--into", &report], READINGS);
    let first = std::fs::read(&report).unwrap();
    assert!(first.starts_with(b"%PDF-"));
    reported(&["--into", &report], READINGS);
    assert!(first == std::fs::read(&report).unwrap(), "the same call gives other bytes");
    let said = called(&["report", "--verify", &report, "-"], READINGS);
    assert_eq!(said.matches("the readings stand").count(), 2, "{said}");
    let said =
        reported(&["--into", &at("each"), "--as", "pdf", "--for", "landowner", "--archival"], READINGS);
    // one sheet each, and on its back what the words mean
    assert!(said.contains("2 reports written, 4 pages"), "{said}");
    std::fs::write(at("letterhead.typ"), "#let letterhead(report) = nothing-known").unwrap();
    let template = folder.to_str().unwrap();
    let refused = tautline(&["report", "-", "--into", &at("again.pdf"), "--template", template], READINGS);
    assert_eq!(refused.status.code(), Some(2));
    assert!(text(&refused).contains("letterhead.typ fails in row 1, column 27"), "{}", text(&refused));
    assert!(!Path::new(&at("again.pdf")).exists());
}
