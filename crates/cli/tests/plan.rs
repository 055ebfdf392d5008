//! `tautline plan` as a person uses it.

#![expect(clippy::unwrap_used, reason = "a test that can't call the command has failed")]

use std::process::{Command, Output};

fn tautline(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_tautline")).args(arguments).output().unwrap()
}

fn text(output: &Output) -> String {
    String::from_utf8(output.stdout.clone()).unwrap().replace('\u{a0}', " ")
}

fn folder(name: &str) -> std::path::PathBuf {
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).unwrap();
    folder
}

const BOUNDARY: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../../testdata/invented/boundary.geojson");

#[test]
fn lines_are_written_and_read_back_as_the_plan() {
    let folder = folder("plan-lines");
    let place = folder.to_str().unwrap();
    let call = [
        "plan",
        "lines",
        "--boundary",
        BOUNDARY,
        "--lines",
        "12",
        "--length",
        "50 m",
        "--date",
        "2026-06-01",
    ];
    let output = tautline(&[&call[..], &["--into", place]].concat());
    assert_eq!(output.status.code(), Some(0), "{}", String::from_utf8_lossy(&output.stderr));
    let printed = text(&output);
    assert!(printed.contains("10 of 10 placed") && printed.contains("east of true north"), "{printed}");
    assert!(printed.lines().all(|line| line.chars().count() <= 100), "{printed}");
    assert_eq!(printed, text(&tautline(&call)), "the same call draws the same lines");
    // one line of the plan is read; the other eleven are known to be missing
    let readings = folder.join("readings.csv");
    std::fs::write(&readings, "site,line,species,start (m),stop (m)\nInvented Flat,3,ATCA,10,20\n").unwrap();
    let cover = text(&tautline(&["cover", place, "--count", "ATCA"]));
    let row = cover.lines().find(|row| row.starts_with('3')).unwrap();
    assert!(row.contains("50 m") && row.contains("20.0 %"), "{cover}");
    let gpx = std::fs::read_to_string(folder.join("layout.gpx")).unwrap();
    assert_eq!(gpx.matches("<wpt ").count(), 2 * 18);
    assert!(gpx.contains("<name>R6 end</name>"), "the reserve is in it");
    let layout: serde_json::Value =
        serde_json::from_str(&std::fs::read_to_string(folder.join("layout.geojson")).unwrap()).unwrap();
    assert_eq!(layout["features"].as_array().unwrap().len(), 18);
}

/// What the packet's sheets carry is what the lines table says, and nothing of it is fetched from elsewhere.
#[test]
fn a_packet_for_a_crew() {
    let folder = folder("plan-packet");
    let place = folder.to_str().unwrap();
    let plants = folder.join("plants.csv");
    std::fs::write(
        &plants,
        "code,name,common name,growth form\nATCA,Atriplex canescens,fourwing saltbush,shrub\n",
    )
    .unwrap();
    let lines =
        ["--boundary", BOUNDARY, "--lines", "6", "--length", "50 m", "--batch", "3", "--date", "2026-06-01"];
    let packet =
        ["--plants", plants.to_str().unwrap(), "--protocol", "live-canopy-2.5in", "--tape-unit", "in"];
    let into = ["--into", place, "--paper", "letter"];
    let output = tautline(&[&["plan", "packet"], &lines[..], &packet[..], &into[..]].concat());
    assert_eq!(output.status.code(), Some(0), "{}", String::from_utf8_lossy(&output.stderr));
    let page = std::fs::read_to_string(folder.join("packet.html")).unwrap();
    assert_eq!(page.matches("<section class=\"sheet\">").count(), 7, "six lines and a spare");
    assert!(
        page.contains("Atriplex canescens") && page.contains("size:letter") && page.contains(">200 m</text>")
    );
    for row in std::fs::read_to_string(folder.join("lines.csv")).unwrap().lines().skip(1) {
        let utm = row.split(',').find(|cell| cell.contains(" N ")).unwrap();
        assert!(page.contains(utm), "{utm}");
    }
    assert!(!page.contains("src=") && !page.contains("href=\"http"));
    assert_eq!(tautline(&[&["plan", "packet"], &lines[..]].concat()).status.code(), Some(2), "where to?");
}

