//! One bound line to a centre: what is sent, what is answered, and what comes.
//!
//! A text is one order; its parts go one after the other, so that nothing is half taken while the
//! centre is throttling, and at most `window` orders are open. What comes is handed to the intake
//! in its order and acknowledged only after that has answered.

use std::{
    collections::HashMap,
    sync::{Mutex, PoisonError},
    time::Duration,
};

use tokio::{
    io::{AsyncRead, AsyncReadExt, AsyncWrite, AsyncWriteExt, ReadHalf, WriteHalf, split},
    sync::{mpsc, oneshot},
    task::JoinSet,
    time::{MissedTickBehavior, interval, timeout},
};

use super::{
    Settings, incoming,
    lately::Lately,
    pdu::{self, Bind, HEADER, Head, LENGTH_MAX, command},
    status,
};
use crate::{
    service::port::{Intake, Refused, Stop},
    words::traffic::{SendOutcome, Whose},
};

/// A connection, in clear or not.
pub(super) trait Stream: AsyncRead + AsyncWrite + Send + Unpin {}
impl<T: AsyncRead + AsyncWrite + Send + Unpin> Stream for T {}

/// Time is counted in these.
const TICK: Duration = Duration::from_secs(1);

/// How long a message may take to be written: a centre that reads nothing is gone.
const WRITE: Duration = Duration::from_secs(30);

/// How long a stop waits for open answers, in ticks.
const STOP_TICKS: u32 = 5;

/// Pause of a part whose centre is throttling, in ticks, and how often that is tried.
const THROTTLED_TICKS: u32 = 2;
const THROTTLED_TIMES: u32 = 30;

/// Enquiries without an answer that end a line.
const MISSED_MAX: u32 = 2;

/// Bodies that could not be read of which an account knows.
const UNREADABLE_MAX: usize = 8;

/// A text to send, and who waits for what becomes of it.
pub(super) struct Order {
    /// The bodies of its messages.
    pub(super) parts: Vec<Vec<u8>>,
    pub(super) told: oneshot::Sender<SendOutcome>,
    pub(super) ids: Vec<String>,
    pub(super) throttled: u32,
}

impl Order {
    pub(super) fn tell(self, outcome: SendOutcome) {
        // Whoever asked may be gone, which the next start settles.
        let _ = self.told.send(outcome);
    }

    /// What can be said when nothing more will come.
    pub(super) fn cut_off(self, was_written: bool, why: &str) {
        let outcome = if was_written || !self.ids.is_empty() {
            SendOutcome::Unknown { why: why.into() }
        } else {
            SendOutcome::Wait {
                whose: Whose::Gateway,
                after: None,
                why: why.into(),
            }
        };
        self.tell(outcome);
    }
}

/// What the line is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Role {
    Transceiver,
    Transmitter,
    Receiver,
}

impl Role {
    const fn command(self) -> u32 {
        match self {
            Self::Transceiver => command::BIND_TRANSCEIVER,
            Self::Transmitter => command::BIND_TRANSMITTER,
            Self::Receiver => command::BIND_RECEIVER,
        }
    }

    pub(super) const fn sends(self) -> bool {
        !matches!(self, Self::Receiver)
    }
}

/// An order whose part has been written.
struct Flight {
    order: Order,
    ticks_left: u32,
}

/// A message with its body.
type Frame = (Head, Vec<u8>);

/// A bound line.
pub(super) struct Session<'a> {
    settings: &'a Settings,
    intake: &'a dyn Intake,
    writer: WriteHalf<Box<dyn Stream>>,
    frames: mpsc::Receiver<Frame>,
    /// Reads; it ends with the session.
    _reader: JoinSet<()>,
    sequence: u32,
    flights: HashMap<u32, Flight>,
    /// Parts that wait because the centre is throttling, and for how long.
    delayed: Vec<(u32, Order)>,
    /// What came and is not on the disk yet: its number, its body, whether it is taken now.
    taken: JoinSet<(u32, Vec<u8>, Result<(), Refused>)>,
    /// What was taken on this line and on those before.
    lately: &'a Lately,
    /// What could not be read on this line and on those before: a centre sends again after each
    /// bind.
    unreadable: &'a Mutex<Vec<Vec<u8>>>,
    silent: u32,
    missed: u32,
}

