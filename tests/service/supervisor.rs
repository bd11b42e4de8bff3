//! What a service manager is told, by the protocol of `sd_notify(3)`, and the secrets it hands over.

use std::{fs, os::unix::net::UnixDatagram, thread, time::Duration};

use super::{
    office,
    provider::Provider,
    running::{Running, SECRET, command},
};

/// Takes what is told, in order, until the end; a socket holds a few lines only.
fn listen(manager: &UnixDatagram) -> Vec<String> {
    let mut told: Vec<String> = Vec::new();
    while told.last().is_none_or(|last| last != "STOPPING=1") {
        let mut line = [0; 256];
        let length = manager.recv(&mut line).expect("a line in time");
        told.push(String::from_utf8(line[..length].to_vec()).unwrap());
    }
    told
}

#[tokio::test]
async fn the_service_manager_is_told_of_begin_life_and_end() {
    let folder = office(None, "");
    let place = folder.path().join("manager");
    let manager = UnixDatagram::bind(&place).unwrap();
    let patience = Some(Duration::from_secs(60));
    manager.set_read_timeout(patience).unwrap();
    let listening = thread::spawn(move || listen(&manager));
    let mut service = command(folder.path(), &["serve", "budwood.toml"]);
    service
        .env("NOTIFY_SOCKET", &place)
        .env("WATCHDOG_USEC", "20000");
    let service = Running::started_by(folder.path(), service).await;
    service.stop().await;
    let told = listening.join().unwrap();
    assert_eq!(told[0], "READY=1");
    let life = told.iter().filter(|line| *line == "WATCHDOG=1").count();
    assert!(life > 0 && life == told.len() - 2, "{told:?}");
}

#[tokio::test]
async fn a_secret_may_be_a_file_that_the_service_manager_hands_over() {
    let provider = Provider::start().await;
    let folder = office(Some(&provider), "");
    let secrets = folder.path().join("credentials");
    fs::create_dir(&secrets).unwrap();
    for name in ["BUDWOOD_SECRET_LINE", "BUDWOOD_SECRET_LINE_IN"] {
        fs::write(secrets.join(name), format!("{SECRET}\n")).unwrap();
    }
    let mut service = command(folder.path(), &["serve", "budwood.toml"]);
    service.env("CREDENTIALS_DIRECTORY", &secrets);
    let service = Running::without_secrets(folder.path(), service).await;
    assert_eq!(
        service.bring("t-1", "+447700900001", "dead 1").await,
        Some(204)
    );
    service.stop().await;
}
