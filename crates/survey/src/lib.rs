//! The trade's words as types, their validation, and the use cases: readings and a goal in, an assessment out.
//!
//! Nothing here knows a file format or a screen, and nothing here writes a sentence: what a person should hear is a
//! [`message::Message`], a code with values, which the catalogue in `tautline-words` turns into words.
//!
//! | what | module |
//! | --- | --- |
//! | a length as it was written down | [`measure`] |
//! | sites, strata and planned lines | [`plan`] |
//! | where lines lie, and how much of it is told | [`place`] |
//! | plants and growth forms | [`plants`] |
//! | the written rules, their fingerprint, what they leave open | [`protocol`] |
//! | visits and their intercepts | [`visit`] |
//! | a line that is being read | [`draft`] |
//! | where a line's zero stake stands | [`stake`] |
//! | plants under working names, named later | [`naming`] |
//! | goals | [`goal`] |
//! | everything handed in | [`input`] |
//! | readings as a fingerprint | [`imprint`] |
//! | a site's outline as handed in | [`boundary`] |
//! | lines laid out | [`layout`] |
//! | a layout as a record, and lines of it that were replaced | [`drawn`] |
//! | how many lines, how long | [`effort`] |
//! | published numbers beside one's own way to read | [`benchmark`] |
//! | objectives, triggers, decisions | [`promise`] |
//! | slips and oddities of readings | [`mod@check`] |
//! | cover of one line | [`mod@line`] |
//! | unlike protocols brought to common ground | [`compare`] |
//! | a site's estimates and verdict | [`assess`] |
//! | many sites, one row each | [`sites`] |
//! | change between two visits | [`follow`] |
//! | trend over the years | [`trend`] |
//! | readers of the same lines side by side | [`agree`] |
//! | practice lines, learners' sheets, marks, classes | [`practice`] |
//! | how a figure came about | [`explain`] |
//! | the arithmetic on paper | [`paper`] |
//! | results as data | [`output`] |
//! | what is wrong, where, and what would do | [`finding`] |
//! | which known word a misspelt one was meant to be | [`near`] |
//! | what a notebook is made of, and what stands in it | [`revision`], [`record`], [`notebook`] |
//! | how devices and a shared notebook come to hold the same | [`sync`] |
#![forbid(unsafe_code)]

pub mod agree;
pub mod assess;
pub mod benchmark;
pub mod boundary;
pub mod canonical;
pub mod check;
pub mod compare;
pub mod date;
pub mod draft;
pub mod drawn;
pub mod effort;
pub mod explain;
pub mod finding;
pub mod follow;
pub mod goal;
pub mod imprint;
pub mod input;
pub mod layout;
pub mod limits;
pub mod line;
pub mod measure;
pub mod message;
pub mod naming;
pub mod near;
pub mod notebook;
pub mod output;
pub mod paper;
pub mod photo;
pub mod place;
pub mod plan;
pub mod plants;
pub mod practice;
pub mod promise;
pub mod protocol;
pub mod record;
pub mod revision;
pub mod sites;
pub mod stake;
pub mod summary;
pub mod sync;
pub mod trend;
pub mod visit;