/// Why a line ended, in words for the person who mends it.
pub(super) type Ended = String;

impl<'a> Session<'a> {
    /// Binds.
    pub(super) async fn bind(
        stream: Box<dyn Stream>,
        role: Role,
        settings: &'a Settings,
        intake: &'a dyn Intake,
        (unreadable, lately): (&'a Mutex<Vec<Vec<u8>>>, &'a Lately),
    ) -> Result<Self, Ended> {
        let (reader, writer) = split(stream);
        let (found, frames) = mpsc::channel(64);
        let mut reading = JoinSet::new();
        reading.spawn(read_frames(reader, found));
        let mut session = Self {
            settings,
            intake,
            writer,
            frames,
            _reader: reading,
            sequence: 0,
            flights: HashMap::new(),
            delayed: Vec::new(),
            taken: JoinSet::new(),
            lately,
            unreadable,
            silent: 0,
            missed: 0,
        };
        let bind = Bind {
            command: role.command(),
            system_id: &settings.system_id,
            password: settings.password.reveal(),
            system_type: &settings.system_type,
        };
        session.request(bind.command, &bind.body()).await?;
        let answer = async {
            while let Some((head, _)) = session.frames.recv().await {
                if head.command == bind.command | command::ANSWER
                    || head.command == command::GENERIC_NACK
                {
                    return Some(head.status);
                }
            }
            None
        };
        match timeout(settings.timeout, answer).await {
            Ok(Some(0)) => Ok(session),
            Ok(Some(status)) => Err(status::why_no_bind(status)),
            Ok(None) => Err("the centre closed the line before it was bound".into()),
            Err(_) => Err("the centre did not answer the bind".into()),
        }
    }

    /// Works until the line ends, or until told to stop.
    pub(super) async fn drive(
        mut self,
        role: Role,
        orders: &mut mpsc::Receiver<Order>,
        stop: &mut Stop,
    ) -> Ended {
        let why = match self.work(role, orders, stop).await {
            Ok(()) => "the service stops".to_owned(),
            Err(why) => why,
        };
        for (_, flight) in self.flights.drain() {
            flight.order.cut_off(true, &why);
        }
        // What is on its way to the disk is taken, though the centre was not told.
        while let Ok(Some(Ok((_, body, taken)))) = timeout(WRITE, self.taken.join_next()).await {
            if taken.is_ok() {
                self.lately.keep(body);
            }
        }
        self.lately.line_ended();
        for (_, order) in self.delayed.drain(..) {
            order.cut_off(false, &why);
        }
        why
    }

    async fn work(
        &mut self,
        role: Role,
        orders: &mut mpsc::Receiver<Order>,
        stop: &mut Stop,
    ) -> Result<(), Ended> {
        let mut tick = interval(TICK);
        // Ticks that were late are not made up for: they count time.
        tick.set_missed_tick_behavior(MissedTickBehavior::Delay);
        let mut stopping = 0;
        loop {
            let is_stopping = *stop.borrow();
            let open = self.flights.len() + self.delayed.len();
            let may_take = role.sends() && !is_stopping && open < self.settings.window;
            if is_stopping && ((open == 0 && self.taken.is_empty()) || stopping >= STOP_TICKS) {
                return self.request(command::UNBIND, &[]).await;
            }
            tokio::select! {
                frame = self.frames.recv() => match frame {
                    Some(frame) => self.came(frame).await?,
                    None => return Err("the line to the centre broke".into()),
                },
                Some(order) = orders.recv(), if may_take => self.send_part(order).await?,
                Some(done) = self.taken.join_next(), if !self.taken.is_empty() => {
                    if let Ok((sequence, body, taken)) = done {
                        if taken.is_ok() {
                            self.lately.keep(body);
                        }
                        self.acknowledge(sequence, taken).await?;
                    }
                }
                _ = tick.tick() => {
                    stopping += u32::from(is_stopping);
                    self.tick().await?;
                }
                _ = stop.changed(), if !is_stopping => {}
            }
        }
    }

