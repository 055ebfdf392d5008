//! Objectives, triggers and decisions in a notebook.

use super::{Notebook, Refused, text};
use crate::call::Done;
use crate::exit::Exit;
use crate::here::Here;
use crate::show;
use clap::{Arg, ArgAction, ArgMatches, Command};
use tautline_engine::length::DecimalMark;
use tautline_exchange::delimited::goals;
use tautline_survey::date::Date;
use tautline_survey::effort::looks::Looks;
use tautline_survey::goal::{self, Goal, Percent};
use tautline_survey::message::Message;
use tautline_survey::notebook::gather::{change, stand, withdraw};
use tautline_survey::notebook::payload::{Key, Payload};
use tautline_survey::promise::{Agreed, Decision, Direction, Objective, Sampling, Trigger, agreed};
use tautline_words::Words;

/// `tautline ledger` with what can be written into it.
pub(super) fn command(words: &Words, notebook: impl Fn(&'static str, &'static str) -> Command) -> Command {
    let option = |name: &'static str, value: &'static str, help| {
        Arg::new(name).long(name).value_name(value).help(words.word(help))
    };
    let signed = |command: Command| {
        command.arg(option("author", "NAME", "help-author")).arg(option("reason", "TEXT", "help-reason"))
    };
    let agreed = || option("agreed", "WHO, DATE", "help-agreed").action(ArgAction::Append);
    let site = || option("site", "NAME", "help-ledger-site");
    let name = || option("name", "NAME", "help-ledger-name").required(true);
    let objective = signed(notebook("objective", "help-ledger-objective"))
        .arg(name())
        .arg(site())
        .arg(option("attribute", "TEXT", "help-attribute"))
        .arg(option("place", "TEXT", "help-place"))
        .arg(option("direction", "WAY", "help-direction").value_parser(["raise", "lower", "hold"]))
        .arg(option("amount", "TEXT", "help-amount"))
        .arg(option("by", "DATE", "help-by-date"))
        .arg(option("goal", "GOAL", "help-goal"))
        .arg(option("confidence", "PERCENT", "help-objective-confidence"))
        .arg(option("smallest-change", "PERCENT", "help-smallest-change"))
        .arg(option("false-alarm", "PERCENT", "help-false-alarm"))
        .arg(option("missed-change", "PERCENT", "help-missed-change"))
        .arg(option("looks", "“5 to 30”", "help-objective-looks"))
        .arg(option("why", "TEXT", "help-why"))
        .arg(option("source", "TEXT", "help-objective-source"))
        .arg(agreed());
    let trigger = signed(notebook("trigger", "help-ledger-trigger"))
        .arg(name())
        .arg(site())
        .arg(option("when", "TEXT", "help-when").required(true))
        .arg(option("then", "TEXT", "help-then").required(true))
        .arg(option("at", "NUMBER", "help-trigger-at"))
        .arg(agreed());
    let decide = signed(notebook("decide", "help-ledger-decide"))
        .arg(site().required(true))
        .arg(option("date", "DATE", "help-decided-on").required(true))
        .arg(option("trigger", "NAME", "help-decided-trigger"))
        .arg(option("read", "TEXT", "help-was-read").required(true))
        .arg(option("decided", "TEXT", "help-decided").required(true))
        .arg(option("by", "WHO", "help-decided-by").required(true))
        .arg(option("again", "DATE", "help-look-again"))
        .arg(option("why", "TEXT", "help-why"));
    let withdraw = signed(notebook("withdraw", "help-ledger-withdraw")).arg(name()).arg(site()).arg(
        Arg::new("trigger")
            .long("trigger")
            .action(ArgAction::SetTrue)
            .help(words.word("help-withdraw-trigger")),
    );
    let rename = signed(notebook("rename", "help-ledger-rename"))
        .arg(option("name", "NAME", "help-renamed-from").required(true))
        .arg(option("to", "NAME", "help-renamed-to").required(true))
        .arg(site());
    Command::new("ledger")
        .about(words.word("help-ledger"))
        .subcommand_required(true)
        .arg_required_else_help(true)
        .subcommand(objective)
        .subcommand(trigger)
        .subcommand(decide)
        .subcommand(rename)
        .subcommand(withdraw)
        .subcommand(notebook("show", "help-ledger-show").arg(site()))
}

