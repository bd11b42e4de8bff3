//! The HTTP side: gateways bring texts and receipts here.
//!
//! - `POST /sms/in/{gateway}`: texts. Answered with 204 only when all of them are durable.
//! - `POST /sms/receipts/{gateway}`: what became of texts that we sent. The same.
//! - `GET /health`: whether new work is taken, and how much waits.
//! - `GET /metrics`: the same figures as a monitor collects them.
//!
//! Anything else is answered with problem details that say what to send instead. Deliberately
//! absent: what a text means, TLS (a front server does it), and pages for people, which have a port of
//! their own (`office`).

mod auth;
mod body;
mod metrics;
mod notification;
pub mod office;
mod problem;

use std::{future::Future, io, net::TcpListener, sync::Arc};

use actix_web::{
    App, HttpRequest, HttpResponse, HttpServer, ResponseError,
    dev::Server,
    guard::{self, Guard},
    http::header::{CACHE_CONTROL, CONTENT_TYPE, ContentType},
    web::{self, Data, Payload, ServiceConfig},
};
use chrono::{DateTime, Utc};
use serde::Serialize;

use self::{body::Incoming, problem::Problem};
use crate::{
    service::{
        clock::Clock,
        door::{Door, Takes},
        port::{Arrival, Intake, IntakeFuture},
        taken::Taken,
        telemetry,
    },
    words::{
        limits,
        traffic::{GatewayHealth, Inbound, Receipt},
    },
};

/// How the HTTP side is set up.
#[derive(Clone, Debug)]
pub struct WebSettings {
    /// The gateways that are called here.
    pub doors: Vec<Door>,
    /// Worker threads.
    pub workers: usize,
    /// The time, for signed requests.
    pub clock: Clock,
}

/// What every request may need.
struct Shared {
    intake: Arc<dyn Intake>,
    settings: WebSettings,
}

impl Shared {
    /// The gateway that is called by this path.
    fn door(&self, request: &HttpRequest) -> Result<&Door, Problem> {
        let name = request.match_info().get("gateway").unwrap_or_default();
        let mut doors = self.settings.doors.iter();
        doors
            .find(|door| door.gateway == name)
            .ok_or(Problem::NotFound)
    }
}

/// Serves until `shutdown` is done, then lets the requests that have begun end.
///
/// The listener is bound before, so that a test can ask for any free port and a service knows at
/// once when its port is taken.
///
/// # Errors
///
/// When the listener cannot be used.
pub async fn serve(
    listener: TcpListener,
    intake: Arc<dyn Intake>,
    settings: WebSettings,
    shutdown: impl Future<Output = ()> + Send + 'static,
) -> io::Result<()> {
    server(listener, intake, settings, shutdown)?.await
}

/// Takes the body of a notification apart as both paths do, and hands nothing on. What is wrong is
/// told in the words that the sender gets. For fuzzing, which has no use for a server.
pub fn items_in(
    body: &str,
) -> (
    Result<Taken<Inbound>, String>,
    Result<Taken<Receipt>, String>,
) {
    let texts = notification::texts(body, "http", None);
    let receipts = notification::receipts(body, "http");
    (
        texts.map_err(|problem| problem.to_string()),
        receipts.map_err(|problem| problem.to_string()),
    )
}

/// Puts the paths into an application.
pub fn routes(config: &mut ServiceConfig, intake: Arc<dyn Intake>, settings: WebSettings) {
    let names = settings.doors.iter();
    let names = names.filter(|door| matches!(door.takes, Takes::Template(_)));
    let names: Arc<[String]> = names.map(|door| door.gateway.clone()).collect();
    config
        .app_data(Data::new(Shared { intake, settings }))
        .service(
            web::resource("/sms/in/{gateway}")
                .route(web::post().to(take_texts))
                .route(web::get().guard(by_template(names.clone())).to(take_texts))
                .default_service(web::to(|payload| only("POST", payload))),
        )
        .service(
            web::resource("/sms/receipts/{gateway}")
                .route(web::post().to(take_receipts))
                .route(web::get().guard(by_template(names)).to(take_receipts))
                .default_service(web::to(|payload| only("POST", payload))),
        )
        .service(
            web::resource("/health")
                .route(web::get().to(health))
                .default_service(web::to(|payload| only("GET", payload))),
        )
        .service(
            web::resource("/metrics")
                .route(web::get().to(collected))
                .default_service(web::to(|payload| only("GET", payload))),
        )
        .default_service(web::to(not_found));
}

