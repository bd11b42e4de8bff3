//! The gateway that is a folder: what lies in it is taken once, and removed when it is stored.

use std::{
    fs,
    path::{Path, PathBuf},
    sync::{Arc, Mutex},
    time::Duration,
};

use budwood::{
    engine::HeldBack,
    service::{
        clock::{Clock, FixedClock},
        config::Config,
        port::{Arrival, Gateway, Health, Intake, IntakeFuture, MonthHealth, Refused, Spans},
    },
    words::traffic::{Inbound, Link, Outgoing, SendOutcome},
};
use budwood_scheduler::MessageId;
use chrono::DateTime;
use tempfile::TempDir;
use tokio::sync::watch;

/// Nothing here takes nearly as long.
const DEADLINE: Duration = Duration::from_secs(60);

/// Keeps what it is given, and first refuses so many.
struct Taker {
    refuses: Mutex<usize>,
    came: watch::Sender<Vec<(Inbound, bool)>>,
}

impl Taker {
    fn new(refuses: usize) -> Self {
        Self {
            refuses: Mutex::new(refuses),
            came: watch::Sender::new(Vec::new()),
        }
    }
}

impl Intake for Taker {
    fn take(&self, arrival: Arrival) -> IntakeFuture {
        let Arrival::Text(text) = arrival else {
            panic!("a folder brings texts only");
        };
        let mut refuses = self.refuses.lock().unwrap();
        let is_taken = *refuses == 0;
        *refuses = refuses.saturating_sub(1);
        self.came.send_modify(|came| came.push((text, is_taken)));
        let answer = if is_taken { Ok(()) } else { Err(Refused::Busy) };
        Box::pin(async move { answer })
    }

    fn health(&self) -> Health {
        Health {
            trouble: None,
            inbox_waiting: 0,
            outbox_waiting: 0,
            unclear_waiting: 0,
            clock_trusted: true,
            store_bytes: None,
            disk_free_bytes: None,
            steps: Spans::default(),
            commits: Spans::default(),
            held_back: HeldBack::default(),
            month: MonthHealth::default(),
            locked: 0,
            gateways: Vec::new(),
        }
    }
}

fn gateway(folder: &Path) -> Arc<dyn Gateway> {
    let text = format!(
        "[store]\nfolder = \"store\"\n[web]\nlisten = \"127.0.0.1:8470\"\n\
         [[gateway]]\nname = \"rehearsal\"\nkind = \"folder\"\nfolder = {folder:?}\n\
         [line]\nname = \"kolo\"\nown_number = \"12345\"\ncountry = \"GB\"\n\
         fallback_zone = \"Asia/Jakarta\"\n"
    );
    let config = Config::parse(&text, Path::new("")).unwrap();
    let clock = Clock::Fixed(FixedClock::at(DateTime::UNIX_EPOCH));
    let mut opened = config.open_gateways(&|_| None, &clock).unwrap();
    opened.remove(0).gateway
}

fn place(names: &[(&str, &[u8])]) -> (TempDir, PathBuf) {
    let folder = tempfile::tempdir().unwrap();
    let inside = folder.path().join("in");
    fs::create_dir(&inside).unwrap();
    for (name, content) in names {
        fs::write(inside.join(name), content).unwrap();
    }
    (folder, inside)
}

fn names(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).unwrap();
    let mut names: Vec<String> = entries
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    names.sort();
    names
}

/// Lets the gateway work until so many texts came to the intake, and then to its end.
async fn work(
    gateway: Arc<dyn Gateway>,
    taker: &Arc<Taker>,
    number: usize,
) -> Vec<(Inbound, bool)> {
    let (stop, stops) = watch::channel(false);
    let intake = taker.clone();
    let working = tokio::spawn(async move { gateway.run(intake.as_ref(), stops).await });
    let mut came = taker.came.subscribe();
    let all = came.wait_for(|came| came.len() >= number);
    let in_time = tokio::time::timeout(DEADLINE, all).await;
    assert!(in_time.is_ok(), "too few came");
    stop.send_replace(true);
    working.await.unwrap();
    taker.came.borrow().clone()
}

