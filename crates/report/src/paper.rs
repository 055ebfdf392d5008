//! The paper that reports and packets are printed on.

/// The size of a sheet.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Paper {
    /// 210 by 297 mm (ISO 216).
    #[default]
    A4,
    /// 8.5 by 11 inches (ANSI/ASME Y14.1).
    Letter,
}

impl Paper {
    /// By the name that an option takes; A4 for any other.
    pub fn named(name: Option<&str>) -> Self {
        if name == Some("letter") { Self::Letter } else { Self::A4 }
    }
}
