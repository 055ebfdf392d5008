//! `--gaps`: the gaps between what counts on a line, one by one and by class.

use super::{table::Table, title, wrapped};
use tautline_survey::input::Input;
use tautline_survey::line::LineResult;
use tautline_survey::measure::alike;
use tautline_survey::message::{Message, Value};
use tautline_words::Words;

/// The gaps of a line; a sentence where only lengths were written down, from which none can be known.
pub(super) fn gaps(input: &Input, result: &LineResult, words: &Words) {
    title(&words.say(&Message::new("gaps-title").with("line", result.line.as_str())));
    if result.cover.is_none() {
        wrapped(&words.word("gaps-not-known"), 2);
        return;
    }
    let notation = result.notation(input);
    let show = |length| Value::Length(length, notation);
    let listed: Vec<Value> = result
        .gaps
        .iter()
        .map(|gap| {
            let code = if gap.cut_off { "gap-cut-off" } else { "gap-between" };
            Message::new(code)
                .with("start", show(gap.stretch.start()))
                .with("stop", show(gap.stretch.stop()))
                .with("length", show(gap.stretch.length()))
                .into()
        })
        .collect();
    wrapped(&words.value(&Value::List(listed)), 2);
    let headings = ["report-column-class", "report-column-count", "report-column-cut-off", "column-share"];
    let headings: Vec<String> = headings.iter().map(|code| words.word(code)).collect();
    let mut table = Table::new(&headings);
    let breaks = alike(&result.gap_classes.iter().map(|class| class.above).collect::<Vec<_>>());
    let in_breaks = |length| Value::Length(length, breaks);
    for class in &result.gap_classes {
        let name = match class.up_to {
            Some(up_to) => Message::new("report-from-to")
                .with("low", in_breaks(class.above))
                .with("high", in_breaks(up_to)),
            None => Message::new("report-over").with("low", in_breaks(class.above)),
        };
        let share = words.percent(result.share(class.length), 1);
        table.row(vec![words.say(&name), class.count.to_string(), class.cut_off.to_string(), share]);
    }
    table.print();
    wrapped(&words.word(if result.slope_cosine.is_some() { "gaps-level" } else { "gaps-along" }), 2);
}
