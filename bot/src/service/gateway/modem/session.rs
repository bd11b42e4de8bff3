//! A modem that is open: made ready, swept, listened to, and given texts to send.
//!
//! Messages lie in its memory until the engine has them for good; only then they are deleted. Its
//! reports come directly, and one that is lost is a report that never came.

use std::{collections::BTreeMap, pin::pin, time::Duration};

use chrono::{DateTime, Utc};
use tokio::{
    sync::{mpsc, oneshot},
    time::{MissedTickBehavior, interval, sleep},
};

use super::{
    Settings,
    errors::{self, Ended, Whom},
    line::{Failed, Line, News},
    opening::{news_wanted, unlock},
    pdu::{Incoming, Submit, incoming},
};
use crate::{
    service::port::{Arrival, Intake, Stop, stopped},
    words::{
        bounded,
        traffic::{About, Delivery, Inbound, Receipt, SendOutcome, Whose},
    },
};

/// Time is counted in these.
const TICK: Duration = Duration::from_secs(1);

/// The memory is looked through at least so often: news of a message may be lost.
const SWEEP: Duration = Duration::from_secs(20);

/// The network is asked after so often.
const NETWORK: Duration = Duration::from_secs(30);

/// A ring that nobody ends is over after so many ticks.
const RING_TICKS: u32 = 20;

/// How often a later part is tried again before the text is given up as half sent.
const PART_TRIES: u32 = 3;

/// A text to send, and who waits for what becomes of it.
pub(super) struct Order {
    pub(super) to: String,
    pub(super) parts: Vec<Submit>,
    pub(super) told: oneshot::Sender<SendOutcome>,
}

impl Order {
    pub(super) fn tell(self, outcome: SendOutcome) {
        // Whoever asked may be gone, which the next start settles.
        let _ = self.told.send(outcome);
    }
}

/// An open modem.
pub(super) struct Session<'a> {
    line: Line,
    settings: &'a Settings,
    intake: &'a dyn Intake,
    now: &'a (dyn Fn() -> DateTime<Utc> + Sync),
    must_sweep: bool,
    /// What could not be read at the last look at the memory, by place.
    doubted: BTreeMap<u16, String>,
    /// What the last look took in. If it is still there at the next, it could not be deleted, whatever
    /// the modem said, and is not taken in again.
    taken: BTreeMap<u16, String>,
    /// How many messages the last look left in the memory.
    left: usize,
    /// Ticks since somebody began to ring; a call counts once.
    ringing: Option<u32>,
}

impl<'a> Session<'a> {
    /// Makes a modem ready.
    pub(super) async fn open(
        mut line: Line,
        settings: &'a Settings,
        intake: &'a dyn Intake,
        now: &'a (dyn Fn() -> DateTime<Utc> + Sync),
    ) -> Result<Self, Ended> {
        line.calm().await.map_err(|error| error.to_string())?;
        let must = async |line: &mut Line, command: &str, what: &str| {
            let done = line.command(command, "").await;
            done.map(|_| ()).map_err(|error| format!("{what}: {error}"))
        };
        must(&mut line, "ATE0", "it goes on repeating").await?;
        // Without numbers its errors say less; that is no reason to stop.
        let _ = line.command("AT+CMEE=1", "").await;
        unlock(&mut line, settings).await?;
        must(&mut line, "AT+CMGF=0", "it does not know PDU mode").await?;
        let _ = line.command("AT+CPMS=\"SM\",\"SM\",\"SM\"", "").await;
        news_wanted(&mut line).await?;
        let _ = line.command("AT+CLIP=1", "").await;
        Ok(Self {
            line,
            settings,
            intake,
            now,
            must_sweep: true,
            doubted: BTreeMap::new(),
            taken: BTreeMap::new(),
            left: 0,
            ringing: None,
        })
    }

