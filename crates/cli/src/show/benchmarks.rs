//! Published numbers in sentences.

use super::{title, wrapped};
use tautline_survey::benchmark::{BenchmarksOutput, Compared};
use tautline_survey::explain::goal_words;
use tautline_survey::goal::Wanted;
use tautline_survey::message::Message;
use tautline_words::Words;

/// Each number with what it means, and what it could be where it was read another way.
pub(crate) fn benchmarks(output: &BenchmarksOutput, words: &Words) {
    for one in &output.benchmarks {
        benchmark(one, words);
    }
    wrapped(&words.word("benchmarks-not-official"), 0);
}

fn benchmark(one: &Compared, words: &Words) {
    let about = &one.benchmark;
    let cover = words.say(&goal_words(&Wanted::Cover(about.cover.clone())));
    title(&format!("{}: {cover}", about.name));
    let facts = [
        ("benchmark-key", about.key.as_str()),
        ("benchmark-published", about.published.as_str()),
        ("benchmark-plants", about.plants.as_str()),
        ("benchmark-season", about.season.as_str()),
        ("benchmark-region", about.region.as_str()),
        ("benchmark-source", about.source.as_str()),
    ];
    for (code, said) in facts.into_iter().filter(|(_, said)| !said.is_empty()) {
        wrapped(&format!("{}: {said}", words.word(code)), 2);
    }
    wrapped(&format!("{}: {}", words.word("benchmark-ground"), words.word(about.scale.word())), 2);
    for warning in &one.warnings {
        wrapped(&words.say(warning), 2);
    }
    if one.fits {
        wrapped(&words.say(&Message::new("benchmark-fits").with("goal", cover)), 2);
        return;
    }
    let range = |&(low, high): &(f64, f64)| {
        let message = Message::new("benchmark-range").with("low", words.percent(low, 1));
        words.say(&message.with("high", words.percent(high, 1)))
    };
    let ranges: Vec<String> = one.could_be.iter().map(range).collect();
    wrapped(&words.say(&Message::new("benchmark-could-be").with("ranges", ranges)), 2);
}
