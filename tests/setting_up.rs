//! `budwood setup`, and what `budwood check --try` finds on this computer.

use std::{
    fs,
    io::Write,
    net::TcpListener,
    os::unix::fs::PermissionsExt,
    path::Path,
    process::{Command, Output, Stdio},
};

use budwood::service::config::Config;

fn budwood(folder: &Path, args: &[&str], typed: &str) -> Output {
    let mut child = Command::new(env!("CARGO_BIN_EXE_budwood"))
        .current_dir(folder)
        .args(args)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // Who was given every answer as a flag reads none of it.
    let _ = child.stdin.take().unwrap().write_all(typed.as_bytes());
    child.wait_with_output().unwrap()
}

fn said(output: &Output) -> String {
    let all = [output.stdout.as_slice(), &output.stderr].concat();
    String::from_utf8(all).unwrap()
}

const FLAGS: [&str; 12] = [
    "--country",
    "gb",
    "--zone",
    "Asia/Jakarta",
    "--number",
    "12345",
    "--adviser",
    "Mara Tindel",
    "--phone",
    "07700 900100",
    "--gateway",
    "oneapi",
];

#[test]
fn six_flags_make_a_service_of_each_kind_that_can_be_checked_and_given_its_people() {
    for (kind, name, told) in [
        ("modem", "sim1", "PIN"),
        ("smpp", "centre", "system_id"),
        ("oneapi", "provider", "/sms/in/provider"),
        ("kannel", "kannel", "sms-service"),
    ] {
        let place = tempfile::tempdir().unwrap();
        let mut args = vec!["setup", "here"];
        args.extend(FLAGS);
        *args.last_mut().unwrap() = kind;
        let done = budwood(place.path(), &args, "");
        assert!(done.status.success(), "{}", said(&done));
        assert!(said(&done).contains(told), "{}", said(&done));
        let here = place.path().join("here");
        for (file, allowed) in [
            ("budwood.toml", 0o644),
            ("budwood.env", 0o600),
            ("people.csv", 0o600),
        ] {
            let mode = fs::metadata(here.join(file)).unwrap().permissions().mode();
            assert_eq!(mode & 0o777, allowed, "{file}");
        }
        let config = Config::load(&here.join("budwood.toml")).unwrap();
        assert_eq!(config.gateways[0].name, name);
        assert_eq!(config.line.country, "GB");
        let operator = config.operator.unwrap();
        assert_eq!(operator.phone, "+447700900100");
        let people = budwood(&here, &["roll", "check", "people.csv"], "");
        assert!(people.status.success(), "{}", said(&people));
        // A second run changes nothing.
        let before = fs::read(here.join("budwood.env")).unwrap();
        let again = budwood(place.path(), &args, "");
        assert!(!again.status.success() && said(&again).contains("is there already"));
        assert_eq!(fs::read(here.join("budwood.env")).unwrap(), before);
    }
}

#[test]
fn what_no_flag_says_is_asked_for_until_it_is_right() {
    let place = tempfile::tempdir().unwrap();
    let typed = "England\nGB\nJakarta\nAsia/Jakarta\n12345\nkannel\nMara\n077\n07700900100\n";
    let done = budwood(place.path(), &["setup", "."], typed);
    assert!(done.status.success(), "{}", said(&done));
    let text = said(&done);
    assert!(text.contains("\"England\" is no country"), "{text}");
    assert!(text.contains("\"Jakarta\" is no time zone"), "{text}");
    assert!(
        text.contains("is a short code; a person's number is longer"),
        "{text}"
    );
    let short = tempfile::tempdir().unwrap();
    let done = budwood(short.path(), &["setup", "."], "GB\n");
    assert!(said(&done).contains("give it as --zone"), "{}", said(&done));
    assert_eq!(fs::read_dir(short.path()).unwrap().count(), 0);
}