/// The same packet as PDF where it was built in; else the command says how to build it, and writes nothing.
#[test]
fn a_packet_is_a_page_or_a_pdf() {
    let folder = folder("plan-packet-pdf");
    let into = folder.to_str().expect("a path of plain letters");
    let lines = ["--lines", "4", "--length", "50 m", "--date", "2026-06-01", "--into", into, "--as", "pdf"];
    let output = tautline(&[&["plan", "packet", "--boundary", BOUNDARY], &lines[..]].concat());
    let packet = folder.join("packet.pdf");
    assert!(!folder.join("packet.html").exists());
    if cfg!(feature = "pdf") {
        assert_eq!(output.status.code(), Some(0), "{output:?}");
        assert!(std::fs::read(packet).is_ok_and(|bytes| bytes.starts_with(b"%PDF-")));
    } else {
        assert_eq!(output.status.code(), Some(2), "{output:?}");
        assert!(String::from_utf8_lossy(&output.stderr).contains("--features pdf"));
        assert!(!packet.exists());
    }
}

/// Lines that stay are read from a layout that was written: nothing new comes nearer than asked.
#[test]
fn a_written_layout_is_read_as_lines_that_stay() {
    let folder = folder("plan-kept");
    let first =
        ["plan", "lines", "--boundary", BOUNDARY, "--lines", "8", "--length", "50 m", "--reserve", "0"];
    assert_eq!(
        tautline(&[&first[..], &["--into", folder.to_str().unwrap()]].concat()).status.code(),
        Some(0)
    );
    let read = |path: &std::path::Path| -> serde_json::Value {
        serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
    };
    let mut boundary = read(std::path::Path::new(BOUNDARY));
    let kept = read(&folder.join("layout.geojson"))["features"].as_array().unwrap().clone();
    boundary["features"].as_array_mut().unwrap().extend(kept);
    let both = folder.join("both.geojson");
    std::fs::write(&both, boundary.to_string()).unwrap();
    let again = tautline(&[
        "plan",
        "lines",
        "--boundary",
        both.to_str().unwrap(),
        "--lines",
        "8",
        "--length",
        "50 m",
        "--json",
    ]);
    let again: serde_json::Value = serde_json::from_slice(&again.stdout).unwrap();
    // with the same seed the points are the same, so that every line of before is in the way
    assert!(again["given_up_too_near"].as_u64().unwrap() >= 8);
}

