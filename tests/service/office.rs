//! The walk of README.md: the demo's list, the service, a code, a page, a text, and the page again.

use std::{fs, time::Duration};

use super::running::{Running, budwood_in, command, text_of};
use crate::http::client;

const CONFIG: &str = include_str!("../../demo-data/office.toml");

fn free_port() -> u16 {
    let bound = std::net::TcpListener::bind("127.0.0.1:0").expect("a free port");
    bound.local_addr().expect("bound").port()
}

/// What `budwood office code` prints: the code first.
fn code(folder: &std::path::Path) -> String {
    let args = ["office", "code", "budwood.toml", "--for", "Mara Tindel"];
    let said = text_of(&budwood_in(folder, &args));
    let code: String = said.chars().take_while(char::is_ascii_digit).collect();
    assert_eq!(code.len(), 6, "{said}");
    code
}

#[tokio::test]
async fn a_stranger_sees_a_text_on_the_page() {
    let folder = tempfile::tempdir().expect("a folder");
    let (web, office) = (free_port(), free_port());
    let config = CONFIG
        .replace("../target/office/", "")
        .replace("8470", &web.to_string())
        .replace("8471", &office.to_string());
    fs::write(folder.path().join("budwood.toml"), config).expect("a configuration");
    let roll = crate::fixture::DEMO_ROLL;
    fs::write(folder.path().join("roll.csv"), roll).expect("a list");
    let args = ["roll", "load", "roll.csv", "--config", "budwood.toml"];
    let loaded = budwood_in(folder.path(), &args);
    assert!(loaded.status.success(), "{}", text_of(&loaded));
    let serve = command(folder.path(), &["serve", "budwood.toml"]);
    let service = Running::without_secrets(folder.path(), serve).await;
    let url = format!("http://127.0.0.1:{office}");
    let policy = reqwest::redirect::Policy::none();
    let browser = budwood::service::gateway::http::client().redirect(policy);
    let browser = browser.build().expect("a client");
    let form = format!("name=mara+tindel&code={}", code(folder.path()));
    let entered = browser
        .post(format!("{url}/log-in/code"))
        .header("origin", &url)
        .header("content-type", "application/x-www-form-urlencoded")
        .body(form)
        .send()
        .await
        .expect("an answer");
    let cookie = entered.headers()["set-cookie"]
        .to_str()
        .expect("text")
        .to_owned();
    let cookie = cookie.split(';').next().expect("a cookie").to_owned();
    let page = async || {
        let page = client().get(format!("{url}/groups/KOLO"));
        let page = page
            .header("cookie", &cookie)
            .send()
            .await
            .expect("an answer");
        page.text().await.expect("a page")
    };
    let before = page().await;
    assert!(
        before.contains("Keti") && !before.contains("512 of 520"),
        "{before}"
    );
    // A text is a file, moved in when it is whole.
    let texts = folder.path().join("texts");
    fs::create_dir_all(texts.join("in")).expect("a folder");
    fs::write(texts.join("row"), "+447700900005 dead 8").expect("a text");
    fs::rename(texts.join("row"), texts.join("in/row")).expect("it moves");
    let is_seen = async || page().await.contains("512 of 520");
    service.until("the text is on the page", is_seen).await;
    tokio::time::timeout(Duration::from_secs(60), service.stop())
        .await
        .expect("it stops");
}
