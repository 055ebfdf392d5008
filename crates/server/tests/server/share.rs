//! The crew's side: a secure address, and a door that opens to paired devices alone.

use rustls::pki_types::pem::PemObject as _;
use rustls::pki_types::{CertificateDer, ServerName};
use rustls::{ClientConfig, ClientConnection, RootCertStore, StreamOwned};
use std::io::{Read as _, Write as _};
use std::net::{IpAddr, Ipv4Addr, SocketAddr, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex};
use std::thread::JoinHandle;
use tautline_server::trial::{Device, call};
use tautline_server::{Invitation, NotServed, Server, Setup, ShareSetup, Stop};
use tautline_store::{Cursor, Keep as _, Sqlite};
use tautline_survey::sync::Answer;

const NAME: &str = "desk.example";

struct Crew {
    folder: PathBuf,
    /// Where devices reach it.
    address: SocketAddr,
    port: u16,
    invitations: Arc<Mutex<Vec<Invitation>>>,
    config: Arc<ClientConfig>,
    /// Where the desk's own browsers reach it.
    here: SocketAddr,
    stop: Stop,
    running: Option<JoinHandle<std::io::Result<()>>>,
}

fn setup(folder: &Path, name: &str, invitations: &Arc<Mutex<Vec<Invitation>>>) -> Setup {
    let told = Arc::clone(invitations);
    let share = ShareSetup {
        folder: folder.join("authority"),
        name: name.to_owned(),
        address: IpAddr::V4(Ipv4Addr::LOCALHOST),
        port: None,
        certificate: None,
        new_address: false,
        move_to: None,
        tell: Arc::new(move |invitation| told.lock().unwrap().push(invitation.clone())),
    };
    Setup { notebook: folder.join("desk.tautline"), port: Some(0), app: None, share: Some(share) }
}

impl Crew {
    fn new(folder: PathBuf) -> Self {
        Self::with(folder, |share| share.port = Some(0))
    }

    /// The same with something else about how it is shared.
    fn with(folder: PathBuf, change: impl FnOnce(&mut ShareSetup)) -> Self {
        let invitations: Arc<Mutex<Vec<Invitation>>> = Arc::default();
        let mut setup = setup(&folder, NAME, &invitations);
        change(setup.share.as_mut().unwrap());
        let server = Server::begin(&setup).unwrap();
        let shared = server.shared().unwrap().clone();
        assert_eq!(shared.origin, format!("https://{NAME}:{}", shared.address.port()));
        invitations.lock().unwrap().extend(shared.invitation.clone());
        let (stop, here) = (server.stop(), server.address());
        let running = Some(std::thread::spawn(move || server.run()));
        let mut roots = RootCertStore::empty();
        let authority = std::fs::read(folder.join("authority/authority.pem")).unwrap();
        roots.add(CertificateDer::from_pem_slice(&authority).unwrap()).unwrap();
        let provider = Arc::new(rustls::crypto::ring::default_provider());
        let config = ClientConfig::builder_with_provider(provider)
            .with_safe_default_protocol_versions()
            .unwrap()
            .with_root_certificates(roots)
            .with_no_client_auth();
        Self {
            folder,
            address: shared.address,
            port: shared.address.port(),
            invitations,
            config: Arc::new(config),
            here,
            stop,
            running,
        }
    }

    fn code(&self) -> String {
        self.invitations.lock().unwrap().last().unwrap().code.clone()
    }

    /// Status and the whole answer.
    fn call(&self, first: &str, headers: &[&str], body: &str) -> (u16, String) {
        let usual = format!("Host: {NAME}:{}", self.port);
        let mut headers = headers.to_vec();
        if !headers.iter().any(|header| header.starts_with("Host:")) {
            headers.push(&usual);
        }
        let to = TcpStream::connect(self.address).unwrap();
        let name = ServerName::try_from(NAME).unwrap();
        let mut to = StreamOwned::new(ClientConnection::new(Arc::clone(&self.config), name).unwrap(), to);
        let head =
            format!("{first} HTTP/1.0\r\n{}\r\nContent-Length: {}\r\n\r\n", headers.join("\r\n"), body.len());
        to.write_all(head.as_bytes()).unwrap();
        let _ = to.write_all(body.as_bytes());
        let mut all = Vec::new();
        let _ = to.read_to_end(&mut all);
        let text = String::from_utf8_lossy(&all).into_owned();
        (text.split(' ').nth(1).and_then(|status| status.parse().ok()).unwrap_or(0), text)
    }