/// Some providers bring what they have in the query of a GET; only templates take that.
fn by_template(names: Arc<[String]>) -> impl Guard {
    guard::fn_guard(move |context| {
        let path = context.head().uri.path();
        let name = path.rsplit('/').next().unwrap_or_default();
        names.iter().any(|known| known == name)
    })
}

/// Not part of [`serve`], because what it is built with may not move between threads, and `serve`
/// may have to.
fn server(
    listener: TcpListener,
    intake: Arc<dyn Intake>,
    settings: WebSettings,
    shutdown: impl Future<Output = ()> + Send + 'static,
) -> io::Result<Server> {
    let workers = settings.workers;
    let worker =
        move || App::new().configure(|config| routes(config, intake.clone(), settings.clone()));
    let server = HttpServer::new(worker)
        .workers(workers)
        .max_connections(limits::CONNECTIONS_PER_WORKER_MAX)
        .client_request_timeout(limits::REQUEST_HEAD_TIMEOUT)
        .client_disconnect_timeout(limits::REFUSED_BODY_TIMEOUT)
        .keep_alive(limits::KEEP_ALIVE)
        .shutdown_timeout(limits::STOP_TIMEOUT_SECS)
        .shutdown_signal(shutdown)
        .listen(listener)?
        .run();
    Ok(server)
}

async fn take_texts(request: HttpRequest, payload: Payload, shared: Data<Shared>) -> HttpResponse {
    let mut incoming = Incoming::new(payload);
    let taken = texts_taken(&request, &mut incoming, &shared).await;
    answer(&request, incoming, taken)
}

async fn take_receipts(
    request: HttpRequest,
    payload: Payload,
    shared: Data<Shared>,
) -> HttpResponse {
    let mut incoming = Incoming::new(payload);
    let taken = receipts_taken(&request, &mut incoming, &shared).await;
    answer(&request, incoming, taken)
}

async fn texts_taken(
    request: &HttpRequest,
    incoming: &mut Incoming,
    shared: &Shared,
) -> Result<(), Problem> {
    let door = shared.door(request)?;
    let clock = &shared.settings.clock;
    let request_id = door.auth.request_id(request.headers());
    let texts = match &door.takes {
        Takes::OneApi => {
            let body = body::read(request, incoming, door, clock).await?;
            notification::texts(&body, &door.gateway, request_id)?
        }
        Takes::Template(inward) => {
            let call = body::call(request, incoming, door, clock).await?;
            let texts = inward.texts(&call, request_id);
            texts.map_err(Problem::NotAsSet)?
        }
    };
    note_left_out(request, texts.left_out);
    all(texts.items.into_iter().map(Arrival::Text), shared).await
}

async fn receipts_taken(
    request: &HttpRequest,
    incoming: &mut Incoming,
    shared: &Shared,
) -> Result<(), Problem> {
    let door = shared.door(request)?;
    let clock = &shared.settings.clock;
    let receipts = match &door.takes {
        Takes::OneApi => {
            let body = body::read(request, incoming, door, clock).await?;
            notification::receipts(&body, &door.gateway)?
        }
        Takes::Template(inward) => {
            let call = body::call(request, incoming, door, clock).await?;
            inward.receipts(&call).map_err(Problem::NotAsSet)?
        }
    };
    note_left_out(request, receipts.left_out);
    let receipts = receipts.items.into_iter();
    all(receipts.map(Arrival::Receipt), shared).await
}

/// Logs how many items could not be read; never what was in them.
fn note_left_out(request: &HttpRequest, left_out: usize) {
    if left_out > 0 {
        tracing::warn!(
            { telemetry::HTTP_ROUTE } = request.path(),
            left_out,
            "items of a notification could not be read"
        );
    }
}

/// Hands everything over first and waits after, so that what came together shares one flush of the
/// disk. When one is refused the gateway sends all again, and those that were taken count once.
async fn all(came: impl Iterator<Item = Arrival>, shared: &Shared) -> Result<(), Problem> {
    let waiting: Vec<IntakeFuture> = came.map(|one| shared.intake.take(one)).collect();
    for taken in waiting {
        taken.await.map_err(Problem::Refused)?;
    }
    Ok(())
}