#[test]
fn effort_from_a_pilot_and_from_foreseen_figures() {
    let folder = folder("plan-effort");
    let pilot = folder.join("pilot");
    assert_eq!(tautline(&["demo", pilot.to_str().unwrap()]).status.code(), Some(0));
    let goal = ["--goal", "at least 10 %", "--walk", "12", "--lay", "8", "--read", "0.6"];
    let site = ["plan", "effort", pilot.to_str().unwrap(), "--site", "Hollow Flat (invented)"];
    let output = tautline(&[&site[..], &goal[..]].concat());
    assert_eq!(output.status.code(), Some(0), "{}", String::from_utf8_lossy(&output.stderr));
    let printed = text(&output);
    assert!(printed.contains("verdict on at least 10 %") && printed.contains("cheapest"), "{printed}");
    assert!(printed.lines().all(|line| line.chars().count() <= 100), "{printed}");
    // of one kind of plant, from the same lines: what is foreseen is what those lines say of it
    let one = ["plan", "effort", pilot.to_str().unwrap(), "--site", "Hollow Flat (invented)", "--json"];
    let value = |goal: &str| -> serde_json::Value {
        serde_json::from_slice(&tautline(&[&one[..], &["--goal", goal]].concat()).stdout).unwrap()
    };
    let (all, four) = (value("at least 10 %"), value("FOUR: at least 2 %"));
    assert_eq!(four["subject"]["species"], "FOUR");
    assert!(four["cover"].as_f64().unwrap() < all["cover"].as_f64().unwrap());
    assert!(four["answers"][0]["lines"].is_u64(), "{four}");
    let nowhere = tautline(&[&one[..], &["--goal", "NONE: at least 2 %"]].concat());
    assert_eq!(nowhere.status.code(), Some(2), "what nobody met doesn't vary");
    // Elzinga, Salzer and Willoughby 1998, appendix 7, from memory: 7.5 lines by the plain formula, 14 with assurance
    let foreseen = [
        "--cover",
        "25",
        "--spread",
        "7",
        "--half-width",
        "5",
        "--confidence",
        "95",
        "--power",
        "90",
        "--json",
    ];
    let output = tautline(&[&["plan", "effort"], &foreseen[..]].concat());
    let value: serde_json::Value = serde_json::from_slice(&output.stdout).unwrap();
    assert_eq!(value["format"], "tautline.plan-effort");
    assert_eq!(value["answers"][0]["lines"], 14);
}

/// Normal draws agree with the closed form within four Monte-Carlo errors; a budget buys what its minutes pay for.
#[test]
fn a_change_survey_by_survey_within_a_budget() {
    let call = ["plan", "effort", "--cover", "4", "--spread", "4", "--change", "1.5", "--simulate", "--json"];
    // 12 + 8 + 30 m at 0.5: 35 minutes a line, so 420 minutes pay for twelve
    let budget = ["--budget", "420", "--walk", "12", "--lay", "8", "--read", "0.5", "--line-length", "30 m"];
    let output = tautline(&[&call[..], &budget[..]].concat());
    let value: serde_json::Value = serde_json::from_slice(&output.stdout).unwrap();
    let simulated = value["simulated"].as_array().unwrap();
    assert_eq!(simulated.len(), 2);
    let normal = &simulated[0];
    assert_eq!(normal["lines"], 12);
    let number = |name: &str| normal[name].as_f64().unwrap();
    assert!((number("chance") - number("closed_form")).abs() < 4.0 * number("error"), "{normal}");
    let printed = text(&tautline(&[&call[..call.len() - 1], &budget[..]].concat()));
    assert!(printed.contains("invented stand"), "{printed}");
}

/// 24 cities in two strata of 16 and 48, standard deviations √53 843 and √5 581, here in thousandths: 6 and 18 by size,
/// 12 and 12 by size and spread (Cochran 1977, §5.9, from memory).
#[test]
fn lines_of_each_stratum() {
    let call = ["plan", "effort", "--cover", "20", "--spread", "7", "--lines", "24", "--json"];
    let strata = ["--stratum", "large: 16, 23.204", "--stratum", "small: 48, 7.4706"];
    let output = tautline(&[&call[..], &strata[..]].concat());
    let value: serde_json::Value = serde_json::from_slice(&output.stdout).unwrap();
    assert_eq!(value["strata"]["shares"][0]["lines"], serde_json::json!([6, 18]));
    assert_eq!(value["strata"]["shares"][1]["lines"], serde_json::json!([12, 12]));
}

