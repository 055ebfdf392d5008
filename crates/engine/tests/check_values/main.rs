//! Statistics against figures that others worked out: printed ones, and those of other programs.

mod changes;
mod mixed;
mod published;
mod reference;
mod sources;
mod tables;
