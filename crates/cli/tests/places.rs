//! A site whose places are left out and one whose places are blurred, through everything that the command hands out: where their
//! lines lie stands in none of it. The same search finds it in full copies, so that not finding it means something.
//!
//! Sites, people, places and readings are invented.

#![expect(clippy::unwrap_used, reason = "a test that can't call the command has failed")]

mod call;

use base64::Engine as _;
use call::tautline;
use std::fmt::Write as _;
use std::fs;
use std::io::{Cursor, Read as _};
use std::path::{Path, PathBuf};

/// Where three lines of each site begin, in billionths of a degree north and west. An open site tells its own.
const OPEN: [[u64; 2]; 3] =
    [[38_512_345_678, 113_204_561_234], [38_513_456_789, 113_205_672_345], [38_514_567_891, 113_206_783_456]];
const LEFT_OUT: [[u64; 2]; 3] =
    [[38_621_234_567, 113_312_345_671], [38_622_345_678, 113_313_456_782], [38_623_456_789, 113_314_567_893]];
const BLURRED: [[u64; 2]; 3] =
    [[38_731_234_561, 113_412_345_672], [38_732_345_672, 113_413_456_783], [38_733_456_783, 113_414_567_894]];
/// Eastings and northings of the first line of the site that is left out and of the one that is blurred, as the tables hold them.
const UTM: [&str; 4] = ["298657", "4277215", "290279", "4289645"];

fn decimal(billionths: u64) -> String {
    format!("{}.{:09}", billionths / 1_000_000_000, billionths % 1_000_000_000)
}

/// Every way in which these degrees could be written down: decimals cut short or rounded, minutes, minutes and seconds, whole
/// billionths, doubles of either order.
fn betrayals(place: u64) -> Vec<Vec<u8>> {
    let degrees = place / 1_000_000_000;
    let (whole, rounded) = (decimal(place), |places: u32| {
        let unit = 10_u64.pow(9 - places);
        let shown = decimal((place + unit / 2) / unit * unit);
        shown[..shown.len() - (9 - places as usize)].to_owned()
    });
    let minutes = place % 1_000_000_000 * 60;
    let (minute, rest) = (minutes / 1_000_000_000, minutes % 1_000_000_000);
    let second = rest * 60 / 1_000_000_000;
    let mut texts = vec![whole[..whole.len() - 5].to_owned(), rounded(4), rounded(5), place.to_string()];
    texts.extend(texts.clone().iter().map(|text| text.replace('.', ",")));
    texts.push(format!("{degrees}° {minute:02}.{:02}", rest / 10_000_000));
    texts.push(format!("{degrees}°{minute:02}.{:02}", rest / 10_000_000));
    for (one, two) in [("′", ""), ("'", ""), ("′", " "), ("'", " "), (" ", "")] {
        texts.push(format!("{degrees}° {minute:02}{one}{two}{second:02}"));
        texts.push(format!("{degrees}°{minute:02}{one}{two}{second:02}"));
    }
    let mut found: Vec<Vec<u8>> = texts.into_iter().map(String::into_bytes).collect();
    let double: f64 = decimal(place).parse().unwrap();
    for double in [double, -double] {
        found.extend([double.to_le_bytes().to_vec(), double.to_be_bytes().to_vec()]);
    }
    // as the camera wrote it: so many ten-millionths of a degree
    found.push(u32::try_from(place / 1000).map_or_else(|_| Vec::new(), |part| part.to_be_bytes().to_vec()));
    found.retain(|bytes| !bytes.is_empty());
    found
}

/// Each byte as one character, since text is searched fast.
fn letters(bytes: &[u8]) -> String {
    bytes.iter().copied().map(char::from).collect()
}

fn holds(all: &str, part: &[u8]) -> bool {
    all.contains(&letters(part))
}

