//! `tautline trend` as a person uses it, against figures that others worked out.

#![expect(clippy::unwrap_used, reason = "a test that can't call the command has failed")]

mod call;

use call::tautline;
use std::fmt::Write;
use std::process::Output;

fn text(output: &Output) -> String {
    let plain = String::from_utf8(output.stdout.clone()).unwrap().replace('\u{a0}', " ");
    plain.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The invented lines of `testdata/reference/lines.txt` as lines of 100 m with one patch each.
fn sheet(name: &str) -> String {
    let table = include_str!("../../../testdata/reference/lines.txt");
    let row = table.lines().find_map(|row| row.strip_prefix(&format!("{name} | "))).unwrap();
    let cells: Vec<&str> = row.split(' ').collect();
    let rows = cells.chunks(4).map(|cell| {
        let [site, line, year, cover] = cell else { panic!("four cells") };
        format!("Invented {site},{line},100 m,{year}-06-01,reader A,SHRB,0,{cover}\n")
    });
    "site,line,line length,date,reader,species,start (m),stop (m)\n".to_owned() + &rows.collect::<String>()
}

const TREND: [&str; 4] = ["trend", "-", "--count", "SHRB"];

/// lme4 and pbkrtest, `testdata/reference/mixed.txt`, "whole level slope year": slope 0.2742, SE 0.3647 with 7.09 df.
#[test]
fn the_model_of_lines_and_years_is_lme4s() {
    let printed = text(&tautline(&TREND, &sheet("whole")));
    assert!(printed.contains("6 visits show no trend of canopy cover."), "{printed}");
    assert!(printed.contains("(SE 0.36, 7.1 df, p = "), "{printed}");
    assert!(printed.contains("canopy cover lines and years 0.27"), "{printed}");
}

/// "holes level slope year": slope 0.6693, SE 0.4157 with 8.02 df; a goal is named, and without a shown trend nothing is foreseen.
#[test]
fn a_goal_without_a_trend_is_not_foreseen() {
    let asked = [&TREND[..], &["--goal", "at least 30 %"]].concat();
    let printed = text(&tautline(&asked, &sheet("holes")));
    assert!(printed.contains("0.67 points a year"), "{printed}");
    assert!(printed.contains("SE 0.42, 8.0 df"), "{printed}");
    assert!(printed.contains("the readings don't say when canopy cover would cross 30.0 %"), "{printed}");
}

/// Four sites with the same dry years; each is drawn towards the others, and the region has four degrees of freedom from six years.
#[test]
fn sites_are_rolled_up_and_drawn_together() {
    let output = tautline(&[&TREND[..], &["--json"]].concat(), &sheet("region"));
    let found: serde_json::Value = serde_json::from_slice(&output.stdout).unwrap();
    let region = &found["region"];
    assert_eq!(region["sites"].as_array().unwrap().len(), 4);
    assert_eq!(region["df"], 4.0);
    // sites count alike, so the region's slope is the mean of theirs
    let of = |site: &serde_json::Value, name: &str| site[name].as_f64().unwrap();
    let sites = region["sites"].as_array().unwrap();
    let mean = sites.iter().map(|site| of(site, "slope")).sum::<f64>() / 4.0;
    assert!((of(region, "slope") - mean).abs() < 1e-12);
    // lme4, "region level year site_year": the swing that all sites share has a variance of 0.5183 square points
    assert!((of(region, "year_variance") - 0.518_26e-4).abs() < 1e-8, "{region}");
    for site in sites {
        assert!((0.0..=1.0).contains(&of(site, "own")));
    }
}

/// One patch on each of three lines that all grow alike by one point a year, years and lines swinging by hand-made amounts: the
/// line's level is 14 % in the middle year 2021, so 20 % would be reached six years later.
#[test]
fn a_sure_trend_says_when_and_how_sure() {
    let swing = [0.1, -0.1, 0.0, -0.1, 0.1];
    let left =
        [[0.05, 0.0, -0.05, 0.02, -0.02], [-0.05, 0.03, 0.02, 0.0, 0.0], [0.0, -0.03, 0.03, -0.02, 0.02]];
    let mut sheet = "site,line,line length,date,reader,species,start (m),stop (m)\n".to_owned();
    for (line, left) in left.iter().enumerate() {
        for (step, (swing, left)) in swing.iter().zip(left).enumerate() {
            let cover =
                [10.0, 14.0, 18.0][line] + f64::from(u8::try_from(step).unwrap()) - 2.0 + swing + left;
            let year = 2019 + step;
            writeln!(sheet, "Invented,{line},100 m,{year}-06-01,reader A,SHRB,0,{cover:.2}").unwrap();
        }
    }
    let asked = [&TREND[..], &["--goal", "at least 16.5 %"]].concat();
    let printed = text(&tautline(&asked, &sheet));
    assert!(printed.contains("Canopy cover rises by about 1.00 points a year over 5 visits"), "{printed}");
    assert!(printed.contains("would reach 16.5 % (the goal: at least 16.5 %) about 2023"), "{printed}");
}
