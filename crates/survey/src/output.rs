//! Results as plain data for `--json`: documented, versioned, additive within a version.

use crate::assess::{Assessment, Figure, Judgement, NoVerdict, PartKind, Promised, intercepts_met};
use crate::date::Date;
use crate::effort::sequential::{self, StandingOutput};
use crate::finding::{About, Finding, More, Place, Settled, Weight};
use crate::goal::{Goal, Subject};
use crate::input::{Input, SourceFile};
use crate::line::{Bounds, LineResult, Recording};
use crate::message::Message;
use crate::plants::GrowthForm;
use crate::promise::Trigger;
use serde::Serialize;
use tautline_engine::effort::MoreUnits;
use tautline_engine::estimate::{Estimate, Method, SamplingError};

/// The version of both formats below: 1, the first.
pub const VERSION: u32 = 1;

/// What `tautline cover --json` prints.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CoverOutput {
    /// `tautline.cover`
    pub format: &'static str,
    /// The version of the format.
    pub version: u32,
    /// The files that were read.
    pub files: Vec<SourceFile>,
    /// The protocols the lines were read under.
    pub protocols: Vec<ProtocolOutput>,
    /// The lines.
    pub lines: Vec<LineOutput>,
    /// What should be said.
    pub findings: Vec<FindingOutput>,
}

/// What `tautline assess --json` prints.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct AssessOutput {
    /// `tautline.assess`
    pub format: &'static str,
    /// The version of the format.
    pub version: u32,
    /// The files that were read.
    pub files: Vec<SourceFile>,
    /// The protocols the lines were read under.
    pub protocols: Vec<ProtocolOutput>,
    /// One for each site and year, or plot.
    pub assessments: Vec<AssessmentOutput>,
    /// What was found on reading.
    pub findings: Vec<FindingOutput>,
}

impl AssessOutput {
    /// All assessments of an input as data.
    pub fn of(input: &Input, assessments: &[Assessment], say: &dyn Fn(&Message) -> String) -> Self {
        Self {
            format: "tautline.assess",
            version: VERSION,
            files: input.files.clone(),
            protocols: protocols(input),
            assessments: assessments.iter().map(|one| assessment(one, say)).collect(),
            findings: findings(&input.findings, say),
        }
    }
}

/// What `tautline check --json` prints.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CheckOutput {
    /// `tautline.check`
    pub format: &'static str,
    /// The version of the format.
    pub version: u32,
    /// The files that were read.
    pub files: Vec<SourceFile>,
    /// How many findings must still be settled.
    pub must_settle: usize,
    /// How many are worth a look and not settled.
    pub have_a_look: usize,
    /// How many were settled by a person.
    pub settled: usize,
    /// The readings that speak for no site until something is settled.
    pub held_back: Vec<ReadingOutput>,
    /// Every finding, on reading and by the checks; the settled ones say by whom.
    pub findings: Vec<FindingOutput>,
}

/// A reading by what tells it from others.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ReadingOutput {
    /// The site.
    pub site: String,
    /// The line.
    pub line: String,
    /// The day, ISO 8601.
    pub date: Option<Date>,
    /// Who read.
    pub reader: String,
    /// The pass.
    pub pass: String,
}

/// A protocol by its fingerprint.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ProtocolOutput {
    /// SHA-256 of its meaning.
    pub fingerprint: String,
    /// Its name.
    pub name: String,
    /// Rules it is silent on, and what was taken: `rule: value`.
    pub assumed: Vec<String>,
}

/// One finding.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct FindingOutput {
    /// How much it matters.
    pub weight: Weight,
    /// Where it stands.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub place: Option<Place>,
    /// The reading it is about, where it is about one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub about: Option<About>,
    /// Who settled it and why, if somebody did.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub settled: Option<Settled>,
    /// Its code, with the values of its words.
    #[cfg_attr(feature = "schema", schemars(with = "serde_json::Value"))]
    pub message: Message,
    /// The words, in the language of the output.
    pub text: String,
    /// Where the same was found again, where that isn't said one by one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub more: Option<More>,
}

/// A cover that is known, or known between two ends.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CoverRange {
    /// At least this length, in nanometres.
    pub low_nm: i64,
    /// At most this length, in nanometres.
    pub high_nm: i64,
    /// At least this share of the line.
    pub low: f64,
    /// At most this share of the line.
    pub high: f64,
}

