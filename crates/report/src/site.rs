//! One site in one year: what was asked and the verdict first, then what they rest on.

use crate::markup::{around, escape, link, terms, text};
use crate::page::Page;
use crate::pictures::{cover, curve, gaps, lines};
use crate::{checks, methods, shown, tables, verdict, work, years};
use tautline_survey::assess::{Assessment, By, Figure, Judgement, Kind, kinds};
use tautline_survey::explain::{figure_words, goal_words, protocol_words};
use tautline_survey::goal::Subject;
use tautline_survey::message::{Message, Value};

/// More rows than this would pass a sheet; the table has them all.
const MOST_IN_A_PICTURE: usize = 12;

/// The caption, the heading of the figure, and what is said where there is none.
const HEIGHTS: [&str; 3] = ["report-heights-table", "report-column-height", "report-heights-none"];
const DENSITIES: [&str; 3] = ["report-density-table", "report-column-density", "report-density-none"];

/// A part of the section, with the heading that the list of parts leads to.
struct Part {
    key: &'static str,
    heading: &'static str,
    markup: String,
}

/// The whole section; `years` are all years of the site, where there are several.
pub(crate) fn section(
    id: &str,
    assessment: &Assessment,
    years: &[(String, &Assessment)],
    page: &Page,
) -> String {
    let title = shown::title(assessment, page);
    let mut inner = text(&format!("h2 id=\"{id}\""), &title) + &facts(assessment, page);
    if assessment.lines.is_empty() {
        inner += &text("p", &page.word("report-no-lines"));
        inner += &checks::of(assessment, page).in_full("h3", page);
        return around("section", &inner);
    }
    if assessment.judgements.is_empty() {
        inner += &without_a_goal(assessment, page);
    }
    for (at, judgement) in assessment.judgements.iter().enumerate() {
        inner += &judged(&format!("{id}-goal-{}", at + 1), assessment, judgement, page);
    }
    inner += &checks::of(assessment, page).beside_the_figure(&format!("{id}-checks"), page);
    let parts = parts(id, assessment, years, page);
    let links: String = parts
        .iter()
        .map(|part| around("li", &link(&format!("{id}-{}", part.key), &page.word(part.heading))))
        .collect();
    let label = Message::new("report-parts-of").with("site", title);
    let nav = format!("nav class=\"parts\" aria-label=\"{}\"", escape(&page.say(&label)));
    inner += &around(&nav, &around("ul", &links));
    for part in &parts {
        inner += &text(&format!("h3 id=\"{id}-{}\"", part.key), &page.word(part.heading));
        inner += &part.markup;
    }
    around("section", &inner)
}

/// What stands under the verdict, in the order a reader asks for it.
fn parts(id: &str, assessment: &Assessment, years: &[(String, &Assessment)], page: &Page) -> Vec<Part> {
    let species = kinds(page.input, page.question, assessment, By::Species);
    let forms = kinds(page.input, page.question, assessment, By::Form);
    let groups = kinds(page.input, page.question, assessment, By::Group);
    let both = || species.iter().chain(&forms);
    let heights: Vec<&Figure> = both().filter_map(|kind| kind.height.as_ref()).collect();
    let densities: Vec<&Figure> = both().filter_map(|kind| kind.density.as_ref()).collect();
    let part = |key, heading, markup: String| Part { key, heading, markup };
    let mut parts = vec![
        part("figures", "report-figures", tables::figures(assessment, page) + &worth(assessment, page)),
        part(
            "lines",
            "report-lines",
            tables::lines(assessment, page) + &lines::draw(&format!("{id}-line"), assessment, page),
        ),
        part(
            "species",
            "report-species",
            species_and_forms(id, assessment, [&species, &forms, &groups], page),
        ),
        part("curve", "report-curve", curve::section(&format!("{id}-rule"), assessment, page)),
        part("gaps", "report-gaps", gaps_between(id, assessment, page)),
        part("heights", "report-heights", measured(HEIGHTS, &heights, page)),
        part("density", "report-density", measured(DENSITIES, &densities, page)),
    ];
    if years.len() > 1 {
        parts.push(part("years", "report-years", years::section(years, page)));
    }
    parts.push(part("checks", "report-findings", checks::of(assessment, page).in_full("h4", page)));
    parts.push(part("work", "report-work", work::section(assessment, page)));
    let methods: String = methods::paragraphs(assessment, page).iter().map(|said| text("p", said)).collect();
    parts.push(part("methods", "report-methods", methods));
    parts.retain(|part| !part.markup.is_empty());
    parts
}