    pub(super) const fn settings(&self) -> &'a Settings {
        self.settings
    }

    pub(super) fn now(&self) -> DateTime<Utc> {
        (self.now)()
    }

    /// How many messages the last look left in the memory.
    pub(super) const fn left(&self) -> usize {
        self.left
    }

    /// How many of these came without their octets, and not for the first time.
    pub(super) fn unread(&self) -> usize {
        let empty = |hex: &&String| hex.is_empty();
        if self.must_sweep {
            return 0;
        }
        self.doubted.values().filter(empty).count()
    }

    /// Whether the network is there, and why not.
    pub(super) async fn network(&mut self) -> Result<(), Ended> {
        let lines = self.command("AT+CREG?", "+CREG:").await?;
        // News of the network begins in the same way, with the state alone.
        let state = lines.iter().find_map(|line| {
            let mut fields = line.split(',');
            fields.nth(1)?.trim().parse::<u8>().ok()
        });
        // 27.007, 7.2: at home, or as a guest.
        match state {
            Some(1 | 5) => Ok(()),
            Some(3) => Err("the network does not take this SIM".into()),
            _ => Err("no network".into()),
        }
    }

    /// Works until the modem is gone, or until told to stop. `note` is told how the line is.
    pub(super) async fn drive(
        mut self,
        orders: &mut mpsc::Receiver<Order>,
        stop: &mut Stop,
        note: &(dyn Fn(Result<(), Ended>) + Sync),
    ) -> Ended {
        let mut tick = interval(TICK);
        tick.set_missed_tick_behavior(MissedTickBehavior::Delay);
        // Not counted in ticks: sending may take a minute, and texts in do not wait for that.
        let mut sweep_due = pin!(sleep(SWEEP));
        let mut network_due = pin!(sleep(Duration::ZERO));
        while !*stop.borrow() {
            let done = tokio::select! {
                Some(order) = orders.recv() => self.send(order).await,
                heard = self.line.listen() => heard.map_err(|error| error.to_string()),
                _ = tick.tick() => {
                    self.tick();
                    Ok(())
                }
                () = &mut sweep_due, if !sweep_due.is_elapsed() => Ok(()),
                () = &mut network_due, if !network_due.is_elapsed() => Ok(()),
                _ = stop.changed() => Ok(()),
            };
            if let Err(why) = done {
                return why;
            }
            if let Err(why) = self.take_news(stop).await {
                return why;
            }
            if self.must_sweep || sweep_due.is_elapsed() {
                sweep_due.set(sleep(SWEEP));
                if let Err(why) = self.sweep().await {
                    return why;
                }
            }
            if network_due.is_elapsed() {
                network_due.set(sleep(NETWORK));
                let network = self.network().await;
                note(network);
                if let Err(why) = self.look().await {
                    return why;
                }
            }
        }
        "the service stops".into()
    }

    fn tick(&mut self) {
        if let Some(ticks) = &mut self.ringing {
            *ticks += 1;
            if *ticks > RING_TICKS {
                self.ringing = None;
            }
        }
    }

    /// A command whose failure ends the session only when the modem is silent or gone.
    pub(super) async fn command(
        &mut self,
        command: &str,
        prefix: &str,
    ) -> Result<Vec<String>, Ended> {
        match self.line.command(command, prefix).await {
            Ok(lines) => Ok(lines),
            Err(Failed::Error(_)) => Ok(Vec::new()),
            Err(error) => Err(error.to_string()),
        }
    }

    async fn take_news(&mut self, stop: &mut Stop) -> Result<(), Ended> {
        while let Some(news) = self.line.take_news() {
            match news {
                News::Stored => self.must_sweep = true,
                News::Direct(hex) => {
                    if let Some(arrival) = arrival(&hex, &self.settings.name) {
                        // Nobody keeps it but us, so it is tried until it is taken.
                        while self.intake.take(arrival.clone()).await.is_err() {
                            tokio::select! {
                                () = sleep(TICK) => {}
                                () = stopped(stop.clone()) => return Ok(()),
                            }
                        }
                    }
                }
                News::Ringing(caller) => self.rings(caller).await?,
                News::RingingEnds => self.ringing = None,
                News::Code(answer) => self.heard_balance(&answer).await?,
            }
        }
        Ok(())
    }

    /// Somebody rings: that is a wish to be called, told once and not answered.
    async fn rings(&mut self, caller: Option<String>) -> Result<(), Ended> {
        let (Some(from), true) = (caller, self.settings.calls_count) else {
            return Ok(());
        };
        if self.ringing.is_none() {
            self.ringing = Some(0);
            let call = Arrival::MissedCall {
                gateway: self.settings.name.clone(),
                from,
                at: (self.now)(),
            };
            // A call that is lost is made again.
            let _ = self.intake.take(call).await;
            self.command("ATH", "").await?;
        }
        Ok(())
    }

    /// Takes in everything that lies in the memory, and deletes what is taken.
    async fn sweep(&mut self) -> Result<(), Ended> {
        self.must_sweep = false;
        let listed = self.command("AT+CMGL=4", "+CMGL:").await?;
        let mut handed = Vec::new();
        let doubted = std::mem::take(&mut self.doubted);
        let before = std::mem::take(&mut self.taken);
        self.left = 0;
        for entry in &listed {
            // An entry may have come without its octets.
            let (head, hex) = entry.split_once('\n').unwrap_or((entry, ""));
            let mut fields = head.split(',').map(str::trim);
            let (Some(index), Some(state)) = (fields.next(), fields.next()) else {
                continue;
            };
            let Ok(index) = index.parse::<u16>() else {
                continue;
            };
            // What ends too early is read once more, since the line may have lost some of it. What
            // came without octets is never deleted.
            if incoming(hex).is_none() {
                let is_as_before = doubted.get(&index).is_some_and(|before| before == hex);
                self.must_sweep |= !is_as_before;
                self.doubted.insert(index, hex.to_owned());
                if !is_as_before || hex.is_empty() {
                    self.left += 1;
                    continue;
                }
            }
            // 27.005, 3.1: 2 and 3 are drafts of ours, which are in the way of texts.
            let is_new = before.get(&index).is_none_or(|before| before != hex);
            let arrival = if matches!(state, "0" | "1") && is_new {
                arrival(hex, &self.settings.name)
            } else {
                None
            };
            handed.push((index, hex.to_owned(), is_new, arrival));
        }
        // By when they were sent: a place that is free again is taken first.
        handed.sort_by_key(|(.., arrival)| arrival.as_ref().and_then(sent_at));
        let take = |(index, hex, is_new, arrival): (u16, String, bool, Option<Arrival>)| {
            let taken = arrival.map(|arrival| self.intake.take(arrival));
            (index, hex, is_new, taken)
        };
        let handed: Vec<_> = handed.into_iter().map(take).collect();
        for (index, hex, is_new, taken) in handed {
            let is_taken = match taken {
                Some(taken) => taken.await.is_ok(),
                None => true,
            };
            let is_gone = is_taken && self.delete(index).await?;
            self.left += usize::from(!is_gone);
            if is_taken {
                self.taken.insert(index, hex);
            }
            // What a full memory had no room for comes now, and its news may be lost.
            self.must_sweep |= is_gone && is_new;
        }
        self.look_at_memory().await
    }

    /// Takes a message out of the memory; gives whether the modem says that it is gone.
    async fn delete(&mut self, index: u16) -> Result<bool, Ended> {
        match self.line.command(&format!("AT+CMGD={index}"), "").await {
            Ok(_) => Ok(true),
            Err(Failed::Error(_)) => Ok(false),
            Err(error) => Err(error.to_string()),
        }
    }

    /// Sends the parts of a text, one after the other.
    async fn send(&mut self, order: Order) -> Result<(), Ended> {
        let mut ids = Vec::new();
        let mut sent = 0;
        let mut failed: BTreeMap<usize, u32> = BTreeMap::new();
        while let Some(part) = order.parts.get(sent) {
            let mut was_written = false;
            let done = self
                .line
                .submit(part.length, &part.hex, &mut was_written)
                .await;
            match done {
                Ok(reference) => {
                    sent += 1;
                    ids.extend(reference.map(|reference| part_id(reference, &order.to)));
                }
                Err(Failed::Error(number)) => {
                    let tries = failed.entry(sent).or_default();
                    *tries += 1;
                    let is_part = sent > 0;
                    let may_again = errors::kind(number) != Whom::Refused && *tries < PART_TRIES;
                    if is_part && may_again {
                        sleep(TICK).await;
                        continue;
                    }
                    order.tell(if is_part {
                        SendOutcome::Unknown {
                            why: "only some parts were sent".into(),
                        }
                    } else {
                        errors::outcome(number)
                    });
                    return Ok(());
                }
                Err(error) => {
                    let why = error.to_string();
                    order.tell(if was_written || sent > 0 {
                        SendOutcome::Unknown { why: why.clone() }
                    } else {
                        SendOutcome::Wait {
                            whose: Whose::Gateway,
                            after: None,
                            why: why.clone(),
                        }
                    });
                    // A modem that is only silent is spoken to once more.
                    return match error {
                        Failed::Silent => self.line.calm().await.map_err(|_| why),
                        Failed::Gone(_) | Failed::Error(_) => Err(why),
                    };
                }
            }
        }
        // With the reports of some parts only nobody could tell when all have arrived.
        if ids.len() < sent {
            ids.clear();
        }
        order.tell(SendOutcome::Accepted { ids });
        Ok(())
    }
}

