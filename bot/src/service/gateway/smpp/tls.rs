//! The line to a centre, encrypted.

use std::{path::Path, sync::Arc};

use rustls::{
    ClientConfig, RootCertStore,
    pki_types::{CertificateDer, ServerName, pem::PemObject},
};
use rustls_platform_verifier::ConfigVerifierExt;
use tokio::net::TcpStream;
use tokio_rustls::{TlsConnector, client::TlsStream};

/// Who the centre must be.
#[derive(Clone)]
pub(super) struct Tls {
    connector: TlsConnector,
    host: ServerName<'static>,
}

impl std::fmt::Debug for Tls {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Tls")
            .field("host", &self.host)
            .finish_non_exhaustive()
    }
}

/// Why there can be no encrypted line.
#[derive(Debug, thiserror::Error)]
pub(super) enum TlsError {
    #[error("the centre's name cannot be one of a certificate")]
    Name,
    #[error("the authority's certificate cannot be read")]
    Authority(#[source] rustls::pki_types::pem::Error),
    #[error("no encryption")]
    Setup(#[from] rustls::Error),
}

fn why(error: &std::io::Error) -> String {
    let inner = error.get_ref();
    match inner.and_then(|inner| inner.downcast_ref::<rustls::Error>()) {
        Some(rustls::Error::InvalidCertificate(_)) => {
            "the centre's certificate is not accepted".to_owned()
        }
        // These quote what the centre sent at most by its name in the standard.
        Some(other) => other.to_string(),
        None => error.kind().to_string(),
    }
}

impl Tls {
    /// For a centre with a certificate of this authority, or of one that the system knows.
    pub(super) fn new(host: &str, authority: Option<&Path>) -> Result<Self, TlsError> {
        // Named once for the process; an error says that they were named before.
        let _ = rustls::crypto::ring::default_provider().install_default();
        let host = ServerName::try_from(host.to_owned()).map_err(|_| TlsError::Name)?;
        let config = match authority {
            None => ClientConfig::with_platform_verifier()?,
            Some(file) => {
                let mut roots = RootCertStore::empty();
                let certificate =
                    CertificateDer::from_pem_file(file).map_err(TlsError::Authority)?;
                roots.add(certificate)?;
                ClientConfig::builder()
                    .with_root_certificates(roots)
                    .with_no_client_auth()
            }
        };
        Ok(Self {
            connector: TlsConnector::from(Arc::new(config)),
            host,
        })
    }

    pub(super) async fn over(&self, stream: TcpStream) -> Result<TlsStream<TcpStream>, String> {
        let line = self.connector.connect(self.host.clone(), stream).await;
        line.map_err(|error| format!("no encrypted line: {}", why(&error)))
    }
}
