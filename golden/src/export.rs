//! The table as a module for the browser hands it out: where its text starts, and how long it is.

use std::sync::OnceLock;

static TEXT: OnceLock<String> = OnceLock::new();

fn text() -> &'static str {
    TEXT.get_or_init(crate::table)
}

/// The address of the table's first byte in the module's memory.
#[expect(unsafe_code, reason = "a name that the host can find; nothing else in this build is called so")]
#[unsafe(no_mangle)]
extern "C" fn table_start() -> usize {
    text().as_ptr().addr()
}

/// The number of the table's bytes.
#[expect(unsafe_code, reason = "a name that the host can find; nothing else in this build is called so")]
#[unsafe(no_mangle)]
extern "C" fn table_length() -> usize {
    text().len()
}
