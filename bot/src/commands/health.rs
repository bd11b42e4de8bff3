//! `budwood health`: asks the running service how it is, for a person, a monitor or a container.
//!
//! What it prints is what `GET /health` says; it fails when the service does, or does not answer.

use std::{
    io::Write,
    net::{IpAddr, Ipv4Addr, Ipv6Addr, SocketAddr},
    time::Duration,
};

use anyhow::{Context, bail};
use serde::Deserialize;

use crate::service::{config::Config, gateway::http};

/// Who does not answer by then is not well.
const PATIENCE: Duration = Duration::from_secs(5);

/// What is printed of an answer; what it says beside is for monitors.
#[derive(Deserialize)]
struct Answer {
    trouble: Option<String>,
    inbox_waiting: u64,
    outbox_waiting: u64,
    month: Month,
    gateways: Vec<Gateway>,
}

#[derive(Deserialize)]
struct Month {
    parts: u64,
    gone_pct: Option<u32>,
}

#[derive(Deserialize)]
struct Gateway {
    name: String,
    down_since: Option<String>,
    last_in: Option<String>,
    last_out: Option<String>,
    oldest_waiting: Option<String>,
    refused_in_a_row: u32,
    signal_pct: Option<u8>,
    balance: Option<String>,
}

/// Asks, and writes what the service says.
///
/// # Errors
///
/// When it says that something is wrong, or does not answer.
pub async fn ask(config: &Config, out: &mut impl Write) -> anyhow::Result<()> {
    let url = format!("http://{}/health", here(config.web.listen));
    // No front server and no proxy is asked: only this computer.
    let client = http::client().timeout(PATIENCE).build()?;
    let told = client.get(&url).send().await;
    let told = told.with_context(|| format!("no service answers at {url}"))?;
    let answer: Answer = (told.json().await)
        .with_context(|| format!("what answers at {url} is no service of ours"))?;
    write!(out, "{}", page(&answer))?;
    match answer.trouble {
        Some(trouble) => bail!("{trouble}"),
        None => Ok(()),
    }
}

/// A service that listens everywhere listens here too.
fn here(listen: SocketAddr) -> SocketAddr {
    let own: IpAddr = match listen {
        SocketAddr::V4(_) => Ipv4Addr::LOCALHOST.into(),
        SocketAddr::V6(_) => Ipv6Addr::LOCALHOST.into(),
    };
    let everywhere = listen.ip().is_unspecified();
    SocketAddr::new(if everywhere { own } else { listen.ip() }, listen.port())
}

fn page(answer: &Answer) -> String {
    let state = match answer.trouble {
        Some(_) => "not well",
        None => "well",
    };
    let gone = answer.month.gone_pct;
    let gone = gone.map_or_else(String::new, |pct| format!(", {pct} % of the budget"));
    let mut page = format!(
        "{state}\nwaiting: {} to be read, {} to leave\nparts this month: {}{gone}\n",
        answer.inbox_waiting, answer.outbox_waiting, answer.month.parts,
    );
    for gateway in &answer.gateways {
        let at = |at: &Option<String>| at.clone().unwrap_or_else(|| "never".to_owned());
        page += &format!(
            "gateway {}: last in {}, last out {}",
            gateway.name,
            at(&gateway.last_in),
            at(&gateway.last_out)
        );
        if let Some(since) = &gateway.down_since {
            page += &format!(", its line is down since {since}");
        }
        if let Some(since) = &gateway.oldest_waiting {
            page += &format!(", a text waits since {since}");
        }
        if gateway.refused_in_a_row > 0 {
            page += &format!(", not taken in a row: {}", gateway.refused_in_a_row);
        }
        if let Some(signal) = gateway.signal_pct {
            page += &format!(", signal {signal} %");
        }
        if let Some(balance) = &gateway.balance {
            page += &format!(", balance {balance:?}");
        }
        page.push('\n');
    }
    page
}

#[cfg(test)]
mod tests {
    use super::{here, page};

    #[test]
    fn a_line_that_is_down_is_shown_before_it_is_trouble() {
        let answer = serde_json::json!({
            "inbox_waiting": 0, "outbox_waiting": 2, "month": {"parts": 7, "gone_pct": 3},
            "gateways": [{
                "name": "sim1", "down_since": "2026-12-01T07:00:00Z", "last_in": null,
                "last_out": null, "refused_in_a_row": 0, "signal_pct": 61,
            }],
        });
        let expected = "well\nwaiting: 0 to be read, 2 to leave\nparts this month: 7, 3 % of the \
                        budget\ngateway sim1: last in never, last out never, its line is down since \
                        2026-12-01T07:00:00Z, signal 61 %\n";
        assert_eq!(page(&serde_json::from_value(answer).unwrap()), expected);
    }

    #[test]
    fn this_computer_is_asked() {
        for (listen, asked) in [
            ("0.0.0.0:8470", "127.0.0.1:8470"),
            ("[::]:8470", "[::1]:8470"),
            ("192.0.2.7:80", "192.0.2.7:80"),
        ] {
            assert_eq!(here(listen.parse().unwrap()).to_string(), asked);
        }
    }
}
