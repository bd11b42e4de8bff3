//! An encrypted line to browsers, by a certificate and its key in files.

use std::{io, path::PathBuf, sync::Arc};

use rustls::{
    ServerConfig,
    crypto::ring,
    pki_types::{CertificateDer, PrivateKeyDer, pem::PemObject},
};

/// A certificate and its key, as PEM files.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Certificate {
    /// The certificate, and those above it.
    pub certificate: PathBuf,
    /// Its key.
    pub key: PathBuf,
}

/// Why there can be no encrypted line.
#[derive(Debug, thiserror::Error)]
pub enum TlsFault {
    /// A file cannot be read.
    #[error("{} cannot be read as PEM", file.display())]
    File {
        /// Which.
        file: PathBuf,
        /// Why.
        #[source]
        source: rustls::pki_types::pem::Error,
    },
    /// The two do not go together, or are of a kind that is not known.
    #[error("the certificate and its key cannot be used")]
    Pair(#[from] rustls::Error),
}

impl From<TlsFault> for io::Error {
    fn from(fault: TlsFault) -> Self {
        Self::other(fault)
    }
}

impl Certificate {
    /// What the server needs.
    ///
    /// # Errors
    ///
    /// When a file cannot be read, or the key is not that of the certificate.
    pub fn config(&self) -> Result<ServerConfig, TlsFault> {
        let fault = |file: &PathBuf| {
            let file = file.clone();
            move |source| TlsFault::File { file, source }
        };
        let chain: Vec<CertificateDer<'static>> = CertificateDer::pem_file_iter(&self.certificate)
            .and_then(Iterator::collect)
            .map_err(fault(&self.certificate))?;
        let key = PrivateKeyDer::from_pem_file(&self.key).map_err(fault(&self.key))?;
        let config = ServerConfig::builder_with_provider(Arc::new(ring::default_provider()))
            .with_safe_default_protocol_versions()?
            .with_no_client_auth()
            .with_single_cert(chain, key)?;
        Ok(config)
    }
}
