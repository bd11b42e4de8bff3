//! The kinds of gateway with their peers, as one: texts are brought, and what became of them is seen.

use std::time::Duration;

use serde_json::json;

use crate::{
    centre::Centre,
    chance::Chance,
    kannel::{self, Kannel},
    modem::{self, Modem},
    office::{Office, Said, until},
    provider::{self, Provider},
    smpp,
    table::{Fault, lost},
};

/// Gateways and their peers, as the table names them.
pub(crate) const LINES: [(&str, &str); 4] = [
    ("modem", "pty, 27.005"),
    ("smpp", "npm smpp"),
    ("template", "our provider"),
    ("template", "Kannel, npm smpp"),
];

pub(crate) enum Peer {
    Modem(Modem),
    Centre(Centre),
    Provider(Provider),
    Box(Box<Kannel>, Centre),
}

/// A program whose line this is, and its peer.
pub(crate) async fn scene(gateway: &str, peer: &str) -> (Office, Peer) {
    match (gateway, peer) {
        ("modem", _) => {
            let (office, modem) = modem::scene("").await;
            (office, Peer::Modem(modem))
        }
        ("smpp", _) => {
            let (office, centre) = smpp::scene("", &[]).await;
            (office, Peer::Centre(centre))
        }
        (_, "our provider") => {
            let (office, provider) = provider::scene().await;
            (office, Peer::Provider(provider))
        }
        _ => {
            let scene = kannel::scene().await;
            let peer = Peer::Box(Box::new(scene.kannel), scene.centre);
            (scene.office, peer)
        }
    }
}

impl Peer {
    /// A text of a phone; the later ones were sent later.
    pub(crate) async fn bring(&self, (from, said): &Said, number: usize, fault: Fault) {
        match self {
            Self::Modem(modem) => {
                let later = i64::try_from(number).expect("few") - 3_000;
                let what = json!({"later": later, "dup": fault == Fault::Noise});
                modem.bring(from, said, what).await;
            }
            Self::Centre(centre) => centre.bring(from, said, json!({"keep": true})).await,
            Self::Provider(provider) => provider.bring(from, said),
            Self::Box(_, centre) => centre.bring(from, said, json!({})).await,
        }
    }

    /// Which phones the texts come from: a box brings two of one phone in any order.
    pub(crate) const fn phones(&self) -> usize {
        match self {
            Self::Box(..) => 40,
            Self::Modem(_) | Self::Centre(_) | Self::Provider(_) => 8,
        }
    }

    /// How many of the texts it knows to be taken. A box keeps that by itself.
    pub(crate) async fn taken(&self, brought: usize) -> Option<usize> {
        match self {
            Self::Modem(modem) => Some(brought.saturating_sub(modem.stored().await)),
            Self::Centre(centre) => Some(centre.seen("answered").await.len()),
            Self::Provider(provider) => Some(provider.acknowledged()),
            Self::Box(..) => None,
        }
    }

    pub(crate) async fn cut(&mut self, office: &Office, brought: &[Said]) {
        match self {
            Self::Modem(modem) => modem.unplug().await,
            Self::Centre(centre) => centre.fault(json!({"close": true})).await,
            Self::Provider(provider) => provider.cut(),
            Self::Box(kannel, _) => {
                // What lies in its memory dies with it, and is nobody's.
                until("all so far", async || lost(office, brought).await == 0).await;
                kannel.kill();
                kannel.start(office.folder.path()).await;
            }
        }
    }

    pub(crate) async fn noise(&self, chance: &mut Chance) {
        match self {
            Self::Modem(modem) => {
                modem.fault(json!({"urc_in_reply": true})).await;
                let noise = [
                    "\u{0}\u{ff}garbage +CMT\r\n+CMTI: \"S",
                    "\r\n+CMTI: \"SM\",99\r\n+CDS: 5\r\nx\r\n",
                ];
                modem.raw(noise[chance.place(2)]).await;
            }
            Self::Centre(centre) => {
                let twice = json!({"dup_dlr": true, "dlr_first": true});
                centre.fault(twice).await;
                let noise = [
                    "00000010000001F00000000000000007",
                    "00000010800000040000000000009999",
                ];
                centre.raw(noise[chance.place(2)]).await;
            }
            Self::Provider(provider) => provider.noise().await,
            Self::Box(_, centre) => {
                let twice = json!({"dup_dlr": true, "dlr_first": true});
                centre.fault(twice).await;
            }
        }
    }

    pub(crate) async fn handed(&self) -> Vec<Said> {
        match self {
            Self::Modem(modem) => modem.handed().await,
            Self::Centre(centre) | Self::Box(_, centre) => centre.handed().await,
            Self::Provider(provider) => provider.handed(),
        }
    }

    /// Waits a moment, in which anything may be under way.
    pub(crate) async fn moment(chance: &mut Chance) {
        tokio::time::sleep(Duration::from_micros(chance.below(30_000))).await;
    }
}
