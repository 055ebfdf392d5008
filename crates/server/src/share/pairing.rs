//! The code that lets one device in: eight characters, for ten minutes, once. Whoever guesses is soon not heard any more.

use std::collections::BTreeMap;
use std::net::IpAddr;
use std::time::{Duration, Instant};
use subtle::ConstantTimeEq as _;

/// How long a code lets anybody in, and how long whoever guessed wrong too often isn't heard.
const LIFE: Duration = Duration::from_mins(10);

/// So many wrong codes from one address, and it isn't heard for a while.
const PER_ADDRESS: u32 = 5;

/// So many wrong codes from anywhere, and the code is another.
const IN_ALL: u32 = 20;

/// What can't be taken for something else: no I and 1, no O and 0. Thirty-two, so that five bits are one of them.
const LETTERS: &[u8; 32] = b"23456789ABCDEFGHJKLMNPQRSTUVWXYZ";

/// How long a code is.
const LENGTH: usize = 8;

/// The code that holds now, and who guessed.
#[derive(Debug)]
pub(crate) struct Pairing {
    code: String,
    until: Instant,
    wrong: u32,
    guessing: BTreeMap<IpAddr, (u32, Instant)>,
}

/// Why nobody is let in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum NotLetIn {
    /// It is not the code, or not any more.
    Wrong,
    /// Too many were wrong.
    TooMany,
}

impl Pairing {
    pub(crate) fn new(now: Instant, random: [u8; LENGTH]) -> Self {
        Self { code: code(random), until: now + LIFE, wrong: 0, guessing: BTreeMap::new() }
    }

    pub(crate) fn code(&self) -> &str {
        &self.code
    }

    /// Draws another code, where the one that holds was used, is too old, or was guessed at too often.
    fn draw(&mut self, now: Instant, random: [u8; LENGTH]) {
        (self.code, self.until, self.wrong) = (code(random), now + LIFE, 0);
    }

    /// Whether whoever gives a code is let in. `random` makes the next code, should one be needed: it is when the code
    /// isn't the same afterwards.
    pub(crate) fn give(
        &mut self,
        given: &str,
        from: IpAddr,
        now: Instant,
        random: [u8; LENGTH],
    ) -> Result<(), NotLetIn> {
        self.guessing.retain(|_, (_, since)| now.duration_since(*since) < LIFE);
        if self.guessing.get(&from).is_some_and(|(times, _)| *times >= PER_ADDRESS) {
            return Err(NotLetIn::TooMany);
        }
        let given: String =
            given.chars().filter(char::is_ascii_alphanumeric).map(|c| c.to_ascii_uppercase()).collect();
        // in a time that tells nothing of how much was right
        let right = bool::from(given.as_bytes().ct_eq(self.code.as_bytes())) && now < self.until;
        if right {
            self.draw(now, random);
            return Ok(());
        }
        let (times, since) = self.guessing.entry(from).or_insert((0, now));
        (*times, *since) = (*times + 1, now);
        self.wrong += 1;
        if now >= self.until || self.wrong >= IN_ALL {
            self.draw(now, random);
        }
        Err(NotLetIn::Wrong)
    }
}

fn code(random: [u8; LENGTH]) -> String {
    random.iter().map(|byte| char::from(LETTERS[usize::from(byte % 32)])).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    const HERE: IpAddr = IpAddr::V4(std::net::Ipv4Addr::new(192, 0, 2, 1));

    fn other(number: u8) -> IpAddr {
        IpAddr::from([192, 0, 2, number])
    }

    #[test]
    fn a_code_lets_one_device_in_once() {
        let now = Instant::now();
        let mut pairing = Pairing::new(now, [1; 8]);
        let code = pairing.code().to_owned();
        assert_eq!(code.len(), 8);
        // as people write it
        let written = format!(" {}-{} ", code[..4].to_lowercase(), &code[4..]);
        assert_eq!(pairing.give(&written, HERE, now, [2; 8]), Ok(()));
        assert_ne!(pairing.code(), code);
        assert_eq!(pairing.give(&code, HERE, now, [3; 8]), Err(NotLetIn::Wrong));
    }

    #[test]
    fn a_code_grows_old() {
        let now = Instant::now();
        let mut pairing = Pairing::new(now, [1; 8]);
        let code = pairing.code().to_owned();
        assert_eq!(pairing.give(&code, HERE, now + LIFE, [2; 8]), Err(NotLetIn::Wrong));
        assert_ne!(pairing.code(), code, "there is a new one to be shown");
    }

    #[test]
    fn whoever_guesses_is_not_heard_for_a_while_and_others_are() {
        let now = Instant::now();
        let mut pairing = Pairing::new(now, [1; 8]);
        let code = pairing.code().to_owned();
        for _ in 0..PER_ADDRESS {
            assert_eq!(pairing.give("WRONG", HERE, now, [2; 8]), Err(NotLetIn::Wrong));
        }
        // not even with the right code, or a guess could be told from a guess too many
        assert_eq!(pairing.give(&code, HERE, now, [2; 8]), Err(NotLetIn::TooMany));
        assert_eq!(pairing.code(), code);
        assert_eq!(pairing.give(&code, other(2), now, [2; 8]), Ok(()));
        let code = pairing.code().to_owned();
        assert_eq!(pairing.give(&code, HERE, now + Duration::from_mins(9), [3; 8]), Err(NotLetIn::TooMany));
    }

    #[test]
    fn guesses_from_many_addresses_change_the_code() {
        let now = Instant::now();
        let mut pairing = Pairing::new(now, [1; 8]);
        let code = pairing.code().to_owned();
        for number in 0..20 {
            assert_eq!(pairing.code(), code);
            assert_eq!(pairing.give("WRONG", other(number), now, [2; 8]), Err(NotLetIn::Wrong));
        }
        assert_ne!(pairing.code(), code);
    }
}