/// What of these places stands in some bytes.
fn told(all: &str, places: &[[u64; 2]]) -> Vec<String> {
    let degrees = places.iter().flatten().flat_map(|&place| betrayals(place));
    let found = degrees.filter(|part| holds(all, part));
    found.map(|part| String::from_utf8_lossy(&part).into_owned()).collect()
}

/// Bytes with all that is packed in them: the parts of a zip, and pictures within a page.
fn unpacked(bytes: &[u8]) -> Vec<u8> {
    let mut all = bytes.to_vec();
    if bytes.starts_with(b"PK") {
        let mut packed = zip::ZipArchive::new(Cursor::new(bytes)).unwrap();
        for at in 0..packed.len() {
            packed.by_index(at).unwrap().read_to_end(&mut all).unwrap();
        }
    }
    let text = String::from_utf8_lossy(bytes);
    for part in text.split(";base64,").skip(1) {
        let coded: String =
            part.chars().take_while(|&c| c.is_ascii_alphanumeric() || "+/=".contains(c)).collect();
        all.extend(base64::engine::general_purpose::STANDARD.decode(coded).unwrap());
    }
    all
}

/// Every file below a folder.
fn files(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() { found.extend(files(&path)) } else { found.push(path) }
    }
    found
}

/// What a call printed; findings that are worth a look end well or with status 1.
fn called(arguments: &[&str]) -> Vec<u8> {
    let output = tautline(arguments, "");
    let both = [output.stdout, output.stderr].concat();
    let text = String::from_utf8_lossy(&both);
    assert!(matches!(output.status.code(), Some(0 | 1)), "{arguments:?}: {text}");
    text.replace('\u{a0}', " ").into_bytes()
}

/// The invented office: a folder with its tables, and a notebook with the same and a photo of each site.
struct Office {
    folder: tempfile::TempDir,
}

impl Office {
    fn new() -> Self {
        let office = Self { folder: tempfile::tempdir().unwrap() };
        let mut lines =
            "site,line,line length,start latitude,start longitude,start UTM,permission from\n".to_owned();
        let mut readings = "site,line,date,reader,recorder,protocol,species,start (cm),stop (cm),note,\
            zero stake,legal description,wind\n"
            .to_owned();
        let sites = [
            ("Hollow Flat", OPEN, ""),
            ("Rim Draw", LEFT_OUT, "298657 4277215"),
            ("Salt Bench", BLURRED, "290279 4289645"),
        ];
        for (site, places, utm) in sites {
            for (line, [north, west]) in (1..).zip(places) {
                let (north, west) = (decimal(north), decimal(west));
                writeln!(lines, "{site},{line},30 m,{north},-{west},12 S {utm},owner at {north}").unwrap();
                for year in [2024, 2026] {
                    writeln!(
                        readings,
                        "{site},{line},{year}-06-0{line},Reader A,Recorder B,canopy-2in,ATCA,{},{},gate at {north} -{west},\
                         \"{north}, -{west} ± 5 m\",12 S {utm},calm",
                        100 + 10 * line,
                        300 + 30 * line
                    )
                    .unwrap();
                }
            }
        }
        fs::write(office.at("lines.csv"), lines).unwrap();
        fs::write(office.at("readings.csv"), readings).unwrap();
        let sites = "site,ownership,nest,places\nHollow Flat,state,no,\nRim Draw,private,no,withheld\n\
            Salt Bench,state,yes,blurred 5 km\n";
        fs::write(office.at("sites.csv"), sites).unwrap();
        let goals = "site,goal,confidence,source\nHollow Flat,at least 5 %,90 %,invented\n\
            Rim Draw,at least 5 %,90 %,invented\nSalt Bench,at least 5 %,90 %,invented\n";
        fs::write(office.at("goals.csv"), goals).unwrap();
        let plants = "code,scientific name,form\nATCA,Atriplex canescens,shrub\n";
        fs::write(office.at("plants.csv"), plants).unwrap();
        let book = office.at("n.tautline");
        let files = TABLES.map(|name| office.at(name));
        let files: Vec<&str> = files.iter().map(String::as_str).collect();
        called(&[&["import", "--notebook", &book], &files[..]].concat());
        for (site, [north, west]) in
            [("Hollow Flat", OPEN[0]), ("Rim Draw", LEFT_OUT[0]), ("Salt Bench", BLURRED[0])]
        {
            let photo = office.at(&format!("{}.jpg", site.replace(' ', "-")));
            fs::write(&photo, photographed(north, west)).unwrap();
            let caption = format!("at {} -{}", decimal(north), decimal(west));
            called(&[
                "photo",
                "add",
                &photo,
                "--notebook",
                &book,
                "--site",
                site,
                "--line",
                "1",
                "--at",
                "start",
                "--date",
                "2026-06-01",
                "--caption",
                &caption,
                "--full-size",
            ]);
        }
        // a place put right once more, so that a history holds two
        let moved = "site,line,line length,start latitude,start longitude\n\
            Rim Draw,1,30 m,38.621234999,-113.312345999\n";
        fs::write(office.at("moved.csv"), moved).unwrap();
        called(&["import", &office.at("moved.csv"), "--notebook", &book]);
        office
    }

