//! The forms that write: a text that waits, a fact that is wrong.
//!
//! Both go to the engine as a text does; what came of it is seen on the page that follows.

use actix_web::{
    HttpRequest, HttpResponse,
    http::StatusCode,
    web::{Data, Form},
};
use budwood_scheduler::PersonId;
use serde::Deserialize;
use tracing::info;

use super::{Office, answer, busy, guard::Refusal, paths, refused, render, to};
use crate::{
    engine::{
        DeskDeed, Input, Told, WithText,
        looks::{Look, Unseen},
    },
    service::telemetry,
};

#[derive(Deserialize)]
pub(super) struct WithForm {
    token: String,
    what: String,
    #[serde(default)]
    to: String,
    #[serde(default)]
    next: String,
}

#[derive(Deserialize)]
pub(super) struct FixForm {
    token: String,
    person: String,
    #[serde(default)]
    count: String,
    reason: String,
}

/// Something is done with a text that waits.
pub(super) async fn with_text(
    request: HttpRequest,
    office: Data<Office>,
    form: Form<WithForm>,
) -> HttpResponse {
    let Some(Look::Queue(Some(message))) = paths::look(request.path()) else {
        return no_such_deed(&office);
    };
    let with = match form.what.as_str() {
        "ask" => Some(WithText::Ask),
        "close" => Some(WithText::Close),
        "pass" => form.to.parse().ok().map(|id| WithText::Pass(PersonId(id))),
        number => number.parse().ok().map(WithText::Accept),
    };
    let Some(with) = with else {
        return no_such_deed(&office);
    };
    let deed = DeskDeed::Waiting { message, with };
    // Only a page of ours may follow.
    let next = paths::look(&form.next).filter(|next| matches!(next, Look::Queue(_)));
    let next = next.unwrap_or(Look::Queue(None));
    done(&request, &office, &form.token, deed, &next).await
}

/// A fact is put right.
pub(super) async fn fix(
    request: HttpRequest,
    office: Data<Office>,
    form: Form<FixForm>,
) -> HttpResponse {
    let (Some(Look::Fact(fact)), Ok(person)) =
        (paths::look(request.path()), form.person.parse::<u32>())
    else {
        return no_such_deed(&office);
    };
    let count = match form.count.trim() {
        "" => None,
        number => match number.parse() {
            Ok(number) => Some(number),
            Err(_) => return no_such_deed(&office),
        },
    };
    let deed = DeskDeed::Fix {
        fact,
        count,
        reason: form.reason.clone(),
    };
    let next = Look::Person(PersonId(person));
    done(&request, &office, &form.token, deed, &next).await
}

async fn done(
    request: &HttpRequest,
    office: &Office,
    token: &str,
    deed: DeskDeed,
    next: &Look,
) -> HttpResponse {
    if let Err(refusal) = office.origins.check_form(request) {
        return refused(office, request, refusal);
    }
    let Some((shown, session)) = office.session(request) else {
        return to("/log-in");
    };
    if !session.is_own_form(token) {
        return refused(office, request, Refusal::OldForm);
    }
    let input = Input::Desk {
        viewer: session.viewer.clone(),
        deed,
    };
    let told: Told = match office.handle.submit(input).await {
        Ok(told) => told,
        Err(why) => return busy(office, request, &why),
    };
    match told.done {
        Some(Ok(outcome)) => {
            info!(
                { telemetry::VIEWER_ID } = session.viewer.person.0,
                outcome = outcome.name(),
                "something was done at a desk"
            );
            to(&paths::path(next))
        }
        Some(Err(Unseen::Stranger)) | None => {
            office.sessions.end(&shown);
            to("/log-in")
        }
        Some(Err(Unseen::NotTheirs(_))) => answer(
            StatusCode::FORBIDDEN,
            render::problem(&office.texts, None, "page-not-yours"),
        ),
        Some(Err(Unseen::Nothing(_))) => no_such_deed(office),
    }
}

fn no_such_deed(office: &Office) -> HttpResponse {
    answer(
        StatusCode::NOT_FOUND,
        render::problem(&office.texts, None, "page-not-done"),
    )
}
