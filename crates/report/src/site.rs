//! One site in one year: what was asked and the verdict first, then what they rest on.

use crate::document::{Answer, Block, Section, Site, Term, paragraph, quiet, terms};
use crate::page::Page;
use crate::pictures::{cover, curve, gaps, lines};
use crate::{checks, map, meaning, methods, onward, photos, shown, tables, verdict, work, years};
use tautline_survey::assess::{Assessment, By, Figure, Judgement, Kind, Promised, kinds};
use tautline_survey::explain::{figure_words, goal_words, protocol_words};
use tautline_survey::goal::Subject;
use tautline_survey::message::{Message, Value};

/// More rows than this would pass a sheet; the table has them all.
const MOST_IN_A_PICTURE: usize = 12;

/// The caption, the heading of the figure, and what is said where there is none.
const HEIGHTS: [&str; 3] = ["report-heights-table", "report-column-height", "report-heights-none"];
const DENSITIES: [&str; 3] = ["report-density-table", "report-column-density", "report-density-none"];

/// The whole site; `years` are all years of it, where there are several.
pub(crate) fn told(id: &str, assessment: &Assessment, years: &[(String, &Assessment)], page: &Page) -> Site {
    let title = shown::title(assessment, page);
    let label = Message::new("report-parts-of").with("site", title.as_str());
    let found = checks::of(assessment, page);
    let there = !assessment.lines.is_empty();
    let parts = if there { parts(id, assessment, years, page) } else { without_lines(assessment, page) };
    Site {
        id: id.to_owned(),
        title,
        basis: basis(assessment, page),
        facts: facts(assessment, page),
        answers: if there { answers(id, assessment, page) } else { Vec::new() },
        changed: onward::changed(assessment, page).filter(|_| there),
        next: onward::next(assessment, page),
        meanings: there.then(|| meaning::jump(page)),
        beside: found.beside_the_figure(&format!("{id}-checks"), page).filter(|_| there),
        parts,
        parts_label: page.say(&label),
    }
}

/// A site of which no line could be worked out: that, and what was found.
fn without_lines(assessment: &Assessment, page: &Page) -> Vec<Section> {
    let mut blocks = vec![paragraph(page.word("report-no-lines"))];
    blocks.extend(checks::of(assessment, page).in_full(4, page));
    vec![Section { key: "checks", heading: page.word("report-findings"), blocks }]
}