pub(super) fn run(asked: &ArgMatches, words: &Words, here: &mut Here) -> Done {
    let Some((name, asked)) = asked.subcommand() else { return Ok(Exit::NotUnderstood) };
    if let Some(author) = asked.try_get_one::<String>("author").ok().flatten() {
        here.author.clone_from(author);
    }
    let payload = match name {
        "objective" => Payload::Objective(Box::new(objective(asked, words)?)),
        "trigger" => Payload::Trigger(Box::new(trigger(asked, words)?)),
        "decide" => Payload::Decision(Box::new(decision(asked, words)?)),
        "rename" => return renamed(asked, words, here),
        "withdraw" => return withdrawn(asked, words, here),
        _ => return shown(asked, words),
    };
    let mut notebook = Notebook::open_or_begin(super::file(asked), words)?;
    let drafts = stand(&notebook.current()?, &payload);
    if drafts.is_empty() {
        show::line(&words.word("ledger-same"));
        return Ok(Exit::Well);
    }
    notebook.write(name, drafts, text(asked, "reason").unwrap_or_default(), here)?;
    show::line(&words.say(&Message::new("ledger-written").with("what", payload.called())));
    if let Payload::Objective(objective) = &payload {
        show::open_parts(objective, words);
    }
    Ok(Exit::Well)
}

/// Gives an objective another name; it goes on under it with its history.
fn renamed(asked: &ArgMatches, words: &Words, here: &mut Here) -> Done {
    let of = |name| text(asked, name).unwrap_or_default().trim();
    let mut notebook = Notebook::of(asked, words)?;
    let current = notebook.current()?;
    let was = Key::of_objective(of("site"), of("name"));
    let Some(Payload::Objective(found)) = current.standing.get(&was).map(|standing| &standing.payload) else {
        let message = Message::new("ledger-none-such").with("name", of("name"));
        return Err((words.say(&message), Exit::Nothing));
    };
    let renamed = Payload::Objective(Box::new(Objective { name: of("to").to_owned(), ..(**found).clone() }));
    if of("to").is_empty() {
        return Err((words.word("ledger-no-name"), Exit::NotUnderstood));
    }
    let Some(drafts) = change(&current, &was, &renamed) else {
        return Err((words.word("goals-other-name"), Exit::MustSettle));
    };
    if drafts.is_empty() {
        show::line(&words.word("ledger-same"));
        return Ok(Exit::Well);
    }
    notebook.write("objective", drafts, of("reason"), here)?;
    let message = Message::new("ledger-renamed").with("what", of("name")).with("name", of("to"));
    show::line(&words.say(&message));
    Ok(Exit::Well)
}

/// Takes an objective or a trigger back; what it said stays in the notebook's history.
fn withdrawn(asked: &ArgMatches, words: &Words, here: &mut Here) -> Done {
    let of = |name| text(asked, name).unwrap_or_default();
    let key = if asked.get_flag("trigger") { Key::of_trigger } else { Key::of_objective };
    let mut notebook = Notebook::of(asked, words)?;
    let current = notebook.current()?;
    let Some(standing) = current.standing.get(&key(of("site"), of("name"))) else {
        let message = Message::new("ledger-none-such").with("name", of("name"));
        return Err((words.say(&message), Exit::Nothing));
    };
    notebook.write("withdraw", withdraw(standing), of("reason"), here)?;
    show::line(&words.say(&Message::new("ledger-withdrawn").with("what", standing.payload.called())));
    Ok(Exit::Well)
}

fn shown(asked: &ArgMatches, words: &Words) -> Done {
    let current = Notebook::of(asked, words)?.current()?;
    let site = text(asked, "site");
    let fits = |own: &str| own.is_empty() || site.is_none_or(|site| site == own);
    let mut written = 0;
    for standing in current.standing.values() {
        let fits = match &standing.payload {
            Payload::Objective(one) => fits(&one.site),
            Payload::Trigger(one) => fits(&one.site),
            Payload::Decision(one) => fits(&one.site),
            _ => continue,
        };
        if fits {
            written += 1;
            show::promised(&standing.payload, words);
        }
    }
    if written == 0 {
        show::line(&words.word("ledger-empty"));
    }
    Ok(Exit::Well)
}

