//! Prints the golden table as this computer works it out.
#![forbid(unsafe_code)]
#![expect(clippy::print_stdout, reason = "printing the table is all it does")]

fn main() {
    print!("{}", golden::table());
}
