//! A plan that says when to stop.

use super::{Device, add_all, sheet, standing, visit};
use tautline_engine::length::DecimalMark;
use tautline_survey::assess::Question;
use tautline_survey::date::Date;
use tautline_survey::effort::looks::{Looks, chosen};
use tautline_survey::goal;
use tautline_survey::input::Input;
use tautline_survey::message::Message;
use tautline_survey::notebook::hand::Draft;
use tautline_survey::notebook::payload::Payload;
use tautline_survey::plants::{GrowthForm, Plant, PlantList};
use tautline_survey::promise::{Agreed, Objective, Sampling};
use tautline_survey::record::Records;

fn woody() -> PlantList {
    PlantList { plants: vec![Plant::new("ATCA", GrowthForm::Shrub)] }
}

/// Covers of 4, 5 and 4 % against a goal of 15 %: by Student's t the mean of three lies 32 standard errors below, so the first look
/// of a plan from 3 lines on ends it, and a plan from 4 lines on has not looked yet. Nothing is advised under a plan that came late.
#[test]
fn a_plan_that_was_chosen_beforehand_says_when_to_stop_and_no_other_does() {
    let (mut device, mut records) = (Device::new(1), Records::default());
    let lines = ["1", "2", "3"].into_iter().zip([7, 8, 7]);
    let visits = lines.map(|(line, stop)| visit(line, stop)).collect();
    device.import(&mut records, &Input { plants: woody(), ..sheet("a", visits) });
    let mut write = |name: &str, looks: &str, agreed: Option<&str>| {
        let objective = Objective {
            name: name.into(),
            site: "Invented Flat".into(),
            goal: goal::read("at least 15 %", DecimalMark::Point).ok(),
            sampling: Sampling { looks: Looks::read(looks), ..Sampling::default() },
            agreed: agreed
                .map(|day| Agreed { who: "owner".into(), date: Date::read(day) })
                .into_iter()
                .collect(),
            ..Objective::default()
        };
        let draft = Draft::beginning(&Payload::Objective(Box::new(objective)));
        add_all(&mut records, device.write("objective", vec![draft]));
    };
    write("early", "3 to 9", Some("2026-03-01"));
    write("late", "3 to 9", Some("2026-06-10"));
    write("none", "", None);
    // written down on the day of the first line, by the revision's own time
    write("unlooked", "4 to 9", None);
    let current = standing(&records);
    let (input, _) = current.input();
    let advice: Vec<(String, Message)> = chosen(&current, &input, "Invented Flat", Some(2026))
        .iter()
        .map(|plan| (plan.objective.clone(), plan.advice(&input, &Question::default(), Some(2026))))
        .collect();
    let expected = [
        ("early".to_owned(), Message::new("standing-not-met").with("lines", 3_usize)),
        ("late".to_owned(), Message::new("looks-late").with("looks", "3 to 9")),
        ("unlooked".to_owned(), Message::new("standing-no-look").with("lines", 3_usize)),
    ];
    assert_eq!(advice, expected);
    assert!(chosen(&current, &input, "Elsewhere", Some(2026)).is_empty());
}
