//! Building, checking and releasing beyond what cargo does by itself.
//!
//! | command | does |
//! | --- | --- |
//! | `arrows` | no room uses one that it must not know |
//! | `arithmetic` | nothing in the command turns on the standard library's mathematics |
//! | `oldest` | no dependency asks for a newer compiler than the workspace promises |
//! | `schemas [--check]` | writes the JSON schemas to `docs/schema`, or compares them with what is there |
//! | `wasm` | builds the engine's golden table for the browser |
//! | `web [--conformance \| --quick]` | builds the app and makes the folder that a server gives out; with the suite of its store; in haste, for looking at |
//! | `golden [--check \| --bless]` | the engine's figures natively, in WebAssembly and as kept: bit for bit the same |
#![forbid(unsafe_code)]
#![expect(clippy::print_stdout, reason = "xtask talks to whoever runs it")]

mod arithmetic;
mod arrows;
mod cargo;
mod golden;
mod oldest;
mod schemas;
mod web;

use std::process::ExitCode;

/// What a command has to say: a line for the person on success, the reasons on failure.
type Outcome = Result<String, String>;

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    let outcome = match words.as_slice() {
        ["arrows"] => arrows::check(),
        ["arithmetic"] => arithmetic::check(),
        ["oldest"] => oldest::check(),
        ["schemas"] => schemas::write(),
        ["schemas", "--check"] => schemas::check(),
        ["wasm"] => golden::build_for_browser().map(|module| format!("built {}", module.display())),
        ["web"] => web::build(),
        ["web", "--conformance"] => web::build_with_suite(),
        ["web", "--quick"] => web::build_quickly(),
        ["golden"] => golden::print(),
        ["golden", "--check"] => golden::check(),
        ["golden", "--bless"] => golden::bless(),
        _ => Err(
            "commands: arrows · arithmetic · oldest · schemas [--check] · wasm · web [--conformance | --quick] · golden [--check | --bless]"
                .to_owned(),
        ),
    };
    match outcome {
        Ok(said) => {
            println!("{said}");
            ExitCode::SUCCESS
        }
        Err(reasons) => {
            eprintln!("{reasons}");
            ExitCode::FAILURE
        }
    }
}
