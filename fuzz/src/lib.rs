//! Every parser against text that nobody would write. The targets are tests: `tests/parsers`.

// a guided build links every test of the package, this empty one too, against the engine that counts
#[cfg(test)]
use bolero as _;
