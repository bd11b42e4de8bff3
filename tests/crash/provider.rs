//! A provider that brings texts over HTTP on several connections.
//!
//! Each farmer's texts go over one connection, in order: the next only when the last one was
//! acknowledged. Written on plain sockets, so that no client library retries behind our back.

use std::{
    io::{BufRead, BufReader, Read, Write},
    net::{SocketAddr, TcpStream},
    sync::mpsc::{Receiver, Sender, channel},
    thread::{self, JoinHandle},
    time::Duration,
};

use super::{ledger::Text, place::TOKEN};

/// A service that does not answer for this long hangs.
pub(crate) const PATIENCE: Duration = Duration::from_secs(30);

/// What became of a text.
pub(crate) enum News {
    /// The service has it.
    Acknowledged(String),
    /// The service says "later", with this status.
    Later(u16),
}

/// Brings texts; `news` ends when all are through or the service is gone.
pub(crate) struct Delivery {
    pub(crate) news: Receiver<News>,
    workers: Vec<JoinHandle<()>>,
}

impl Delivery {
    /// Starts to bring these texts.
    pub(crate) fn start(address: SocketAddr, texts: &[Text], connections: usize) -> Self {
        let (tell, news) = channel();
        let workers = (0..connections)
            .map(|worker| {
                let own = |text: &&Text| text.farmer % connections == worker;
                let texts: Vec<Text> = texts.iter().filter(own).cloned().collect();
                let tell = tell.clone();
                thread::spawn(move || bring_all(address, &texts, &tell))
            })
            .collect();
        Self { news, workers }
    }

    /// Waits until all connections are closed, and gives what was told meanwhile.
    pub(crate) fn finish(self) -> Vec<News> {
        for worker in self.workers {
            worker.join().unwrap();
        }
        self.news.try_iter().collect()
    }
}

/// Ends at the first text that is not taken: those after it must not overtake.
fn bring_all(address: SocketAddr, texts: &[Text], tell: &Sender<News>) {
    let Ok(mut line) = Line::open(address) else {
        return;
    };
    for text in texts {
        match line.post(text) {
            Ok(204) => tell.send(News::Acknowledged(text.id.clone())).unwrap(),
            Ok(status) => return tell.send(News::Later(status)).unwrap(),
            Err(_) => return,
        }
    }
}

/// An open connection.
pub(crate) struct Line {
    stream: BufReader<TcpStream>,
}

impl Line {
    pub(crate) fn open(address: SocketAddr) -> std::io::Result<Self> {
        let stream = TcpStream::connect_timeout(&address, PATIENCE)?;
        stream.set_nodelay(true)?;
        stream.set_read_timeout(Some(PATIENCE))?;
        Ok(Self {
            stream: BufReader::new(stream),
        })
    }

    /// Brings one text; gives the status.
    pub(crate) fn post(&mut self, text: &Text) -> std::io::Result<u16> {
        let body = format!(
            r#"{{"inboundSMSMessageNotification":{{"inboundSMSMessage":{{"messageId":"{}","message":"{}","senderAddress":"tel:{}","destinationAddress":"12345"}}}}}}"#,
            text.id,
            text.words(),
            text.from()
        );
        let head = format!(
            "POST /sms/in/line HTTP/1.1\r\nhost: x\r\nauthorization: Bearer {TOKEN}\r\n\
             content-type: application/json\r\ncontent-length: {}\r\n\r\n",
            body.len()
        );
        self.ask(&(head + &body)).map(|(status, _)| status)
    }

    /// What a monitor sees.
    pub(crate) fn health(&mut self) -> std::io::Result<(u16, String)> {
        self.ask("GET /health HTTP/1.1\r\nhost: x\r\n\r\n")
    }

    fn ask(&mut self, request: &str) -> std::io::Result<(u16, String)> {
        self.stream.get_mut().write_all(request.as_bytes())?;
        let broken = || std::io::Error::other("not an HTTP answer");
        let mut line = String::new();
        self.stream.read_line(&mut line)?;
        let status = line.split(' ').nth(1).and_then(|code| code.parse().ok());
        let status = status.ok_or_else(broken)?;
        let mut length = 0;
        loop {
            line.clear();
            self.stream.read_line(&mut line)?;
            let lower = line.to_ascii_lowercase();
            if let Some(value) = lower.strip_prefix("content-length:") {
                length = value.trim().parse().map_err(|_| broken())?;
            }
            if line.trim().is_empty() {
                break;
            }
        }
        let mut body = vec![0; length];
        self.stream.read_exact(&mut body)?;
        Ok((status, String::from_utf8_lossy(&body).into_owned()))
    }
}
