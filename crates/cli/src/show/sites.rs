//! Many sites: a table, or the same as data.

use super::table::Table;
use super::{between, findings, println, wrapped};
use tautline_engine::estimate::SamplingError;
use tautline_engine::length::Unit;
use tautline_engine::num::decimal::shortest;
use tautline_engine::verdict::Verdict;
use tautline_engine::work::exact_decimal;
use tautline_exchange::stream::Sites;
use tautline_exchange::table::row;
use tautline_survey::explain::goal_words;
use tautline_survey::message::{Message, Value};
use tautline_survey::output::{self, VERSION};
use tautline_survey::sites::{self, SiteRow, SitesOutput};
use tautline_words::Words;

/// One row a site, then how many met their goals, then what was found on reading.
pub(crate) fn sites(found: &Sites, words: &Words) {
    let confidence = Value::Share(found.question.confidence(), 0);
    let headings = [
        words.word("column-site"),
        words.word("column-year"),
        words.word("column-lines"),
        words.word("column-canopy"),
        words.word("column-se"),
        words.say(&Message::new("column-interval").with("confidence", confidence)),
        words.word("column-held"),
        words.word("column-verdict"),
        words.word("column-to-settle"),
        words.word("column-to-look-at"),
    ];
    let mut table = Table::new(&headings);
    for row in &found.rows {
        table.row(cells(row, words));
    }
    println!();
    table.print();
    let count =
        |wanted| found.rows.iter().flat_map(|row| &row.verdicts).filter(|one| one.1 == wanted).count();
    let [met, not_met, open] = [Verdict::Met, Verdict::NotMet, Verdict::NotYetShown].map(count);
    if met + not_met + open > 0 {
        let message = Message::new("verdicts-in-all").with("met", met).with("not-met", not_met);
        println!();
        wrapped(&words.say(&message.with("not-yet-shown", open)), 0);
    }
    if found.rows.iter().any(|row| row.cover.as_ref().is_some_and(|cover| cover.few.is_some())) {
        println!();
        wrapped(&words.word("held-in-trials"), 0);
    }
    if found.rows.iter().any(|row| row.must_settle + row.have_a_look > 0) {
        println!();
        wrapped(&words.word("assess-says-more"), 0);
    }
    findings(&found.findings, words);
    if found.rows.is_empty() {
        wrapped(&words.word("nothing-worked-out"), 0);
    }
}

fn cells(row: &SiteRow, words: &Words) -> Vec<String> {
    let show = |share: f64| words.percent(share, 1);
    let [mut canopy, mut se, mut interval, mut held] = [const { String::new() }; 4];
    if let Some(cover) = &row.cover {
        canopy = between(cover.low, cover.high, cover.low.to_bits() == cover.high.to_bits(), show, words);
        se = match cover.error {
            SamplingError::Known { se, .. } => show(se),
            SamplingError::Unknown(_) => "–".to_owned(),
        };
        interval = match cover.interval {
            Ok(ends) => between(ends.low, ends.high, false, show, words),
            Err(reason) => words.word(reason.code()),
        };
        held = cover.few.map_or_else(String::new, |few| {
            let [lowest, highest] =
                [few.measured.lowest, few.measured.highest].map(|share| words.number(100.0 * share, 0));
            format!("{lowest}–{highest}")
        });
    }
    let verdicts: Vec<String> = row.verdicts.iter().map(|(_, verdict)| words.word(verdict.code())).collect();
    let number = |count: usize| if count == 0 { String::new() } else { count.to_string() };
    vec![
        row.site.clone(),
        row.year.map_or(String::new(), |year| year.to_string()),
        row.lines.to_string(),
        canopy,
        se,
        interval,
        held,
        verdicts.join("; "),
        number(row.must_settle),
        number(row.have_a_look),
    ]
}

/// One row a site; tape in metres, shares, verdicts beside their goals.
pub(crate) fn csv_sites(found: &Sites, words: &Words) {
    let headings = [
        "site",
        "year",
        "lines",
        "tape read (m)",
        "cover low",
        "cover high",
        "SE",
        "df",
        "low",
        "high",
        "confidence",
        "estimator",
        "method",
        "no interval",
        "held lowest",
        "held highest",
        "goal",
        "verdict",
        "to settle",
        "to look at",
    ];
    let mut text = row(&headings);
    let confidence = shortest(found.question.confidence());
    let goals: Vec<String> =
        found.question.goals.iter().map(|goal| words.say(&goal_words(&goal.goal.wanted))).collect();
    let number = |value: Option<f64>| value.map_or(String::new(), shortest);
    for site in &found.rows {
        let data = sites::output(site, &found.question);
        let own = |of: &dyn Fn(&(usize, Verdict)) -> String| -> String {
            site.verdicts.iter().map(of).collect::<Vec<_>>().join("; ")
        };
        text += &row(&[
            data.site.as_str(),
            &data.year.map_or(String::new(), |year| year.to_string()),
            &data.lines.to_string(),
            &exact_decimal(site.length, Unit::Metre),
            &number(data.low),
            &number(data.high),
            &number(data.se),
            &number(data.df),
            &number(data.interval.map(|interval| interval.0)),
            &number(data.interval.map(|interval| interval.1)),
            &confidence,
            data.estimator.unwrap_or_default(),
            data.interval_method.unwrap_or_default(),
            data.no_interval.unwrap_or_default(),
            &number(data.measured_coverage.map(|measured| measured.0)),
            &number(data.measured_coverage.map(|measured| measured.1)),
            &own(&|(place, _)| goals[*place].clone()),
            &own(&|(_, verdict)| verdict.code().to_owned()),
            &data.must_settle.to_string(),
            &data.have_a_look.to_string(),
        ]);
    }
    super::print_all(&text);
}

pub(crate) fn json_sites(found: &Sites, files: &[String], words: &Words) {
    super::data::print(&SitesOutput {
        format: "tautline.sites",
        version: VERSION,
        files: files.to_vec(),
        confidence: found.question.confidence(),
        sites: found.rows.iter().map(|row| sites::output(row, &found.question)).collect(),
        findings: output::findings(&found.findings, &|message| words.say(message)),
    });
}