    async fn came(&mut self, (head, body): Frame) -> Result<(), Ended> {
        self.silent = 0;
        self.missed = 0;
        match head.command {
            command::DELIVER => self.delivered(head.sequence, body).await,
            command::ENQUIRE_LINK => self.answer(head, 0, &[]).await,
            command::UNBIND => {
                self.answer(head, 0, &[]).await?;
                Err("the centre ended the line".into())
            }
            answer if answer & command::ANSWER != 0 => self.answered(head, &body).await,
            // 5.1.3: a command that is not known here.
            _ => {
                let nack = Head {
                    command: command::GENERIC_NACK,
                    status: 0x03,
                    sequence: head.sequence,
                };
                self.write(nack.with(&[])).await
            }
        }
    }

    /// A text or a receipt came. What cannot be read is refused once, so that a centre that can do
    /// better does, and is kept as it is the second time. What was taken just before the last line
    /// broke comes again, because the centre may not know.
    async fn delivered(&mut self, sequence: u32, body: Vec<u8>) -> Result<(), Ended> {
        if self.lately.comes_again(&body) {
            return self.acknowledge(sequence, Ok(())).await;
        }
        let arrival = match incoming::arrival(
            &body,
            &self.settings.name,
            (self.settings.alphabet, self.settings.receipt_ids),
        ) {
            Ok(Some(arrival)) => arrival,
            Ok(None) => return self.acknowledge(sequence, Ok(())).await,
            Err(unreadable) => {
                if !self.was_unreadable(&body) {
                    return self.acknowledge(sequence, Err(Refused::Unhealthy)).await;
                }
                *unreadable
            }
        };
        let taken = self.intake.take(arrival);
        self.taken
            .spawn(async move { (sequence, body, taken.await) });
        Ok(())
    }

    /// Whether this could not be read before either; from now on it is known.
    fn was_unreadable(&self, body: &[u8]) -> bool {
        let mut known = self
            .unreadable
            .lock()
            .unwrap_or_else(PoisonError::into_inner);
        let is_known = known.iter().any(|known| known == body);
        if !is_known {
            // A few are enough: a centre sends the oldest again first.
            known.truncate(UNREADABLE_MAX - 1);
            known.insert(0, body.to_vec());
        }
        is_known
    }

    async fn acknowledge(
        &mut self,
        sequence: u32,
        taken: Result<(), Refused>,
    ) -> Result<(), Ended> {
        let status = match taken {
            Ok(()) => 0,
            // 5.1.3: the queue is full; the application cannot for now.
            Err(Refused::Busy) => 0x14,
            Err(Refused::Unhealthy) => 0x64,
        };
        let head = Head {
            command: command::DELIVER,
            status: 0,
            sequence,
        };
        self.answer(head, status, &[0]).await
    }

    async fn answered(&mut self, head: Head, body: &[u8]) -> Result<(), Ended> {
        let Some(Flight { mut order, .. }) = self.flights.remove(&head.sequence) else {
            return Ok(());
        };
        let is_nack = head.command == command::GENERIC_NACK;
        if head.status == 0 && !is_nack {
            let id = pdu::first_text(body);
            order.ids.push(self.settings.receipt_ids.of_answer(&id));
            if order.ids.len() < order.parts.len() {
                return self.send_part(order).await;
            }
            let mut ids = std::mem::take(&mut order.ids);
            // With the receipts of some parts only nobody could tell when all have arrived.
            if ids.iter().any(String::is_empty) {
                ids.clear();
            }
            order.tell(SendOutcome::Accepted { ids });
        } else if order.ids.is_empty() {
            order.tell(if is_nack {
                status::outcome_of_nack(head.status)
            } else {
                status::outcome(head.status)
            });
        } else if status::is_throttled(head.status) && order.throttled < THROTTLED_TIMES {
            order.throttled += 1;
            self.delayed.push((THROTTLED_TICKS, order));
        } else {
            let why = format!("only some parts were taken ({:#x})", head.status);
            order.tell(SendOutcome::Unknown { why });
        }
        Ok(())
    }

