//! The running service reads a changed configuration.

use std::fs;

use super::{
    office,
    running::{Running, budwood_in, text_of},
};

/// Only what is looked up each time may change. A pack of the operator tells that it took effect.
#[tokio::test]
async fn a_changed_configuration_is_read_while_the_service_runs() {
    let folder = office(None, "");
    let place = folder.path();
    let config = place.join("budwood.toml");
    let before = fs::read_to_string(&config).unwrap();
    let reload = || budwood_in(place, &["reload", "budwood.toml"]);
    let refused = reload();
    assert!(!refused.status.success());
    assert!(
        text_of(&refused).contains("no service runs"),
        "{}",
        text_of(&refused)
    );

    let service = Running::start(place).await;
    assert!(text_of(&reload()).contains("as it was"));

    fs::write(&config, before.replace("127.0.0.1", "127.0.0.2")).unwrap();
    let refused = reload();
    assert!(!refused.status.success());
    assert!(
        text_of(&refused).contains("[web] cannot change"),
        "{}",
        text_of(&refused)
    );

    fs::write(
        &config,
        format!("{before}[nudges]\nquiet_from = \"soon\"\n"),
    )
    .unwrap();
    service.signal("-HUP");
    service.wait_for_log("nudges.quiet_from").await;

    let hours = format!("{before}[nudges]\nwindow_from = \"14:00\"\n");
    fs::write(&config, &hours).unwrap();
    service.signal("-HUP");
    service.wait_for_log("new: [nudges]").await;

    fs::write(&config, format!("{hours}[log]\nfilter = \"error\"\n")).unwrap();
    let taken = reload();
    assert!(
        text_of(&taken).contains("new: the log's filter"),
        "{}",
        text_of(&taken)
    );
    let status = service.bring("t-1", "+447700900005", "dead 8").await;
    assert_eq!(status, Some(204));
    let logged = service.stop().await;
    assert!(
        !logged.contains("everything taken in is stored"),
        "{logged}"
    );
}