    /// One exchange of a device: how many revisions it sent, and whether it had to begin again.
    fn exchange(&self, cookie: &str, device: &mut Device) -> (usize, bool) {
        let log = device.keep.log(Cursor(device.state.sent()), 100).unwrap();
        let asked = device.state.ask(device.id, &log, true);
        let body = serde_json::to_string(&asked.ask).unwrap();
        let (status, text) = self.call("POST /api/sync", &[cookie, "Content-Type: application/json"], &body);
        assert_eq!(status, 200, "{text}");
        let answer: Answer = serde_json::from_str(text.split_once("\r\n\r\n").unwrap().1).unwrap();
        let taken = device.state.take(&asked, &answer).unwrap();
        device.keep.append(&taken.revisions).unwrap();
        device.state = taken.state;
        (asked.ask.lines.len(), answer.restart)
    }

    fn give(&self, code: &str) -> (u16, String) {
        let kind = "Content-Type: application/x-www-form-urlencoded";
        self.call("POST /pair", &[kind], &format!("code={code}&name=tablet+1"))
    }

    /// The cookie of a device that was let in.
    fn pair(&self) -> String {
        let (status, text) = self.give(&self.code());
        assert_eq!(status, 303, "{text}");
        let cookie = text.lines().find_map(|line| line.strip_prefix("set-cookie: ")).unwrap();
        for part in ["__Host-tautline=", "; Secure", "; HttpOnly", "; SameSite=Lax", "; Path=/"] {
            assert!(cookie.contains(part), "{cookie}");
        }
        format!("Cookie: {}", cookie.split(';').next().unwrap())
    }
}

impl Drop for Crew {
    fn drop(&mut self) {
        self.stop.stop();
        if let Some(running) = self.running.take() {
            let _ = running.join();
        }
    }
}

#[test]
fn a_device_is_let_in_once_and_shut_out_at_once() {
    let folder = tempfile::tempdir().unwrap();
    let crew = Crew::new(folder.path().to_owned());
    let ask = |cookie: &str| crew.call("GET /api/health", &[cookie], "").0;
    assert_eq!(ask("Cookie: other=1"), 401);
    assert_eq!(ask("Cookie: __Host-tautline=0123"), 401);
    let (status, text) = crew.call("GET /", &[], "");
    assert!(status == 303 && text.contains("location: /pair"), "{text}");
    let code = crew.code();
    let cookie = crew.pair();
    assert_eq!(ask(&cookie), 200);
    assert_eq!(crew.call("GET /", &[&cookie], "").0, 200);
    // the code is used up, and another is shown
    assert_ne!(crew.code(), code);
    assert_eq!(crew.give(&code).0, 403);
    let mut keep = Sqlite::open(&crew.folder.join("desk.tautline")).unwrap();
    let paired = keep.paired().unwrap();
    assert_eq!(paired.iter().map(|one| one.name.as_str()).collect::<Vec<_>>(), ["tablet 1"]);
    keep.withdraw(&paired[0].id).unwrap();
    assert_eq!(ask(&cookie), 401);
    // what was shown at the door is in the file only as its hash
    drop(keep);
    let token = cookie.split('=').nth(1).unwrap().to_owned();
    for file in
        std::fs::read_dir(&crew.folder).unwrap().filter_map(|entry| std::fs::read(entry.unwrap().path()).ok())
    {
        assert!(!file.windows(token.len()).any(|part| part == token.as_bytes()));
    }
}