#[test]
fn a_plan_that_may_stop_and_where_a_visit_stands_under_it() {
    let call = ["plan", "sequential", "--lines", "4 to 12", "--goal", "at least 15 %", "--spread", "5"];
    let printed = text(&tautline(&call));
    assert!(printed.contains("lines on average") && printed.contains("4 to 12"), "{printed}");
    assert!(printed.lines().all(|line| line.chars().count() <= 100), "{printed}");
    // Student's t at the printed level: times = t / √n
    let output = tautline(&[&call[..], &["--json"]].concat());
    let value: serde_json::Value = serde_json::from_slice(&output.stdout).unwrap();
    assert_eq!(value["looks"].as_array().unwrap().len(), 9);
    let level = value["level"].as_f64().unwrap();
    assert!(level < 0.1 / 2.0 && level > 0.1 / 9.0, "between one look's and Bonferroni's: {level}");
    let folder = folder("plan-sequential");
    let rows: String = [30, 32, 29, 31, 30, 1]
        .iter()
        .enumerate()
        .fold("site,line,species,start (m),stop (m),line length (m)\n".to_owned(), |rows, (at, stop)| {
            format!("{rows}Hollow Flat (invented),{},ATCA,0,{stop},100\n", at + 1)
        });
    let readings = folder.join("readings.csv");
    std::fs::write(&readings, rows).unwrap();
    let assess = |goal: &str| {
        let file = readings.to_str().unwrap();
        let call = ["assess", file, "--count", "ATCA", "--goal", goal, "--sequential", "4 to 12"];
        text(&tautline(&call))
    };
    assert!(assess("at least 15 %").contains("plan: met, after 4 lines"), "{}", assess("at least 15 %"));
    assert!(assess("at most 15 %").contains("not met, after 4 lines"));
    assert!(assess("at least 30 %").contains("after 6 lines neither"), "{}", assess("at least 30 %"));
}

#[test]
fn what_is_not_understood_is_said() {
    let status = |arguments: &[&str]| tautline(arguments).status.code();
    assert_eq!(status(&["plan", "effort"]), Some(2));
    assert_eq!(status(&["plan", "sequential", "--lines", "30 to 5"]), Some(2));
    let foreseen = ["plan", "effort", "--cover", "20", "--spread", "5"];
    let effort = |more: &[&str]| status(&[&foreseen[..], more].concat());
    assert_eq!(effort(&["--lines", "9", "--stratum", "flat"]), Some(2));
    assert_eq!(effort(&["--lines", "3", "--stratum", "flat: 3, 5", "--stratum", "draw: 1, 5"]), Some(2));
    assert_eq!(effort(&["--change", "3", "--budget", "60"]), Some(2), "what does a line cost?");
    assert_eq!(effort(&["--lines", "9", "--simulate"]), Some(2), "which change?");
    assert_eq!(status(&["plan", "effort", "--cover", "20", "--spread", "5"]), Some(2));
    let apart = ["--goal", "ATCA: at least 5 %", "--goal", "at least 15 %"];
    assert_eq!(effort(&apart), Some(2), "each takes lines of its own");
    assert_eq!(effort(&["--goal", "height: at least 40 cm"]), Some(2));
    let lines =
        |more: &[&str]| status(&[&["plan", "lines", "--boundary", BOUNDARY, "--lines", "6"], more].concat());
    assert_eq!(lines(&["--length", "50"]), Some(2), "of what?");
    assert_eq!(lines(&["--length", "50 m", "--bearing", "uphill"]), Some(2));
    assert_eq!(lines(&["--length", "50 m", "--date", "2041-01-01"]), Some(2));
    assert_eq!(lines(&["--length", "3000 m"]), Some(3), "no room at all");
    assert_eq!(
        status(&["plan", "lines", "--boundary", "none.geojson", "--lines", "6", "--length", "50 m"]),
        Some(4)
    );
}