/// When and by whom it was read, under which rules, and what was noted.
fn facts(assessment: &Assessment, page: &Page) -> String {
    let lines = &assessment.lines;
    let visits = || lines.iter().map(|line| &page.input.visits[line.visit]);
    let days = || lines.iter().filter_map(|line| line.date);
    let day = match (days().min(), days().max()) {
        (Some(first), Some(last)) if first != last => {
            shown::between(first.to_string(), last.to_string(), page)
        }
        (Some(day), _) => day.to_string(),
        _ => String::new(),
    };
    let planned = page.input.plan.iter().filter(|line| {
        line.site == assessment.site && (assessment.plot.is_none() || line.plot == assessment.plot)
    });
    let count =
        Message::new("report-fact-lines-said").with("used", lines.len()).with("planned", planned.count());
    let noted = visits().flat_map(|visit| &visit.conditions);
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
    terms(&[
        (page.word("report-fact-read"), day),
        (page.word("report-fact-lines"), page.say(&count)),
        (page.word("report-fact-readers"), shown::once_each(visits().map(|visit| visit.reader.clone()))),
        (page.word("report-fact-recorders"), shown::once_each(visits().map(|visit| visit.recorder.clone()))),
        (page.word("report-rules"), rules.join(" ")),
        (page.word("report-fact-noted"), conditions.join("; ")),
    ])
}

/// One goal: what was asked, the verdict for anybody, the picture, what decided, and the same for a specialist.
fn judged(id: &str, assessment: &Assessment, judgement: &Judgement, page: &Page) -> String {
    let goal = Message::new("report-goal")
        .with("what", figure_words(&judgement.goal.subject, judgement.attribute))
        .with("goal", goal_words(&judgement.goal.wanted));
    let mut inner = text("h3", &page.say(&goal));
    if !judgement.goal.source.is_empty() {
        let source = Message::new("report-goal-source").with("source", judgement.goal.source.as_str());
        inner += &text("p class=\"quiet\"", &page.say(&source));
    }
    let class = format!("p class=\"verdict {}\"", judgement.verdict.code());
    inner += &text(&class, &verdict::sentence(judgement, page));
    inner += &cover::against_goal(id, assessment, judgement, page);
    for said in verdict::plainly(assessment, judgement, page) {
        inner += &text("p", &said);
    }
    if let Some(said) = verdict::for_a_specialist(assessment, judgement, page) {
        inner += &text("p class=\"specialist\"", &said);
    }
    inner
}

/// The canopy cover and how sure it is, where nobody set a goal.
fn without_a_goal(assessment: &Assessment, page: &Page) -> String {
    let mut inner = text("p", &page.word("report-no-goal"));
    let Some(figure) = assessment.figure(&Subject::Canopy) else { return inner };
    inner += &text("p class=\"verdict\"", &page.say(&verdict::comes_to(figure, page)));
    let sure = match figure.interval {
        Ok(interval) => Message::new("report-lies-between")
            .with("low", Value::Share(interval.low, 1))
            .with("high", Value::Share(interval.high, 1))
            .with("confidence", shown::confidence(assessment)),
        Err(reason) => Message::new("verdict-no-bound").with("reason", Value::Word(reason.code())),
    };
    inner + &text("p", &page.say(&sure))
}

fn species_and_forms(
    id: &str,
    assessment: &Assessment,
    [species, forms, groups]: [&Vec<Kind>; 3],
    page: &Page,
) -> String {
    if species.is_empty() {
        return String::new();
    }
    let whole = assessment.figures.iter().filter(|figure| {
        figure.is_cover() && matches!(figure.subject, Subject::Canopy | Subject::Sum | Subject::Dead)
    });
    let counted = species.iter().filter(|kind| kind.counted).map(|kind| &kind.cover);
    let drawn: Vec<&Figure> = whole.chain(counted).take(MOST_IN_A_PICTURE).collect();
    cover::of_figures(&format!("{id}-figures"), assessment, &drawn, page)
        + &tables::kinds("report-species-table", species, page)
        + &tables::kinds("report-forms-table", forms, page)
        + &tables::kinds("report-groups-table", groups, page)
        + &text("p class=\"quiet\"", &page.word("report-composition-about"))
        + &tables::species_by_line(assessment, species, page)
}

fn gaps_between(id: &str, assessment: &Assessment, page: &Page) -> String {
    let Some((table, shares)) = tables::gaps(assessment, page) else {
        return text("p", &page.word("report-gaps-none"));
    };
    let level = assessment.lines.iter().any(|line| line.slope_cosine.is_some());
    let about = page.each(&["report-gaps-about", if level { "gaps-level" } else { "gaps-along" }]);
    text("p", &about.join(" ")) + &gaps::draw(&format!("{id}-classes"), &shares, page) + &table
}

/// What lines bunched in plots are worth as lines laid apart.
fn worth(assessment: &Assessment, page: &Page) -> String {
    let canopy = assessment.figure(&Subject::Canopy).into_iter();
    let parts = canopy.flat_map(|figure| &figure.parts);
    let worth = parts.filter_map(|part| part.effective.as_ref().map(|worth| (&part.estimate, worth)));
    worth
        .map(|(estimate, worth)| {
            let message = Message::new("worth-effective")
                .with("lines", estimate.lines)
                .with("plots", estimate.units)
                .with("effective", Value::Number(worth.effective, 1));
            text("p", &page.say(&message))
        })
        .collect()
}

/// The heights or plants per area of species and growth forms.
fn measured([caption, column, none]: [&'static str; 3], figures: &[&Figure], page: &Page) -> String {
    let table = tables::measured(caption, column, figures, page);
    if table.is_empty() { text("p", &page.word(none)) } else { table }
}
