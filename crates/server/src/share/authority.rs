//! This computer as a certificate authority for one name. Its key is made here, is readable by its owner alone and
//! leaves the folder never; its certificate says that it may speak for this name and no other, so that a device that
//! trusts it risks nothing elsewhere.

use rcgen::{
    BasicConstraints, CertificateParams, CidrSubnet, DistinguishedName, DnType, ExtendedKeyUsagePurpose,
    GeneralSubtree, IsCa, Issuer, KeyPair, KeyUsagePurpose, NameConstraints,
};
use rustls::ServerConfig;
use rustls::pki_types::pem::PemObject as _;
use rustls::pki_types::{CertificateDer, PrivateKeyDer};
use std::fs;
use std::io::{self, Write as _};
use std::net::IpAddr;
use std::path::Path;
use std::sync::Arc;
use tautline_survey::canonical::sha256_hex;

/// What a listener needs, and what devices must trust.
#[derive(Debug)]
pub(crate) struct Secured {
    pub(crate) config: Arc<ServerConfig>,
    /// The authority's certificate; none where an organisation's own is used.
    pub(crate) authority: Option<CertificateDer<'static>>,
}

/// The SHA-256 of a certificate as devices show it.
pub(crate) fn fingerprint(certificate: &CertificateDer) -> String {
    let hex = sha256_hex(certificate).to_uppercase();
    let pairs: Vec<&str> = (0..hex.len()).step_by(2).map(|at| &hex[at..at + 2]).collect();
    pairs.join(":")
}

fn other(error: impl core::fmt::Display) -> io::Error {
    io::Error::other(error.to_string())
}

/// An organisation's own certificate.
pub(crate) fn given(certificate: &Path, key: &Path) -> io::Result<Secured> {
    let chain: Result<Vec<_>, _> = CertificateDer::pem_file_iter(certificate).map_err(other)?.collect();
    let key = PrivateKeyDer::from_pem_file(key).map_err(other)?;
    Ok(Secured { config: config(chain.map_err(other)?, key)?, authority: None })
}

/// A certificate for a name, by this computer's own authority for it, which is made the first time.
pub(crate) fn own(folder: &Path, name: &str) -> io::Result<Secured> {
    let (issuer, authority) = of(folder, name)?;
    let leaf = leaf(&issuer, name)?;
    Ok(Secured { config: config(vec![leaf.0], leaf.1)?, authority: Some(authority) })
}

fn config(chain: Vec<CertificateDer<'static>>, key: PrivateKeyDer<'static>) -> io::Result<Arc<ServerConfig>> {
    let provider = Arc::new(rustls::crypto::ring::default_provider());
    let config = ServerConfig::builder_with_provider(provider)
        .with_safe_default_protocol_versions()
        .map_err(other)?
        .with_no_client_auth()
        .with_single_cert(chain, key)
        .map_err(other)?;
    Ok(Arc::new(config))
}

/// The authority for a name, out of the folder or made anew.
fn of(folder: &Path, name: &str) -> io::Result<(Issuer<'static, KeyPair>, CertificateDer<'static>)> {
    let params = authority(name)?;
    let (key_file, certificate_file) = (folder.join("authority.key"), folder.join("authority.pem"));
    if let (Ok(key), Ok(certificate)) = (fs::read_to_string(&key_file), fs::read_to_string(&certificate_file))
    {
        let key = KeyPair::from_pem(&key).map_err(other)?;
        let certificate = CertificateDer::from_pem_slice(certificate.as_bytes()).map_err(other)?;
        return Ok((Issuer::new(params, key), certificate));
    }
    fs::create_dir_all(folder)?;
    let key = KeyPair::generate().map_err(other)?;
    let certificate = params.self_signed(&key).map_err(other)?;
    // the key first: a certificate without it would be of no use
    private(&key_file)?.write_all(key.serialize_pem().as_bytes())?;
    fs::write(&certificate_file, certificate.pem())?;
    let der = certificate.der().clone();
    Ok((Issuer::new(params, key), der))
}

