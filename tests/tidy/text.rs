//! What may be written where.

use super::{Source, expect_none, sources};

/// A library, how its use looks, and the only files that may use it.
const AT_HOME: [(&str, &str, &[&str]); 4] = [
    (
        "actix",
        "actix_",
        &["bot/src/service/web.rs", "bot/src/service/web/"],
    ),
    (
        "reqwest",
        "reqwest::",
        &[
            "bot/src/service/gateway/http.rs",
            "bot/src/service/gateway/oneapi.rs",
            "bot/src/service/gateway/oneapi/",
            "bot/src/service/gateway/template.rs",
            "bot/src/commands/health.rs",
        ],
    ),
    (
        "rustls",
        "rustls::",
        &[
            "bot/src/service/gateway/http.rs",
            "bot/src/service/gateway/smpp/tls.rs",
            "bot/src/service/certificate.rs",
        ],
    ),
    (
        "sled",
        "sled::",
        &["bot/src/store/sled.rs", "bot/src/store/sled/"],
    ),
];

/// The only file that reads the clock.
const CLOCK: &str = "bot/src/service/clock.rs";

/// Ranges that regulators keep for stories, and a code that no country has (ITU-T E.164).
const FICTION: [(&str, usize); 5] = [
    // Ofcom, "Numbers for drama": mobile, London, freephone.
    ("+447700900", 3),
    ("+442079460", 3),
    ("+448081570", 3),
    // Swedish Post and Telecom Authority, numbers for books and films: a mobile.
    ("+467017406", 2),
    ("+999", 10),
];

/// Lines of code, as "path:line: text", for which `bad` holds.
fn lines_where<'a>(
    sources: impl IntoIterator<Item = &'a Source>,
    bad: impl Fn(&Source, &str) -> bool,
) -> Vec<String> {
    let mut breaches = Vec::new();
    for source in sources {
        for (number, line) in source.code().filter(|(_, line)| bad(source, line)) {
            breaches.push(format!("{}:{number}: {}", source.path, line.trim()));
        }
    }
    breaches
}

#[test]
fn each_library_stays_at_home() {
    let sources = sources();
    let code = sources.iter().filter(|source| source.is_rust());
    let code: Vec<&Source> = code.filter(|source| source.is_under("bot/src")).collect();
    for (library, sign, homes) in AT_HOME {
        let breaches = lines_where(code.iter().copied(), |source, line| {
            let line = line.replace("sled::SledStore", "");
            line.contains(sign) && !homes.iter().any(|home| source.path.starts_with(home))
        });
        expect_none(
            &breaches,
            &format!("{library} is used in {homes:?} only; pass plain types across"),
        );
    }
}

#[test]
fn one_file_reads_the_clock() {
    let sources = sources();
    let code = sources.iter().filter(|source| source.is_rust());
    let breaches = lines_where(code, |source, line| {
        let reads = ["Utc", "Local", "SystemTime", "Instant"]
            .iter()
            .any(|clock| line.contains(&format!("{clock}::now")));
        let measures = ["bot/benches", "parser/benches"]
            .iter()
            .any(|benches| source.is_under(benches));
        reads && source.path != CLOCK && !measures
    });
    expect_none(&breaches, "take the time as an argument");
}

/// The store's library can hang in its asynchronous flush.
#[test]
fn the_store_flushes_and_waits() {
    let sign = ["flush", "async("].join("_");
    let sources = sources();
    let code = sources.iter().filter(|source| source.is_rust());
    let breaches = lines_where(code, |_, line| line.contains(&sign));
    expect_none(&breaches, "use the blocking flush of the committer");
}

#[test]
fn nothing_is_left_for_later() {
    let signs = ["todo", "unimplemented"].map(|name| format!("{name}!("));
    let marks =
        ["TO", "FIX"].map(|start| format!("{start}{}", if start == "TO" { "DO" } else { "ME" }));
    let sources = sources();
    let mut breaches = lines_where(sources.iter().filter(|s| s.is_rust()), |_, line| {
        signs.iter().any(|sign| line.contains(sign))
    });
    // "todo" is a word of people too.
    let is_ours =
        |source: &&Source| source.path != "Cargo.lock" && !source.is_under("tests/corpus");
    for source in sources.iter().filter(is_ours) {
        for (index, line) in source.text.lines().enumerate() {
            if marks.iter().any(|mark| line.contains(mark)) {
                breaches.push(format!("{}:{}: {}", source.path, index + 1, line.trim()));
            }
        }
    }
    expect_none(
        &breaches,
        "finish it, or take it out and say so in DEVELOPERS.md",
    );
}

#[test]
fn ignored_and_timed_tests_do_not_exist() {
    let signs = [
        "#[ignore".to_string(),
        format!("#[{}", "should_panic"),
        format!("thread::{}(", "sleep"),
    ];
    let sources = sources();
    let tests = sources.iter().filter(|source| {
        source.is_rust() && (source.is_under("tests") || source.path.contains("tests"))
    });
    let breaches = lines_where(tests, |source, line| {
        source.path != "tests/tidy/text.rs" && signs.iter().any(|sign| line.contains(sign))
    });
    expect_none(
        &breaches,
        "assert what must hold; wait for an event, not for a time",
    );
}

/// What one machine calls its folders is of no use on another.
#[test]
fn no_machine_and_no_registry_is_named() {
    // Put together here, so that this file does not name them either.
    let signs = [
        concat!("/ho", "me/"),
        concat!("/ro", "ot/"),
        concat!("/t", "mp/"),
        concat!("pypi", ".org"),
        concat!("python", "hosted"),
        concat!("npm", "js"),
        concat!("crates", ".io/"),
    ];
    let mut breaches = Vec::new();
    for source in sources() {
        if source.path.ends_with("Cargo.lock") || source.path == "tests/tidy/text.rs" {
            continue;
        }
        for (index, line) in source.text.lines().enumerate() {
            if signs.iter().any(|sign| line.contains(sign)) {
                breaches.push(format!("{}:{}: {}", source.path, index + 1, line.trim()));
            }
        }
    }
    expect_none(
        &breaches,
        "write a path from the top of the project, or take it as an argument",
    );
}

#[test]
fn no_real_number_is_called() {
    let mut breaches = Vec::new();
    for source in sources() {
        // Scripts for peers have made-up numbers of many countries, to compare numbering plans.
        let is_plan = source.is_under("tests/peers");
        if is_plan || !(source.is_under("demo-data") || source.is_under("tests")) {
            continue;
        }
        for (index, line) in source.text.lines().enumerate() {
            for number in numbers(line).filter(|number| !is_fiction(number)) {
                breaches.push(format!("{}:{}: {number}", source.path, index + 1));
            }
        }
    }
    expect_none(
        &breaches,
        "use +447700900000 to +447700900999, which nobody has",
    );
}

/// Numbers with a plus and as many digits as a country's numbers have.
fn numbers(line: &str) -> impl Iterator<Item = String> {
    line.split('+').skip(1).filter_map(|rest| {
        let digits: String = rest.chars().take_while(char::is_ascii_digit).collect();
        (10..=15)
            .contains(&digits.len())
            .then(|| format!("+{digits}"))
    })
}

fn is_fiction(number: &str) -> bool {
    FICTION.iter().any(|(range, free)| {
        let rest = number.strip_prefix(range);
        rest.is_some_and(|rest| rest.len() == *free)
    })
}
