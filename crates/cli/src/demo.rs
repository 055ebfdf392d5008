//! The demo written into a folder.

use std::fs;
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use tautline_demo::{Demo, File};

/// Writes the demo into a folder, which is made where it is missing.
///
/// # Errors
/// where a folder can't be made or a file can't be written; a file that is there already is left as it is and
/// refused
pub(crate) fn write(folder: &Path, demo: &Demo) -> io::Result<()> {
    demo.files.iter().chain(&demo.beside).chain([&demo.readme]).try_for_each(|file| create(folder, file))
}

/// Writes a new file and makes its folder; never over one that is there.
fn create(folder: &Path, file: &File) -> io::Result<()> {
    let path = folder.join(&file.name);
    let own: PathBuf = path.parent().unwrap_or(folder).to_owned();
    fs::create_dir_all(own)?;
    let named = |error: io::Error| io::Error::new(error.kind(), format!("{}: {error}", path.display()));
    fs::File::create_new(&path).and_then(|mut out| out.write_all(file.text.as_bytes())).map_err(named)
}

#[cfg(test)]
mod tests {
    use super::write;

    #[test]
    fn nothing_is_written_over() {
        let folder = tempfile::tempdir().unwrap();
        std::fs::write(folder.path().join("goals.csv"), "mine").unwrap();
        let error = write(folder.path(), &tautline_demo::draw(tautline_demo::SEED)).unwrap_err();
        assert!(error.to_string().contains("goals.csv"));
        assert_eq!(std::fs::read_to_string(folder.path().join("goals.csv")).unwrap(), "mine");
    }
}