fn objective(asked: &ArgMatches, words: &Words) -> Result<Objective, Refused> {
    let own = |name: &str| text(asked, name).unwrap_or_default().trim().to_owned();
    let per_mille = |name: &'static str| -> Result<Option<u16>, Refused> {
        text(asked, name)
            .map(|found| per_mille_of(found).ok_or_else(|| wrong(found, name, words)))
            .transpose()
    };
    let smallest = text(asked, "smallest-change")
        .map(|found| {
            Percent::read(found, DecimalMark::Point).ok_or_else(|| wrong(found, "smallest-change", words))
        })
        .transpose()?;
    let looks = text(asked, "looks")
        .map(|found| {
            let not_read = Message::new("option-sequential").with("found", found);
            Looks::read(found).ok_or_else(|| (words.say(&not_read), Exit::NotUnderstood))
        })
        .transpose()?;
    Ok(Objective {
        name: own("name"),
        site: own("site"),
        attribute: own("attribute"),
        place: own("place"),
        direction: text(asked, "direction").and_then(Direction::from_word),
        amount: own("amount"),
        by: date(asked, "by", words)?,
        goal: goal_of(asked, "goal", words)?,
        sampling: Sampling {
            confidence_per_mille: per_mille("confidence")?,
            smallest_change: smallest,
            false_alarm_per_mille: per_mille("false-alarm")?,
            missed_change_per_mille: per_mille("missed-change")?,
            looks,
        },
        reason: own("why"),
        source: own("source"),
        agreed: all_agreed(asked),
    })
}

fn trigger(asked: &ArgMatches, words: &Words) -> Result<Trigger, Refused> {
    let own = |name: &str| text(asked, name).unwrap_or_default().trim().to_owned();
    Ok(Trigger {
        name: own("name"),
        site: own("site"),
        when: own("when"),
        then: own("then"),
        at: goal_of(asked, "at", words)?,
        agreed: all_agreed(asked),
    })
}

fn decision(asked: &ArgMatches, words: &Words) -> Result<Decision, Refused> {
    let own = |name: &str| text(asked, name).unwrap_or_default().trim().to_owned();
    Ok(Decision {
        site: own("site"),
        date: date(asked, "date", words)?,
        trigger: own("trigger"),
        read: own("read"),
        decided: own("decided"),
        by: own("by"),
        again: date(asked, "again", words)?,
        reason: own("why"),
    })
}

fn all_agreed(asked: &ArgMatches) -> Vec<Agreed> {
    asked.get_many::<String>("agreed").into_iter().flatten().map(|one| agreed(one)).collect()
}

fn goal_of(asked: &ArgMatches, name: &str, words: &Words) -> Result<Option<Goal>, Refused> {
    text(asked, name)
        .map(|found| {
            goal::read(found, DecimalMark::Point)
                .map_err(|error| (words.say(&goals::finding(&error).message), Exit::NotUnderstood))
        })
        .transpose()
}

fn date(asked: &ArgMatches, name: &str, words: &Words) -> Result<Option<Date>, Refused> {
    text(asked, name)
        .map(|found| {
            Date::read(found).ok_or_else(|| {
                (words.say(&Message::new("option-date").with("found", found)), Exit::NotUnderstood)
            })
        })
        .transpose()
}

fn wrong(found: &str, name: &str, words: &Words) -> Refused {
    crate::call::not_a_number(found, &format!("--{name}"), words)
}

/// A per cent in whole per mille, below 100 %.
fn per_mille_of(text: &str) -> Option<u16> {
    let found = Percent::read(text, DecimalMark::Point)?;
    let per_mille = u16::try_from(found.0 / 1_000).ok()?;
    (found.0.is_multiple_of(1_000) && (1..1_000).contains(&per_mille)).then_some(per_mille)
}
