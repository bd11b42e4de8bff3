//! Blocks that cannot work, each refused with the key that is wrong.

use super::config;

/// A block that can be read.
const GOOD: &str = "[gateway.out]\nauth = \"none\"\nquery = { t = \"{text}\", n = \"{to}\" }\n\
    url = \"https://a.example/s\"\n";

#[track_caller]
fn assert_refused(blocks: Vec<(String, &str)>) {
    for (block, why) in blocks {
        let error = config(&block).unwrap_err();
        assert!(error.contains(why), "{block}\n{error}");
    }
}

#[test]
fn what_cannot_be_sent_is_refused() {
    let good = GOOD;
    let out = good.replace("url = \"https://a.example/s\"\n", "");
    config(good).unwrap();
    assert_refused(vec![
        (String::new(), "out: is missing, and [gateway.in] too"),
        (out.clone(), "out.url: is missing"),
        (
            format!("{out}url = \"http://a.example/s\"\n"),
            "out.url: expected https",
        ),
        (
            format!("{out}url = \"https://{{to}}.example/s\"\n"),
            "out.url",
        ),
        (good.replace("{text}", "x"), "no"),
        (
            good.replace("{text}", "{txt}"),
            "out.query.t: expected one of {to}",
        ),
        (good.replace("\"none\"", "\"basic\""), "out.user: is needed"),
        (good.replace("\"none\"", "\"form:k\""), "there is no form"),
        (good.replace("\"none\"", "\"magic\""), "out.auth: expected"),
        (format!("{good}method = \"SEND\"\n"), "out.method: expected"),
        (format!("{good}json = \"{{\"\n"), "out.json: expected JSON"),
        (
            format!("{good}form = {{ a = \"{{from}}\" }}\n"),
            "out.sender: is missing",
        ),
        (
            format!("{good}nonsense = 1\n"),
            "out.nonsense: is not a key",
        ),
        (
            format!("preset = \"other\"\n{good}"),
            "preset: expected one of: kannel, oneapi",
        ),
        (
            format!("allow_demo_numbers = true\n{good}"),
            "only for a stand-in",
        ),
    ]);
}

#[test]
fn what_cannot_be_taken_in_is_refused() {
    let good = GOOD;
    assert_refused(vec![
        (
            format!("{good}[gateway.in]\nfrom = \"f\"\ntext = \"t\"\n"),
            "in.verify: is missing",
        ),
        (
            format!("{good}[gateway.in]\nfrom = \"f\"\ntext = \"t\"\nverify = \"networks\"\n"),
            "in.networks: is needed",
        ),
        (
            format!("{good}[gateway.in]\nfrom = \"f\"\ntext = \"t\"\nverify = \"hmac\"\n"),
            "in.hmac: is needed",
        ),
        (
            format!(
                "{good}[gateway.in]\nfrom = \"f\"\ntext = \"t\"\nverify = \"bearer\"\n\
                 charset = \"query:c\"\n"
            ),
            "in.charset: is only for body = \"text\"",
        ),
        (
            format!(
                "{good}[gateway.in]\nfrom = \"f\"\ntext = \"t\"\nverify = \"bearer\"\nitems = \"/a\"\n"
            ),
            "in.items: is only for",
        ),
        (
            format!(
                "{good}[gateway.receipts]\nstate = \"s\"\nverify = \"bearer\"\nstates = {{}}\n"
            ),
            "receipts.ours: expected ours",
        ),
    ]);
}

/// A code over the body says nothing of what stands beside it.
#[test]
fn a_proof_of_the_body_is_refused_for_values_elsewhere() {
    let good = GOOD;
    assert_refused(vec![
        (
            format!(
                "{good}[gateway.in]\nfrom = \"query:f\"\ntext = \"t\"\nverify = \"signature\"\n"
            ),
            "in.verify: \"signature\" proves the body alone, and from is not taken from it",
        ),
        (
            format!(
                "{good}[gateway.in]\nfrom = \"f\"\ntext = \"t\"\nverify = \"hmac\"\n\
                 hmac = {{ header = \"h\" }}\n[gateway.receipts]\nid = \"i\"\n\
                 state = \"header:s\"\nstates = {{}}\n"
            ),
            "in.verify: \"hmac\" proves the body alone, and state is not",
        ),
        (
            format!(
                "{good}[gateway.receipts]\nbody = \"query\"\nid = \"i\"\nstate = \"s\"\n\
                 verify = \"signature\"\nstates = {{}}\n"
            ),
            "receipts.verify: \"signature\" proves the body alone, and id is not",
        ),
        (
            "preset = \"kannel\"\n[gateway.out]\nurl = \"https://a.example/s\"\nuser = \"bot\"\n\
             sender = \"12345\"\n[gateway.in]\nverify = \"signature\"\n"
                .into(),
            "in.verify: \"signature\" proves the body alone, and from is not",
        ),
    ]);
}
