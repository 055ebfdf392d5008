//! A file in blocks of whole rows, so that it is never in memory as a whole.

use super::cells::PADDING;
use super::{ReadSeek, Stop, Table};
use crate::limits::LONGEST_ROW;
use std::io::{self, SeekFrom};

/// How much is read at a time.
const BLOCK: usize = 256 * 1024;

/// Room for a block, kept from one piece of a file to the next.
pub(super) struct Buffer(Vec<u8>);

impl Default for Buffer {
    fn default() -> Self {
        Self(vec![0; BLOCK + PADDING])
    }
}

/// A file in blocks of whole rows.
pub(super) struct Blocks<'a> {
    table: &'a Table,
    file: Box<dyn ReadSeek + 'a>,
    buffer: &'a mut Vec<u8>,
    /// Where in the file the buffer begins.
    offset: u64,
    filled: usize,
    /// Up to where the buffer holds whole rows.
    end: usize,
    over: bool,
}

/// Whole rows, with something behind them.
pub(super) struct Rows<'a> {
    pub(super) bytes: &'a [u8],
    /// Where they end.
    pub(super) end: usize,
    /// Where in the file they begin.
    pub(super) offset: u64,
    /// How many bytes were read for them.
    pub(super) fresh: u64,
}

impl<'a> Blocks<'a> {
    /// The rows of a table from a byte of it on.
    pub(super) fn open(table: &'a Table, from: u64, buffer: &'a mut Buffer) -> Result<Self, Stop> {
        let fault = |error| Stop::File(table.name.clone(), error);
        let mut file = table.content.open().map_err(fault)?;
        file.seek(SeekFrom::Start(from)).map_err(fault)?;
        Ok(Self { table, file, buffer: &mut buffer.0, offset: from, filled: 0, end: 0, over: false })
    }

    /// The next whole rows; the last one gets the line feed it may lack.
    pub(super) fn next(&mut self) -> Result<Option<Rows<'_>>, Stop> {
        let before = self.filled;
        loop {
            let room = self.buffer.len() - PADDING;
            if self.filled == room {
                if room > 2 * LONGEST_ROW {
                    return Err(Stop::Unclear);
                }
                self.buffer.resize(2 * room + PADDING, 0);
                continue;
            }
            if !self.over {
                match self.file.read(&mut self.buffer[self.filled..room]) {
                    Ok(0) => self.over = true,
                    Ok(count) => self.filled += count,
                    Err(error) if error.kind() == io::ErrorKind::Interrupted => continue,
                    Err(error) => return Err(Stop::File(self.table.name.clone(), error)),
                }
            }
            if self.over && self.filled > 0 && self.buffer[self.filled - 1] != b'\n' {
                self.buffer[self.filled] = b'\n';
                self.filled += 1;
            }
            if let Some(feed) = memchr::memrchr(b'\n', &self.buffer[..self.filled]) {
                self.end = feed + 1;
                let fresh = (self.filled - before) as u64;
                return Ok(Some(Rows { bytes: self.buffer, end: self.end, offset: self.offset, fresh }));
            }
            if self.over {
                return Ok(None);
            }
        }
    }

    /// Makes room for the rows behind these.
    pub(super) fn done_with_rows(&mut self) {
        self.buffer.copy_within(self.end..self.filled, 0);
        self.filled -= self.end;
        self.offset += self.end as u64;
        self.end = 0;
    }
}

impl Rows<'_> {
    /// Refuses what would make these rows other rows, or other text, for the general reader.
    pub(super) fn check(&self, begin: usize, no_commas: bool) -> Result<(), Stop> {
        let rows = &self.bytes[begin..self.end];
        let binary = memchr::memchr(0, rows).is_some();
        let other_encoding = str::from_utf8(rows).is_err();
        let lone_return = memchr::memchr_iter(b'\r', rows).any(|at| rows.get(at + 1) != Some(&b'\n'));
        let open_mark = no_commas && memchr::memchr(b',', rows).is_some();
        let beyond_reading =
            rows.len() > LONGEST_ROW && rows.split(|&byte| byte == b'\n').any(|row| row.len() > LONGEST_ROW);
        if binary || other_encoding || lone_return || open_mark || beyond_reading {
            Err(Stop::Unclear)
        } else {
            Ok(())
        }
    }
}
