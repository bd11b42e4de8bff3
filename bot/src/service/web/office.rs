//! Pages for the adviser and the clerk, on a port of their own.
//!
//! A name, then a code by text, then pages. Each page is asked of the engine as a question by text is,
//! so that it shows the same figures and who may see what stands in one table. Nothing here needs a
//! script, and nothing is fetched from elsewhere. Deliberately absent: what stands on a page, which is
//! the engine's, and any number beyond its last four digits.

mod desk;
mod door;
mod drawn;
mod guard;
mod paths;
mod render;
mod sessions;

use std::{
    future::Future,
    net::{SocketAddr, TcpListener},
};

use actix_web::{
    App, HttpRequest, HttpResponse, HttpServer,
    dev::Server,
    http::{
        StatusCode,
        header::{self, CACHE_CONTROL},
    },
    middleware::DefaultHeaders,
    web::{self, Data, FormConfig},
};
use tracing::info;
use url::Url;

use self::{
    door::Rate,
    guard::{Origins, Refusal},
    sessions::{Session, Sessions},
};
use crate::{
    engine::{
        Input,
        looks::{Look, Seen, Unseen},
    },
    service::{certificate::Certificate, clock::Clock, port::Refused, server::Handle, telemetry},
    wording::Texts,
    words::limits,
};

/// How the pages are served.
pub struct OfficeSettings {
    /// The address that people type, where it is another than the one listened on.
    pub address: Option<Url>,
    /// For a line that is encrypted by the program itself.
    pub certificate: Option<Certificate>,
    /// The time.
    pub clock: Clock,
}

/// What every request may need.
struct Office {
    handle: Handle,
    texts: Texts,
    clock: Clock,
    origins: Origins,
    sessions: Sessions,
    rate: Rate,
}

/// What no page goes without: nothing but itself may be loaded, framed or sent a form.
const HEADERS: [(&str, &str); 5] = [
    (
        "content-security-policy",
        "default-src 'none'; style-src 'self'; img-src 'self'; form-action 'self'; \
         base-uri 'none'; frame-ancestors 'none'",
    ),
    ("x-content-type-options", "nosniff"),
    // Another value would also take the origin off our own forms.
    ("referrer-policy", "same-origin"),
    ("cross-origin-opener-policy", "same-origin"),
    ("cross-origin-resource-policy", "same-origin"),
];

/// Serves until `shutdown` is done.
///
/// # Errors
///
/// When the listener cannot be used.
pub async fn serve(
    listener: TcpListener,
    handle: Handle,
    settings: OfficeSettings,
    shutdown: impl Future<Output = ()> + Send + 'static,
) -> anyhow::Result<()> {
    server(listener, handle, settings, shutdown)?.await?;
    Ok(())
}

fn server(
    listener: TcpListener,
    handle: Handle,
    settings: OfficeSettings,
    shutdown: impl Future<Output = ()> + Send + 'static,
) -> anyhow::Result<Server> {
    let own: SocketAddr = listener.local_addr()?;
    let is_encrypted = settings.certificate.is_some();
    let office = Data::new(Office {
        handle,
        texts: Texts::built_in()?,
        clock: settings.clock,
        origins: Origins::new(own, is_encrypted, settings.address.as_ref()),
        sessions: Sessions::default(),
        rate: Rate::default(),
    });
    let worker = move || {
        let headers = HEADERS
            .iter()
            .fold(DefaultHeaders::new(), |headers, one| headers.add(*one));
        let headers = headers.add((CACHE_CONTROL, "no-store"));
        App::new()
            .wrap(headers)
            .app_data(office.clone())
            .app_data(FormConfig::default().limit(limits::FORM_BYTES_MAX))
            .route("/office.css", web::get().to(style))
            .route("/favicon.ico", web::get().to(HttpResponse::NoContent))
            .route("/log-in", web::get().to(door::show))
            .route("/log-in", web::post().to(door::knock))
            .route("/log-in/code", web::post().to(door::come_in))
            .route("/log-out", web::post().to(door::leave))
            .route("/queue/{id}", web::post().to(desk::with_text))
            .route("/facts/{id}", web::post().to(desk::fix))
            .route("/queue/{id}", web::get().to(page))
            .route("/facts/{id}", web::get().to(page))
            .default_service(web::get().to(page))
    };
    let server = HttpServer::new(worker)
        .workers(1)
        .max_connections(limits::CONNECTIONS_PER_WORKER_MAX)
        .client_request_timeout(limits::REQUEST_HEAD_TIMEOUT)
        .keep_alive(limits::KEEP_ALIVE)
        .shutdown_timeout(limits::STOP_TIMEOUT_SECS)
        .shutdown_signal(shutdown);
    let server = match settings.certificate {
        Some(certificate) => server.listen_rustls_0_23(listener, certificate.config()?)?,
        None => server.listen(listener)?,
    };
    Ok(server.run())
}