#[test]
fn guessing_comes_to_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let crew = Crew::new(folder.path().to_owned());
    let answers: Vec<u16> = (0..8).map(|number| crew.give(&format!("AAAA222{number}")).0).collect();
    assert_eq!(answers, [403, 403, 403, 403, 403, 429, 429, 429]);
    assert_eq!(crew.give(&crew.code()).0, 429, "not even the right one is heard now");
    assert!(Sqlite::open(&crew.folder.join("desk.tautline")).unwrap().paired().unwrap().is_empty());
}

#[test]
fn other_names_other_origins_what_is_too_long_and_what_climbs_out_are_refused_here_too() {
    let folder = tempfile::tempdir().unwrap();
    let crew = Crew::new(folder.path().to_owned());
    let cookie = crew.pair();
    for host in ["elsewhere.example", NAME, "127.0.0.1"] {
        assert_eq!(crew.call("GET /pair", &[&format!("Host: {host}")], "").0, 421, "{host}");
        assert_eq!(crew.call("GET /api/health", &[&cookie, &format!("Host: {host}")], "").0, 421, "{host}");
    }
    for origin in ["https://elsewhere.example", "null", &format!("http://{NAME}:{}", crew.port)] {
        let origin = format!("Origin: {origin}");
        let kind = "Content-Type: application/x-www-form-urlencoded";
        assert_eq!(crew.call("POST /pair", &[kind, &origin], &format!("code={}", crew.code())).0, 403);
        assert_eq!(crew.call("GET /api/revisions", &[&cookie, &origin], "").0, 403);
    }
    let site = "Sec-Fetch-Site: cross-site";
    assert_eq!(crew.call("POST /api/sync", &[&cookie, site, "Content-Type: application/json"], "{}").0, 403);
    let long = " ".repeat(13 << 20);
    assert_eq!(crew.call("POST /api/sync", &[&cookie, "Content-Type: application/json"], &long).0, 413);
    let kind = "Content-Type: application/x-www-form-urlencoded";
    assert_eq!(crew.call("POST /pair", &[kind], &format!("code={}", "A".repeat(20_000))).0, 400);
    for path in
        ["/trust/../authority/authority.key", "/trust/%2e%2e/authority.key", "/authority/authority.key"]
    {
        let (status, text) = crew.call(&format!("GET {path}"), &[&cookie], "");
        assert!(matches!(status, 400 | 404), "{path} {status}");
        assert!(!text.contains("PRIVATE"), "{path}");
    }
    // what stands in the link becomes no markup
    let (_, page) = crew.call("GET /pair?code=%22%3E%3Cscript%3Ealert(1)", &[], "");
    assert!(!page.contains("<script") && page.contains("value=\"scriptalert1\""), "{page}");
}

#[test]
fn the_certificate_can_be_fetched_and_compared_before_the_door() {
    let folder = tempfile::tempdir().unwrap();
    let crew = Crew::new(folder.path().to_owned());
    let (status, text) = crew.call("GET /trust/authority.crt", &[], "");
    assert!(status == 200 && text.contains("application/x-x509-ca-cert"), "{text}");
    let (status, page) = crew.call("GET /trust", &[], "");
    assert!(status == 200 && page.contains("SHA-256") && page.contains("/trust/authority.crt"));
    assert_eq!(crew.call("GET /trust/plain.css", &[], "").0, 200);
}

/// The code is shown at the desk, and to nobody who comes by the network.
#[test]
fn the_invitation_is_shown_at_the_desk_alone() {
    let folder = tempfile::tempdir().unwrap();
    let crew = Crew::new(folder.path().to_owned());
    let page = call(crew.here, "GET /share", &[], b"").unwrap();
    let page = String::from_utf8(page.body).unwrap();
    assert!(page.contains("<svg") && page.contains(&crew.code()), "{page}");
    let cookie = crew.pair();
    let (status, text) = crew.call("GET /share", &[&cookie], "");
    assert!(status == 404 && !text.contains(&crew.code()), "{text}");
    // the desk's own browsers need no code
    assert_eq!(call(crew.here, "GET /api/health", &[], b"").unwrap().status, 200);
}

