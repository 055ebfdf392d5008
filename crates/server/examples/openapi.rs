//! Prints the description of the interface: `cargo run -p tautline-server --example openapi > docs/openapi.json`.

#![expect(clippy::print_stdout, reason = "it prints")]

fn main() {
    println!("{:#}", tautline_server::description());
}
