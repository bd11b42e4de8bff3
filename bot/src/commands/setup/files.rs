//! What `budwood setup` writes and says, by kind of gateway.

use std::path::Path;

use base64::{Engine as _, engine::general_purpose::STANDARD};

use super::{Answers, Kind, random};
use crate::service::gateway::modem;

/// What the kind is called as an answer.
pub(super) const fn name_of(kind: Kind) -> &'static str {
    match kind {
        Kind::Modem => "modem",
        Kind::Smpp => "smpp",
        Kind::Oneapi => "oneapi",
        Kind::Kannel => "kannel",
    }
}

/// The settings; all others are explained in `deploy/budwood.toml`.
pub(super) fn config(answers: &Answers) -> String {
    let Answers {
        country,
        zone,
        number,
        phone,
        kind,
        ..
    } = answers;
    let gateway = gateway(*kind, number);
    format!(
        "# The settings of a Budwood service; deploy/budwood.toml explains every key.\n\n\
         [store]\nfolder = \"/var/lib/budwood/store\"\n\n\
         [web]\nlisten = \"127.0.0.1:8470\"\n\n\
         {gateway}\n\
         [line]\nname = \"line\"\nown_number = \"{number}\"\ncountry = \"{country}\"\n\
         fallback_zone = \"{zone}\"\n\n\
         [operator]\nphone = \"{phone}\"\n"
    )
}

fn gateway(kind: Kind, number: &str) -> String {
    match kind {
        Kind::Modem => format!(
            "[[gateway]]\nname = \"sim1\"\nkind = \"modem\"\ndevice = \"{}\"\nparallel = 1\n\
             parts_a_minute = 8\n",
            first_modem()
        ),
        Kind::Smpp => format!(
            "[[gateway]]\nname = \"centre\"\nkind = \"smpp\"\naddress = \"smsc.example:2775\"\n\
             system_id = \"budwood\"\n[gateway.source]\naddress = \"{number}\"\n"
        ),
        Kind::Oneapi => format!(
            "[[gateway]]\nname = \"provider\"\nkind = \"oneapi\"\n[gateway.in]\n\
             auth = \"signature\"\n[gateway.out]\n\
             base_url = \"https://sms.provider.example/smsmessaging/v1\"\nsender = \"{number}\"\n\
             notify_url = \"https://budwood.example/sms/receipts/provider\"\nauth = \"bearer\"\n"
        ),
        Kind::Kannel => format!(
            "[[gateway]]\nname = \"kannel\"\nkind = \"template\"\npreset = \"kannel\"\n\
             [gateway.out]\nurl = \"http://127.0.0.1:13013/cgi-bin/sendsms\"\nuser = \"budwood\"\n\
             sender = \"{number}\"\nreceipt_url = \"http://127.0.0.1:8470/sms/receipts/kannel\"\n\
             [gateway.in]\nverify = \"networks\"\nnetworks = [\"127.0.0.1\"]\n"
        ),
    }
}

/// The first that is plugged in, by the name that stays the same.
fn first_modem() -> String {
    let first = modem::plugged_in().into_iter().next();
    first.unwrap_or_else(|| "/dev/ttyUSB0".to_owned())
}

/// The secrets: ours are made, those of others are left empty.
pub(super) fn secrets(kind: Kind) -> anyhow::Result<String> {
    let lines = match kind {
        Kind::Modem => "# The PIN of the SIM, if it has one.\n# BUDWOOD_SECRET_SIM1=\n".to_owned(),
        Kind::Smpp => "# The password of your account.\nBUDWOOD_SECRET_CENTRE=\n".to_owned(),
        Kind::Oneapi => format!(
            "# The token that your provider gives you.\nBUDWOOD_SECRET_PROVIDER=\n\
             # The key by which the provider signs: give it to them, and to nobody else.\n\
             BUDWOOD_SECRET_PROVIDER_IN=whsec_{}\n",
            STANDARD.encode(random::<32>()?)
        ),
        Kind::Kannel => format!(
            "# The password of user budwood in Kannel's configuration.\n\
             BUDWOOD_SECRET_KANNEL={}\n",
            data_encoding::HEXLOWER.encode(&random::<16>()?)
        ),
    };
    Ok(format!(
        "# The secrets of a Budwood service. Let nobody else read it.\n{lines}"
    ))
}

/// The adviser; groups, farmers and blocks are added below.
pub(super) fn people(answers: &Answers) -> String {
    let Answers { adviser, phone, .. } = answers;
    format!("row,group,name,role,phone\nperson,,\"{adviser}\",adviser,{phone}\n")
}

/// What to tell the provider, and what to do next.
pub(super) fn left_to_do(kind: Kind, folder: &Path) -> String {
    let first = match kind {
        Kind::Modem => {
            "1. Look whether `device` in budwood.toml is your modem, and put the PIN of the SIM, if \
             it has one, into budwood.env."
        }
        Kind::Smpp => {
            "1. Ask your provider for: the address and port of the message centre, system_id and \
             password, TON and NPI of your number, its default alphabet, how receipts write ids, \
             and how many texts a second. Put them into budwood.toml and the password into \
             budwood.env."
        }
        Kind::Oneapi => {
            "1. Tell your provider: texts go to https://YOUR.NAME/sms/in/provider, receipts to \
             https://YOUR.NAME/sms/receipts/provider, signed as Standard Webhooks 1.0 says with \
             the key BUDWOOD_SECRET_PROVIDER_IN. Ask for: the address (base_url) and a token, and \
             put them into budwood.toml and budwood.env."
        }
        Kind::Kannel => {
            "1. In Kannel's configuration: a group sendsms-user with username budwood and the \
             password in budwood.env, and an sms-service whose post-url is \
             http://127.0.0.1:8470/sms/in/kannel (deploy/operator.md shows both)."
        }
    };
    let shown = folder.display();
    format!(
        "{first}\n\
         2. Add groups, farmers and blocks to people.csv; `budwood roll columns` explains it.\n\
         3. budwood check {shown}/budwood.toml --try\n\
         4. budwood roll load {shown}/people.csv --config {shown}/budwood.toml\n\
         5. budwood serve {shown}/budwood.toml\n"
    )
}
