//! The one thread that writes. While it waits for the disk, further batches gather and go into the next commit
//! together; each is acknowledged only after the commit that it is in.

use std::thread::JoinHandle;
use tautline_store::{Keep, KeepError};
use tautline_survey::revision::Revision;
use tokio::sync::{mpsc, oneshot};

/// So many batches may wait; whoever comes later waits to be let in.
const WAITING: usize = 256;

/// A commit that has so many revisions gets no further batch.
const ENOUGH: usize = 5_000;

/// How whoever asked hears what became of it.
type Done = oneshot::Sender<Result<(), KeepError>>;

struct Batch {
    revisions: Vec<Revision>,
    done: Done,
}

enum Job {
    Batch(Batch),
    /// The bytes of a photo under their hash; never part of another's commit, since it is long.
    Photo(String, Vec<u8>, Done),
}

/// A way to the writer.
#[derive(Clone, Debug)]
pub(crate) struct Writer {
    to: mpsc::Sender<Job>,
}

impl Writer {
    /// Starts the thread. It ends when the last way to it is dropped.
    pub(crate) fn start(keep: impl Keep + Send + 'static) -> std::io::Result<(Self, JoinHandle<()>)> {
        let (to, from) = mpsc::channel(WAITING);
        let thread = std::thread::Builder::new().name("writer".to_owned()).spawn(move || run(keep, from))?;
        Ok((Self { to }, thread))
    }

    /// Keeps revisions; when this returns they are on the disk.
    pub(crate) async fn keep(&self, revisions: Vec<Revision>) -> Result<(), KeepError> {
        self.ask(|done| Job::Batch(Batch { revisions, done })).await
    }

    /// Keeps the bytes of a photo; when this returns they are on the disk.
    pub(crate) async fn keep_photo(&self, sha256: String, bytes: Vec<u8>) -> Result<(), KeepError> {
        self.ask(|done| Job::Photo(sha256, bytes, done)).await
    }

    async fn ask(&self, job: impl FnOnce(Done) -> Job) -> Result<(), KeepError> {
        let (done, kept) = oneshot::channel();
        let gone = || KeepError::System("writer".to_owned());
        self.to.send(job(done)).await.map_err(|_| gone())?;
        kept.await.map_err(|_| gone())?
    }
}

fn run(mut keep: impl Keep, mut from: mpsc::Receiver<Job>) {
    while let Some(mut job) = from.blocking_recv() {
        let mut group: Vec<Batch> = Vec::new();
        let mut revisions = 0;
        let photo = loop {
            match job {
                Job::Photo(sha256, bytes, done) => break Some((sha256, bytes, done)),
                Job::Batch(batch) => {
                    revisions += batch.revisions.len();
                    group.push(batch);
                }
            }
            match from.try_recv() {
                Ok(next) if revisions < ENOUGH => job = next,
                Ok(next) => {
                    commit(&mut keep, std::mem::take(&mut group));
                    revisions = 0;
                    job = next;
                }
                Err(_) => break None,
            }
        };
        if !group.is_empty() {
            commit(&mut keep, group);
        }
        if let Some((sha256, bytes, done)) = photo {
            // whoever asked may be gone; the bytes are kept all the same
            let _ = done.send(keep.put_photo(&sha256, &bytes));
        }
    }
}

