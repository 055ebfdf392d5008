//! The typeset report: the same bytes for the same input, the page's own words on the sheets, and a template that can
//! neither look around nor fail in silence. Sheets are read by poppler's pdftotext and pdfinfo, which know nothing of us.
#![cfg(feature = "pdf")]
#![expect(clippy::unwrap_used, reason = "a test that can't go on should stop")]

#[path = "../packet/site.rs"]
mod carried;
mod packet;
#[path = "../page/reader.rs"]
#[expect(dead_code, reason = "the page's own tests use the rest")]
mod reader;
#[path = "../page/sites.rs"]
#[expect(dead_code, reason = "the page's own tests use the rest")]
mod sites;

use reader::{all, tree, words};
use sites::{PNG, UTM, asked, four_lines, hostile, mixed, photo, placed, several_sites};
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::atomic::{AtomicUsize, Ordering};
use tautline_report::print::{Paper, Press, Printed, Setting, Template, TemplateError};
use tautline_report::{Bytes, Reader, Telling, page_of};
use tautline_survey::assess::assess;
use tautline_survey::date::Date;
use tautline_survey::imprint::{found_in, of_readings};
use tautline_survey::input::Input;
use tautline_survey::message::Value;
use tautline_survey::photo::Shows;
use tautline_survey::place::Openness;
use tautline_words::Words;

fn told<T>(input: &Input, reader: Reader, tell: impl FnOnce(&Telling) -> T) -> T {
    let (question, catalogue) = (asked("at least 14 %"), Words::english());
    let assessments = assess(input, &question);
    tell(&Telling::new(input, &question, &assessments, &catalogue).to(reader))
}

fn printed(input: &Input, reader: Reader, setting: Setting) -> Printed {
    told(input, reader, |telling| Press::new(Template::shipped()).print(telling, &setting)).unwrap()
}

/// A new folder of this name; each test has its own.
fn folder(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("print").join(name);
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).unwrap();
    folder
}

/// What a program of poppler's says of a file.
fn poppler(program: &str, options: &[&str], bytes: &[u8]) -> String {
    static CALLS: AtomicUsize = AtomicUsize::new(0);
    let file = folder(&format!("call-{}", CALLS.fetch_add(1, Ordering::Relaxed))).join("report.pdf");
    std::fs::write(&file, bytes).unwrap();
    let mut call = Command::new(program);
    call.args(options).arg(&file);
    if program == "pdftotext" {
        call.arg("-");
    }
    let said = call.output().expect("poppler-utils is installed (./test pdf does it)");
    assert!(said.status.success(), "{program}: {}", String::from_utf8_lossy(&said.stderr));
    String::from_utf8(said.stdout).unwrap()
}

/// Letters and digits alone: sheets break words and rows where a page doesn't.
fn letters(text: &str) -> String {
    text.chars().filter(|c| c.is_alphanumeric()).collect()
}

#[test]
fn the_same_input_gives_the_same_bytes() {
    for setting in [Setting::default(), Setting { archival: true, paper: Paper::Letter, day: None }] {
        let [one, other] = [(); 2].map(|()| printed(&several_sites(), Reader::Specialist, setting));
        assert!(one == other, "two runs differ");
    }
}

#[test]
fn what_the_page_says_stands_on_the_sheets() {
    for (input, reader) in [
        (four_lines("One"), Reader::Specialist),
        (several_sites(), Reader::Board),
        (mixed(), Reader::Class),
        (hostile(), Reader::Landowner),
    ] {
        let page = told(&input, reader, page_of);
        let sheets =
            letters(&poppler("pdftotext", &["-raw"], &printed(&input, reader, Setting::default()).bytes));
        let tree = tree(&page);
        let mut said = 0;
        for name in ["h1", "h2", "h3", "h4", "dd"] {
            for node in all(&tree, name) {
                let wanted = letters(&words(node));
                assert!(sheets.contains(&wanted), "{name}: “{}” stands on no sheet:\n{sheets}", words(node));
                said += 1;
            }
        }
        for verdict in all(&tree, "p").filter(|p| p.attribute("class").is_some_and(|c| c.contains("verdict")))
        {
            assert!(sheets.contains(&letters(&words(verdict))), "{}", words(verdict));
            said += 1;
        }
        assert!(said > 5, "only {said}");
        // a link on paper says its page
        let reads_readings = matches!(reader, Reader::Specialist | Reader::Class);
        assert_eq!(sheets.contains("astypedpage"), reads_readings, "{reader:?}");
    }
}

/// ISO 32000-1, 14.8 (tagged PDF) and ISO 19005-2: poppler's pdfinfo reads both from the file.
#[test]
fn it_is_tagged_and_an_archival_one_says_so() {
    let plain = printed(&four_lines("One"), Reader::Specialist, Setting::default()).bytes;
    assert!(
        poppler("pdfinfo", &[], &plain)
            .lines()
            .any(|line| line.starts_with("Tagged:") && line.ends_with("yes"))
    );
    let day = Date::new(2026, 6, 3);
    let kept = Setting { archival: true, paper: Paper::Letter, day };
    let kept = printed(&four_lines("One"), Reader::Specialist, kept).bytes;
    let xmp = poppler("pdfinfo", &["-meta"], &kept);
    assert!(xmp.contains("<pdfaid:part>2</pdfaid:part>"), "{xmp}");
    assert!(xmp.contains("<pdfaid:conformance>A</pdfaid:conformance>"), "{xmp}");
    let info = poppler("pdfinfo", &["-isodates"], &kept);
    assert!(info.contains("2026-06-03T00:00:00Z"), "{info}");
    // 8.5 by 11 inches are 612 by 792 points (ANSI/ASME Y14.1)
    assert!(info.contains("612 x 792"), "{info}");
}