/// What stands under the verdict, in the order a reader asks for it.
fn parts(
    id: &str,
    assessment: &Assessment,
    all_years: &[(String, &Assessment)],
    page: &Page,
) -> Vec<Section> {
    let species = kinds(page.input, page.question, assessment, By::Species);
    let forms = kinds(page.input, page.question, assessment, By::Form);
    let groups = kinds(page.input, page.question, assessment, By::Group);
    let both = || species.iter().chain(&forms);
    let heights: Vec<&Figure> = both().filter_map(|kind| kind.height.as_ref()).collect();
    let densities: Vec<&Figure> = both().filter_map(|kind| kind.density.as_ref()).collect();
    let figures = tables::figures(assessment, page).into_iter().chain(worth(assessment, page)).collect();
    let drawn = lines::draw(&format!("{id}-line"), assessment, page).into_iter().map(Block::Picture);
    let lines = tables::lines(assessment, page).into_iter().chain(drawn).collect();
    let methods = methods::paragraphs(assessment, page).into_iter().map(paragraph).collect();
    let years = if all_years.len() > 1 { years::section(all_years, page) } else { Vec::new() };
    // what is of all years stands with the newest
    let newest = !all_years.is_empty();
    let map = if newest { map::section(id, assessment, page) } else { Vec::new() };
    let all: [(&'static str, &str, Vec<Block>); 13] = [
        ("figures", "report-figures", figures),
        ("lines", "report-lines", lines),
        ("species", "report-species", species_and_forms(id, assessment, [&species, &forms, &groups], page)),
        ("curve", "report-curve", curve::section(&format!("{id}-rule"), assessment, page)),
        ("gaps", "report-gaps", gaps_between(id, assessment, page)),
        ("heights", "report-heights", measured(HEIGHTS, &heights, page)),
        ("density", "report-density", measured(DENSITIES, &densities, page)),
        ("years", "report-years", years),
        ("photos", "report-photos", photos::section(assessment, newest, page)),
        ("map", "report-map", map),
        ("checks", "report-findings", checks::of(assessment, page).in_full(4, page)),
        ("work", "report-work", work::section(assessment, page)),
        ("methods", "report-methods", methods),
    ];
    all.into_iter()
        .filter(|(key, _, blocks)| page.reader.reads(key) && !blocks.is_empty())
        .map(|(key, heading, blocks)| Section { key, heading: page.word(heading), blocks })
        .collect()
}

/// The first and the last day of reading; nothing where no line has a date.
fn days(assessment: &Assessment, page: &Page) -> String {
    let days = || assessment.lines.iter().filter_map(|line| line.date);
    match (days().min(), days().max()) {
        (Some(first), Some(last)) if first != last => {
            shown::between(first.to_string(), last.to_string(), page)
        }
        (Some(day), _) => day.to_string(),
        _ => String::new(),
    }
}

/// How many lines the figures stand on, and when they were read.
fn basis(assessment: &Assessment, page: &Page) -> String {
    let lines = Message::new("report-basis-lines").with("lines", assessment.lines.len());
    let said = [page.say(&lines), days(assessment, page)];
    said.into_iter().filter(|one| !one.is_empty()).collect::<Vec<_>>().join(", ")
}

/// When and by whom it was read, under which rules, and what was noted.
fn facts(assessment: &Assessment, page: &Page) -> Vec<Term> {
    let lines = &assessment.lines;
    let visits = || lines.iter().map(|line| &page.input.visits[line.visit]);
    let day = days(assessment, page);
    let planned = page.input.plan.iter().filter(|line| {
        line.site == assessment.site && (assessment.plot.is_none() || line.plot == assessment.plot)
    });
    let count =
        Message::new("report-fact-lines-said").with("used", lines.len()).with("planned", planned.count());
    let noted = visits().flat_map(|visit| page.noted(visit));
    let mut headings: Vec<&String> = Vec::new();
    for (heading, _) in noted.clone() {
        if !headings.contains(&heading) {
            headings.push(heading);
        }
    }
    let conditions: Vec<String> = headings
        .into_iter()
        .map(|heading| {
            let own = noted.clone().filter(|(of, _)| of == heading).map(|(_, said)| said.clone());
            format!("{heading}: {}", shown::once_each(own))
        })
        .collect();
    let mut prints: Vec<&str> = lines.iter().map(|line| line.protocol.as_str()).collect();
    prints.sort_unstable();
    prints.dedup();
    let rules: Vec<String> =
        prints.iter().map(|print| page.say(&protocol_words(page.input, print))).collect();
    terms([
        (page.word("report-fact-read"), day),
        (page.word("report-fact-lines"), page.say(&count)),
        (page.word("report-fact-readers"), shown::once_each(visits().map(|visit| visit.reader.clone()))),
        (page.word("report-fact-recorders"), shown::once_each(visits().map(|visit| visit.recorder.clone()))),
        (page.word("report-rules"), rules.join(" ")),
        (page.word("report-fact-noted"), conditions.join("; ")),
    ])
}

/// The answer to each goal, or the figure alone where nobody set one.
fn answers(id: &str, assessment: &Assessment, page: &Page) -> Vec<Answer> {
    let each = assessment.judgements.iter().enumerate();
    let mut answers: Vec<Answer> =
        each.map(|(at, one)| judged(&format!("{id}-goal-{}", at + 1), assessment, one, page)).collect();
    if answers.is_empty() {
        answers.push(without_a_goal(assessment, page));
    }
    answers.extend(assessment.promises.iter().map(|one| promised(one, page)));
    answers
}

/// What was promised at which number, and whether it is reached.
fn promised(one: &Promised, page: &Page) -> Answer {
    let asked = Message::new("report-promised").with("name", one.trigger.name.as_str());
    Answer {
        asked: Some(page.say(&asked)),
        note: Some(one.agreed().map_or_else(|| page.word("trigger-not-agreed"), |agreed| page.say(&agreed))),
        verdict: None,
        sentence: Some(page.say(&one.message())),
        picture: None,
        plainly: Vec::new(),
        specialist: None,
    }
}

/// One goal: what was asked, the verdict for anybody, the picture, what decided, and the same for a specialist.
fn judged(id: &str, assessment: &Assessment, judgement: &Judgement, page: &Page) -> Answer {
    let goal = Message::new("report-goal")
        .with("what", figure_words(&judgement.goal.subject, judgement.attribute))
        .with("goal", goal_words(&judgement.goal.wanted));
    let source = judgement.goal.source.as_str();
    let note = || page.say(&Message::new("report-goal-source").with("source", source));
    Answer {
        asked: Some(page.say(&goal)),
        note: (!source.is_empty()).then(note),
        verdict: Some(judgement.verdict.code()),
        sentence: Some(verdict::sentence(judgement, page)),
        picture: cover::against_goal(id, assessment, judgement, page),
        plainly: verdict::plainly(assessment, judgement, page),
        specialist: verdict::for_a_specialist(assessment, judgement, page)
            .filter(|_| page.reader.reads_statistics()),
    }
}

/// The canopy cover and how sure it is, where nobody set a goal.
fn without_a_goal(assessment: &Assessment, page: &Page) -> Answer {
    let figure = assessment.figure(&Subject::Canopy);
    let sure = |figure: &Figure| match figure.interval {
        Ok(interval) => Message::new("report-lies-between")
            .with("low", Value::Share(interval.low, 1))
            .with("high", Value::Share(interval.high, 1))
            .with("confidence", shown::confidence(assessment)),
        Err(reason) => Message::new("verdict-no-bound").with("reason", Value::Word(reason.code())),
    };
    Answer {
        asked: None,
        note: Some(page.word("report-no-goal")),
        verdict: None,
        sentence: figure.map(|figure| page.say(&verdict::comes_to(figure, page))),
        picture: None,
        plainly: figure.iter().map(|figure| page.say(&sure(figure))).collect(),
        specialist: None,
    }
}

fn species_and_forms(
    id: &str,
    assessment: &Assessment,
    [species, forms, groups]: [&Vec<Kind>; 3],
    page: &Page,
) -> Vec<Block> {
    if species.is_empty() {
        return Vec::new();
    }
    let whole = assessment.figures.iter().filter(|figure| {
        figure.is_cover() && matches!(figure.subject, Subject::Canopy | Subject::Sum | Subject::Dead)
    });
    let counted = species.iter().filter(|kind| kind.counted).map(|kind| &kind.cover);
    let shown: Vec<&Figure> = whole.chain(counted).take(MOST_IN_A_PICTURE).collect();
    let picture = cover::of_figures(&format!("{id}-figures"), assessment, &shown, page);
    let mut blocks = vec![Block::Picture(picture)];
    blocks.extend(tables::kinds("report-species-table", species, page));
    blocks.extend(tables::kinds("report-forms-table", forms, page));
    blocks.extend(tables::kinds("report-groups-table", groups, page));
    blocks.push(quiet(page.word("report-composition-about")));
    blocks.extend(tables::species_by_line(assessment, species, page));
    blocks
}

fn gaps_between(id: &str, assessment: &Assessment, page: &Page) -> Vec<Block> {
    let Some((table, shares)) = tables::gaps(assessment, page) else {
        return vec![paragraph(page.word("report-gaps-none"))];
    };
    let level = assessment.lines.iter().any(|line| line.slope_cosine.is_some());
    let about = page.each(&["report-gaps-about", if level { "gaps-level" } else { "gaps-along" }]);
    let picture = gaps::draw(&format!("{id}-classes"), &shares, page);
    [paragraph(about.join(" ")), Block::Picture(picture)].into_iter().chain(table).collect()
}

/// What lines bunched in plots are worth as lines laid apart.
fn worth(assessment: &Assessment, page: &Page) -> Vec<Block> {
    let canopy = assessment.figure(&Subject::Canopy).into_iter();
    let parts = canopy.flat_map(|figure| &figure.parts);
    let worth = parts.filter_map(|part| part.effective.as_ref().map(|worth| (&part.estimate, worth)));
    worth
        .map(|(estimate, worth)| {
            let message = Message::new("worth-effective")
                .with("lines", estimate.lines)
                .with("plots", estimate.units)
                .with("effective", Value::Number(worth.effective, 1));
            paragraph(page.say(&message))
        })
        .collect()
}

/// The heights or plants per area of species and growth forms.
fn measured([caption, column, none]: [&'static str; 3], figures: &[&Figure], page: &Page) -> Vec<Block> {
    vec![tables::measured(caption, column, figures, page).unwrap_or_else(|| paragraph(page.word(none)))]
}