/// One commit for all; where it fails, each by itself, so that one too many takes none of the others with it.
fn commit(keep: &mut impl Keep, group: Vec<Batch>) {
    let all: Vec<Revision> = group.iter().flat_map(|batch| batch.revisions.iter().cloned()).collect();
    let together = keep.append(&all);
    let alone = group.len() == 1;
    for batch in group {
        let done = match &together {
            Ok(_) => Ok(()),
            Err(error) if alone => Err(error.clone()),
            Err(_) => keep.append(&batch.revisions).map(|_| ()),
        };
        // whoever asked may be gone; the revisions are kept all the same
        let _ = batch.done.send(done);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::sync::mpsc as plain;
    use tautline_store::conformance::Invented;
    use tautline_store::{Appended, Cursor, Memory, Named};
    use tautline_survey::revision::{ActionId, RecordId};
    use tautline_survey::sync::{Entry, Place};

    /// A notebook that tells of each commit and goes on only when it is let.
    struct Slow {
        kept: Memory,
        tell: plain::Sender<usize>,
        go_on: plain::Receiver<Result<(), KeepError>>,
    }

    impl Keep for Slow {
        fn append(&mut self, batch: &[Revision]) -> Result<Appended, KeepError> {
            self.tell.send(batch.len()).unwrap();
            self.go_on.recv().unwrap()?;
            self.kept.append(batch)
        }
        fn heads(&self) -> Result<Vec<Revision>, KeepError> {
            self.kept.heads()
        }
        fn of_record(&self, record: RecordId) -> Result<Vec<Revision>, KeepError> {
            self.kept.of_record(record)
        }
        fn of_action(&self, action: ActionId) -> Result<Vec<Revision>, KeepError> {
            self.kept.of_action(action)
        }
        fn log(&self, cursor: Cursor, most: usize) -> Result<Vec<Entry>, KeepError> {
            self.kept.log(cursor, most)
        }
        fn place(&self, cursor: Cursor) -> Result<Option<Place>, KeepError> {
            self.kept.place(cursor)
        }
        fn end(&self) -> Result<Option<Place>, KeepError> {
            self.kept.end()
        }
        fn counter(&self) -> Result<u64, KeepError> {
            self.kept.counter()
        }
        fn put_photo(&mut self, sha256: &str, bytes: &[u8]) -> Result<(), KeepError> {
            self.kept.put_photo(sha256, bytes)
        }
        fn photo(&self, sha256: &str) -> Result<Option<Vec<u8>>, KeepError> {
            self.kept.photo(sha256)
        }
        fn photos(&self) -> Result<Vec<Named>, KeepError> {
            self.kept.photos()
        }
    }

    /// While the first commit waits for the disk, others gather; each hears its own outcome, and none before its commit.
    #[test]
    fn many_batches_go_in_one_commit_and_one_too_many_takes_none_with_it() {
        let runtime = tokio::runtime::Builder::new_current_thread().enable_time().build().unwrap();
        let (tell, told) = plain::channel();
        let (let_go, go_on) = plain::channel();
        let (writer, thread) = Writer::start(Slow { kept: Memory::default(), tell, go_on }).unwrap();
        let mut device = Invented::device(1);
        let mut batch = |size: usize| -> Vec<Revision> {
            (0..size).map(|_| device.revision(None, &[], "invented")).collect()
        };
        runtime.block_on(async {
            let local = tokio::task::LocalSet::new();
            let run = local.run_until(async {
                let keep = |revisions| {
                    let writer = writer.clone();
                    tokio::task::spawn_local(async move { writer.keep(revisions).await })
                };
                let first = keep(batch(1));
                tokio::task::yield_now().await;
                assert_eq!(told.recv().unwrap(), 1);
                let others = [keep(batch(2)), keep(batch(3))];
                for _ in 0..5 {
                    tokio::task::yield_now().await;
                }
                assert!(!first.is_finished(), "nothing is acknowledged before it is kept");
                let_go.send(Ok(())).unwrap();
                assert_eq!(first.await.unwrap(), Ok(()));
                assert_eq!(told.recv().unwrap(), 5, "both in one commit");
                let_go.send(Err(KeepError::Full)).unwrap();
                assert_eq!(told.recv().unwrap(), 2, "then each by itself");
                let_go.send(Ok(())).unwrap();
                assert_eq!(told.recv().unwrap(), 3);
                let_go.send(Err(KeepError::Full)).unwrap();
                let [small, large] = others;
                assert_eq!((small.await.unwrap(), large.await.unwrap()), (Ok(()), Err(KeepError::Full)));
            });
            run.await;
        });
        drop(writer);
        thread.join().unwrap();
    }
}
