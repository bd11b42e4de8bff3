//! A client that keeps a number of connections busy, each with one request at a time.

use std::{
    sync::{
        Arc,
        atomic::{AtomicU64, Ordering},
    },
    time::{Duration, Instant},
};

use chrono::TimeDelta;
use tokio::{
    io::{AsyncReadExt, AsyncWriteExt},
    net::TcpStream,
    runtime,
};

use super::servers::{FARMERS, Server, TOKEN};

/// What is asked.
#[derive(Clone, Copy)]
pub(crate) enum Request {
    /// A small GET.
    Hello,
    /// A text of a farmer.
    Text,
}

/// What came out.
pub(crate) struct Measured {
    pub(crate) per_second: f64,
    pub(crate) p50: Duration,
    pub(crate) p99: Duration,
}

/// A phone gets at most five answers in ten minutes. So that nearly every text is answered, the
/// server's clock goes on by that time whenever each farmer has texted so often.
const TEXTS_EACH: u64 = 4;

/// Keeps the connections busy for so long.
pub(crate) fn measure(
    server: &Server,
    request: Request,
    connections: usize,
    length: Duration,
) -> Measured {
    let runtime = runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .unwrap();
    let begin = Instant::now();
    let texts = Arc::new(AtomicU64::new(0));
    let mut times: Vec<Duration> = runtime.block_on(async {
        let busy: Vec<_> = (0..connections)
            .map(|connection| {
                let line = Line {
                    address: server.address,
                    clock: server.clock.clone(),
                    texts: texts.clone(),
                    until: begin + length,
                };
                tokio::spawn(line.keep_busy(request, connection, connections))
            })
            .collect();
        let mut times = Vec::new();
        for one in busy {
            times.extend(one.await.unwrap());
        }
        times
    });
    let seconds = begin.elapsed().as_secs_f64();
    times.sort_unstable();
    let at = |share: usize| times.get(times.len() * share / 100).copied();
    Measured {
        per_second: f64::from(u32::try_from(times.len()).unwrap()) / seconds,
        p50: at(50).unwrap_or_default(),
        p99: at(99).unwrap_or_default(),
    }
}

struct Line {
    address: std::net::SocketAddr,
    clock: budwood::service::clock::FixedClock,
    texts: Arc<AtomicU64>,
    until: Instant,
}

impl Line {
    async fn keep_busy(self, request: Request, first: usize, step: usize) -> Vec<Duration> {
        let mut stream = TcpStream::connect(self.address).await.unwrap();
        stream.set_nodelay(true).unwrap();
        let mut times = Vec::new();
        let mut answer = Vec::with_capacity(4096);
        let own = (first..FARMERS).step_by(step);
        let turns = (1..).flat_map(|trees| own.clone().map(move |farmer| (farmer, trees)));
        for (farmer, trees) in turns {
            let asked = match request {
                Request::Hello => "GET /health HTTP/1.1\r\nhost: x\r\n\r\n".to_owned(),
                Request::Text => {
                    self.count();
                    text(farmer, trees)
                }
            };
            let begin = Instant::now();
            stream.write_all(asked.as_bytes()).await.unwrap();
            answer.clear();
            while !is_whole(&answer) {
                let read = stream.read_buf(&mut answer).await.unwrap();
                assert!(read > 0, "the server has hung up");
            }
            assert!(answer.starts_with(b"HTTP/1.1 20"), "not taken");
            times.push(begin.elapsed());
            if Instant::now() > self.until {
                break;
            }
        }
        times
    }

    fn count(&self) {
        let before = self.texts.fetch_add(1, Ordering::Relaxed);
        if before.is_multiple_of(TEXTS_EACH * FARMERS as u64) {
            self.clock.advance(TimeDelta::minutes(11));
        }
    }
}

/// 204 has no body; the greeting ends with its brace.
fn is_whole(answer: &[u8]) -> bool {
    answer.ends_with(b"\r\n\r\n") && answer.starts_with(b"HTTP/1.1 204") || answer.ends_with(b"}")
}

fn text(farmer: usize, trees: u32) -> String {
    let body = format!(
        r#"{{"inboundSMSMessageNotification":{{"inboundSMSMessage":{{"messageId":"b-{farmer}-{trees}","message":"planted {trees} block A","senderAddress":"tel:+447700900{farmer:03}","destinationAddress":"12345"}}}}}}"#
    );
    format!(
        "POST /sms/in/line HTTP/1.1\r\nhost: x\r\nauthorization: Bearer {TOKEN}\r\n\
         content-type: application/json\r\ncontent-length: {}\r\n\r\n{body}",
        body.len()
    )
}
