//! The species, growth forms or groups of a site, each with its cover, its share of the whole and its height.

use super::{Assessment, By, Figure, Question, figure, subjects};
use crate::goal::Subject;
use crate::input::Input;
use crate::line::SpeciesResult;

/// One species, growth form or group of a site.
#[derive(Clone, Debug)]
pub struct Kind {
    /// Its live cover.
    pub cover: Figure,
    /// Share of the counted species' summed cover; `None` where it doesn't count or isn't known exactly.
    pub composition: Option<f64>,
    /// Mean height, where any was read.
    pub height: Option<Figure>,
    /// Plants per area, where the width of every live plant was read.
    pub density: Option<Figure>,
    /// Whether any of it counts under the protocol.
    pub counted: bool,
}

impl Kind {
    /// On how many lines it was met.
    pub fn lines(&self) -> usize {
        self.cover.values.iter().filter(|(_, line)| line.intercept > 0.0).count()
    }
}

/// Every species, growth form or group that was met on the lines of an assessment: those that count first, then by
/// cover, the most first.
///
/// Composition is cover over summed cover, both estimated in the same way, so that it adds up to 100 %.
///
/// # Source
/// composition: Coulloudon et al. 1999, Technical Reference 1734-4, V.E.9.b
pub fn kinds(input: &Input, question: &Question, assessment: &Assessment, by: By) -> Vec<Kind> {
    if assessment.lines.is_empty() {
        return Vec::new();
    }
    let asked = Question { by, ..question.clone() };
    let heights = figure::height_figures(&asked, &assessment.lines, &[]);
    let (densities, _) = figure::density_figures(input, &asked, &assessment.lines);
    let of_these = |subject: &Subject| !matches!(subject, Subject::Canopy | Subject::Sum | Subject::Dead);
    let covers: Vec<Figure> = subjects(&assessment.lines, by, &[])
        .into_iter()
        .filter(of_these)
        .map(|subject| match assessment.figure(&subject) {
            Some(figure) => figure.clone(),
            None => figure::cover_figure(input, &asked, &assessment.lines, subject),
        })
        .collect();
    let mut kinds: Vec<Kind> = covers
        .into_iter()
        .map(|cover| Kind {
            composition: composition(input, &asked, assessment, &cover),
            height: heights.iter().find(|height| height.subject == cover.subject).cloned(),
            density: densities.iter().find(|density| density.subject == cover.subject).cloned(),
            counted: any_counts(assessment, &cover.subject, input),
            cover,
        })
        .collect();
    kinds.sort_by(|a, b| {
        let cover = |kind: &Kind| kind.cover.estimate.value;
        b.counted.cmp(&a.counted).then_with(|| cover(b).total_cmp(&cover(a)))
    });
    kinds
}

/// The species of a line that belong to a subject.
fn members<'a>(subject: &'a Subject, input: &'a Input) -> impl Fn(&SpeciesResult) -> bool + use<'a> {
    move |species| match subject {
        Subject::Species(code) => species.code == *code,
        Subject::Form(form) => species.form == Some(*form),
        Subject::Group(name) => input
            .plants
            .find(&species.code)
            .is_some_and(|plant| plant.groups.iter().any(|group| group.eq_ignore_ascii_case(name))),
        Subject::Canopy | Subject::Sum | Subject::Dead => false,
    }
}

fn any_counts(assessment: &Assessment, subject: &Subject, input: &Input) -> bool {
    let belongs = members(subject, input);
    assessment.lines.iter().flat_map(|line| &line.species).any(|species| species.counted && belongs(species))
}

/// Of a species its own composition, of a growth form or group that of its counted species together.
fn composition(input: &Input, question: &Question, assessment: &Assessment, cover: &Figure) -> Option<f64> {
    if let Subject::Species(_) = cover.subject {
        return assessment.composition(cover);
    }
    let sum =
        assessment.figure(&Subject::Sum).filter(|sum| sum.high.is_none() && sum.estimate.value > 0.0)?;
    let belongs = members(&cover.subject, input);
    let counted = |species: &SpeciesResult| species.counted && belongs(species);
    let own = || assessment.lines.iter().flat_map(|line| &line.species).filter(|species| counted(species));
    let known = own().next().is_some() && own().all(|species| species.live.is_known());
    known.then(|| figure::summed(input, question.claim, &assessment.lines, counted) / sum.estimate.value)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::assess;
    use crate::assess::tests::site;
    use crate::plants::{GrowthForm, Plant};

    /// By hand, lines of 10 m: AAAA on 100 and 200 cm, BBBB on 300 and 0 cm, CCCC (a grass) on 0 and 400 cm. Covers
    /// 15 %, 15 % and 20 %; the grass doesn't count, so each shrub is half of the summed cover (composition by
    /// Coulloudon et al. 1999, V.E.9.b).
    #[test]
    fn composition_is_of_what_counts_and_adds_up() {
        let mut input = site(&[("10", "", 100), ("10", "", 200)]);
        let plant = |code: &str, form| Plant::new(code, form);
        input.plants.plants = vec![
            plant("AAAA", GrowthForm::Shrub),
            plant("BBBB", GrowthForm::Subshrub),
            plant("CCCC", GrowthForm::Grass),
        ];
        for (visit, code, stop) in [(0, "BBBB", 300), (1, "CCCC", 400)] {
            let mut more = site(&[("10", "", stop)]).visits[0].intercepts[0].clone();
            more.species = code.into();
            input.visits[visit].intercepts.push(more);
        }
        let question = Question::default();
        let assessment = assess(&input, &question).remove(0);
        let by_species = kinds(&input, &question, &assessment, By::Species);
        let said: Vec<(&Subject, String, Option<String>, usize)> = by_species
            .iter()
            .map(|kind| {
                let composition = kind.composition.map(|share| format!("{share:.4}"));
                (&kind.cover.subject, format!("{:.4}", kind.cover.estimate.value), composition, kind.lines())
            })
            .collect();
        let species = |code: &str| Subject::Species(code.into());
        let half = Some("0.5000".to_owned());
        assert_eq!(
            said,
            [
                (&species("AAAA"), "0.1500".into(), half.clone(), 2),
                (&species("BBBB"), "0.1500".into(), half.clone(), 1),
                (&species("CCCC"), "0.2000".into(), None, 1),
            ]
        );
        let by_form = kinds(&input, &question, &assessment, By::Form);
        let forms: Vec<(&Subject, Option<String>)> = by_form
            .iter()
            .map(|kind| (&kind.cover.subject, kind.composition.map(|share| format!("{share:.4}"))))
            .collect();
        let form = Subject::Form;
        assert_eq!(
            forms,
            [
                (&form(GrowthForm::Shrub), half.clone()),
                (&form(GrowthForm::Subshrub), half),
                (&form(GrowthForm::Grass), None)
            ]
        );
    }
}