/// A number under an unsaid rule is a range: 15 % could be 5.8 to 39 % (Wambolt et al. 2006: up to 2.6 times); a user's own under
/// the user's own protocol is a match.
#[test]
fn published_numbers_are_no_false_match() {
    let printed = text(&tautline(&["plan", "benchmarks", "sage-grouse-spring", "--protocol", "canopy-2in"]));
    assert!(printed.contains("No match") && printed.contains("5.8 % to 39.0 %"), "{printed}");
    assert!(printed.contains("15–25 % suitable") && printed.contains("caption of figure 6"), "{printed}");
    let folder = folder("plan-benchmarks");
    let own = folder.join("own.toml");
    let protocol = tautline_exchange::protocol::find("canopy-2in").unwrap();
    let text_of_own = format!(
        "[[benchmark]]\nkey = \"ours\"\nname = \"our pasture\"\ncover = \"at least 12 %\"\nplants = \"shrubs\"\n\
         scale = \"stand\"\nrule = \"{}\"\nsource = \"invented\"\n",
        protocol.fingerprint()
    );
    std::fs::write(&own, text_of_own).unwrap();
    let call = ["plan", "benchmarks", "ours", "--own", own.to_str().unwrap(), "--protocol", "canopy-2in"];
    assert!(text(&tautline(&call)).contains("Scale and rule are yours"));
    let nest = text(&tautline(&[&call[..], &["--scale", "nest"]].concat()));
    assert!(nest.contains("No match") && nest.contains("14.4 % to 52.8 %"), "{nest}");
    assert_eq!(tautline(&["plan", "benchmarks", "unicorn"]).status.code(), Some(3));
}

/// The same site from every kind of file holds the same ground; roads keep their distance, a datum that nobody states is asked for.
/// Area by PROJ's geodesics (pyproj 3.7.2, `Geod(ellps='WGS84').geometry_area_perimeter`): 169.44 and 45.79 ha.
#[test]
fn a_site_from_any_map_program() {
    let file = |name: &str| format!("{}/../../testdata/boundaries/{name}", env!("CARGO_MANIFEST_DIR"));
    let call = |more: &[&str]| {
        let all = ["plan", "lines", "--lines", "6", "--reserve", "0", "--length", "50 m", "--json"];
        let output = tautline(&[&all[..], more].concat());
        let said = String::from_utf8_lossy(&output.stderr).into_owned();
        (serde_json::from_slice::<serde_json::Value>(&output.stdout).unwrap_or_default(), said)
    };
    for name in ["site.gpkg", "site-utm.gpkg", "site.kml", "strata.shp", "strata.zip", "strata-utm83.shp"] {
        let (layout, said) = call(&["--boundary", &file(name)]);
        let areas: f64 =
            layout["strata"].as_array().unwrap().iter().map(|one| one["area_m2"].as_f64().unwrap()).sum();
        assert!((areas / (1_694_398.95 + 457_945.95) - 1.0).abs() < 1e-4, "{name}: {areas}");
        assert_eq!(said.contains("off by some 2 m"), name.contains("utm83"), "{name}: {said}");
        assert_eq!(layout["site"], "Hollow Flat (invented)");
    }
    let (_, walked) = call(&["--boundary", &file("walked.gpx")]);
    // the side that was left out runs 0.01 degree along the meridian, some 1111 m
    assert!(
        walked.contains("closed, over 1110.8 m") || walked.contains("closed, over 1,110.8 m"),
        "{walked}"
    );
    let folder = folder("plan-any");
    let bare = folder.join("bare.shp");
    std::fs::copy(file("strata.shp"), &bare).unwrap();
    let bare = bare.to_str().unwrap();
    let (_, refused) = call(&["--boundary", bare]);
    assert!(refused.contains("--datum") && refused.contains("100 m off"), "{refused}");
    // without its table it has no strata
    let (layout, said) = call(&["--boundary", bare, "--datum", "NAD27"]);
    assert!(layout["strata"].as_array().unwrap().len() == 1 && said.contains("off by some 10 m"), "{said}");
    let (_, refused) = call(&["--boundary", &file("site.kml"), "--datum", "NAD27"]);
    assert!(refused.contains("used for none"), "{refused}");
    // a road so wide that nothing is left
    let roads = format!("{}, 400 m", file("walked.gpx"));
    let (layout, _) = call(&["--boundary", &file("site.gpkg"), "--keep-out", &roads]);
    assert!(layout["given_up_kept_out"].as_u64().unwrap() > 0);
    let (with, _) = call(&[
        "--boundary",
        &file("strata.shp"),
        "--keep-out",
        &file("roads.shp"),
        "--from",
        "12 N 278494 4687150",
    ]);
    assert_eq!(with["lines"].as_array().unwrap().len(), 6);
}