/// One line.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LineOutput {
    /// The site.
    pub site: String,
    /// The line.
    pub line: String,
    /// The stratum.
    pub stratum: Option<String>,
    /// The plot.
    pub plot: Option<String>,
    /// The day, ISO 8601.
    pub date: Option<Date>,
    /// Who read.
    pub reader: String,
    /// The pass.
    pub pass: String,
    /// Fingerprint of the protocol.
    pub protocol: String,
    /// Positions, lengths only, or nothing found.
    pub recording: Recording,
    /// Length of the tape in nanometres.
    pub length_nm: i64,
    /// Length read in nanometres.
    pub read_nm: i64,
    /// Gap limit applied, in nanometres; the least that it may have been where nobody knows it.
    pub gap_limit_nm: i64,
    /// The widest that the gap limit may have been, where nobody knows it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub gap_limit_high_nm: Option<i64>,
    /// Live canopy of what counts, overlap once.
    pub canopy: CoverRange,
    /// The counted species added up.
    pub sum: CoverRange,
    /// Dead canopy apart from live.
    pub dead: CoverRange,
    /// Each species.
    pub species: Vec<SpeciesOutput>,
    /// Union within growth forms.
    pub forms: Vec<(GrowthForm, CoverRange)>,
    /// Union within groups.
    pub groups: Vec<(String, CoverRange)>,
    /// How many stretches the rule closed.
    pub closed_count: usize,
    /// Their length in nanometres.
    pub closed_nm: i64,
    /// Gaps between the counted plants: start, stop in nanometres, cut off by the line's end.
    pub gaps: Vec<(i64, i64, bool)>,
    /// Cosine of the line's slope, where the gap classes and plants per area are those on the level; else absent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub slope_cosine: Option<f64>,
    /// Gap classes.
    pub gap_classes: Vec<GapClassOutput>,
}

/// One gap class of a line.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct GapClassOutput {
    /// Longer than this, in nanometres.
    pub above_nm: i64,
    /// Up to this.
    pub up_to_nm: Option<i64>,
    /// How many.
    pub count: usize,
    /// How many are cut off by the line's end.
    pub cut_off: usize,
    /// Their share of the line.
    pub share: f64,
}

/// One species on a line.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SpeciesOutput {
    /// Its code.
    pub code: String,
    /// Its growth form.
    pub form: Option<GrowthForm>,
    /// Whether it counts.
    pub counted: bool,
    /// Live cover.
    pub live: CoverRange,
    /// Dead cover.
    pub dead: CoverRange,
    /// Share of the summed live cover.
    pub composition: Option<f64>,
    /// Mean height in metres.
    pub mean_height_m: Option<f64>,
    /// Plants per square metre.
    pub density_per_m2: Option<f64>,
    /// Ids of its intercepts within the visit.
    pub intercepts: Vec<u32>,
}

/// One site and year.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct AssessmentOutput {
    /// The site.
    pub site: String,
    /// The year.
    pub year: Option<u16>,
    /// The plot, where the claim is about one.
    pub plot: Option<String>,
    /// Confidence of intervals and verdicts.
    pub confidence: f64,
    /// The figures.
    pub figures: Vec<FigureOutput>,
    /// The verdicts.
    pub verdicts: Vec<VerdictOutput>,
    /// What was promised at which number, where a notebook holds such triggers.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub promises: Vec<PromisedOutput>,
    /// The lines.
    pub lines: Vec<LineOutput>,
    /// What should be said.
    pub findings: Vec<FindingOutput>,
}

/// An estimate with its error.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct EstimateOutput {
    /// The figure.
    pub value: f64,
    /// Standard error, where there is one.
    pub se: Option<f64>,
    /// Its degrees of freedom.
    pub df: Option<f64>,
    /// Lines behind it.
    pub lines: usize,
    /// Sampling units behind it.
    pub units: usize,
    /// How it was worked out.
    pub estimator: &'static str,
    /// Where the formula is printed.
    pub source: &'static str,
}

/// One figure of a site.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct FigureOutput {
    /// What it is about.
    pub subject: Subject,
    /// `cover` (a share), `height` (metres) or `density` (plants per square metre).
    pub attribute: &'static str,
    /// The estimate, from the low ends where lines are known only between bounds.
    pub estimate: EstimateOutput,
    /// The estimate from the high ends, where they differ.
    pub high_end: Option<EstimateOutput>,
    /// The interval's method.
    pub interval_method: &'static str,
    /// Low and high end of the two-sided interval.
    pub interval: Option<(f64, f64)>,
    /// Why there is none.
    pub no_interval: Option<&'static str>,
    /// Where lines or intercepts are few: lowest and highest share of simulated surveys with as few whose 90 % interval
    /// held the truth (docs/intervals.md).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub measured_coverage: Option<(f64, f64)>,
    /// Share of a counted species in the summed cover of all counted species.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub composition: Option<f64>,
    /// The strata: name, share of the area, own estimate.
    pub strata: Vec<(String, f64, EstimateOutput)>,
    /// What lines bunched in plots are worth as lines laid apart.
    pub effective_lines: Option<f64>,
}