    /// Writes the next part of an order.
    async fn send_part(&mut self, order: Order) -> Result<(), Ended> {
        let Some(part) = order.parts.get(order.ids.len()).cloned() else {
            return Ok(());
        };
        let sequence = self.next_sequence();
        let ticks_left = u32::try_from(self.settings.timeout.as_secs()).unwrap_or(u32::MAX);
        // In flight before it is written: when writing breaks off, some of it may have left.
        self.flights.insert(sequence, Flight { order, ticks_left });
        let head = Head {
            command: command::SUBMIT,
            status: 0,
            sequence,
        };
        self.write(head.with(&part)).await
    }

    async fn tick(&mut self) -> Result<(), Ended> {
        let late: Vec<u32> = self
            .flights
            .iter_mut()
            .filter_map(|(sequence, flight)| {
                flight.ticks_left = flight.ticks_left.saturating_sub(1);
                (flight.ticks_left == 0).then_some(*sequence)
            })
            .collect();
        for sequence in late {
            if let Some(flight) = self.flights.remove(&sequence) {
                flight
                    .order
                    .cut_off(true, "no answer from the centre in time");
            }
        }
        for (ticks, _) in &mut self.delayed {
            *ticks = ticks.saturating_sub(1);
        }
        while let Some(due) = self.delayed.iter().position(|(ticks, _)| *ticks == 0) {
            let (_, order) = self.delayed.remove(due);
            self.send_part(order).await?;
        }
        self.silent += 1;
        if self.silent >= self.settings.enquire_secs {
            self.silent = 0;
            self.missed += 1;
            if self.missed > MISSED_MAX {
                return Err("the centre does not answer".into());
            }
            self.request(command::ENQUIRE_LINK, &[]).await?;
        }
        Ok(())
    }

    async fn request(&mut self, command: u32, body: &[u8]) -> Result<(), Ended> {
        let head = Head {
            command,
            status: 0,
            sequence: self.next_sequence(),
        };
        self.write(head.with(body)).await
    }

    async fn answer(&mut self, to: Head, status: u32, body: &[u8]) -> Result<(), Ended> {
        let head = Head {
            command: to.command | command::ANSWER,
            status,
            sequence: to.sequence,
        };
        self.write(head.with(body)).await
    }

    async fn write(&mut self, octets: Vec<u8>) -> Result<(), Ended> {
        match timeout(WRITE, self.writer.write_all(&octets)).await {
            Ok(Ok(())) => Ok(()),
            Ok(Err(error)) => Err(format!("the line to the centre broke: {}", error.kind())),
            Err(_) => Err("the centre reads nothing".into()),
        }
    }

    /// From 1 to 7FFFFFFF, and from 1 again (3.2).
    const fn next_sequence(&mut self) -> u32 {
        self.sequence = if self.sequence >= 0x7fff_ffff {
            1
        } else {
            self.sequence + 1
        };
        self.sequence
    }
}

/// Hands on every message until the line ends, or holds what cannot be the length of one.
async fn read_frames(mut reader: ReadHalf<Box<dyn Stream>>, found: mpsc::Sender<Frame>) {
    loop {
        let mut head = [0; HEADER];
        if reader.read_exact(&mut head).await.is_err() {
            return;
        }
        let (length, head) = Head::read(&head);
        if !(HEADER..=LENGTH_MAX).contains(&length) {
            return;
        }
        let mut body = vec![0; length - HEADER];
        if reader.read_exact(&mut body).await.is_err() || found.send((head, body)).await.is_err() {
            return;
        }
    }
}
