//! What a modem is asked for before it is of use: its SIM, and to tell of what comes.

use super::{
    Settings,
    errors::Ended,
    line::{Failed, Line},
};

/// Gives the PIN where the SIM asks for one. Three wrong ones lock the SIM, so one that was refused
/// is not given again until the service starts anew.
pub(super) async fn unlock(line: &mut Line, settings: &Settings) -> Result<(), Ended> {
    let asked = line.command("AT+CPIN?", "+CPIN:").await;
    let state = match asked {
        Ok(lines) => lines.into_iter().next().unwrap_or_default(),
        // 27.007, 9.2: no SIM; any other error is told by what comes next.
        Err(Failed::Error(Some(10))) => return Err("there is no SIM in the modem".into()),
        Err(Failed::Error(_)) => return Ok(()),
        Err(error) => return Err(error.to_string()),
    };
    match state.as_str() {
        "SIM PIN" => {}
        "SIM PUK" => return Err("the SIM is locked and wants its PUK".into()),
        _ => return Ok(()),
    }
    let Some(pin) = settings.take_pin() else {
        return Err("the SIM wants a PIN, and none is set or the one that is was wrong".into());
    };
    match line.command(&format!("AT+CPIN={}", pin.reveal()), "").await {
        Ok(_) => {
            settings.pin_was_right();
            Ok(())
        }
        Err(Failed::Error(_)) => {
            Err("the PIN is wrong; set the right one and start the service again".into())
        }
        Err(error) => Err(error.to_string()),
    }
}

/// Asks to be told of messages and reports. Modems differ in what they can tell.
pub(super) async fn news_wanted(line: &mut Line) -> Result<(), Ended> {
    for command in [
        "AT+CNMI=2,1,0,1,0",
        "AT+CNMI=1,1,0,1,0",
        "AT+CNMI=2,1,0,0,0",
        "AT+CNMI=2,1",
    ] {
        match line.command(command, "").await {
            Ok(_) => return Ok(()),
            Err(Failed::Error(_)) => {}
            Err(error) => return Err(error.to_string()),
        }
    }
    // The memory is looked through now and then in any case.
    Ok(())
}