/// Two services never share a key.
#[test]
fn keys_are_made_anew() {
    let key = || {
        let place = tempfile::tempdir().unwrap();
        let mut args = vec!["setup", "."];
        args.extend(FLAGS);
        assert!(budwood(place.path(), &args, "").status.success());
        let text = fs::read_to_string(place.path().join("budwood.env")).unwrap();
        let (_, key) = text.split_once("whsec_").unwrap();
        key.trim().to_owned()
    };
    let (one, other) = (key(), key());
    assert_ne!(one, other);
    // Standard Webhooks: 24 to 64 bytes in Base64.
    assert_eq!(one.len(), 44, "{one}");
}

#[test]
fn everything_that_is_wrong_here_is_told_at_once() {
    let place = tempfile::tempdir().unwrap();
    let mut args = vec!["setup", "."];
    args.extend(FLAGS);
    assert!(budwood(place.path(), &args, "").status.success());
    let taken = TcpListener::bind("127.0.0.1:0").unwrap();
    let port = taken.local_addr().unwrap().port();
    let file = place.path().join("budwood.toml");
    let text = fs::read_to_string(&file).unwrap();
    let text = text.replace("127.0.0.1:8470", &format!("127.0.0.1:{port}"));
    let text = text.replace("/var/lib/budwood/store", "store");
    fs::write(&file, text.replace("[web]", "reserve_mb = 1048576\n[web]")).unwrap();
    let tried = budwood(place.path(), &["check", "budwood.toml", "--try"], "");
    let found = said(&tried);
    assert!(!tried.status.success(), "{found}");
    for part in [
        "cannot listen on",
        "BUDWOOD_SECRET_PROVIDER",
        "the reserve is",
    ] {
        assert!(found.contains(part), "{part}: {found}");
    }
    drop(taken);
    fs::write(&file, text.replace("[web]", "reserve_mb = 16\n[web]")).unwrap();
    let good = Command::new(env!("CARGO_BIN_EXE_budwood"))
        .current_dir(place.path())
        .args(["check", "budwood.toml", "--try"])
        .env("BUDWOOD_SECRET_PROVIDER", "token")
        .env(
            "BUDWOOD_SECRET_PROVIDER_IN",
            format!("whsec_{}", "QUJD".repeat(8)),
        )
        .output()
        .unwrap();
    let found = said(&good);
    assert!(good.status.success(), "{found}");
    assert!(
        found.contains("is free") && found.contains("until it is on the disk"),
        "{found}"
    );
    assert!(!place.path().join("store").exists(), "a check made a store");
}

/// A modem that is not there is named, with those that are; one that is opens.
#[test]
fn the_line_of_a_modem_is_looked_for() {
    let place = tempfile::tempdir().unwrap();
    let mut args = vec!["setup", "."];
    args.extend(FLAGS);
    *args.last_mut().unwrap() = "modem";
    assert!(budwood(place.path(), &args, "").status.success());
    let file = place.path().join("budwood.toml");
    let text = fs::read_to_string(&file).unwrap();
    let text = text.replace("/var/lib/budwood/store", "store");
    let line = text.lines().find(|line| line.starts_with("device = "));
    let line = line.expect("a modem has a device").to_owned();
    let found = |device: &str| {
        fs::write(&file, text.replace(&line, &format!("device = {device:?}"))).unwrap();
        said(&budwood(
            place.path(),
            &["check", "budwood.toml", "--try"],
            "",
        ))
    };
    let gone = found("/dev/serial/by-id/none");
    assert!(
        gone.contains("gateway sim1: /dev/serial/by-id/none"),
        "{gone}"
    );
    assert!(gone.contains("plugged in"), "{gone}");
    let no_line = found("budwood.toml");
    assert!(no_line.contains("is no serial line"), "{no_line}");
    // The end of a line that the system makes as it is opened.
    let there = found("/dev/ptmx");
    assert!(there.contains("gateway sim1: /dev/ptmx opens"), "{there}");
}
