//! Every parser against text that nobody would write. The targets are tests: `tests/parsers`.