/// A new file that its owner alone may read.
fn private(path: &Path) -> io::Result<fs::File> {
    let mut options = fs::OpenOptions::new();
    options.write(true).create(true).truncate(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    options.open(path)
}

/// # Source
/// name constraints: RFC 5280, section 4.2.1.10
fn authority(name: &str) -> io::Result<CertificateParams> {
    let mut params = CertificateParams::new(Vec::new()).map_err(other)?;
    params.distinguished_name = called(&format!("tautline {name}"));
    params.is_ca = IsCa::Ca(BasicConstraints::Constrained(0));
    params.key_usages = vec![KeyUsagePurpose::KeyCertSign, KeyUsagePurpose::CrlSign];
    let everywhere = [
        GeneralSubtree::IpAddress(CidrSubnet::from_v4_prefix([0; 4], 0)),
        GeneralSubtree::IpAddress(CidrSubnet::from_v6_prefix([0; 16], 0)),
    ];
    params.name_constraints = Some(match name.parse::<IpAddr>() {
        // of no name at all, since nothing stands below the last
        Ok(address) => NameConstraints {
            permitted_subtrees: vec![GeneralSubtree::IpAddress(CidrSubnet::from_addr_prefix(
                address,
                if address.is_ipv4() { 32 } else { 128 },
            ))],
            excluded_subtrees: vec![GeneralSubtree::DnsName(String::new())],
        },
        Err(_) => NameConstraints {
            permitted_subtrees: vec![GeneralSubtree::DnsName(name.to_owned())],
            excluded_subtrees: everywhere.into(),
        },
    });
    (params.not_before, params.not_after) =
        (rcgen::date_time_ymd(2020, 1, 1), rcgen::date_time_ymd(2049, 12, 31));
    Ok(params)
}

fn called(name: &str) -> DistinguishedName {
    let mut called = DistinguishedName::new();
    called.push(DnType::CommonName, name);
    called
}

/// A certificate for a name with a key that lives as long as the program.
fn leaf(
    issuer: &Issuer<'static, KeyPair>,
    name: &str,
) -> io::Result<(CertificateDer<'static>, PrivateKeyDer<'static>)> {
    let mut params = CertificateParams::new(vec![name.to_owned()]).map_err(other)?;
    params.distinguished_name = called(name);
    params.key_usages = vec![KeyUsagePurpose::DigitalSignature];
    params.extended_key_usages = vec![ExtendedKeyUsagePurpose::ServerAuth];
    params.use_authority_key_identifier_extension = true;
    (params.not_before, params.not_after) = lifetime();
    let key = KeyPair::generate().map_err(other)?;
    let certificate = params.signed_by(&key, issuer).map_err(other)?;
    let key = PrivateKeyDer::try_from(key.serialize_der()).map_err(other)?;
    Ok((certificate.der().clone(), key))
}

/// Phones refuse certificates that live for longer than 825 days, so from the beginning of last year to the end of
/// this one: a clock that is a little off is no matter.
fn lifetime() -> (time::OffsetDateTime, time::OffsetDateTime) {
    let year = time::OffsetDateTime::now_utc().year();
    (rcgen::date_time_ymd(year - 1, 12, 1), rcgen::date_time_ymd(year + 1, 12, 31))
}

#[cfg(test)]
mod tests {
    use super::*;
    use rustls::client::WebPkiServerVerifier;
    use rustls::client::danger::ServerCertVerifier as _;
    use rustls::pki_types::{ServerName, UnixTime};

    fn trusts(authority: &CertificateDer<'static>, leaf: &CertificateDer<'static>, name: &str) -> bool {
        let mut roots = rustls::RootCertStore::empty();
        roots.add(authority.clone()).unwrap();
        let provider = Arc::new(rustls::crypto::ring::default_provider());
        let verifier =
            WebPkiServerVerifier::builder_with_provider(Arc::new(roots), provider).build().unwrap();
        let name = ServerName::try_from(name.to_owned()).unwrap();
        verifier.verify_server_cert(leaf, &[], &name, &[], UnixTime::now()).is_ok()
    }

    /// Held against the checks of a browser's kind (rustls-webpki), which knows name constraints.
    #[test]
    fn the_authority_speaks_for_one_name_alone() {
        for (name, others) in [
            ("desk.local", ["elsewhere.example", "192.0.2.7"]),
            ("192.0.2.7", ["elsewhere.example", "192.0.2.8"]),
        ] {
            let folder = tempfile::tempdir().unwrap();
            let (issuer, authority) = of(folder.path(), name).unwrap();
            assert!(trusts(&authority, &leaf(&issuer, name).unwrap().0, name));
            for other in others {
                assert!(!trusts(&authority, &leaf(&issuer, other).unwrap().0, other), "{name} for {other}");
            }
        }
    }

    #[test]
    fn the_authority_stays_and_its_key_is_for_its_owner_alone() {
        let folder = tempfile::tempdir().unwrap();
        let (_, first) = of(folder.path(), "desk.local").unwrap();
        let (issuer, again) = of(folder.path(), "desk.local").unwrap();
        assert_eq!(first, again);
        assert!(trusts(&first, &leaf(&issuer, "desk.local").unwrap().0, "desk.local"));
        #[cfg(unix)]
        {
            use std::os::unix::fs::PermissionsExt as _;
            let mode = fs::metadata(folder.path().join("authority.key")).unwrap().permissions().mode();
            assert_eq!(mode & 0o777, 0o600);
        }
        assert_eq!(fingerprint(&first).len(), 32 * 3 - 1);
    }
}