const fn sent_at(arrival: &Arrival) -> Option<DateTime<Utc>> {
    match arrival {
        Arrival::Text(text) => text.sent_at,
        Arrival::Part(part) => part.text.sent_at,
        Arrival::Receipt(_) | Arrival::MissedCall { .. } => None,
    }
}

/// A modem counts to 255 and from 0 again, for each number by itself as far as reports go.
fn part_id(reference: u8, to: &str) -> String {
    format!("{reference}/{}", to.trim_start_matches('+'))
}

/// 3GPP TS 23.040, 9.2.3.15: done, goes on trying, failed for good, gave up.
const fn delivery(status: u8) -> Delivery {
    match status {
        0x00..=0x1f => Delivery::Delivered,
        0x20..=0x3f => Delivery::Waiting,
        _ => Delivery::Failed,
    }
}

/// What a line of the modem is for the engine. What cannot be read is a text of a sender that
/// nobody has, so that it is kept.
pub(super) fn arrival(hex: &str, gateway: &str) -> Option<Arrival> {
    let inbound = |from: String, text: String, sent_at| Inbound {
        gateway: gateway.to_owned(),
        gateway_id: None,
        from,
        to: String::new(),
        text,
        sent_at,
    };
    Some(match incoming(hex) {
        None => {
            let kept = bounded::text(hex.to_owned());
            Arrival::Text(inbound("unreadable".into(), kept, None))
        }
        Some(Incoming::Data) => return None,
        Some(Incoming::Report {
            reference,
            to,
            status,
        }) => Arrival::Receipt(Receipt {
            gateway: gateway.to_owned(),
            about: About::Theirs(part_id(reference, &to)),
            delivery: delivery(status),
            code: Some(format!("{status:02x}")),
        }),
        Some(Incoming::Text {
            from,
            sent_at,
            text,
            part,
        }) => Arrival::of(inbound(from, text, sent_at), part),
    })
}