/// A square of 0.01 degree typed by hand: 1110.8 m along the meridian and 824.6 m along the parallel by the usual series for a degree's length on
/// WGS 84 (from memory), 91.6 ha. What isn't a corner is named with its row, and a datum is asked for.
#[test]
fn corners_typed_into_a_file() {
    let folder = folder("plan-typed");
    let file = folder.join("corners.txt");
    let call = |text: &str, more: &[&str]| {
        std::fs::write(&file, text).unwrap();
        let all = [
            "plan",
            "lines",
            "--boundary",
            file.to_str().unwrap(),
            "--lines",
            "4",
            "--length",
            "50 m",
            "--json",
        ];
        let output = tautline(&[&all[..], more].concat());
        let said = String::from_utf8_lossy(&output.stderr).into_owned();
        (serde_json::from_slice::<serde_json::Value>(&output.stdout).unwrap_or_default(), said)
    };
    let square = "42.30, -113.70\n42.30, -113.69\n42.31, -113.69\n42.31, -113.70\n";
    let (layout, said) = call(square, &["--datum", "WGS84"]);
    let hectares = layout["strata"][0]["area_m2"].as_f64().unwrap() / 1e4;
    assert!((hectares - 91.6).abs() < 0.3 && !said.contains("closed"), "{hectares} {said}");
    let (old, said) = call(&format!("NAD27\n{square}"), &[]);
    assert!(old["position_error_m"] == 10 && said.contains("off by some 10 m"), "{said}");
    let (_, said) = call(square, &[]);
    assert!(said.contains("--datum"), "{said}");
    let (_, said) = call(&format!("{square}the gate\n"), &["--datum", "WGS84"]);
    assert!(said.contains("Row 5") && said.contains("the gate"), "{said}");
}

/// The bench falls to 40° and the swale to 130°: lines across the slope lie along 130° or 310° on the one, and along 40° or 220° on the other.
#[test]
fn each_stratum_has_a_bearing_of_its_own() {
    let site = concat!(env!("CARGO_MANIFEST_DIR"), "/../demo/src/boundary.geojson");
    let call = |bearing: &str| {
        let call = ["plan", "lines", "--boundary", site, "--lines", "8", "--length", "50 m", "--json"];
        tautline(&[&call[..], &["--bearing", bearing]].concat())
    };
    let layout: serde_json::Value =
        serde_json::from_slice(&call("across 40, swale: across 130").stdout).unwrap();
    let lines = layout["lines"].as_array().unwrap();
    assert!(
        lines.iter().any(|line| line["stratum"] == "swale")
            && lines.iter().any(|line| line["stratum"] == "bench")
    );
    for line in lines {
        let across = if line["stratum"] == "swale" { [40, 220] } else { [130, 310] };
        assert!(across.iter().any(|&degrees| line["true_bearing"] == degrees), "{line}");
    }
    for (wrong, said) in [("draw: 40", "bench, swale"), ("40, 50", "isn't a bearing")] {
        let output = call(wrong);
        let told = String::from_utf8_lossy(&output.stderr).replace(" and ", ", ");
        assert!(output.status.code() == Some(2) && told.contains(said), "{told}");
    }
}