#[test]
fn paired_devices_are_not_left_behind_at_another_address() {
    let folder = tempfile::tempdir().unwrap();
    let crew = Crew::new(folder.path().to_owned());
    let port = crew.port;
    crew.pair();
    drop(crew);
    let invitations = Arc::default();
    let other = setup(folder.path(), "other.example", &invitations);
    match Server::begin(&other) {
        Err(NotServed::OtherAddress { before, devices }) => {
            assert_eq!((before, devices), (format!("https://{NAME}:{port}"), vec!["tablet 1".to_owned()]));
        }
        other => panic!("{other:?}"),
    }
    // another port is another address to a browser, and a refusal leaves the port of before
    let mut elsewhere = setup(folder.path(), NAME, &invitations);
    elsewhere.share.as_mut().unwrap().port = Some(0);
    assert!(matches!(Server::begin(&elsewhere), Err(NotServed::OtherAddress { .. })));
    // at the address that they know it is served as before, on the port that was kept
    let again = Server::begin(&setup(folder.path(), NAME, &invitations)).unwrap();
    assert_eq!(again.shared().unwrap().address.port(), port);
    drop(again);
    let mut moved = other;
    moved.share.as_mut().unwrap().new_address = true;
    assert!(Server::begin(&moved).unwrap().shared().unwrap().origin.starts_with("https://other.example:"));
}

/// The laptop is carried to another network, where it has another address: under the same name the device goes on where it
/// was. It isn't asked for a code again, trusts what it trusted, and sends what is new and nothing else.
#[test]
#[cfg_attr(not(target_os = "linux"), ignore = "only there every address of 127/8 is this computer")]
fn a_device_goes_on_when_the_address_changes_under_the_name() {
    let folder = tempfile::tempdir().unwrap();
    let crew = Crew::new(folder.path().to_owned());
    let (cookie, config, port) = (crew.pair(), Arc::clone(&crew.config), crew.port);
    let mut device = Device::new(1);
    device.begin("first").unwrap();
    assert_eq!(crew.exchange(&cookie, &mut device), (1, false));
    drop(crew);
    device.begin("second").unwrap();
    let mut crew = Crew::with(folder.path().to_owned(), |share| share.address = IpAddr::from([127, 0, 0, 2]));
    assert_eq!((crew.address.ip(), crew.port), (IpAddr::from([127, 0, 0, 2]), port));
    // the authority that the device was told to trust at the first address
    crew.config = config;
    assert_eq!(crew.exchange(&cookie, &mut device), (1, false), "only what is new, and not from the start");
    assert_eq!(device.waiting().unwrap(), 0);
    let sha256 = device.take_photo(b"invented").unwrap();
    crew.exchange(&cookie, &mut device);
    let (status, _) = crew.call(&format!("PUT /api/photos/{sha256}"), &[&cookie], "invented");
    assert_eq!(status, 204);
    assert_eq!(Sqlite::open(&folder.path().join("desk.tautline")).unwrap().len().unwrap(), 3);
}

/// Before the address changes, the known one tells every device so.
#[test]
fn the_old_address_says_where_the_notebook_moves_to() {
    let folder = tempfile::tempdir().unwrap();
    let crew = Crew::new(folder.path().to_owned());
    let (cookie, port) = (crew.pair(), crew.port);
    assert!(!crew.call("GET /api/health", &[&cookie], "").1.contains("tautline-moving-to"));
    drop(crew);
    let crew = Crew::with(folder.path().to_owned(), |share| share.move_to = Some("other.example".to_owned()));
    let said = format!("tautline-moving-to: https://other.example:{port}\r\n");
    assert!(crew.call("GET /api/health", &[&cookie], "").1.contains(&said));
    assert!(!crew.call("GET /trust", &[], "").1.contains("tautline-moving-to"), "paired devices alone");
}
