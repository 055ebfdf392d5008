//! Folders as one file.

use crate::make::packed;
use crate::{INCH, found, intercepts, reads};

const TABLE: &str = "site,line,line length,species,start (in),stop (in)\nHollow Flat,1,65 ft,ATCA,12,40\n";

/// Every file within is read as if it lay beside the others; what is of another kind is named.
#[test]
fn a_packed_folder_is_a_folder() {
    let plants = "code,form\nATCA,shrub\n";
    let inner = packed(&[("more.csv", TABLE.as_bytes())]);
    let bytes = packed(&[
        ("season/readings.csv", TABLE.as_bytes()),
        ("season/again.csv", TABLE.as_bytes()),
        ("season/plants.csv", plants.as_bytes()),
        ("season/photo.jpg", b"\xff\xd8"),
        ("season/README.txt", b"invented"),
        ("__MACOSX/season/._readings.csv", b"\0"),
        ("more.xlsx", &inner),
    ]);
    let read = reads("season.zip", bytes);
    assert_eq!(found(&read), [("same-file-twice", 0, ""), ("packed-left-out", 0, "")]);
    assert_eq!(intercepts(&read), [("1", "ATCA", 12 * INCH, 40 * INCH)]);
    assert_eq!(read.input.visits[0].place.as_ref().unwrap().file, "season.zip/season/again.csv");
    assert_eq!(read.input.files.len(), 1);
    assert!(read.input.plants.find("ATCA").is_some());
}

#[test]
fn a_packed_folder_without_tables() {
    let read = reads("season.zip", packed(&[("photo.jpg", b"\xff\xd8")]));
    assert_eq!(found(&read), [("packed-without-tables", 0, ""), ("packed-left-out", 0, "")]);
}
