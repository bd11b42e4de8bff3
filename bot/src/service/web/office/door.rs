//! The door: a name, then the code that came to its phone, then in; and out again.
//!
//! Whether a name is on the list is never said.

use std::sync::{Mutex, PoisonError};

use actix_web::{
    HttpRequest, HttpResponse,
    cookie::{Cookie, SameSite, time::Duration},
    http::{StatusCode, header},
    web::{Data, Form},
};
use chrono::{DateTime, Utc};
use serde::Deserialize;
use tracing::{info, warn};

use super::{Office, answer, busy, guard, guard::Refusal, refused, render, to};
use crate::{
    engine::{Input, Knock, looks::Viewer},
    service::telemetry,
    words::limits,
};

/// How many came to the door in this minute.
#[derive(Default)]
pub(super) struct Rate(Mutex<(i64, u32)>);

impl Rate {
    /// Whether one more is looked at.
    fn has_room(&self, now: DateTime<Utc>) -> bool {
        let mut seen = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        let minute = now.timestamp().div_euclid(60);
        if seen.0 != minute {
            *seen = (minute, 0);
        }
        seen.1 = seen.1.saturating_add(1);
        seen.1 <= limits::DOOR_A_MINUTE
    }
}

#[derive(Deserialize)]
pub(super) struct Name {
    name: String,
}

#[derive(Deserialize)]
pub(super) struct Code {
    name: String,
    code: String,
}

#[derive(Deserialize)]
pub(super) struct Token {
    token: String,
}

/// The door itself.
pub(super) async fn show(request: HttpRequest, office: Data<Office>) -> HttpResponse {
    if let Err(refusal) = office.origins.check_host(&request) {
        return refused(&office, &request, refusal);
    }
    let language = guard::language(&request, &office.texts);
    let page = render::door(&office.texts, language.as_deref(), None);
    answer(StatusCode::OK, page)
}

/// A name was given: its phone gets a code, if there is such a name.
pub(super) async fn knock(
    request: HttpRequest,
    office: Data<Office>,
    form: Form<Name>,
) -> HttpResponse {
    if let Err(refusal) = at_the_door(&office, &request) {
        return refused(&office, &request, refusal);
    }
    let name = short(&form.name);
    let knock = Knock::Name(name.clone());
    if let Err(why) = office.handle.submit(Input::Door(knock)).await {
        return busy(&office, &request, &why);
    }
    let language = guard::language(&request, &office.texts);
    let asks = render::Asks {
        name: &name,
        was_wrong: false,
    };
    let page = render::door(&office.texts, language.as_deref(), Some(&asks));
    answer(StatusCode::OK, page)
}

/// A code was given.
pub(super) async fn come_in(
    request: HttpRequest,
    office: Data<Office>,
    form: Form<Code>,
) -> HttpResponse {
    if let Err(refusal) = at_the_door(&office, &request) {
        return refused(&office, &request, refusal);
    }
    let name = short(&form.name);
    let knock = Knock::Code {
        name: name.clone(),
        code: short(&form.code),
    };
    let told = match office.handle.submit(Input::Door(knock)).await {
        Ok(told) => told,
        Err(why) => return busy(&office, &request, &why),
    };
    if let Some(viewer) = told.entered {
        return let_in(&office, &request, viewer);
    }
    warn!("a wrong code came at the office's door");
    let language = guard::language(&request, &office.texts);
    let asks = render::Asks {
        name: &name,
        was_wrong: true,
    };
    let page = render::door(&office.texts, language.as_deref(), Some(&asks));
    answer(StatusCode::FORBIDDEN, page)
}

fn let_in(office: &Office, request: &HttpRequest, viewer: Viewer) -> HttpResponse {
    let id = viewer.person;
    let Ok(shown) = office.sessions.begin(viewer, office.clock.now()) else {
        return refused(office, request, Refusal::TooMany);
    };
    info!(
        { telemetry::VIEWER_ID } = id.0,
        "somebody came in at the office's door"
    );
    let cookie = kept(office, shown, Duration::hours(limits::SESSION_HOURS));
    let mut response = to("/");
    if let Ok(cookie) = cookie.to_string().parse() {
        response.headers_mut().insert(header::SET_COOKIE, cookie);
    }
    response
}

/// Somebody goes out.
pub(super) async fn leave(
    request: HttpRequest,
    office: Data<Office>,
    form: Form<Token>,
) -> HttpResponse {
    if let Err(refusal) = office.origins.check_form(&request) {
        return refused(&office, &request, refusal);
    }
    let own = office.session(&request);
    let Some((shown, _)) = own.filter(|(_, session)| session.is_own_form(&form.token)) else {
        return refused(&office, &request, Refusal::OldForm);
    };
    office.sessions.end(&shown);
    let gone = kept(&office, String::new(), Duration::ZERO);
    let mut response = to("/log-in");
    if let Ok(cookie) = gone.to_string().parse() {
        response.headers_mut().insert(header::SET_COOKIE, cookie);
    }
    response
}

/// What a browser keeps: no script sees it, no other page has it sent.
fn kept(office: &Office, shown: String, age: Duration) -> Cookie<'static> {
    Cookie::build(office.origins.cookie_name(), shown)
        .path("/")
        .http_only(true)
        .same_site(SameSite::Strict)
        .secure(office.origins.is_encrypted())
        .max_age(age)
        .finish()
}

fn at_the_door(office: &Office, request: &HttpRequest) -> Result<(), Refusal> {
    office.origins.check_form(request)?;
    let has_room = office.rate.has_room(office.clock.now());
    has_room.then_some(()).ok_or(Refusal::TooMany)
}

fn short(text: &str) -> String {
    text.trim()
        .chars()
        .take(limits::ADDRESS_CHARS_MAX)
        .collect()
}
