//! The invented sites under `testdata/invented/exports` in every form. What programs that we didn't write make of the
//! files is checked by `./test exports`.

#![expect(clippy::unwrap_used, reason = "a test that lacks a file has failed")]

mod lists;
mod package;
mod places;

use std::fs;
use std::path::Path;
use tautline_exchange::{Options, Read, Source};
use tautline_survey::assess::{Assessment, By, Question, assess};
use tautline_survey::check::check;
use tautline_travel::{File, Form, Whole, write};
use tautline_words::Words;

struct Made {
    read: Read,
    assessments: Vec<Assessment>,
}

impl Made {
    fn new() -> Self {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../testdata/invented/exports");
        let mut paths: Vec<_> = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
        paths.sort();
        let source = |path: &std::path::PathBuf| Source {
            name: path.file_name().unwrap().to_string_lossy().into_owned(),
            bytes: fs::read(path).unwrap(),
        };
        let sources: Vec<Source> = paths.iter().map(source).collect();
        let mut read = tautline_exchange::read(&sources, &Options::default());
        check(&mut read.input);
        let question = Question { by: By::Species, ..Question::default() };
        let assessments = assess(&read.input, &question);
        Self { read, assessments }
    }

    fn whole(&self) -> Whole<'_> {
        Whole {
            input: &self.read.input,
            goals: &self.read.goals,
            assessments: &self.assessments,
            full: false,
            publisher: None,
        }
    }

    fn files(&self, form: Form) -> Vec<File> {
        write(form, &self.whole(), &Words::english()).unwrap()
    }
}

fn text(files: &[File], name: &str) -> String {
    let file = files.iter().find(|file| file.name == name).unwrap_or_else(|| panic!("no {name}"));
    String::from_utf8(file.bytes.clone()).unwrap()
}
