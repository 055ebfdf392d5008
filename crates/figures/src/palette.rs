//! Which colour is what, on a screen in light and dark, on paper, and where a reader forces their own.

/// One row for each colour: its use, then its value in light, in dark, in print and under forced colours.
/// The stylesheet and the print palette are both made from this table, so they cannot drift apart.
macro_rules! colours {
    ($($(#[$use:meta])+ $colour:ident $name:literal $light:literal $dark:literal $print:literal $forced:literal)+) => {
        /// What a colour is for.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub(crate) enum Colour { $($(#[$use])+ $colour,)+ }

        impl Colour {
            #[cfg(test)]
            const ALL: &[(Self, [&'static str; 3])] = &[$((Self::$colour, [$light, $dark, $print]),)+];

            /// The name that classes and custom properties end with.
            const fn name(self) -> &'static str {
                match self { $(Self::$colour => $name,)+ }
            }

            /// The colour on paper.
            const fn printed(self) -> &'static str {
                match self { $(Self::$colour => $print,)+ }
            }
        }

        /// The colours of all figures on a screen: light, dark, printed by the browser, and forced.
        ///
        /// A page includes it once. Colours follow the reader's preference; an ancestor with
        /// `data-theme="light"`, `"dark"` or `"sunlight"` (the inks of print) decides against it, and a page can set
        /// any `--figure-…` property itself.
        ///
        /// # Example
        /// ```
        /// let page = format!("<style>{}</style>", tautline_figures::STYLESHEET);
        /// assert!(page.contains("prefers-color-scheme:dark"));
        /// ```
        pub const STYLESHEET: &str = concat!(
            ".figure{display:block;width:100%;height:auto}\n",
            ".figure{", $("--figure-", $name, ":", $light, ";",)+ "}\n",
            "@media (prefers-color-scheme:dark){.figure{", $("--figure-", $name, ":", $dark, ";",)+ "}}\n",
            "[data-theme=light] .figure{", $("--figure-", $name, ":", $light, ";",)+ "}\n",
            "[data-theme=dark] .figure{", $("--figure-", $name, ":", $dark, ";",)+ "}\n",
            "[data-theme=sunlight] .figure{", $("--figure-", $name, ":", $print, ";",)+ "}\n",
            "@media print{.figure,[data-theme] .figure{", $("--figure-", $name, ":", $print, ";",)+ "}}\n",
            "@media (forced-colors:active){.figure,[data-theme] .figure{forced-color-adjust:none;",
            $("--figure-", $name, ":", $forced, ";",)+ "}}\n",
            $(".figure-fill-", $name, "{fill:var(--figure-", $name, ")}\n",
              ".figure-line-", $name, "{stroke:var(--figure-", $name, ")}\n",)+
        );
    };
}

colours! {
    /// The ground that everything lies on.
    Ground "ground" "#fbf8f1" "#1d1a15" "#ffffff" "Canvas"
    /// Names, figures, the estimate.
    Ink "ink" "#2a241c" "#efe7d8" "#1a1a1a" "CanvasText"
    /// Axis numbers, legends.
    Quiet "quiet" "#5f5546" "#b8ab97" "#4d4d4d" "CanvasText"
    /// Hairlines.
    Rule "rule" "#d3c9b7" "#4a4338" "#c8c8c8" "GrayText"
    /// The strip of the tape.
    Tape "tape" "#f3dc94" "#5a4a1c" "#f5ecd0" "Canvas"
    /// The edge of the tape and the stakes.
    Edge "edge" "#7a5c10" "#c9a94e" "#6b5a2a" "CanvasText"
    /// Canopy on the tape, and bars that speak of no one species.
    Canopy "canopy" "#3c5229" "#b5d192" "#3d4f30" "CanvasText"
    /// Dead canopy.
    Dead "dead" "#6a6257" "#a79c8c" "#666666" "CanvasText"
    /// What was not read or cannot be known.
    Unknown "unknown" "#8a6a58" "#c49a84" "#808080" "GrayText"
    /// The goal's threshold.
    Goal "goal" "#9a3412" "#f2a06e" "#8a3010" "CanvasText"
    /// The side of the threshold that meets the goal.
    Met "met" "#e2ebd2" "#34422a" "#e9efdf" "Canvas"
    /// The first of the species colours.
    Tone1 "tone-1" "#3c4a0b" "#97b762" "#3c4a0b" "CanvasText"
    /// The second.
    Tone2 "tone-2" "#a55842" "#b46a56" "#a55842" "CanvasText"
    /// The third.
    Tone3 "tone-3" "#456092" "#5980c3" "#456092" "CanvasText"
    /// The fourth.
    Tone4 "tone-4" "#a88508" "#f8d87b" "#ad890a" "CanvasText"
    /// The fifth.
    Tone5 "tone-5" "#520a4f" "#e099cd" "#520a4f" "CanvasText"
    /// The sixth.
    Tone6 "tone-6" "#6a9190" "#d1f6f4" "#6e9593" "CanvasText"
}

/// Which of the species colours; a species keeps its number through a whole report.
///
/// # Range
/// six colours that stay apart for colour-blind readers; higher numbers begin again at the first. No figure
/// tells species apart by colour alone.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Tone(pub u8);

impl From<Tone> for Colour {
    fn from(Tone(number): Tone) -> Self {
        [Self::Tone1, Self::Tone2, Self::Tone3, Self::Tone4, Self::Tone5, Self::Tone6]
            [usize::from(number) % 6]
    }
}

/// Where the colours come from: a stylesheet on the screen, or the drawing itself in print.
///
/// # Example
/// ```
/// use tautline_figures::Palette;
/// let office = Palette::print().with_font("Libertinus Serif");
/// assert_ne!(office, Palette::screen());
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Palette {
    printed: bool,
    font: Option<String>,
}

impl Palette {
    /// Classes only; the page includes [`STYLESHEET`], and the page's font is used.
    pub const fn screen() -> Self {
        Self { printed: false, font: None }
    }

    /// Colours resolved in the drawing, which then stands alone.
    pub fn print() -> Self {
        Self { printed: true, font: Some("sans-serif".to_owned()) }
    }

    /// The same with this font family.
    #[must_use]
    pub fn with_font(mut self, family: &str) -> Self {
        self.font = Some(family.to_owned());
        self
    }

    pub(crate) fn font(&self) -> Option<&str> {
        self.font.as_deref()
    }

    /// The attributes that fill with one colour, draw lines with another, or leave either out.
    pub(crate) fn attributes(&self, fill: Option<Colour>, line: Option<Colour>) -> String {
        if self.printed {
            let fill = fill.map(|colour| format!(" fill=\"{}\"", colour.printed()));
            let line = line.map(|colour| format!(" stroke=\"{}\"", colour.printed()));
            return fill.unwrap_or_default() + &line.unwrap_or_default();
        }
        let fill = fill.map(|colour| format!("figure-fill-{}", colour.name()));
        let line = line.map(|colour| format!("figure-line-{}", colour.name()));
        let classes: Vec<String> = fill.into_iter().chain(line).collect();
        if classes.is_empty() { String::new() } else { format!(" class=\"{}\"", classes.join(" ")) }
    }
}

#[cfg(test)]
#[path = "palette_tests.rs"]
mod tests;
