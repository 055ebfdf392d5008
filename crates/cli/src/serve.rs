//! `tautline serve`: a notebook for the app in this computer's browsers and, if asked, the crew's devices.

use crate::call::Done;
use crate::exit::Exit;
use crate::show;
use anstyle::AnsiColor;
use clap::{Arg, ArgAction, ArgMatches, Command, value_parser};
use std::net::{IpAddr, Ipv4Addr};
use std::path::PathBuf;
use std::sync::Arc;
use tautline_server::{Invitation, Server, Setup, ShareSetup, picture};
use tautline_survey::message::Message;
use tautline_words::Words;

pub(crate) fn command(words: &Words) -> Command {
    let option = |name: &'static str, value: &'static str, help| {
        Arg::new(name).long(name).value_name(value).help(words.word(help))
    };
    let flag = |name: &'static str, help| {
        Arg::new(name).long(name).help(words.word(help)).action(ArgAction::SetTrue)
    };
    let path = |arg: Arg| arg.value_parser(value_parser!(PathBuf));
    let port = |arg: Arg| arg.value_parser(value_parser!(u16));
    let notebook = option("notebook", "FILE", "help-serve-notebook").default_value("notebook.tautline");
    Command::new("serve")
        .about(words.word("help-serve"))
        .arg(notebook)
        .arg(port(option("port", "NUMBER", "help-serve-port")))
        .arg(path(option("app", "DIR", "help-serve-app")))
        .arg(flag("open", "help-serve-open"))
        .arg(flag("share", "help-share"))
        .arg(option("name", "NAME", "help-share-name").requires("share"))
        .arg(port(option("share-port", "NUMBER", "help-share-port").requires("share")))
        .arg(path(option("certificate", "FILE", "help-share-certificate").requires("key")))
        .arg(path(option("key", "FILE", "help-share-key").requires("certificate").requires("share")))
        .arg(flag("new-address", "help-share-new-address").requires("share"))
        .arg(option("move-to", "NAME", "help-share-move-to").requires("share").conflicts_with("new-address"))
}

pub(crate) fn serve(asked: &ArgMatches, words: &Words) -> Done {
    let notebook = asked.get_one::<String>("notebook").map_or("", String::as_str);
    let refused = |message: Message| (words.say(&message), Exit::File);
    let setup = Setup {
        notebook: notebook.into(),
        port: asked.get_one("port").copied(),
        app: asked.get_one("app").cloned().or_else(own_app),
        share: if asked.get_flag("share") { Some(share(asked, words)?) } else { None },
    };
    let server = Server::begin(&setup).map_err(|why| refused(why.message(notebook)))?;
    let began = Message::new("serve-began").with("notebook", notebook).with("origin", server.origin());
    show::line(&words.say(&began));
    if let Some(before) = server.port_before() {
        show::aside(&words.say(&Message::new("serve-other-port").with("before", before.to_string())));
    }
    if let Some(shared) = server.shared() {
        show::line(&words.say(&Message::new("share-began").with("origin", shared.origin.as_str())));
        if let Some(fingerprint) = &shared.fingerprint {
            show::line(
                &words.say(&Message::new("share-fingerprint").with("fingerprint", fingerprint.as_str())),
            );
        }
        if let Some(invitation) = &shared.invitation {
            invite(invitation, words);
        }
        if let Some(to) = asked.get_one::<String>("move-to") {
            show::line(&words.say(&Message::new("share-moving").with("to", to.to_lowercase())));
        }
        if let Some(why) = &shared.unnamed {
            show::aside(&words.say(&Message::new("share-unnamed").with("why", why.as_str())));
        }
    }
    match &setup.app {
        // where no browser can be begun from here, the address stands above
        Some(_) if asked.get_flag("open") && open::that_detached(server.origin()).is_err() => {
            show::aside(&words.word("serve-no-browser"));
        }
        Some(_) => {}
        None => show::aside(&words.word("serve-without-app")),
    }
    server.run().map_err(|error| refused(Message::new("serve-system").with("why", error.to_string())))?;
    show::line(&words.say(&Message::new("serve-ended").with("notebook", notebook)));
    Ok(Exit::Well)
}

/// The built app where it lies by custom: beside the command, beside the command's folder (where it is built), or where
/// systems keep what programs share.
fn own_app() -> Option<PathBuf> {
    let own = std::env::current_exe().ok()?.canonicalize().ok()?;
    let folder = own.parent()?;
    ["web", "../web", "../share/tautline/web"]
        .map(|way| folder.join(way))
        .into_iter()
        .find(|found| found.join("index.html").is_file())
}

fn share(asked: &ArgMatches, words: &Words) -> Result<ShareSetup, (String, Exit)> {
    let name = asked.get_one::<String>("name").cloned().unwrap_or_else(own_name).to_lowercase();
    let move_to = asked.get_one::<String>("move-to").map(|name| name.to_lowercase());
    if let Some(found) = [Some(&name), move_to.as_ref()].into_iter().flatten().find(|name| !is_name(name)) {
        let message = Message::new("share-no-name").with("found", found.as_str());
        return Err((words.say(&message), Exit::NotUnderstood));
    }
    let folder = data_folder().ok_or_else(|| (words.word("share-no-folder"), Exit::File))?.join(&name);
    Ok(ShareSetup {
        folder,
        name,
        address: IpAddr::V4(Ipv4Addr::UNSPECIFIED),
        port: asked.get_one("share-port").copied(),
        certificate: asked.get_one("certificate").cloned().zip(asked.get_one("key").cloned()),
        new_address: asked.get_flag("new-address"),
        move_to,
        // from whichever thread a further code is drawn on
        tell: Arc::new(|invitation| invite(invitation, &Words::english())),
    })
}

/// A name that stays when the network changes; a bare address doesn't.
fn is_name(name: &str) -> bool {
    name.parse::<IpAddr>().is_err()
        && name.len() < 254
        && name.split('.').all(|part| {
            (1..64).contains(&part.len())
                && part.bytes().all(|byte| byte.is_ascii_alphanumeric() || byte == b'-')
        })
}

/// Shows what lets the next device in.
fn invite(invitation: &Invitation, words: &Words) {
    // dark on light, whatever the terminal's own colours, or a camera makes nothing of it
    let paper = AnsiColor::Black.on(AnsiColor::BrightWhite);
    for row in picture(&invitation.link).unwrap_or_default().lines() {
        show::line(&format!("{paper}{row}{paper:#}"));
    }
    let said = Message::new("share-invitation")
        .with("link", invitation.link.as_str())
        .with("code", invitation.code.as_str());
    show::line(&words.say(&said));
}

/// This computer's name on its own network.
fn own_name() -> String {
    let host = gethostname::gethostname().to_string_lossy().to_lowercase();
    let first = host.split('.').next().unwrap_or_default();
    let plain: String = first.chars().map(|c| if c.is_ascii_alphanumeric() { c } else { '-' }).collect();
    let plain = plain.trim_matches('-');
    format!("{}.local", if plain.is_empty() { "tautline" } else { plain })
}

/// Where a person's own data are kept, by the custom of the system.
fn data_folder() -> Option<PathBuf> {
    let named = |name| std::env::var_os(name).filter(|value| !value.is_empty()).map(PathBuf::from);
    let own = named("XDG_DATA_HOME").or_else(|| named("LOCALAPPDATA"));
    let own = own.or_else(|| Some(named("HOME")?.join(".local").join("share")));
    Some(own?.join("tautline").join("authority"))
}