async fn style(request: HttpRequest, office: Data<Office>) -> HttpResponse {
    if let Err(refusal) = office.origins.check_host(&request) {
        return refused(&office, &request, refusal);
    }
    HttpResponse::Ok()
        .content_type("text/css; charset=utf-8")
        .body(render::STYLE)
}

/// Every page but the door.
async fn page(request: HttpRequest, office: Data<Office>) -> HttpResponse {
    if let Err(refusal) = office.origins.check_host(&request) {
        return refused(&office, &request, refusal);
    }
    let Some((shown, session)) = office.session(&request) else {
        return to("/log-in");
    };
    let Some(look) = paths::look(request.path()) else {
        return office.nothing(&session).await;
    };
    let input = Input::Look {
        viewer: session.viewer.clone(),
        look: look.clone(),
    };
    match office.handle.submit(input).await {
        Ok(told) => office.shown(told.seen, (&shown, &session), &look),
        Err(refused) => busy(&office, &request, &refused),
    }
}

impl Office {
    /// Who asks, by what their browser shows, and that.
    fn session(&self, request: &HttpRequest) -> Option<(String, Session)> {
        let cookie = request.cookie(self.origins.cookie_name())?;
        let session = self.sessions.of(cookie.value(), self.clock.now())?;
        Some((cookie.value().to_owned(), session))
    }

    fn shown(
        &self,
        seen: Option<Result<Box<Seen>, Unseen>>,
        (shown, session): (&str, &Session),
        look: &Look,
    ) -> HttpResponse {
        match seen {
            Some(Ok(seen)) => {
                if let Some(about) = seen.about {
                    info!(
                        { telemetry::VIEWER_ID } = session.viewer.person.0,
                        { telemetry::PERSON_ID } = about.0,
                        "a page about a person was looked at"
                    );
                }
                let page = render::page(&self.texts, &seen, look, &session.token);
                answer(StatusCode::OK, page)
            }
            Some(Err(Unseen::NotTheirs(menu))) => match menu.first() {
                // Whose work is one page begins with that one.
                Some(first) if *look == Look::Today => to(&paths::path(first)),
                Some(_) | None => answer(
                    StatusCode::FORBIDDEN,
                    render::problem(&self.texts, None, "page-not-yours"),
                ),
            },
            Some(Err(Unseen::Nothing(_))) => answer(
                StatusCode::NOT_FOUND,
                render::problem(&self.texts, None, "page-not-there"),
            ),
            Some(Err(Unseen::Stranger)) | None => {
                self.sessions.end(shown);
                to("/log-in")
            }
        }
    }

    /// A path that means no page: said only to who is still in.
    async fn nothing(&self, session: &Session) -> HttpResponse {
        let input = Input::Look {
            viewer: session.viewer.clone(),
            look: Look::Today,
        };
        match self.handle.submit(input).await.map(|told| told.seen) {
            Ok(Some(Err(Unseen::Stranger)) | None) | Err(_) => to("/log-in"),
            Ok(Some(_)) => answer(
                StatusCode::NOT_FOUND,
                render::problem(&self.texts, None, "page-not-there"),
            ),
        }
    }
}

/// Another page, got anew.
fn to(path: &str) -> HttpResponse {
    HttpResponse::SeeOther()
        .insert_header((header::LOCATION, path))
        .finish()
}

fn answer(status: StatusCode, page: String) -> HttpResponse {
    HttpResponse::build(status)
        .content_type("text/html; charset=utf-8")
        .body(page)
}

fn refused(office: &Office, request: &HttpRequest, refusal: Refusal) -> HttpResponse {
    let language = guard::language(request, &office.texts);
    let page = render::problem(&office.texts, language.as_deref(), refusal.text());
    answer(refusal.status(), page)
}

fn busy(office: &Office, request: &HttpRequest, why: &Refused) -> HttpResponse {
    tracing::warn!(why = why.to_string(), "a page could not be shown");
    let language = guard::language(request, &office.texts);
    let page = render::problem(&office.texts, language.as_deref(), "page-busy");
    answer(StatusCode::SERVICE_UNAVAILABLE, page)
}
