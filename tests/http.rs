//! The HTTP side in both directions: the real server and the real client, on loopback.
//!
//! What is behind the server is a stand-in that keeps what it takes; what the client talks to is a
//! stand-in provider. Both are the world, not ours. Everything runs on port 0.

mod examples;
mod health;
mod sending;
mod taking_in;
mod template;

use std::{
    io,
    net::{SocketAddr, TcpListener},
    sync::{Arc, Mutex},
};

use budwood::{
    engine::HeldBack,
    service::{
        clock::{Clock, FixedClock},
        door::{Auth, Door, Takes},
        port::{Arrival, Health, Intake, IntakeFuture, MonthHealth, Refused, Spans},
        web::{self, WebSettings},
    },
    words::{
        secret::Secret,
        traffic::{GatewayHealth, Inbound, Passed, Receipt},
    },
};
use chrono::{DateTime, Utc};
use tokio::{
    sync::{oneshot, watch},
    task::JoinHandle,
};

/// The example of RFC 7617, section 2.
const RFC_7617: (&str, &str, &str) = (
    "Aladdin",
    "open sesame",
    "Basic QWxhZGRpbjpvcGVuIHNlc2FtZQ==",
);

/// The example of RFC 6750, section 2.1.
const RFC_6750: (&str, &str) = ("mF_9.B5f-4.1JqM", "Bearer mF_9.B5f-4.1JqM");

/// The moment of the example of the Standard Webhooks reference libraries.
const SIGNED_AT: i64 = 1_614_265_330;

/// A client that a test talks to the server with.
pub(crate) fn client() -> reqwest::Client {
    budwood::service::gateway::http::client().build().unwrap()
}

fn at(seconds: i64) -> DateTime<Utc> {
    DateTime::from_timestamp(seconds, 0).unwrap()
}

fn basic() -> Auth {
    Auth::Basic {
        user: RFC_7617.0.into(),
        password: Secret::new(RFC_7617.1),
    }
}

fn bearer() -> Auth {
    Auth::Bearer {
        token: Secret::new(RFC_6750.0),
    }
}

/// Keeps what it is given. Nothing is durable before `durable_from` items have come.
struct Taker {
    texts: Mutex<Vec<Inbound>>,
    receipts: Mutex<Vec<Receipt>>,
    refuses: Mutex<Option<Refused>>,
    trouble: Mutex<Option<String>>,
    came: watch::Sender<usize>,
    durable: watch::Sender<usize>,
    durable_from: usize,
}

impl Taker {
    fn new(durable_from: usize) -> Arc<Self> {
        Arc::new(Self {
            texts: Mutex::default(),
            receipts: Mutex::default(),
            refuses: Mutex::default(),
            trouble: Mutex::default(),
            came: watch::Sender::new(0),
            durable: watch::Sender::new(0),
            durable_from,
        })
    }

    fn texts(&self) -> Vec<Inbound> {
        self.texts.lock().unwrap().clone()
    }

    fn receipts(&self) -> Vec<Receipt> {
        self.receipts.lock().unwrap().clone()
    }

    fn keep<T>(&self, items: &Mutex<Vec<T>>, item: T) -> IntakeFuture {
        if let Some(refused) = *self.refuses.lock().unwrap() {
            return Box::pin(async move { Err(refused) });
        }
        items.lock().unwrap().push(item);
        self.came.send_modify(|count| *count += 1);
        let mut came = self.came.subscribe();
        let durable = self.durable.clone();
        let from = self.durable_from;
        Box::pin(async move {
            came.wait_for(|count| *count >= from).await.unwrap();
            durable.send_modify(|count| *count += 1);
            Ok(())
        })
    }
}

impl Intake for Taker {
    fn take(&self, arrival: Arrival) -> IntakeFuture {
        match arrival {
            Arrival::Text(inbound) => self.keep(&self.texts, inbound),
            Arrival::Receipt(receipt) => self.keep(&self.receipts, receipt),
            Arrival::Part(_) | Arrival::MissedCall { .. } => panic!("HTTP brings whole texts"),
        }
    }

    fn health(&self) -> Health {
        Health {
            trouble: self.trouble.lock().unwrap().clone(),
            inbox_waiting: 3,
            outbox_waiting: 4,
            unclear_waiting: 19,
            clock_trusted: true,
            store_bytes: Some(20_000),
            disk_free_bytes: Some(21_000_000),
            steps: Spans {
                counts: [1, 2, 0, 0, 0, 0, 0, 0, 1],
                micros: 2_500_000,
            },
            commits: Spans::default(),
            held_back: HeldBack {
                answers: 5,
                notices: 6,
                strangers: 7,
                unpaid: 8,
                services: 12,
                echoes: 13,
                machines: 14,
                costly: 15,
            },
            month: MonthHealth {
                parts: 10,
                micro: 2_500_000,
                gone_pct: Some(11),
            },
            locked: 9,
            gateways: vec![GatewayHealth {
                name: "provider".into(),
                down_since: None,
                last_in: Some(at(SIGNED_AT)),
                last_receipt: Some(at(SIGNED_AT)),
                last_out: None,
                oldest_waiting: Some(at(SIGNED_AT)),
                refused_in_a_row: 2,
                passed: Passed {
                    texts_in: 16,
                    receipts: 22,
                    texts_out: 17,
                    failed: 18,
                },
                signal_pct: Some(61),
                balance: Some("12.50 left".into()),
                trouble: None,
            }],
        }
    }
}

/// The real server on a free port.
struct Service {
    address: SocketAddr,
    taker: Arc<Taker>,
    stop: oneshot::Sender<()>,
    running: JoinHandle<io::Result<()>>,
}

impl Service {
    fn start(auth: Auth) -> Self {
        Self::start_with(auth, Taker::new(0), SIGNED_AT)
    }

    fn start_with(auth: Auth, taker: Arc<Taker>, now: i64) -> Self {
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        let address = listener.local_addr().unwrap();
        let settings = WebSettings {
            doors: vec![Door {
                gateway: "provider".into(),
                auth,
                networks: Vec::new(),
                takes: Takes::OneApi,
            }],
            workers: 1,
            clock: Clock::Fixed(FixedClock::at(at(now))),
        };
        let (stop, stopped) = oneshot::channel();
        let shutdown = async {
            // A dropped sender stops the server too, so that a failed test leaves none behind.
            let _ = stopped.await;
        };
        let running = tokio::spawn(web::serve(listener, taker.clone(), settings, shutdown));
        Self {
            address,
            taker,
            stop,
            running,
        }
    }

    fn url(&self, path: &str) -> String {
        format!("http://{}{path}", self.address)
    }

    async fn stop(self) {
        self.stop.send(()).unwrap();
        self.running.await.unwrap().unwrap();
    }
}
