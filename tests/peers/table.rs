//! Every kind of gateway against its peer, with each fault: how many texts were lost, doubled, or
//! came in another order than they were sent.
//!
//! `cargo peers table -- --nocapture` prints the table (with the folder of the peers in the
//! environment, as `tests/all` sets it); `BUDWOOD_ROUNDS=20` brings as many times the texts, and
//! `BUDWOOD_SEED=n` draws other moments. What a peer was told to have been taken is in the store as
//! a kill or a power cut leaves it: the answer to a `deliver_sm`, the deletion from a SIM and the
//! status of success come only after the disk.

use std::{collections::BTreeMap, env, time::Duration};

use budwood::words::message::SendState;

use crate::{
    chance::Chance,
    library::{CUT, library},
    lines::{LINES, Peer, scene},
    office::{Office, Said, Serving, phone},
};

/// Texts that are brought in a row of the table.
const TEXTS: usize = 16;

/// Calls that change the store within which the power fails. A start takes some 10.
const CALLS: u64 = 60;

/// Power cuts of a row, for each 16 texts.
const CUTS_MAX: usize = 8;

/// How often a row is looked at before it is given up.
const LOOKS_MAX: usize = 2_000;

/// How long until it is looked at again.
const AGAIN: Duration = Duration::from_millis(20);

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Fault {
    /// The service is killed at a random moment.
    Killed,
    /// The power fails just before a random call that changes the store, and what no sync covered is
    /// undone, or a part of it.
    Power,
    /// The line is cut: pulled out, closed, broken off, the box killed.
    Cut,
    /// What is no message, news in the middle, texts and receipts twice and before their time.
    Noise,
}

/// How many of these are not in the store.
pub(crate) async fn lost(office: &Office, brought: &[Said]) -> usize {
    let heard = office.heard().await;
    brought.iter().filter(|said| !heard.contains(said)).count()
}

/// What went wrong in a row; nothing may.
#[derive(Debug, Default, PartialEq, Eq)]
struct Wrong {
    /// Told to the peer to be taken, and not in the store after the end.
    told_too_early: usize,
    lost: usize,
    doubled: usize,
    disordered: usize,
    out_lost: usize,
    out_doubled: usize,
}

fn wrong(office: &Office, brought: &[Said], handed: &[Said]) -> (Wrong, usize) {
    let stored = office.stored();
    let heard = stored.heard();
    let times = |all: &[Said], one: &Said| all.iter().filter(|said| *said == one).count();
    let of = |all: &[Said], phone: &str| -> Vec<String> {
        let own = all.iter().filter(|(from, _)| from == phone);
        own.map(|(_, said)| said.clone()).collect()
    };
    let phones: BTreeMap<&str, ()> = brought
        .iter()
        .map(|(from, _)| (from.as_str(), ()))
        .collect();
    let disordered = phones.keys().filter(|phone| {
        let (mut came, sent) = (of(&heard, phone), of(brought, phone));
        came.dedup();
        came != sent
    });
    let mut wrong = Wrong {
        lost: brought.iter().filter(|one| times(&heard, one) == 0).count(),
        doubled: brought.iter().filter(|one| times(&heard, one) > 1).count(),
        disordered: disordered.count(),
        ..Wrong::default()
    };
    for text in &stored.outbound {
        let times = times(handed, &(text.to.clone(), text.text.clone()));
        let is_sent = matches!(text.state, SendState::Sent | SendState::Delivered);
        wrong.out_lost += usize::from(is_sent && times == 0);
        wrong.out_doubled += usize::from(times > 1);
    }
    (wrong, stored.outbound.len())
}

/// A row while it is made.
struct Row {
    office: Office,
    peer: Peer,
    fault: Fault,
    chance: Chance,
    brought: Vec<Said>,
    struck: usize,
    told_too_early: usize,
    cuts_left: usize,
    /// Whether the disk takes no notice of syncs.
    is_deaf: bool,
}

impl Row {
    fn new((office, peer): (Office, Peer), fault: Fault, seed: u64, cuts: usize) -> Self {
        Self {
            office,
            peer,
            fault,
            chance: Chance::new(seed),
            brought: Vec::new(),
            struck: 0,
            told_too_early: 0,
            cuts_left: cuts,
            is_deaf: false,
        }
    }

    async fn bring(&mut self) {
        let number = self.brought.len() + 1;
        let from = phone(number % self.peer.phones() + 1);
        let said = (from, format!("dead {number}"));
        self.peer.bring(&said, number, self.fault).await;
        self.brought.push(said);
    }

    async fn start(&mut self) -> Serving {
        if self.fault != Fault::Power || self.cuts_left == 0 {
            return self.office.serve().await;
        }
        self.cuts_left -= 1;
        let mode = ["all", "random"][self.chance.place(2)];
        let store = self.office.path("store").display().to_string();
        let after = 1 + self.chance.below(CALLS);
        let mut variables = vec![
            ("LD_PRELOAD", library().display().to_string()),
            ("POWERLOSS_DIR", store),
            ("POWERLOSS_MODE", mode.to_owned()),
            ("POWERLOSS_AFTER", after.to_string()),
            ("POWERLOSS_SEED", self.chance.below(1_000_000).to_string()),
        ];
        if self.is_deaf {
            variables.push(("POWERLOSS_DEAF", "/store/db".to_owned()));
        }
        self.office.serve_with(&variables).await
    }

    /// Compares what the peer was told with what is there after an end.
    async fn note_end(&mut self) {
        self.struck += 1;
        if let Some(taken) = self.peer.taken(self.brought.len()).await {
            let kept = self.office.heard().await.len();
            self.told_too_early += taken.saturating_sub(kept);
        }
    }

