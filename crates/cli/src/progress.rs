//! A progress bar for what takes longer than a second.

use indicatif::{ProgressBar, ProgressStyle};
use std::io::IsTerminal;
use std::time::{Duration, Instant};
use tautline_words::Words;

/// A progress bar on a terminal, drawn only past the first second.
pub(crate) struct Progress {
    bar: ProgressBar,
    begun: Instant,
}

impl Progress {
    /// A bar under the words of a code.
    pub(crate) fn new(doing: &str, words: &Words) -> Self {
        let bar = if std::io::stderr().is_terminal() { ProgressBar::new(0) } else { ProgressBar::hidden() };
        let style = ProgressStyle::with_template("{msg} {wide_bar} {pos}/{len}");
        bar.set_style(style.unwrap_or_else(|_| ProgressStyle::default_bar()));
        bar.set_message(words.word(doing));
        Self { bar, begun: Instant::now() }
    }

    /// So many are done, of so many.
    pub(crate) fn tell(&self, done: usize, of: usize) {
        if self.begun.elapsed() >= Duration::from_secs(1) {
            self.bar.set_length(of as u64);
            self.bar.set_position(done as u64);
            self.bar.tick();
        }
    }
}

impl Drop for Progress {
    fn drop(&mut self) {
        self.bar.finish_and_clear();
    }
}
