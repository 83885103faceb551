//! `cargo task serve`: the built page on this machine, and on no other.

use std::fs;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::path::{Component, Path, PathBuf};
use std::thread;
use std::time::Duration;

use crate::build;
use crate::command::{Outcome, www};

/// A request's first lines may not be longer: nobody but a browser on this machine asks.
const REQUEST: u64 = 16 * 1024;

/// While one develops, the page of the last build is what is looked at, not what a browser has kept of an earlier one:
/// in place of its service worker the browser gets one that takes itself and all that was kept away.
const DEVELOPING: &str = "addEventListener('install', () => skipWaiting());
addEventListener('activate', (event) => event.waitUntil((async () => {
\tfor (const name of await caches.keys()) await caches.delete(name);
\tawait registration.unregister();
})()));
";

/// Builds, unless told not to, and serves until it is stopped.
pub fn page(options: &[&str]) -> Outcome {
    let (mut port, mut as_built) = (8000, false);
    let mut options = options.iter();
    while let Some(option) = options.next() {
        match *option {
            "--as-built" => as_built = true,
            "--port" => {
                port = options
                    .next()
                    .and_then(|text| text.parse().ok())
                    .ok_or("--port wants a number")?
            }
            other => return Err(format!("serve knows --port N and --as-built, not {other}")),
        }
    }
    if !as_built {
        build::page()?;
    }
    let root = www().join("dist");
    if !root.join("index.html").is_file() {
        return Err("there is no built page: run `cargo task build`".to_owned());
    }
    let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, port)).map_err(|error| {
        format!("port {port}: {error}; choose another with --port, 0 for any that is free")
    })?;
    let address = listener.local_addr().map_err(|error| error.to_string())?;
    println!("http://{address}/");
    for stream in listener.incoming().flatten() {
        let root = root.clone();
        // A browser that goes away in the middle of an answer concerns nobody else.
        thread::spawn(move || answer(&stream, &root, as_built).ok());
    }
    Ok(())
}

fn answer(stream: &TcpStream, root: &Path, as_built: bool) -> std::io::Result<()> {
    stream.set_read_timeout(Some(Duration::from_secs(10)))?;
    let mut lines = BufReader::new(stream).take(REQUEST).lines();
    let request = lines.next().transpose()?.unwrap_or_default();
    // The rest of the request is read to its end: closing before that may cut the answer short.
    for line in lines {
        if line?.is_empty() {
            break;
        }
    }
    let mut words = request.split(' ');
    let (method, target) = (
        words.next().unwrap_or_default(),
        words.next().unwrap_or_default(),
    );
    let (status, kind, body) = match method {
        "GET" | "HEAD" => {
            match file(root, target).and_then(|path| Some((content(&path, as_built)?, path))) {
                Some((body, path)) => ("200 OK", media_type(&path), body),
                None => (
                    "404 Not Found",
                    "text/plain; charset=utf-8",
                    b"There is no such file.\n".to_vec(),
                ),
            }
        }
        _ => (
            "405 Method Not Allowed",
            "text/plain; charset=utf-8",
            b"Only GET and HEAD.\n".to_vec(),
        ),
    };
    let head = format!(
        "HTTP/1.1 {status}\r\nContent-Type: {kind}\r\nContent-Length: {}\r\nCache-Control: no-cache\r\n\
         X-Content-Type-Options: nosniff\r\nConnection: close\r\n\r\n",
        body.len()
    );
    let mut stream = stream;
    stream.write_all(head.as_bytes())?;
    if method == "GET" {
        stream.write_all(&body)?;
    }
    stream.flush()
}

/// What a file holds, or what takes its place.
fn content(path: &Path, as_built: bool) -> Option<Vec<u8>> {
    if !as_built && path.ends_with("service.js") {
        return Some(DEVELOPING.into());
    }
    fs::read(path).ok()
}

/// The file that a request names, never one outside `root`.
fn file(root: &Path, target: &str) -> Option<PathBuf> {
    let path = target.split(['?', '#']).next().unwrap_or_default();
    let path = decode(path.strip_prefix('/')?)?;
    let inside = Path::new(&path)
        .components()
        .all(|part| matches!(part, Component::Normal(_)));
    if !inside || path.contains(['\\', '\0']) {
        return None;
    }
    Some(if path.is_empty() || path.ends_with('/') {
        root.join(path).join("index.html")
    } else {
        root.join(path)
    })
}

/// Text with `%41` and the like resolved.
fn decode(text: &str) -> Option<String> {
    let mut bytes = text.bytes();
    let mut decoded = Vec::with_capacity(text.len());
    while let Some(byte) = bytes.next() {
        decoded.push(match byte {
            b'%' => {
                let digits = [bytes.next()?, bytes.next()?];
                u8::from_str_radix(std::str::from_utf8(&digits).ok()?, 16).ok()?
            }
            other => other,
        });
    }
    String::from_utf8(decoded).ok()
}

/// Browsers start neither modules nor WebAssembly under another type.
fn media_type(path: &Path) -> &'static str {
    match path.extension().and_then(|extension| extension.to_str()) {
        Some("html") => "text/html; charset=utf-8",
        Some("js" | "mjs") => "text/javascript; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("wasm") => "application/wasm",
        Some("json" | "map") => "application/json",
        Some("webmanifest") => "application/manifest+json",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        Some("ico") => "image/x-icon",
        Some("woff2") => "font/woff2",
        Some("txt") => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn served(target: &str) -> Option<String> {
        file(Path::new("dist"), target).map(|path| path.to_string_lossy().replace('\\', "/"))
    }

    #[test]
    fn a_folder_means_its_index() {
        assert_eq!(served("/"), Some("dist/index.html".into()));
        assert_eq!(served("/?share=1#x"), Some("dist/index.html".into()));
    }

    #[test]
    fn names_are_decoded_once() {
        assert_eq!(
            served("/assets/a%20b.js"),
            Some("dist/assets/a b.js".into())
        );
        assert_eq!(served("/%2541"), Some("dist/%41".into()));
        assert_eq!(served("/%4"), None);
        assert_eq!(served("/%zz"), None);
        assert_eq!(served("/%ff"), None);
    }

    #[test]
    fn while_one_develops_the_service_worker_takes_itself_off() {
        let path = Path::new("dist/service.js");
        let served = content(path, false).and_then(|bytes| String::from_utf8(bytes).ok());
        assert!(served.is_some_and(|text| text.contains("registration.unregister()")));
        assert_eq!(content(Path::new("dist/no-such-file.js"), false), None);
    }

    #[test]
    fn nothing_outside_the_folder_is_served() {
        for target in [
            "/../Cargo.toml",
            "/%2e%2e/Cargo.toml",
            "//etc/passwd",
            "/a/../../b",
            "/a\\..\\b",
            "a",
            "",
            "/a%00",
        ] {
            assert_eq!(served(target), None, "{target}");
        }
    }
}