    fn at(&self, name: &str) -> String {
        self.folder.path().join(name).to_str().unwrap().to_owned()
    }

    /// What a call printed and what it wrote into a folder of its own, by the names of the files.
    fn made(&self, name: &str, arguments: &[&str]) -> Vec<(String, String)> {
        let folder = self.at(name);
        fs::create_dir_all(&folder).unwrap();
        let into = |part: &&str| part.replace("INTO", &folder);
        let arguments: Vec<String> = arguments.iter().map(into).collect();
        let arguments: Vec<&str> = arguments.iter().map(String::as_str).collect();
        let mut all = vec![(arguments.join(" "), letters(&called(&arguments)))];
        for file in files(Path::new(&folder)) {
            let shown = file.strip_prefix(self.folder.path()).unwrap().display().to_string();
            all.push((shown, letters(&read(&file))));
        }
        all
    }
}

/// A file as bytes to be searched; of a PDF what a reader sees.
fn read(file: &Path) -> Vec<u8> {
    let bytes = fs::read(file).unwrap();
    if !bytes.starts_with(b"%PDF") {
        return unpacked(&bytes);
    }
    let seen = std::process::Command::new("pdftotext").arg("-raw").arg(file).arg("-").output().unwrap();
    [bytes, seen.stdout].concat()
}

/// A JPEG of 4 by 3 pixels without any (ISO/IEC 10918-1, annex B), taken at this place: as fractions (Exif 2.32, 4.6.6), and as words
/// of a comment.
fn photographed(north: u64, west: u64) -> Vec<u8> {
    let entry = |tag: u16, kind: u16, count: u32, value: [u8; 4]| {
        [&tag.to_be_bytes()[..], &kind.to_be_bytes(), &count.to_be_bytes(), &value].concat()
    };
    let degrees = |billionths: u64| -> Vec<u8> {
        let part = u32::try_from(billionths / 1000).unwrap();
        [part, 1_000_000, 0, 1, 0, 1].into_iter().flat_map(u32::to_be_bytes).collect()
    };
    // the first directory at 8 points to the one of places at 26, and that to its fractions at 80 and 104
    let tiff = [
        b"MM\0*\0\0\0\x08\0\x01".to_vec(),
        entry(0x8825, 4, 1, 26_u32.to_be_bytes()),
        b"\0\0\0\0\0\x04".to_vec(),
        entry(1, 2, 2, *b"N\0\0\0"),
        entry(2, 5, 3, 80_u32.to_be_bytes()),
        entry(3, 2, 2, *b"W\0\0\0"),
        entry(4, 5, 3, 104_u32.to_be_bytes()),
        vec![0; 4],
        degrees(north),
        degrees(west),
    ]
    .concat();
    let segment = |marker: u8, body: &[u8]| {
        let length = u16::try_from(body.len() + 2).unwrap().to_be_bytes();
        [&[0xFF, marker][..], &length, body].concat()
    };
    let words = format!("{} -{}", decimal(north), decimal(west));
    [
        b"\xFF\xD8".to_vec(),
        segment(0xE1, &[b"Exif\0\0".to_vec(), tiff].concat()),
        segment(0xFE, words.as_bytes()),
        b"\xFF\xC0\x00\x0B\x08\x00\x03\x00\x04\x01\x01\x11\x00\xFF\xDA\x00\x08\x01\x01\x00\x00\x3F\x00\x37\xFF\xD9".to_vec(),
    ]
    .concat()
}

