//! `tautline serve`: a notebook for the app in this computer's browsers.

use crate::call::Done;
use crate::exit::Exit;
use crate::show;
use clap::{Arg, ArgMatches, Command, value_parser};
use std::path::PathBuf;
use tautline_server::{Server, Setup};
use tautline_survey::message::Message;
use tautline_words::Words;

pub(crate) fn command(words: &Words) -> Command {
    let option = |name: &'static str, value: &'static str, help| {
        Arg::new(name).long(name).value_name(value).help(words.word(help))
    };
    let notebook = option("notebook", "FILE", "help-serve-notebook").default_value("notebook.tautline");
    Command::new("serve")
        .about(words.word("help-serve"))
        .arg(notebook)
        .arg(option("port", "NUMBER", "help-serve-port").value_parser(value_parser!(u16)))
        .arg(option("app", "DIR", "help-serve-app").value_parser(value_parser!(PathBuf)))
}

pub(crate) fn serve(asked: &ArgMatches, words: &Words) -> Done {
    let notebook = asked.get_one::<String>("notebook").map_or("", String::as_str);
    let setup = Setup {
        notebook: notebook.into(),
        port: asked.get_one("port").copied(),
        app: asked.get_one("app").cloned(),
    };
    let refused = |message: Message| (words.say(&message), Exit::File);
    let server = Server::begin(&setup).map_err(|why| refused(why.message(notebook)))?;
    let began = Message::new("serve-began").with("notebook", notebook).with("origin", server.origin());
    show::line(&words.say(&began));
    if let Some(before) = server.port_before() {
        show::aside(&words.say(&Message::new("serve-other-port").with("before", before.to_string())));
    }
    server.run().map_err(|error| refused(Message::new("serve-system").with("why", error.to_string())))?;
    show::line(&words.say(&Message::new("serve-ended").with("notebook", notebook)));
    Ok(Exit::Well)
}