/// One trigger, and what the readings say of it.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PromisedOutput {
    /// The trigger.
    pub trigger: Trigger,
    /// `promised-reached`, `promised-not-reached`, `promised-not-yet-shown`, or `promised-in-words`.
    pub answer: &'static str,
}

/// One verdict.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct VerdictOutput {
    /// The goal.
    pub goal: Goal,
    /// How sure it had to be: the goal's own confidence, else the assessment's.
    pub confidence: f64,
    /// `met`, `not-met` or `not-yet-shown`.
    pub verdict: &'static str,
    /// One-sided lower bound at the confidence.
    pub lower: Option<f64>,
    /// One-sided upper bound at the confidence.
    pub upper: Option<f64>,
    /// Why there are no bounds.
    pub no_bounds: Option<&'static str>,
    /// More lines (or plots) that would settle it with a chance of 80 %.
    pub more_units: Option<usize>,
    /// No practical number of lines would.
    pub no_practical_number: bool,
    /// Where the visit stands under a sequential plan.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sequential: Option<StandingOutput>,
}

/// Findings with their words.
pub fn findings(findings: &[Finding], say: &dyn Fn(&Message) -> String) -> Vec<FindingOutput> {
    findings
        .iter()
        .map(|finding| FindingOutput {
            weight: finding.weight,
            place: finding.place.clone(),
            about: finding.about.as_deref().cloned(),
            settled: finding.settled.as_deref().cloned(),
            message: finding.message.clone(),
            text: say(&finding.message),
            more: finding.more.as_deref().cloned(),
        })
        .collect()
}

/// What the checks found, as data.
pub fn checked(input: &Input, say: &dyn Fn(&Message) -> String) -> CheckOutput {
    let open = |weight| {
        let own = input.findings.iter().filter(|one| one.weight == weight && one.settled.is_none());
        own.map(Finding::times).sum()
    };
    CheckOutput {
        format: "tautline.check",
        version: VERSION,
        files: input.files.clone(),
        must_settle: open(Weight::MustSettle),
        have_a_look: open(Weight::HaveALook),
        settled: input.findings.iter().filter(|one| one.settled.is_some()).map(Finding::times).sum(),
        held_back: input
            .held
            .iter()
            .map(|&visit| &input.visits[visit])
            .map(|visit| ReadingOutput {
                site: visit.site.clone(),
                line: visit.line.clone(),
                date: visit.date,
                reader: visit.reader.clone(),
                pass: visit.pass.clone(),
            })
            .collect(),
        findings: findings(&input.findings, say),
    }
}

/// The protocols of an input.
pub fn protocols(input: &Input) -> Vec<ProtocolOutput> {
    input
        .protocols
        .iter()
        .map(|(fingerprint, protocol)| ProtocolOutput {
            fingerprint: fingerprint.clone(),
            name: protocol.name.clone(),
            assumed: protocol
                .rule()
                .1
                .iter()
                .map(|taken| format!("{}: {}", taken.rule, taken.taken))
                .collect(),
        })
        .collect()
}

/// One line as data.
pub fn line(result: &LineResult) -> LineOutput {
    let range = |bounds: Bounds| CoverRange {
        low_nm: bounds.low.nanometres(),
        high_nm: bounds.high.nanometres(),
        low: result.share(bounds.low),
        high: result.share(bounds.high),
    };
    let (closed_count, closed) = result.closed();
    LineOutput {
        site: result.site.clone(),
        line: result.line.clone(),
        stratum: result.stratum.clone(),
        plot: result.plot.clone(),
        date: result.date,
        reader: result.reader.clone(),
        pass: result.pass.clone(),
        protocol: result.protocol.clone(),
        recording: result.recording,
        length_nm: result.length.length().nanometres(),
        read_nm: result.read.nanometres(),
        gap_limit_nm: result.gap_limits().0.nanometres(),
        gap_limit_high_nm: result.gap_limits().1.map(tautline_engine::length::Length::nanometres),
        canopy: range(result.canopy),
        sum: range(result.sum),
        dead: range(result.dead),
        species: result
            .species
            .iter()
            .map(|species| SpeciesOutput {
                code: species.code.clone(),
                form: species.form,
                counted: species.counted,
                live: range(species.live),
                dead: range(species.dead),
                composition: species.composition,
                mean_height_m: species.height.map(|height| height.mean_m),
                density_per_m2: species.density,
                intercepts: species.intercepts.clone(),
            })
            .collect(),
        forms: result.forms.iter().map(|(form, bounds)| (*form, range(*bounds))).collect(),
        groups: result.groups.iter().map(|(group, bounds)| (group.clone(), range(*bounds))).collect(),
        closed_count,
        closed_nm: closed.nanometres(),
        gaps: result
            .gaps
            .iter()
            .map(|gap| (gap.stretch.start().nanometres(), gap.stretch.stop().nanometres(), gap.cut_off))
            .collect(),
        slope_cosine: result.slope_cosine,
        gap_classes: result
            .gap_classes
            .iter()
            .map(|class| GapClassOutput {
                above_nm: class.above.nanometres(),
                up_to_nm: class.up_to.map(tautline_engine::length::Length::nanometres),
                count: class.count,
                cut_off: class.cut_off,
                share: result.share(class.length),
            })
            .collect(),
    }
}

