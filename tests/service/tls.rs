//! The provider's end of an encrypted connection: takes the encryption off, passes the rest on.

use std::sync::Arc;

use rcgen::{BasicConstraints, CertificateParams, CertifiedIssuer, IsCa, KeyPair};
use tokio::{
    io::copy_bidirectional,
    net::{TcpListener, TcpStream},
};
use tokio_rustls::{
    TlsAcceptor,
    rustls::{ServerConfig, crypto::ring, pki_types::PrivateKeyDer},
};

/// What stands before a provider.
pub(super) struct Front {
    pub(super) port: u16,
    /// The certificate of the authority that vouches for it, as PEM.
    pub(super) authority: String,
}

impl Front {
    /// Stands before a port of this computer, with a certificate for "localhost".
    pub(super) async fn before(port: u16) -> Self {
        let mut params = CertificateParams::default();
        params.is_ca = IsCa::Ca(BasicConstraints::Unconstrained);
        let key = KeyPair::generate().expect("a key");
        let authority = CertifiedIssuer::self_signed(params, key).expect("an authority");
        let acceptor = acceptor(&authority);
        let listener = TcpListener::bind("127.0.0.1:0").await.expect("a free port");
        let own = listener.local_addr().expect("an address").port();
        tokio::spawn(async move {
            while let Ok((stream, _)) = listener.accept().await {
                tokio::spawn(pass_on(acceptor.clone(), stream, port));
            }
        });
        Self {
            port: own,
            authority: authority.pem(),
        }
    }
}

fn acceptor(authority: &CertifiedIssuer<'_, KeyPair>) -> TlsAcceptor {
    let key = KeyPair::generate().expect("a key");
    let certificate = CertificateParams::new(vec!["localhost".to_owned()])
        .and_then(|params| params.signed_by(&key, authority))
        .expect("a certificate");
    let key = PrivateKeyDer::try_from(key.serialize_der()).expect("the form of the key is known");
    let config = ServerConfig::builder_with_provider(Arc::new(ring::default_provider()))
        .with_safe_default_protocol_versions()
        .expect("the ciphers suit the versions")
        .with_no_client_auth()
        .with_single_cert(vec![certificate.der().clone()], key)
        .expect("the key is the certificate's");
    TlsAcceptor::from(Arc::new(config))
}

/// A client that does not believe the certificate hangs up, which ends this and nothing else.
async fn pass_on(acceptor: TlsAcceptor, stream: TcpStream, port: u16) -> std::io::Result<()> {
    let mut outer = acceptor.accept(stream).await?;
    let mut inner = TcpStream::connect(("127.0.0.1", port)).await?;
    copy_bidirectional(&mut outer, &mut inner).await?;
    Ok(())
}