/// A fence from beyond one edge of the site to beyond the other is crossed as a road is; where it isn't, the walk leaves the site to
/// get round it, and that is said.
#[test]
fn the_walk_goes_round_what_is_not_crossed() {
    let folder = folder("plan-fence");
    let fence = folder.join("fence.geojson");
    let way = r#"{"type":"Feature","properties":null,"geometry":{"type":"LineString","coordinates":[[-113.693,42.298],[-113.693,42.311]]}}"#;
    std::fs::write(&fence, way).unwrap();
    let call = |more: &str| {
        let fence = format!("{}{more}", fence.display());
        let call = ["plan", "lines", "--boundary", BOUNDARY, "--lines", "12", "--length", "50 m"];
        let call = [&call[..], &["--keep-out", &fence]].concat();
        let json: serde_json::Value =
            serde_json::from_slice(&tautline(&[&call[..], &["--json"]].concat()).stdout).unwrap();
        let legs = json["legs"].as_array().unwrap().clone();
        assert_eq!(legs.len(), 11);
        let beyond = legs.iter().filter(|leg| leg["over"] == "outside").count();
        (beyond, legs.iter().map(|leg| leg["metres"].as_f64().unwrap()).sum::<f64>(), text(&tautline(&call)))
    };
    let (beyond, metres, said) = call(", 5 m");
    assert_eq!(beyond, 0);
    assert!(
        said.contains(&format!("{metres:.0} m in all")) && !said.contains("Ask whose"),
        "{metres} {said}"
    );
    // all lines west of it, then all lines east of it: once across, and farther than straight
    let (beyond, round, said) = call(", 5 m, not crossed");
    assert_eq!(beyond, 1, "{said}");
    assert!(round > metres && said.contains("Ask whose ground lies between"), "{round} {metres}");
}

/// Staked lines come in with their names; an area chosen by judgement is said to be one in the layout and in every answer.
#[test]
fn old_lines_are_taken_in_and_judgement_is_said() {
    let file = |name: &str| format!("{}/../../testdata/boundaries/{name}", env!("CARGO_MANIFEST_DIR"));
    let folder = folder("plan-judged");
    let into = folder.join("packet");
    let (strata, roads) = (file("strata.shp"), file("roads.shp"));
    let call = [
        "plan",
        "lines",
        "--boundary",
        &strata,
        "--there",
        &roads,
        "--take-in",
        "--lines",
        "4",
        "--length",
        "50 m",
    ];
    let more = ["--judged", "the lower flat stands for its pasture", "--into", into.to_str().unwrap()];
    let printed = text(&tautline(&[&call[..], &more[..]].concat()));
    assert!(printed.contains("chosen by judgement") && printed.contains("K1"), "{printed}");
    let table = std::fs::read_to_string(into.join("lines.csv")).unwrap();
    // 42.302 and 42.30245 degrees north, as the file has them
    assert!(table.contains("K1,50 m,flat") && table.contains("42.302,-113.685,42.30245,-113.685"), "{table}");
    let readings = folder.join("r.csv");
    let rows =
        ["K1", "1", "2"].map(|line| format!("Hollow Flat (invented),{line},2026-06-01,50 m,ATCA,100,900\n"));
    let head = "site,line,date,line length,species,start (cm),stop (cm)\n";
    std::fs::write(&readings, head.to_owned() + &rows.concat()).unwrap();
    let lines = into.join("lines.csv");
    let said = text(&tautline(&["assess", lines.to_str().unwrap(), readings.to_str().unwrap()]));
    let said = said.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(said.contains("speak for that area alone") && said.contains("the lower flat stands"), "{said}");
}

