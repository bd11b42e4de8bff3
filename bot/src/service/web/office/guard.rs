//! Where a request may come from: our own address, and forms of our own pages.
//!
//! A page elsewhere can have a browser post a form to us, and a name elsewhere can be made to lead to
//! this computer. Neither may reach anything.

use std::net::SocketAddr;

use actix_web::{
    HttpRequest,
    http::{
        StatusCode,
        header::{ACCEPT_LANGUAGE, HOST, HeaderName, ORIGIN},
    },
};
use url::Url;

use crate::wording::Texts;

/// Our own addresses.
pub(super) struct Origins {
    hosts: Vec<String>,
    origins: Vec<String>,
    is_encrypted: bool,
}

/// Why a request is not looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Refusal {
    /// It asks for another host.
    OtherHost,
    /// It is a form of another page.
    OtherOrigin,
    /// It is a form of somebody who went out, or of nobody.
    OldForm,
    /// Too many are at the door.
    TooMany,
}

impl Refusal {
    pub(super) const fn status(self) -> StatusCode {
        match self {
            Self::OtherHost => StatusCode::MISDIRECTED_REQUEST,
            Self::OtherOrigin | Self::OldForm => StatusCode::FORBIDDEN,
            Self::TooMany => StatusCode::TOO_MANY_REQUESTS,
        }
    }

    /// The text of a page that says so.
    pub(super) const fn text(self) -> &'static str {
        match self {
            Self::OtherHost => "page-other-host",
            Self::OtherOrigin => "page-other-origin",
            Self::OldForm => "page-old-form",
            Self::TooMany => "page-too-many",
        }
    }
}

impl Origins {
    /// For what is listened on, and the address that people type, if that is another.
    pub(super) fn new(own: SocketAddr, has_certificate: bool, address: Option<&Url>) -> Self {
        let scheme = if has_certificate { "https" } else { "http" };
        let mut hosts = vec![own.to_string()];
        if own.ip().is_loopback() {
            hosts.push(format!("localhost:{}", own.port()));
        }
        let mut origins: Vec<String> = hosts
            .iter()
            .map(|host| format!("{scheme}://{host}"))
            .collect();
        if let Some(address) = address
            && let Some(host) = address.host_str()
        {
            let port = address.port().map(|port| format!(":{port}"));
            hosts.push(format!("{host}{}", port.unwrap_or_default()));
            origins.push(address.origin().ascii_serialization());
        }
        Self {
            hosts,
            origins,
            is_encrypted: has_certificate
                || address.is_some_and(|address| address.scheme() == "https"),
        }
    }

    /// Whether browsers reach us over an encrypted line.
    pub(super) const fn is_encrypted(&self) -> bool {
        self.is_encrypted
    }

    /// What a browser keeps is called so. With this begin it takes it from no other host and sends it
    /// on no open line.
    pub(super) const fn cookie_name(&self) -> &'static str {
        if self.is_encrypted {
            "__Host-office"
        } else {
            "office"
        }
    }

    /// Whether a request is for us: a name that somebody else made lead here is none of ours.
    pub(super) fn check_host(&self, request: &HttpRequest) -> Result<(), Refusal> {
        let in_line = request.uri().authority().map(|one| one.as_str().to_owned());
        let host = in_line.or_else(|| text(request, &HOST).map(str::to_owned));
        let is_ours =
            host.is_some_and(|host| self.hosts.iter().any(|own| own.eq_ignore_ascii_case(&host)));
        is_ours.then_some(()).ok_or(Refusal::OtherHost)
    }

    /// Whether a form is of one of our pages. Every browser says whose form it is.
    pub(super) fn check_form(&self, request: &HttpRequest) -> Result<(), Refusal> {
        self.check_host(request)?;
        let origin = text(request, &ORIGIN);
        let is_ours = origin.is_some_and(|origin| self.origins.iter().any(|own| own == origin));
        is_ours.then_some(()).ok_or(Refusal::OtherOrigin)
    }
}

fn text<'r>(request: &'r HttpRequest, name: &HeaderName) -> Option<&'r str> {
    let mut values = request.headers().get_all(name);
    let only = values.next()?.to_str().ok()?;
    values.next().is_none().then_some(only)
}

/// The language that a browser asks for, of those that there are texts in. Most write the best first.
pub(super) fn language(request: &HttpRequest, texts: &Texts) -> Option<String> {
    let wanted = text(request, &ACCEPT_LANGUAGE)?;
    wanted.split(',').find_map(|one| {
        let code = one.split(';').next()?.trim().to_lowercase();
        texts.known(&code).map(str::to_owned)
    })
}

#[cfg(test)]
mod tests {
    use actix_web::test::TestRequest;

    use super::*;

    fn origins(address: Option<&str>) -> Origins {
        let address = address.map(|address| Url::parse(address).unwrap());
        Origins::new("127.0.0.1:8471".parse().unwrap(), false, address.as_ref())
    }

    fn checked(origins: &Origins, headers: &[(&str, &str)]) -> Result<(), Refusal> {
        let mut request = TestRequest::post();
        for header in headers {
            request = request.append_header(*header);
        }
        origins.check_form(&request.to_http_request())
    }

    #[test]
    fn only_our_own_forms_count() {
        let here = origins(None);
        let host = ("host", "127.0.0.1:8471");
        for own in ["127.0.0.1:8471", "localhost:8471", "LOCALHOST:8471"] {
            let origin = format!("http://{}", own.to_lowercase());
            assert_eq!(
                checked(&here, &[("host", own), ("origin", &origin)]),
                Ok(())
            );
        }
        for other in [
            "null",
            "",
            "http://127.0.0.1",
            "http://127.0.0.1:8472",
            "https://127.0.0.1:8471",
            "http://127.0.0.1:8471.example",
            "http://elsewhere.example",
        ] {
            let made = checked(&here, &[host, ("origin", other)]);
            assert_eq!(made, Err(Refusal::OtherOrigin), "{other}");
        }
        assert_eq!(checked(&here, &[host]), Err(Refusal::OtherOrigin));
        let own = ("origin", "http://127.0.0.1:8471");
        assert_eq!(checked(&here, &[host, own, own]), Err(Refusal::OtherOrigin));
    }

    #[test]
    fn a_name_that_was_made_to_lead_here_leads_nowhere() {
        let here = origins(None);
        let own = ("origin", "http://127.0.0.1:8471");
        for host in ["elsewhere.example:8471", "127.0.0.1", "127.0.0.1:8472", ""] {
            assert_eq!(
                checked(&here, &[("host", host), own]),
                Err(Refusal::OtherHost),
                "{host}"
            );
        }
        assert_eq!(checked(&here, &[own]), Err(Refusal::OtherHost));
    }

    #[test]
    fn behind_a_front_server_its_address_is_ours_and_encrypted() {
        let behind = origins(Some("https://office.valley.example"));
        let host = ("host", "office.valley.example");
        let origin = ("origin", "https://office.valley.example");
        assert_eq!(checked(&behind, &[host, origin]), Ok(()));
        assert_eq!(behind.cookie_name(), "__Host-office");
        assert_eq!(origins(None).cookie_name(), "office");
    }
}
