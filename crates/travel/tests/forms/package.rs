use super::{Made, text};
use serde_json::Value;
use tautline_exchange::{Options, Source};
use tautline_survey::assess::{Question, assess};
use tautline_travel::{Form, tables};
use tautline_words::Words;

#[test]
fn every_table_and_column_has_words_and_every_row_is_whole() {
    let (made, words) = (Made::new(), Words::english());
    for table in tables::all(&made.whole()) {
        assert!(words.has(&table.words()), "{}", table.words());
        for column in &table.columns {
            assert!(words.has(&column.words()), "{}", column.words());
        }
        assert!(table.rows.iter().all(|row| row.len() == table.columns.len()), "{}", table.name);
        assert!(!table.rows.is_empty(), "{}", table.name);
    }
    for form in Form::ALL.iter().copied() {
        assert!(words.has(form.lacks()), "{}", form.lacks());
    }
}

/// Line 1 by hand: saltbush 1.00 to 1.80 m and winterfat 1.60 to 2.12 m are 1.12 m together, shadscale adds 0.03 m;
/// 1.15 of 30 m. Line 2: a gap of 3 cm under a gap rule of two inches is canopy, so 1.20 m; the grass doesn't count.
#[test]
fn the_tables_say_what_a_person_works_out_by_hand() {
    let files = Made::new().files(Form::Package);
    let cover = text(&files, "line_cover.csv");
    let row = |line: &str| {
        let start = format!(",Hollow Flat,{line},2026,");
        cover
            .lines()
            .find(|row| row.contains(&start))
            .unwrap()
            .split(',')
            .map(str::to_owned)
            .collect::<Vec<_>>()
    };
    let at = |name: &str| cover.lines().next().unwrap().split(',').position(|head| head == name).unwrap();
    assert_eq!(row("1")[at("canopy_m")], "1.15");
    let cover: f64 = row("1")[at("canopy_cover")].parse().unwrap();
    assert!((cover - 1.15 / 30.0).abs() < 1e-15, "{cover}");
    assert_eq!(row("1")[at("dead_m")], "1.12");
    assert_eq!(row("2")[at("canopy_m")], "1.2");
    assert_eq!(row("5")[at("canopy_m")], "0");
    assert!(text(&files, "intercepts.csv").contains(",'=1+1\n"), "a cell that a spreadsheet would run");
}

/// What a place was kept back for is kept back with it.
#[test]
fn whose_land_it_is_and_what_nests_there_is_told_of_open_sites_alone() {
    let sites = text(&Made::new().files(Form::Package), "sites.csv");
    let rows = ["Hollow Flat,state,false,exact", "Rim Draw,,,withheld", "Salt Bench,,,blurred 5 km"];
    for row in rows {
        assert!(sites.lines().any(|line| line == row), "{sites}");
    }
}

#[test]
fn the_description_names_types_units_rules_and_keys() {
    let files = Made::new().files(Form::Package);
    let package: Value = serde_json::from_str(&text(&files, "datapackage.json")).unwrap();
    let resource = |name: &str| {
        let all = package["resources"].as_array().unwrap();
        all.iter().find(|one| one["name"] == name).unwrap().clone()
    };
    let intercepts = resource("intercepts");
    let field = |name: &str| {
        let fields = intercepts["schema"]["fields"].as_array().unwrap();
        fields.iter().find(|one| one["name"] == name).unwrap().clone()
    };
    assert_eq!(field("length_m")["type"], "number");
    assert_eq!(field("length_m")["unit"], "m");
    assert_eq!(field("length_m")["constraints"]["minimum"], 0);
    assert_eq!(field("state")["constraints"]["enum"], serde_json::json!(["live", "dead"]));
    assert_eq!(intercepts["schema"]["foreignKeys"][0]["reference"]["resource"], "visits");
    for one in package["resources"].as_array().unwrap() {
        text(&files, one["path"].as_str().unwrap());
    }
}

/// Creator, contact and publisher stand where a dataset of Ecological Metadata Language 2.2.0 has them (eml-dataset.xsd: creator,
/// abstract, rights, coverage, contact, publisher, methods); Data Package 1 names contributors with a role.
#[test]
fn who_gives_the_data_out_is_named_where_somebody_says_so() {
    let made = Made::new();
    let name = "Rim Draw <Grazing> & Sons (invented)";
    let whole = tautline_travel::Whole { publisher: Some(name), ..made.whole() };
    let of = |form| tautline_travel::write(form, &whole, &Words::english()).unwrap();
    let package: Value = serde_json::from_str(&text(&of(Form::Package), "datapackage.json")).unwrap();
    assert_eq!(package["contributors"], serde_json::json!([{ "title": name, "role": "publisher" }]));
    let eml = |files: &[tautline_travel::File]| {
        let archive = files.iter().find(|file| file.bytes.starts_with(b"PK")).unwrap();
        let mut packed = zip::ZipArchive::new(std::io::Cursor::new(archive.bytes.clone())).unwrap();
        let mut text = String::new();
        std::io::Read::read_to_string(&mut packed.by_name("eml.xml").unwrap(), &mut text).unwrap();
        text
    };
    let named = eml(&of(Form::DarwinCore));
    let escaped = "<organizationName>Rim Draw &lt;Grazing&gt; &amp; Sons (invented)</organizationName>";
    assert_eq!(named.matches(escaped).count(), 3, "{named}");
    let at = |element: &str| named.find(element).unwrap_or_else(|| panic!("no {element}"));
    let order = ["<creator>", "<abstract>", "<intellectualRights>", "<contact>", "<publisher>", "<methods>"];
    assert!(order.windows(2).all(|pair| at(pair[0]) < at(pair[1])), "{named}");
    assert!(!eml(&made.files(Form::DarwinCore)).contains("<publisher>"));
}

/// The gaps of 4 and 9 cm by hand (`docs/reading-rules.md`): 94 cm as written, 107 cm where all gaps up to 15 cm close.
#[test]
fn a_gap_rule_that_nobody_knows_has_two_ends() {
    let files = [
        ("old.toml", "name = \"old sheets (invented)\"\n[gap]\nlimit = \"unknown up to 15 cm\"\n"),
        (
            "old.csv",
            "site,line,line length,date,species,start (cm),stop (cm)\n\
             Hollow Flat,1,10 m,1986-06-09,ATCA,100,124\nHollow Flat,1,10 m,1986-06-09,ATCA,128,151\n\
             Hollow Flat,1,10 m,1986-06-09,ATCA,160,185\nHollow Flat,1,10 m,1986-06-09,ATCA,230,252\n",
        ),
    ];
    let source = |(name, text): (&str, &str)| Source { name: name.into(), bytes: text.as_bytes().to_vec() };
    let read = tautline_exchange::read(&files.map(source), &Options::default());
    let assessments = assess(&read.input, &Question::default());
    let files = Made { read, assessments }.files(Form::Package);
    let of = |table: &str, column: &str| {
        let table = text(&files, table);
        // no cell before these columns holds a comma
        let mut rows = table.lines().map(|row| row.split(',').collect::<Vec<_>>());
        let at = rows.next().unwrap().iter().position(|head| *head == column).unwrap();
        rows.next().unwrap()[at].to_owned()
    };
    assert_eq!(["gap_limit_m", "gap_limit_high_m"].map(|column| of("line_cover.csv", column)), ["0", "0.15"]);
    assert_eq!(["canopy_m", "canopy_high_m"].map(|column| of("line_cover.csv", column)), ["0.94", "1.07"]);
    assert_eq!(["gap_limit_m", "gap_limit_high_m"].map(|column| of("protocols.csv", column)), ["0", "0.15"]);
}
