//! A table in pieces, each read by one thread, block by block, so that no file is ever in memory as a whole.
//!
//! A piece holds the runs that begin in it: its reader leaves the first one to the piece before, and reads its own last
//! one to the end, wherever that lies.

use super::blocks::{Blocks, Buffer};
use super::layout::Layout;
use super::lines::{Lines, Reader};
use super::terms::Terms;
use super::{Stop, Table, Way};
use std::num::NonZero;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::sync::{Mutex, PoisonError};

/// Pieces are at least so long, so that small files take one thread; and at most so long, so that the last ones are
/// done together.
const PIECE: std::ops::RangeInclusive<u64> = 64 * 1024..=32 * 1024 * 1024;

/// One piece: which table, from which byte to which.
struct Piece {
    table: usize,
    from: u64,
    to: u64,
}

/// Reads all tables on so many threads. The pieces' lines come in the order of the files whatever the threads do.
pub(super) fn read(tables: &[(&Table, Layout)], terms: &Terms, way: &Way) -> Result<Vec<Lines>, Stop> {
    let pieces = cut(tables, way.threads)?;
    let next = AtomicUsize::new(0);
    let stopped = AtomicBool::new(false);
    let done: Mutex<Vec<(usize, Lines)>> = Mutex::new(Vec::new());
    let first_stop: Mutex<Option<Stop>> = Mutex::new(None);
    let work = || {
        let mut buffer = Buffer::default();
        while let Some((at, piece)) = Some(next.fetch_add(1, Ordering::Relaxed))
            .filter(|_| !stopped.load(Ordering::Relaxed))
            .and_then(|at| Some((at, pieces.get(at)?)))
        {
            let (table, layout) = &tables[piece.table];
            let mut reader = Reader::new(layout, terms);
            match read_piece(table, piece, layout, &mut reader, &mut buffer, way.progress) {
                Ok(lines) => done.lock().unwrap_or_else(PoisonError::into_inner).push((at, lines)),
                Err(stop) => {
                    stopped.store(true, Ordering::Relaxed);
                    first_stop.lock().unwrap_or_else(PoisonError::into_inner).get_or_insert(stop);
                }
            }
        }
    };
    std::thread::scope(|scope| {
        for _ in 1..way.threads.get().min(pieces.len()) {
            scope.spawn(work);
        }
        work();
    });
    if let Some(stop) = first_stop.into_inner().unwrap_or_else(PoisonError::into_inner) {
        return Err(stop);
    }
    let mut done = done.into_inner().unwrap_or_else(PoisonError::into_inner);
    done.sort_unstable_by_key(|(at, _)| *at);
    Ok(done.into_iter().map(|(_, lines)| lines).collect())
}

fn cut(tables: &[(&Table, Layout)], threads: NonZero<usize>) -> Result<Vec<Piece>, Stop> {
    let mut pieces = Vec::new();
    for (table, (source, layout)) in tables.iter().enumerate() {
        let length = source.content.length().map_err(|error| Stop::File(source.name.clone(), error))?;
        let share = length / (8 * threads.get() as u64);
        let step = share.clamp(*PIECE.start(), *PIECE.end());
        let mut from = layout.begins;
        while from < length {
            let to = (from + step).min(length);
            pieces.push(Piece { table, from, to });
            from = to;
        }
    }
    Ok(pieces)
}

fn read_piece(
    table: &Table,
    piece: &Piece,
    layout: &Layout,
    reader: &mut Reader,
    buffer: &mut Buffer,
    progress: &(dyn Fn(u64) + Sync),
) -> Result<Lines, Stop> {
    let begins_inside = piece.from > layout.begins;
    // one byte earlier, so that a row that begins exactly here is seen to begin
    let from = piece.from - u64::from(begins_inside);
    let mut blocks = Blocks::open(table, from, buffer)?;
    reader.begin(begins_inside);
    let mut skip_to_a_row = begins_inside;
    let mut past = false;
    while let Some(rows) = blocks.next()? {
        progress(rows.fresh);
        let bytes = rows.bytes;
        let mut at = 0;
        if skip_to_a_row {
            let feed = bytes[..rows.end].iter().position(|&byte| byte == b'\n');
            at = feed.ok_or(Stop::Unclear)? + 1;
            skip_to_a_row = false;
        }
        rows.check(at, layout.no_commas)?;
        let bound = usize::try_from(piece.to.saturating_sub(rows.offset)).unwrap_or(usize::MAX).min(rows.end);
        while at < bound {
            at = reader.row(bytes, at, false)?.unwrap_or(rows.end);
        }
        while at < rows.end {
            let blank = matches!(bytes[at], b'\n' | b'\r');
            match reader.row(bytes, at, past)? {
                Some(next) => at = next,
                None => return Ok(reader.end()),
            }
            // the next piece leaves its first row to us, whichever run that belongs to
            past |= !blank;
        }
        blocks.done_with_rows();
    }
    Ok(reader.end())
}