/// The office's tables.
const TABLES: [&str; 5] = ["lines.csv", "readings.csv", "sites.csv", "goals.csv", "plants.csv"];

const FORMS: [&str; 9] =
    ["package", "workbook", "geojson", "gpx", "geopackage", "parquet", "darwin-core", "plants", "protocols"];

/// Every call that hands something out, from files and from the notebook, each with what it made.
fn everything(office: &Office, full: bool) -> Vec<(String, String)> {
    let full: &[&str] = if full { &["--full"] } else { &[] };
    let (book, files) = (office.at("n.tautline"), TABLES.map(|name| office.at(name)));
    let from_book = ["--notebook", book.as_str()];
    let from_files = files.each_ref().map(String::as_str);
    let name = if full.is_empty() { "told" } else { "full" };
    let mut all = Vec::new();
    for (source, from) in [("book", &from_book[..]), ("files", &from_files)] {
        for form in FORMS {
            let call = [&["export", "--as", form, "--to", "INTO"], full, from].concat();
            all.extend(office.made(&format!("{name}-{source}-{form}"), &call));
        }
        for reader in ["specialist", "landowner", "board", "class"] {
            for (language, shape) in [("en", "html"), ("es", "html"), ("en", "text")] {
                let call =
                    ["report", "--into", "INTO", "--as", shape, "--for", reader, "--language", language];
                let place = format!("{name}-{source}-{reader}-{language}-{shape}");
                all.extend(office.made(&place, &[&call[..], full, from].concat()));
            }
            if cfg!(feature = "pdf") {
                let call = ["report", "--into", "INTO", "--as", "pdf", "--for", reader];
                all.extend(
                    office.made(&format!("{name}-{source}-{reader}-pdf"), &[&call[..], full, from].concat()),
                );
            }
        }
        let one = ["report", "--into", "INTO/all.html"];
        all.extend(office.made(&format!("{name}-{source}-all"), &[&one[..], full, from].concat()));
    }
    for (at, call) in [
        &["history", "--site", "Rim Draw"][..],
        &["history", "--site", "Salt Bench"],
        &["photo", "list"],
        &["photo", "out", "INTO"],
    ]
    .into_iter()
    .enumerate()
    {
        all.extend(office.made(&format!("{name}-notebook-{at}"), &[call, full, &from_book].concat()));
    }
    all
}

/// Calls that know no full copy, since they hand out figures.
fn figures(office: &Office) -> Vec<(String, String)> {
    let book = office.at("n.tautline");
    let calls: [&[&str]; 14] = [
        &["assess", "--json"],
        &["assess", "--csv"],
        &["assess", "--explain", "--report", "INTO/assess.html"],
        &["cover", "--json"],
        &["cover", "--csv", "--explain"],
        &["cover", "--work"],
        &["sites", "--json"],
        &["sites", "--csv"],
        &["check", "--json"],
        &["check", "--csv"],
        &["change", "--from", "2024", "--to", "2026", "--json"],
        &["change", "--from", "2024", "--to", "2026", "--report", "INTO/change.html"],
        &["trend", "--report", "INTO/trend.html"],
        &["history"],
    ];
    let made = calls.into_iter().enumerate();
    made.flat_map(|(at, call)| {
        office.made(&format!("figures-{at}"), &[call, &["--notebook", &book]].concat())
    })
    .collect()
}