#[tokio::test]
async fn files_are_taken_in_the_order_of_their_names_and_what_is_no_text_is_set_aside() {
    let (folder, inside) = place(&[
        ("2.txt", b"+447700900005 dead 8\n"),
        ("1.txt", "+447700900001\nplanted 120\nblock ช\n".as_bytes()),
        (".3", b"+447700900002 not whole yet"),
        ("4.txt", b""),
        ("5.txt", b"\xff\xfe"),
        ("6.txt", b"nothing-but-one-word"),
    ]);
    let taker = Arc::new(Taker::new(0));
    let came = work(gateway(folder.path()), &taker, 2).await;
    let said: Vec<(&str, &str)> = came
        .iter()
        .map(|(text, _)| (text.from.as_str(), text.text.as_str()))
        .collect();
    let expected = [
        ("+447700900001", "planted 120\nblock ช"),
        ("+447700900005", "dead 8"),
    ];
    assert_eq!(said, expected);
    assert!(came.iter().all(|(text, _)| text.gateway == "rehearsal"));
    assert_eq!(names(&inside), [".3", "4.txt"]);
    assert_eq!(names(&folder.path().join("refused")), ["5.txt", "6.txt"]);
}

#[tokio::test]
async fn a_file_is_removed_only_when_its_text_is_stored() {
    let (folder, inside) = place(&[("1.txt", b"+447700900005 dead 8")]);
    let never = Arc::new(Taker::new(usize::MAX));
    work(gateway(folder.path()), &never, 1).await;
    assert_eq!(names(&inside), ["1.txt"]);
    let taker = Arc::new(Taker::new(1));
    let came = work(gateway(folder.path()), &taker, 2).await;
    assert_eq!([came[0].1, came[1].1], [false, true]);
    // The same text again, also to another run of the program.
    let first = never.came.borrow()[0].0.clone();
    assert_eq!([&came[0].0, &came[1].0], [&first, &first]);
    assert!(first.gateway_id.is_some());
    assert!(names(&inside).is_empty());
}

#[tokio::test]
async fn the_same_name_with_another_text_is_another_text() {
    let (folder, inside) = place(&[("1.txt", b"+447700900005 dead 8")]);
    let taker = Arc::new(Taker::new(0));
    work(gateway(folder.path()), &taker, 1).await;
    fs::write(inside.join("1.txt"), "+447700900005 dead 9").unwrap();
    let came = work(gateway(folder.path()), &taker, 2).await;
    assert_ne!(came[0].0.gateway_id, came[1].0.gateway_id);
}

fn text() -> Outgoing {
    Outgoing {
        id: MessageId(7),
        to: "+447700900005".to_owned(),
        text: "Weed B by 12 May".to_owned(),
        expires_at: DateTime::UNIX_EPOCH,
    }
}

#[tokio::test]
async fn a_text_out_is_a_file_and_a_second_try_is_the_same_file() {
    let (folder, _) = place(&[]);
    let gateway = gateway(folder.path());
    for _ in 0..2 {
        let ids = vec!["7".to_owned()];
        assert_eq!(gateway.send(&text()).await, SendOutcome::Accepted { ids });
    }
    let out = folder.path().join("out");
    assert_eq!(names(&out), ["7.txt"]);
    let written = fs::read_to_string(out.join("7.txt")).unwrap();
    assert_eq!(written, "+447700900005 Weed B by 12 May\n");
    assert!(gateway.abilities().idempotent && gateway.abilities().demo_numbers);
}

#[tokio::test]
async fn where_the_folder_cannot_be_used_texts_wait_and_the_line_is_down() {
    let (folder, inside) = place(&[("1.txt", b"a file, not a folder")]);
    let gateway = gateway(&inside.join("1.txt"));
    let outcome = gateway.send(&text()).await;
    assert!(matches!(outcome, SendOutcome::Wait { .. }), "{outcome:?}");
    assert!(matches!(gateway.link(), Link::Down { .. }));
    fs::remove_file(inside.join("1.txt")).unwrap();
    assert!(matches!(
        gateway.send(&text()).await,
        SendOutcome::Accepted { .. }
    ));
    assert_eq!(gateway.link(), Link::Up);
    drop(folder);
}
