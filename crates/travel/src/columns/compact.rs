//! Records of a Parquet file's metadata: numbered fields of a few types, in as few bytes as will do.
//!
//! # Source
//! Apache Thrift compact protocol (thrift/doc/specs/thrift-compact-protocol.md)

/// The types of fields that are used here.
const I32: u8 = 5;
const I64: u8 = 6;
const BINARY: u8 = 8;
const LIST: u8 = 9;
const STRUCT: u8 = 12;

/// A record that is being written.
#[derive(Default)]
pub(super) struct Record {
    bytes: Vec<u8>,
    last: i16,
}

impl Record {
    /// The bytes, closed.
    pub(super) fn bytes(mut self) -> Vec<u8> {
        self.bytes.push(0);
        self.bytes
    }

    pub(super) fn i32(mut self, field: i16, number: i32) -> Self {
        self.head(field, I32);
        varint(&mut self.bytes, zigzag(i64::from(number)));
        self
    }

    pub(super) fn i64(mut self, field: i16, number: i64) -> Self {
        self.head(field, I64);
        varint(&mut self.bytes, zigzag(number));
        self
    }

    pub(super) fn text(mut self, field: i16, text: &str) -> Self {
        self.head(field, BINARY);
        binary(&mut self.bytes, text);
        self
    }

    pub(super) fn record(mut self, field: i16, record: Self) -> Self {
        self.head(field, STRUCT);
        self.bytes.extend(record.bytes());
        self
    }

    pub(super) fn records(mut self, field: i16, records: impl ExactSizeIterator<Item = Self>) -> Self {
        self.list(field, STRUCT, records.len());
        for record in records {
            self.bytes.extend(record.bytes());
        }
        self
    }

    pub(super) fn numbers(mut self, field: i16, numbers: &[i32]) -> Self {
        self.list(field, I32, numbers.len());
        for &number in numbers {
            varint(&mut self.bytes, zigzag(i64::from(number)));
        }
        self
    }

    pub(super) fn texts(mut self, field: i16, texts: &[&str]) -> Self {
        self.list(field, BINARY, texts.len());
        for text in texts {
            binary(&mut self.bytes, text);
        }
        self
    }

    /// Fields are written in rising order, none more than fifteen behind the last.
    fn head(&mut self, field: i16, kind: u8) {
        let step = field - self.last;
        debug_assert!((1..=15).contains(&step), "fields rise");
        self.bytes.push((step.to_le_bytes()[0] << 4) | kind);
        self.last = field;
    }

    fn list(&mut self, field: i16, kind: u8, len: usize) {
        self.head(field, LIST);
        if let Ok(short @ 0..15) = u8::try_from(len) {
            self.bytes.push((short << 4) | kind);
        } else {
            self.bytes.push(0xF0 | kind);
            varint(&mut self.bytes, len as u64);
        }
    }
}

fn binary(bytes: &mut Vec<u8>, text: &str) {
    varint(bytes, text.len() as u64);
    bytes.extend(text.as_bytes());
}

/// Small numbers of either sign become small numbers above zero.
const fn zigzag(number: i64) -> u64 {
    ((number << 1) ^ (number >> 63)).cast_unsigned()
}

/// Seven bits a byte, the least significant first.
pub(super) fn varint(bytes: &mut Vec<u8>, mut number: u64) {
    while number > 0x7F {
        bytes.push(number.to_le_bytes()[0] | 0x80);
        number >>= 7;
    }
    bytes.push(number.to_le_bytes()[0]);
}
