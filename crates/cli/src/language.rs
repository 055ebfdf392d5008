//! In which language the command speaks: what `--language` says, else what the person's surroundings say, else English.

use std::ffi::OsString;
use tautline_survey::message::Message;
use tautline_words::Words;

/// What a person's system says of their language, the first that is set (POSIX.1-2024, 8.2).
const SURROUNDINGS: [&str; 3] = ["LC_ALL", "LC_MESSAGES", "LANG"];

/// The words to speak in. The help is written in them too, so they are looked for before the call is understood.
///
/// # Errors
/// the words for a language that there is not, where one was asked for
pub(crate) fn words(
    arguments: impl IntoIterator<Item = OsString>,
    surroundings: impl Fn(&str) -> Option<String>,
) -> Result<Words, String> {
    if let Some(asked) = asked(arguments) {
        return Words::in_language(&asked).ok_or_else(|| {
            let known = Words::LANGUAGES.join(", ");
            let message = Message::new("language-unknown").with("found", asked).with("known", known);
            Words::english().say(&message)
        });
    }
    let said = SURROUNDINGS.iter().filter_map(|name| surroundings(name)).find(|said| !said.is_empty());
    Ok(said.and_then(|said| Words::in_language(&said)).unwrap_or_else(Words::english))
}

/// The language of the person's surroundings.
pub(crate) fn surroundings(name: &str) -> Option<String> {
    std::env::var(name).ok()
}

/// What stands behind `--language`, or after its equals sign.
fn asked(arguments: impl IntoIterator<Item = OsString>) -> Option<String> {
    let mut arguments = arguments.into_iter().skip(1).map(|one| one.to_string_lossy().into_owned());
    while let Some(one) = arguments.next() {
        match one.strip_prefix("--language") {
            Some("") => return arguments.next(),
            Some(rest) if rest.starts_with('=') => return Some(rest[1..].to_owned()),
            _ if one == "--" => return None,
            _ => {}
        }
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    fn language(arguments: &[&str], surroundings: &[(&str, &str)]) -> Result<&'static str, String> {
        let arguments = ["tautline"].iter().chain(arguments).map(OsString::from);
        let said = |name: &str| {
            let found = surroundings.iter().find(|(own, _)| *own == name);
            found.map(|(_, value)| (*value).to_owned())
        };
        words(arguments, said).map(|words| words.language())
    }

    #[test]
    fn what_is_asked_for_goes_before_what_surrounds() {
        assert_eq!(language(&["cover", "--language", "es"], &[("LANG", "en_US.UTF-8")]), Ok("es"));
        assert_eq!(language(&["--language=en", "cover"], &[("LANG", "es_MX.UTF-8")]), Ok("en"));
        assert_eq!(language(&["cover"], &[("LANG", "es_MX.UTF-8")]), Ok("es"));
        assert_eq!(language(&["cover"], &[("LC_ALL", "C"), ("LANG", "es_MX.UTF-8")]), Ok("en"));
        assert_eq!(language(&["cover"], &[("LC_ALL", ""), ("LANG", "es")]), Ok("es"));
        assert_eq!(language(&["cover"], &[("LANG", "fi_FI.UTF-8")]), Ok("en"));
        assert_eq!(language(&["cover"], &[]), Ok("en"));
        assert_eq!(language(&["--", "--language", "es"], &[]), Ok("en"));
    }

    #[test]
    fn a_language_that_there_is_not_is_refused() {
        let said = language(&["--language", "tlh"], &[]).unwrap_err();
        assert!(said.contains("“tlh”") && said.contains("en, es"), "{said}");
    }
}
