//! Records as JSON: what is read is written the same again and again, and never refused the second time.

use crate::EACH;
use crate::text::{RECORDS, text};
use bolero::check;
use serde::Serialize;
use serde::de::DeserializeOwned;
use tautline_survey::goal::Goal;
use tautline_survey::measure::Measure;
use tautline_survey::plan::{PlannedLine, Stratum};
use tautline_survey::protocol::Protocol;
use tautline_survey::visit::Visit;

#[test]
fn records() {
    check!(name = "records").with_test_time(EACH).for_each(|bytes: &[u8]| {
        let record = text(bytes, RECORDS);
        comes_back::<Measure>(&record);
        comes_back::<Goal>(&record);
        comes_back::<Protocol>(&record);
        comes_back::<PlannedLine>(&record);
        comes_back::<Stratum>(&record);
        comes_back::<Visit>(&record);
    });
}

fn comes_back<T: Serialize + DeserializeOwned + PartialEq + core::fmt::Debug>(record: &[u8]) {
    let Ok(read) = serde_json::from_slice::<T>(record) else { return };
    let written = serde_json::to_string(&read).expect("what was read is a record");
    let again: T = serde_json::from_str(&written).unwrap_or_else(|error| panic!("{error}: {written}"));
    assert_eq!(again, read, "{written}");
}