/// One assessment as data.
pub fn assessment(assessment: &Assessment, say: &dyn Fn(&Message) -> String) -> AssessmentOutput {
    AssessmentOutput {
        site: assessment.site.clone(),
        year: assessment.year,
        plot: assessment.plot.clone(),
        confidence: assessment.confidence,
        figures: assessment.figures.iter().map(|one| figure(assessment, one)).collect(),
        verdicts: assessment.judgements.iter().map(verdict).collect(),
        promises: assessment.promises.iter().map(promised).collect(),
        lines: assessment.lines.iter().map(line).collect(),
        findings: findings(&assessment.findings, say),
    }
}

/// The stable key of an estimator.
pub const fn estimator(method: &Method) -> &'static str {
    match method {
        Method::MeanOfLines => "mean-of-lines",
        Method::RatioOfSums => "ratio-of-sums",
        Method::MeanOfPlots => "mean-of-plots",
        Method::RatioOfPlots => "ratio-of-plots",
        Method::Strata(_) => "strata-by-area",
        Method::CombinedRatio => "combined-ratio",
        Method::MeanOfValues => "mean-of-values",
        Method::PairedDifference => "paired-difference",
        Method::UnpairedDifference => "unpaired-difference",
        Method::PairedAndUnpaired => "paired-and-unpaired",
    }
}

/// An estimate as data.
pub(crate) fn estimate(estimate: &Estimate) -> EstimateOutput {
    let (se, df) = match estimate.error {
        SamplingError::Known { se, df } => (Some(se), Some(df)),
        SamplingError::Unknown(_) => (None, None),
    };
    EstimateOutput {
        value: estimate.value,
        se,
        df,
        lines: estimate.lines,
        units: estimate.units,
        estimator: estimator(&estimate.method),
        source: estimate.method.source().code(),
    }
}

fn figure(assessment: &Assessment, figure: &Figure) -> FigureOutput {
    let strata = figure.parts.iter().filter(|part| part.kind == PartKind::Stratum);
    let effective =
        figure.parts.iter().filter_map(|part| part.effective.as_ref()).map(|worth| worth.effective);
    FigureOutput {
        subject: figure.subject.clone(),
        attribute: figure.attribute.code(),
        estimate: estimate(&figure.estimate),
        high_end: figure.high.as_ref().map(estimate),
        interval_method: figure.method.code(),
        interval: figure.interval.ok().map(|interval| (interval.low, interval.high)),
        no_interval: figure.interval.err().map(tautline_engine::confidence::NoBound::code),
        measured_coverage: figure
            .few(intercepts_met(&assessment.lines, &figure.subject))
            .map(|few| (few.measured.lowest, few.measured.highest)),
        composition: assessment.composition(figure),
        strata: strata.map(|part| (part.name.clone(), part.weight, estimate(&part.estimate))).collect(),
        effective_lines: effective.reduce(|sum, one| sum + one),
    }
}

fn promised(promised: &Promised) -> PromisedOutput {
    PromisedOutput { trigger: promised.trigger.clone(), answer: promised.code() }
}

fn verdict(judgement: &Judgement) -> VerdictOutput {
    let bounds = judgement.bounds.ok();
    VerdictOutput {
        goal: judgement.goal.clone(),
        confidence: judgement.confidence,
        verdict: judgement.verdict.code(),
        lower: bounds.map(|bounds| bounds.lower),
        upper: bounds.map(|bounds| bounds.upper),
        no_bounds: judgement.bounds.err().map(|reason| match reason {
            NoVerdict::NoFigure => "no-figure",
            NoVerdict::NoBound(reason) => reason.code(),
        }),
        more_units: match judgement.more {
            Some(MoreUnits::More(units)) => Some(units),
            _ => None,
        },
        no_practical_number: judgement.more == Some(MoreUnits::NoPracticalNumber),
        sequential: judgement
            .standing
            .map(|standing| StandingOutput { step: sequential::code(standing.step), lines: standing.lines }),
    }
}
