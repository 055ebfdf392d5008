//! A page made elsewhere in the house, shown as it is: in a tree of its own, so that its style and the app's don't meet.

use crate::route::Route;
use leptos::html;
use leptos::prelude::*;
use wasm_bindgen::prelude::*;
use web_sys::{Element, ShadowRootInit, ShadowRootMode};

#[wasm_bindgen]
extern "C" {
    type Sheets;
    #[wasm_bindgen(method, setter, js_name = adoptedStyleSheets)]
    fn set_adopted(this: &Sheets, sheets: &js_sys::Array);
}

/// The body of a page under its own style. Links within it lead within it, those to other screens there.
pub(crate) fn sheet(body: String, style: String) -> impl IntoView {
    let place = NodeRef::<html::Div>::new();
    place.on_load(move |place| {
        // a browser without shadow trees is older than all that the app runs in
        let _ = show(&place, &body, &style);
    });
    view! { <div class="sheet" node_ref=place></div> }
}

/// Rules for a page's body, for the root of a tree within another page. The page's own colours stay outside: those of the
/// app, which bear the same names, reach in.
fn within(style: &str) -> String {
    let own_colours = |line: &&str| line.contains(":root{") && !line.contains("print");
    let kept: Vec<&str> = style.lines().filter(|line| !own_colours(line)).collect();
    kept.join("\n")
        .replace(":root{", ":host{")
        .replace("body{", ":host{")
        .replace("main,footer{", "article,footer{")
}

/// The body, which is the main thing of its own page and one among others here, under the theme that a person chose: a selector outside the tree doesn't reach its pictures.
fn themed(body: &str) -> String {
    let body = body.replace("<main id=\"main\">", "<article>").replace("</main>", "</article>");
    let root = document().document_element();
    let theme = root.and_then(|root| root.get_attribute("data-theme"));
    theme.map_or_else(|| body.clone(), |theme| format!("<div data-theme=\"{theme}\">{body}</div>"))
}

/// Where a page says that the handbook has more, it leads there.
fn link_to_handbook(tree: &web_sys::ShadowRoot) -> Result<(), JsValue> {
    let named = tree.query_selector_all("[data-page]")?;
    let named = (0..named.length()).filter_map(|at| named.item(at)?.dyn_into::<Element>().ok());
    for own in named {
        let page = own.get_attribute("data-page").unwrap_or_default();
        let link = document().create_element("a")?;
        link.set_attribute("href", &Route::Handbook(page).address())?;
        link.set_text_content(own.text_content().as_deref());
        own.set_text_content(None);
        own.append_child(&link)?;
    }
    Ok(())
}

fn show(place: &Element, body: &str, style: &str) -> Result<(), JsValue> {
    // where another page was shown before, its tree is there already, and so are its links
    let (tree, is_new) = match place.shadow_root() {
        Some(tree) => (tree, false),
        None => (place.attach_shadow(&ShadowRootInit::new(ShadowRootMode::Open))?, true),
    };
    let rules = web_sys::CssStyleSheet::new()?;
    // what of the rules isn't understood is passed over by the browser itself
    let _ = rules.replace_sync(&within(style));
    tree.unchecked_ref::<Sheets>().set_adopted(&js_sys::Array::of1(&rules));
    tree.set_inner_html(&themed(body));
    link_to_handbook(&tree)?;
    if !is_new {
        return Ok(());
    }
    let own = tree.clone();
    let follow = Closure::<dyn Fn(web_sys::Event)>::new(move |event: web_sys::Event| {
        let link = event
            .target()
            .and_then(|target| target.dyn_into::<Element>().ok())
            .and_then(|target| target.closest("a[href^='#']:not([href^='#/'])").ok().flatten());
        let Some(name) = link.and_then(|link| link.get_attribute("href")) else { return };
        event.prevent_default();
        if let Some(target) = own.get_element_by_id(name.trim_start_matches('#')) {
            target.scroll_into_view();
        }
    });
    tree.add_event_listener_with_callback("click", follow.as_ref().unchecked_ref())?;
    follow.forget();
    Ok(())
}
