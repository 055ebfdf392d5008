//! Two visits to the same lines.

use super::{Answer, unknown};
use crate::example::Example;
use crate::printed::{Found, number};
use tautline_engine::change::{Pair, answer, p_value, paired, smallest_seen, unpaired};
use tautline_engine::estimate::{Line, SamplingError, of_lines};
use tautline_engine::num::math::sqrt;
use tautline_engine::num::quantile::t_quantile;

/// “12 % then 15 %”, lines of one length.
pub(super) fn out(example: &Example) -> Answer<'_> {
    let pairs: Vec<Pair> = example
        .all("line")
        .map(|(_, said)| {
            let (earlier, later) =
                said.split_once(" then ").unwrap_or_else(|| panic!("“{said}” has no “then”"));
            Pair { earlier: Line::new(number(earlier), 1.0), later: Line::new(number(later), 1.0) }
        })
        .collect();
    let confidence = number(example.needed("confidence"));
    let matters = example.given("change that matters").map(number);
    let power = example.given("chance wanted").map(number);
    let change = paired(&pairs).expect("pairs that can be reckoned with");
    let visit =
        |of: fn(&Pair) -> Line| of_lines(&pairs.iter().map(of).collect::<Vec<_>>(), None).expect("lines");
    let apart = unpaired(&visit(|pair| pair.earlier), &visit(|pair| pair.later));
    Box::new(move |key| {
        let SamplingError::Known { se, df } = change.error else { return Err("it has no error".to_owned()) };
        let SamplingError::Known { se: se_apart, .. } = apart.error else {
            return Err("it has no error".to_owned());
        };
        let no = |why: tautline_engine::confidence::NoBound| why.code().to_owned();
        Ok(match key {
            "change" => change.value.into(),
            "standard deviation of the differences" => {
                (se * sqrt(tautline_engine::num::count(pairs.len()))).into()
            }
            "standard error" => se.into(),
            "degrees of freedom" => df.into(),
            "t" => (change.value / se).into(),
            "p" => p_value(&change).map_err(no)?.into(),
            "interval" => {
                let reach = t_quantile(f64::midpoint(1.0, confidence), df) * se;
                Found::Range(change.value - reach, change.value + reach)
            }
            "standard error, had the lines not been the same" => se_apart.into(),
            "answer" => match answer(&change, confidence, matters).map_err(no)?.code() {
                "change-rose" => "rose",
                "change-fell" => "fell",
                "change-none-that-matters" => "none that matters",
                _ => "not shown",
            }
            .into(),
            "smallest change seen" => {
                let power = power.ok_or("it wants no chance")?;
                smallest_seen(&change, confidence, power).map_err(no)?.ok_or("none is seen")?.into()
            }
            other => return unknown(other),
        })
    })
}