#[test]
fn the_readings_can_be_known_again_from_the_file() {
    let input = four_lines("One");
    let year = input.visits[0].date.map(Date::year);
    let bytes = printed(&input, Reader::Landowner, Setting::default()).bytes;
    assert_eq!(found_in(&bytes), [of_readings(&input, "One", year)]);
}

/// The report with one file of a template replaced.
fn with(name: &str, text: &str) -> Result<Printed, TemplateError> {
    static CALLS: AtomicUsize = AtomicUsize::new(0);
    let folder = folder(&format!("template-{}", CALLS.fetch_add(1, Ordering::Relaxed)));
    std::fs::write(folder.join(name), text).unwrap();
    let template = Template::in_folder(&folder).unwrap();
    told(&four_lines("One"), Reader::Landowner, |telling| {
        Press::new(template).print(telling, &Setting::default())
    })
}

fn value<'a>(error: &'a TemplateError, name: &str) -> &'a str {
    match error.message.values.iter().find(|(own, _)| *own == name) {
        Some((_, Value::Text(text))) => text,
        other => panic!("{name} is {other:?}"),
    }
}

#[test]
fn an_office_puts_its_own_letterhead_above() {
    let printed =
        with("letterhead.typ", "#let letterhead(report) = [Rim Draw Grazing Association (invented)]")
            .unwrap();
    assert!(poppler("pdftotext", &[], &printed.bytes).starts_with("Rim Draw Grazing Association (invented)"));
}

#[test]
fn a_template_that_fails_says_where() {
    let wrong = with("letterhead.typ", "// ours\n#let letterhead(report) = [\n  #report.no-such-field\n]")
        .unwrap_err();
    assert_eq!(wrong.message.code, "template-wrong");
    assert!(value(&wrong, "file").ends_with("/letterhead.typ"), "{wrong:?}");
    assert_eq!((value(&wrong, "row"), value(&wrong, "column")), ("3", "11"));
    let said = Words::english().say(&wrong.message);
    assert!(
        said.contains("letterhead.typ fails in row 3, column 11") && said.contains("no-such-field"),
        "{said}"
    );
    assert_eq!(with("report.typ", "#let x = ").unwrap_err().message.code, "template-wrong");
}

#[test]
fn a_template_sees_its_folder_and_nothing_else() {
    for peeping in [
        "#let letterhead(report) = read(\"/etc/hostname\")",
        "#let letterhead(report) = read(\"../../../../etc/hostname\")",
        "#import \"@preview/example:0.1.0\": add\n#let letterhead(report) = none",
        "#let letterhead(report) = image(\"https://example.org/mark.png\")",
    ] {
        assert!(with("letterhead.typ", peeping).is_err(), "{peeping}");
    }
}

#[cfg(unix)]
#[test]
fn a_link_leads_out_of_no_template() {
    let folder = folder("link");
    std::os::unix::fs::symlink(Path::new("/etc/hostname"), folder.join("name.txt")).unwrap();
    std::fs::write(folder.join("letterhead.typ"), "#let letterhead(report) = read(\"name.txt\")").unwrap();
    let template = Template::in_folder(&folder).unwrap();
    let printed = told(&four_lines("One"), Reader::Landowner, |telling| {
        Press::new(template).print(telling, &Setting::default())
    });
    assert!(printed.is_err());
}

/// These readings have no day, so that the file has none either.
#[test]
fn no_clock_is_asked() {
    let undated = printed(&four_lines("One"), Reader::Landowner, Setting::default()).bytes;
    let info = poppler("pdfinfo", &[], &undated);
    assert!(info.contains("Creator") && !info.contains("CreationDate"), "{info}");
}

/// The placed site with three photos of one view: two that are pictures, and one that only begins like one.
fn with_photos(places: Option<Openness>, reader: Reader) -> Printed {
    let damaged = Bytes::Here(PNG[..40].into());
    let shot = |day, bytes| photo("Invented wash", "1", Shows::Start, day, bytes);
    let here = || Bytes::Here(PNG.into());
    let photos = [shot((2022, 6, 9), here()), shot((2024, 6, 9), damaged), shot((2026, 6, 9), here())];
    told(&placed(places), reader, |telling| {
        Press::new(Template::shipped()).print(&Telling { photos: &photos, ..*telling }, &Setting::default())
    })
    .unwrap()
}

#[test]
fn photos_stand_on_the_sheets_and_a_damaged_one_is_said() {
    let [one, other] = [(); 2].map(|()| with_photos(None, Reader::Specialist));
    assert!(one == other, "two runs differ");
    // the same picture twice is one object, shown in two places
    let pictures = poppler("pdfimages", &["-list"], &one.bytes);
    assert_eq!(pictures.lines().filter(|line| line.contains(" image ")).count(), 2, "{pictures}");
    let text = poppler("pdftotext", &["-raw"], &one.bytes);
    for said in ["2022-06-09", "the picture is damaged", UTM] {
        assert!(letters(&text).contains(&letters(said)), "{said}: {text}");
    }
}

#[test]
fn what_is_kept_back_stands_on_no_sheet() {
    for places in [Some(Openness::Withheld), Some(Openness::Blurred(5))] {
        for (name, reader) in Reader::ALL {
            let text = poppler("pdftotext", &["-raw"], &with_photos(places, reader).bytes);
            for digits in ["12345678", "8765432", "512346", "301234", "4265432"] {
                assert!(!text.contains(digits), "{digits} stands in the {name}'s");
            }
            assert!(text.contains("2026-06-09"));
        }
    }
}