#[test]
fn where_a_site_lies_that_is_kept_back_is_handed_out_by_a_full_copy_alone() {
    let office = Office::new();
    let told_of = everything(&office, false);
    let mut open = 0;
    for (name, bytes) in told_of.iter().chain(&figures(&office)) {
        for (site, places) in [("Rim Draw", LEFT_OUT), ("Salt Bench", BLURRED)] {
            assert_eq!(told(bytes, &places), Vec::<String>::new(), "{name} tells where {site} lies");
        }
        for digits in UTM {
            assert!(!holds(bytes, digits.as_bytes()), "{name} tells {digits}");
        }
        open += usize::from(!told(bytes, &OPEN).is_empty());
    }
    // the open site's places stand in what draws or lists them: six forms and a report or more, from files and from the notebook
    assert!(open >= 2 * 7, "{open}");
    let full = everything(&office, true);
    let tells = |name: &str, places: &[[u64; 2]]| {
        full.iter().any(|(own, bytes)| own.starts_with(name) && !told(bytes, places).is_empty())
    };
    for source in ["book", "files"] {
        for what in [
            "package",
            "workbook",
            "geojson",
            "gpx",
            "geopackage",
            "parquet",
            "darwin-core",
            "all",
            "specialist-en-html",
            "specialist-es-html",
            "specialist-en-text",
        ] {
            for places in [LEFT_OUT, BLURRED] {
                assert!(tells(&format!("full-{source}-{what}"), &places), "{source}, {what}");
            }
        }
    }
    for (what, places) in [
        ("history --site Rim", LEFT_OUT),
        ("photo list", LEFT_OUT),
        ("photo list", BLURRED),
        ("full-notebook-3", LEFT_OUT),
        ("full-notebook-3", BLURRED),
    ] {
        assert!(tells(what, &places), "{what}");
    }
    // copies of a notebook hold everything, and say so
    let copy = office.made("copy", &["backup", "INTO/copy.tautline", "--notebook", &office.at("n.tautline")]);
    let lines = letters(&called(&["export", "--full", "--notebook", &office.at("n.tautline")]));
    for bytes in [&copy[0].1, &lines] {
        assert!(holds(bytes, b"This is a full copy"));
    }
    assert!(!told(&lines, &LEFT_OUT).is_empty() && !told(&copy[1].1, &BLURRED).is_empty());
}

/// A packet leads a crew there and says that it isn't for handing on; the cards by which lines are found again lie about for years.
#[test]
fn cards_keep_back_what_the_packet_needs() {
    let office = Office::new();
    let boundary = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../testdata/invented/boundary.geojson");
    for (setting, is_told) in [("withheld", false), ("blurred 5 km", false), ("exact", true)] {
        let sites = office.at("setting.csv");
        fs::write(&sites, format!("site,places\nRim Draw,{setting}\n")).unwrap();
        let made = office.made(
            &format!("packet-{}", &setting[..5]),
            &[
                "plan",
                "packet",
                "--boundary",
                boundary.to_str().unwrap(),
                "--site",
                "Rim Draw",
                "--lines",
                "4",
                "--length",
                "50 m",
                "--date",
                "2026-06-01",
                "--sites",
                &sites,
                "--into",
                "INTO",
            ],
        );
        let file = |ending: &str| &made.iter().find(|(name, _)| name.ends_with(ending)).unwrap().1;
        let page = file("packet.html");
        let table = file("lines.csv");
        let (before, cards) = page.rsplit_once("class=\"cards\"").unwrap();
        let northing = |cell: &'_ str| Some(cell.split_once(" N ")?.1.rsplit_once(' ')?.1.to_owned());
        let north: Vec<String> = table.split(',').filter_map(northing).collect();
        assert_eq!(north.len(), 4, "{table}");
        for northing in north {
            assert!(before.contains(&northing), "{northing}");
            assert_eq!(cards.contains(&northing), is_told, "{setting}: {northing}");
        }
        assert_eq!(before.contains("for handing on"), !is_told);
    }
}
