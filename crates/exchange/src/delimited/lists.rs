//! Plant lists and strata.

use super::{Alike, Options, Sheet};
use crate::headings::{Column, square_millimetres};
use std::collections::HashSet;
use tautline_engine::length::DecimalMark;
use tautline_survey::input::Input;
use tautline_survey::limits::LARGEST_AREA;
use tautline_survey::plan::Stratum;
use tautline_survey::plants::{GrowthForm, Plant};

pub(super) fn plants(sheet: &Sheet, alike: &mut Alike, input: &mut Input) {
    let mut listed: HashSet<String> =
        input.plants.plants.iter().map(|plant| plant.code.to_uppercase()).collect();
    for row in sheet.rows() {
        let column = row.sheet.first_of([Column::Code, Column::Species]);
        let code = row.text(column);
        if code.is_empty() {
            alike.keep(row.about(column, "cell-empty"), &mut input.findings);
            continue;
        }
        let Some(form) = GrowthForm::from_word(row.text(Column::Form)) else {
            alike.keep(row.about(Column::Form, "form-not-known"), &mut input.findings);
            continue;
        };
        if !listed.insert(code.to_uppercase()) {
            alike.keep(row.about(column, "plant-listed-twice"), &mut input.findings);
            continue;
        }
        input.plants.plants.push(Plant {
            code: code.to_uppercase(),
            name: row.text(Column::Name).to_owned(),
            common: row.text(Column::CommonName).to_owned(),
            form,
            groups: row
                .text(Column::Groups)
                .split([';', ' '])
                .filter(|group| !group.is_empty())
                .map(str::to_lowercase)
                .collect(),
            key_features: row.text(Column::KeyFeatures).to_owned(),
        });
    }
}

pub(super) fn strata(sheet: &Sheet, options: &Options, input: &mut Input) {
    let unit_of_heading = sheet
        .headings
        .iter()
        .find(|h| h.column == Some(Column::Area))
        .and_then(|heading| heading.unit.clone());
    let of = |stratum: &Stratum| (stratum.site.clone(), stratum.name.clone());
    let mut listed: HashSet<(String, String)> = input.strata.iter().map(of).collect();
    for row in sheet.rows() {
        let text = row.text(Column::Area);
        let number: String =
            text.chars().take_while(|c| c.is_ascii_digit() || matches!(c, '.' | ',')).collect();
        let unit = text[number.len()..].trim();
        let unit =
            if unit.is_empty() { unit_of_heading.as_deref().unwrap_or(row.text(Column::Unit)) } else { unit };
        let Some(per_unit) = square_millimetres(unit) else {
            input.findings.push(row.about(Column::Area, "area-no-unit"));
            continue;
        };
        let Some(area) =
            whole(&number, sheet.mark, per_unit).filter(|&area| area > 0 && area <= LARGEST_AREA)
        else {
            input.findings.push(row.about(Column::Area, "area-not-a-number"));
            continue;
        };
        let Some(site) = row.site(options) else {
            input.findings.push(row.about(Column::Site, "site-missing"));
            continue;
        };
        let name = row.text(Column::Stratum).to_owned();
        if !listed.insert((site.clone(), name.clone())) {
            input.findings.push(row.about(Column::Stratum, "stratum-listed-twice"));
            continue;
        }
        input.strata.push(Stratum { site, name, area });
    }
}

/// A decimal number times a whole factor, exactly, what is left below one cut away; the other mark than the file's
/// could be one of thousands and is refused.
fn whole(number: &str, mark: DecimalMark, factor: u64) -> Option<u64> {
    let point = if mark == DecimalMark::Comma { ',' } else { '.' };
    let (whole, decimals) = number.split_once(point).unwrap_or((number, ""));
    if whole.len() + decimals.len() > 18 || whole.is_empty() {
        return None;
    }
    let digits: u128 = format!("{whole}{decimals}").parse().ok()?;
    let scale = 10_u128.pow(u32::try_from(decimals.len()).ok()?);
    u64::try_from(digits * u128::from(factor) / scale).ok()
}