/// Lines from a baseline that is handed in as UTM run at right angles to it; what isn't one is refused, and strata don't go with batches.
#[test]
fn a_baseline_by_command() {
    let site = ["plan", "lines", "--boundary", BOUNDARY, "--lines", "6", "--length", "50 m"];
    let baseline = "12 N 277600 4686900; 30; 250 m";
    let printed = tautline(&[&site[..], &["--baseline", baseline, "--sides", "right", "--json"]].concat());
    let layout: serde_json::Value = serde_json::from_slice(&printed.stdout).unwrap();
    assert_eq!(
        (layout["design"].as_str(), layout["lines"].as_array().map(Vec::len)),
        (Some("baseline"), Some(6))
    );
    assert!(layout["lines"].as_array().unwrap().iter().all(|line| line["true_bearing"] == 120), "{layout}");
    let said = text(&tautline(&[&site[..], &["--baseline", baseline]].concat()));
    let said = said.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(said.contains("stand for the ground within") && said.contains("Drawings given up"), "{said}");
    for wrong in ["42.3", "42.3,-113.7; 400; 300 m", "42.3,-113.7; 40; far"] {
        assert_eq!(tautline(&[&site[..], &["--baseline", wrong]].concat()).status.code(), Some(2), "{wrong}");
    }
    let short = tautline(&[&site[..], &["--baseline", "42.3010,-113.6950; 0; 5 m"]].concat());
    assert!(String::from_utf8_lossy(&short.stderr).contains("too short"));
    let batches = tautline(&[&site[..], &["--batch", "3"]].concat());
    assert!(String::from_utf8_lossy(&batches.stderr).contains("a sequential plan is for one"));
}

/// A layout kept in a notebook: a line that nobody may enter leaves the plan, the next of its stratum comes into it, the reason
/// is said with the figures, and a layout drawn anew takes no name of a line that was read.
#[test]
fn a_line_that_cannot_be_read_is_replaced() {
    let folder = folder("plan-replace");
    let notebook = folder.join("flat.tautline");
    let notebook = notebook.to_str().unwrap();
    let laid = |more: &[&str]| {
        let call = ["plan", "lines", "--boundary", BOUNDARY, "--lines", "6", "--length", "50 m"];
        tautline(&[&call[..], &["--notebook", notebook, "--author", "A. Reader"], more].concat())
    };
    let kept = laid(&["--reason", "half-width of 4 %"]);
    assert_eq!(kept.status.code(), Some(0), "{}", String::from_utf8_lossy(&kept.stderr));
    let replace = |line: &str, why: &str| {
        tautline(&[
            "plan",
            "replace",
            "--notebook",
            notebook,
            "--site",
            "Invented Flat",
            "--line",
            line,
            "--why",
            why,
        ])
    };
    let said = replace("2", "no-permission");
    assert_eq!(said.status.code(), Some(0), "{}", String::from_utf8_lossy(&said.stderr));
    assert!(text(&said).contains("R1 takes its place"), "{}", text(&said));
    assert_eq!(replace("2", "not-safe").status.code(), Some(2), "it isn't in the plan any more");
    let readings = folder.join("readings.csv");
    std::fs::write(
        &readings,
        "site,line,date,species,start (m),stop (m)\nInvented Flat,1,2026-06-01,ATCA,10,20\n\
         Invented Flat,3,2026-06-01,ATCA,10,15\nInvented Flat,R1,2026-06-01,ATCA,0,5\n",
    )
    .unwrap();
    let imported = tautline(&["import", readings.to_str().unwrap(), "--notebook", notebook]);
    assert_ne!(imported.status.code(), Some(2), "{}", String::from_utf8_lossy(&imported.stderr));
    let assessed = tautline(&["assess", "--notebook", notebook, "--json"]);
    let said = text(&assessed) + &String::from_utf8_lossy(&assessed.stderr);
    assert!(said.contains("replaced-not-entered"), "{said}");
    assert_eq!(replace("3", "shrubs").status.code(), Some(2), "a line that was read stays");
    let again = laid(&["--seed", "2"]);
    assert_eq!(again.status.code(), Some(1), "{}", String::from_utf8_lossy(&again.stderr));
    let named = laid(&["--seed", "2", "--names", "27-"]);
    assert_eq!(named.status.code(), Some(0), "{}", String::from_utf8_lossy(&named.stderr));
    assert!(text(&named).contains("27-1"));
}