/// Logs what was refused, once and here; never what was in it.
fn answer(request: &HttpRequest, incoming: Incoming, taken: Result<(), Problem>) -> HttpResponse {
    let Err(problem) = taken else {
        return HttpResponse::NoContent().finish();
    };
    tracing::warn!(
        { telemetry::HTTP_ROUTE } = request.path(),
        { telemetry::HTTP_STATUS } = problem.status_code().as_u16(),
        "a notification was not taken"
    );
    incoming.answered(problem.error_response())
}

async fn health(shared: Data<Shared>) -> HttpResponse {
    let health = shared.intake.health();
    let mut response = match health.trouble {
        None => HttpResponse::Ok(),
        Some(_) => HttpResponse::ServiceUnavailable(),
    };
    response
        .insert_header(ContentType::json())
        .insert_header((CACHE_CONTROL, "no-store"))
        .json(HealthBody {
            healthy: health.trouble.is_none(),
            trouble: health.trouble.as_deref(),
            inbox_waiting: health.inbox_waiting,
            outbox_waiting: health.outbox_waiting,
            unclear_waiting: health.unclear_waiting,
            held_back: HeldBackBody {
                answers: health.held_back.answers,
                notices: health.held_back.notices,
                strangers: health.held_back.strangers,
                unpaid: health.held_back.unpaid,
                services: health.held_back.services,
                echoes: health.held_back.echoes,
                machines: health.held_back.machines,
                costly: health.held_back.costly,
            },
            month: MonthBody {
                parts: health.month.parts,
                money: health.month.money(),
                gone_pct: health.month.gone_pct,
            },
            locked: health.locked,
            gateways: health.gateways.iter().map(GatewayBody::of).collect(),
        })
}

async fn collected(shared: Data<Shared>) -> HttpResponse {
    let now = shared.settings.clock.now();
    match metrics::page(&shared.intake.health(), now) {
        Some(page) => HttpResponse::Ok()
            .insert_header((CONTENT_TYPE, metrics::CONTENT_TYPE))
            .insert_header((CACHE_CONTROL, "no-store"))
            .body(page),
        None => HttpResponse::InternalServerError().finish(),
    }
}

#[derive(Serialize)]
struct HealthBody<'a> {
    healthy: bool,
    #[serde(skip_serializing_if = "Option::is_none")]
    trouble: Option<&'a str>,
    inbox_waiting: usize,
    outbox_waiting: usize,
    unclear_waiting: usize,
    held_back: HeldBackBody,
    month: MonthBody,
    locked: u64,
    gateways: Vec<GatewayBody<'a>>,
}

#[derive(Serialize)]
struct HeldBackBody {
    answers: u64,
    notices: u64,
    strangers: u64,
    unpaid: u64,
    services: u64,
    echoes: u64,
    machines: u64,
    costly: u64,
}

#[derive(Serialize)]
struct MonthBody {
    parts: u64,
    money: f64,
    gone_pct: Option<u32>,
}

#[derive(Serialize)]
struct GatewayBody<'a> {
    name: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    down_since: Option<DateTime<Utc>>,
    last_in: Option<DateTime<Utc>>,
    last_receipt: Option<DateTime<Utc>>,
    last_out: Option<DateTime<Utc>>,
    oldest_waiting: Option<DateTime<Utc>>,
    refused_in_a_row: u32,
    texts_in: u64,
    receipts: u64,
    texts_out: u64,
    failed: u64,
    #[serde(skip_serializing_if = "Option::is_none")]
    signal_pct: Option<u8>,
    #[serde(skip_serializing_if = "Option::is_none")]
    balance: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    trouble: Option<&'a str>,
}

impl<'a> GatewayBody<'a> {
    fn of(health: &'a GatewayHealth) -> Self {
        Self {
            name: &health.name,
            down_since: health.down_since,
            last_in: health.last_in,
            last_receipt: health.last_receipt,
            last_out: health.last_out,
            oldest_waiting: health.oldest_waiting,
            refused_in_a_row: health.refused_in_a_row,
            texts_in: health.passed.texts_in,
            receipts: health.passed.receipts,
            texts_out: health.passed.texts_out,
            failed: health.passed.failed,
            signal_pct: health.signal_pct,
            balance: health.balance.as_deref(),
            trouble: health.trouble.as_deref(),
        }
    }
}

async fn only(allow: &'static str, payload: Payload) -> HttpResponse {
    Incoming::new(payload).answered(Problem::MethodNotAllowed { allow }.error_response())
}

async fn not_found(payload: Payload) -> HttpResponse {
    Incoming::new(payload).answered(Problem::NotFound.error_response())
}