    /// Something goes wrong, now and then.
    async fn strike(&mut self, serving: Serving) -> Serving {
        if self.chance.below(4) != 0 {
            return serving;
        }
        match self.fault {
            Fault::Killed => {
                Peer::moment(&mut self.chance).await;
                serving.kill();
                self.note_end().await;
                return self.start().await;
            }
            // It comes when it comes; texts that lie there by now are more than one.
            Fault::Power => return self.until_in(serving).await,
            Fault::Cut => self.peer.cut(&self.office, &self.brought).await,
            Fault::Noise => self.peer.noise(&mut self.chance).await,
        }
        self.struck += 1;
        serving
    }

    /// Starts it again if the power has failed.
    async fn again(&mut self, serving: Serving) -> Serving {
        let Some(ended) = serving.ended() else {
            return serving;
        };
        let logged = serving.logged();
        assert_eq!(ended.code(), Some(CUT), "it ended by itself:\n{logged}");
        self.note_end().await;
        self.start().await
    }

    /// Waits until every text so far is in, whatever ends meanwhile.
    async fn until_in(&mut self, mut serving: Serving) -> Serving {
        for _ in 0..LOOKS_MAX {
            serving = self.again(serving).await;
            let is_in = match self.peer.taken(self.brought.len()).await {
                Some(taken) => taken >= self.brought.len(),
                None => lost(&self.office, &self.brought).await == 0,
            };
            if is_in {
                return serving;
            }
            tokio::time::sleep(AGAIN).await;
        }
        panic!("a text is not in: not in time");
    }

    /// Waits until all texts are in and all answers have left.
    async fn until_done(&mut self, mut serving: Serving) -> Serving {
        let open = [SendState::Ready, SendState::Sending];
        if self.fault == Fault::Power {
            serving = self.until_in(serving).await;
        }
        for _ in 0..LOOKS_MAX {
            serving = self.again(serving).await;
            let is_in = lost(&self.office, &self.brought).await == 0;
            if is_in && self.office.has_at_most(0, &open).await && serving.ended().is_none() {
                return serving;
            }
            // Each look is a program of its own.
            tokio::time::sleep(AGAIN * 10).await;
        }
        panic!("texts are not in or answers have not left: not in time");
    }
}

fn number(variable: &str) -> Option<usize> {
    let text = env::var(variable).ok()?;
    Some(text.parse().expect("a whole number"))
}

/// Many texts in a row of which each may meet the fault. Gives what went wrong, how many texts were
/// brought, how often it struck, and how many texts left.
async fn row(scene: (Office, Peer), fault: Fault, seed: u64) -> (Wrong, usize, usize, usize) {
    let rounds = number("BUDWOOD_ROUNDS").unwrap_or(1);
    let mut row = Row::new(scene, fault, seed, CUTS_MAX * rounds);
    let mut serving = row.start().await;
    for _ in 0..(TEXTS * rounds).min(999) {
        row.bring().await;
        serving = row.strike(serving).await;
    }
    serving = row.until_done(serving).await;
    if fault == Fault::Power {
        // Its end is to be a good one, and may have come just now.
        drop(serving);
        serving = row.office.serve().await;
    }
    serving.stop().await;
    let (wrong, sent) = wrong(&row.office, &row.brought, &row.peer.handed().await);
    let wrong = Wrong {
        told_too_early: row.told_too_early,
        ..wrong
    };
    (wrong, row.brought.len(), row.struck, sent)
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn the_table_of_gateways_peers_and_faults() {
    println!(
        "{:<9} {:<18} {:<7} {:>7} {:>6} {:>9} {:>5} {:>8} {:>6} {:>5} {:>9} {:>12}",
        "gateway",
        "peer",
        "fault",
        "brought",
        "struck",
        "too early",
        "lost",
        "doubled",
        "order",
        "sent",
        "sent lost",
        "sent doubled"
    );
    let seed = number("BUDWOOD_SEED").unwrap_or(1);
    let mut all_is_well = true;
    for fault in [Fault::Killed, Fault::Power, Fault::Cut, Fault::Noise] {
        for (gateway, peer) in LINES {
            let scene = scene(gateway, peer).await;
            let (wrong, brought, struck, sent) = row(scene, fault, seed as u64).await;
            println!(
                "{gateway:<9} {peer:<18} {:<7} {brought:>7} {struck:>6} {:>9} {:>5} {:>8} {:>6} \
                 {sent:>5} {:>9} {:>12}",
                format!("{fault:?}").to_lowercase(),
                wrong.told_too_early,
                wrong.lost,
                wrong.doubled,
                wrong.disordered,
                wrong.out_lost,
                wrong.out_doubled
            );
            assert!(struck > 0, "{gateway}, {peer}: {fault:?} did not strike");
            all_is_well &= wrong == Wrong::default();
        }
    }
    assert!(all_is_well, "a figure in the table is not nought");
}

/// The check of the check: a disk that takes no notice of syncs must be seen, or the table would see
/// nothing.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_disk_that_does_not_sync_is_seen() {
    for (gateway, peer) in LINES {
        // A box keeps what it was told to itself.
        if peer.starts_with("Kannel") {
            continue;
        }
        let mut row = Row::new(scene(gateway, peer).await, Fault::Power, 3, TEXTS);
        row.is_deaf = true;
        let mut serving = row.start().await;
        for _ in 0..LOOKS_MAX {
            if serving.ended().is_some() {
                row.note_end().await;
                if row.told_too_early > 0 {
                    break;
                }
                serving = row.start().await;
            }
            if row.brought.len() < 200 {
                row.bring().await;
            }
            tokio::time::sleep(AGAIN).await;
        }
        assert!(
            row.told_too_early > 0,
            "{gateway}: nothing was lost without a sync"
        );
    }
}
