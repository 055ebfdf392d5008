//! The browser's module keeps its relocations: the web build takes it apart into what is loaded first and what later.

fn main() {
    println!("cargo::rerun-if-changed=build.rs");
    if std::env::var("CARGO_CFG_TARGET_ARCH").is_ok_and(|arch| arch == "wasm32") {
        println!("cargo::rustc-link-arg-bins=--emit-relocs");
    }
}
