//! The feeding table of a plan: what each round gives a tree, in products and in nutrients, and
//! how much of another product brings the same nitrogen.

use std::collections::BTreeSet;

use budwood_scheduler::{
    handbook::calendar::Dose,
    jobs::{
        feed::{grams_per_tree, kilograms},
        nutrients::{Nutrients, swap},
    },
};

use super::Planned;

/// The plan speaks of the first seven years.
const MONTHS: u32 = 84;

pub(super) fn of(planned: &Planned) -> String {
    let feeding = &planned.calendar.feeding;
    let mut page = format!(
        "\nFeeding, grams a tree; kilograms for {} trees; nutrients as bags print them\n  {:>5}{:>7}{:>7}{:>7}{:>7}{:>7}  products\n",
        planned.points, "month", "kg", "N", "P2O5", "K2O", "MgO"
    );
    let mut on_the_bag = BTreeSet::new();
    if !feeding.basal.is_empty() {
        page += &row(planned, "pits", &feeding.basal, &mut on_the_bag);
    }
    for round in feeding.rounds.iter().filter(|round| round.month < MONTHS) {
        page += &row(
            planned,
            &round.month.to_string(),
            &round.doses,
            &mut on_the_bag,
        );
    }
    if !on_the_bag.is_empty() {
        let names: Vec<&str> = on_the_bag.into_iter().collect();
        page += &format!(
            "  not counted, since only the bag tells what is in it: {}\n",
            names.join(", ")
        );
    }
    page
}

fn row<'a>(
    planned: &Planned,
    when: &str,
    doses: &'a [Dose],
    on_the_bag: &mut BTreeSet<&'a str>,
) -> String {
    let mut held = Nutrients::default();
    let mut is_whole = true;
    for dose in doses {
        if let Some(holds) = Nutrients::of_product(&dose.product) {
            held = held.and(holds.in_weight(dose.grams));
        } else {
            on_the_bag.insert(&dose.product);
            is_whole = false;
        }
    }
    let products: Vec<String> = doses
        .iter()
        .map(|dose| format!("{} {}", dose.product, dose.grams.round()))
        .collect();
    let kg = kilograms(planned.points, grams_per_tree(doses)).round();
    let [n, p2o5, k2o, mgo] = [held.n, held.p2o5, held.k2o, held.mgo].map(cell);
    let instead = match planned.instead {
        Some(offered) if is_whole => instead(held, offered),
        Some(_) | None => String::new(),
    };
    format!(
        "  {when:>5}{kg:>7}{n:>7}{p2o5:>7}{k2o:>7}{mgo:>7}  {}{instead}\n",
        products.join(", ")
    )
}

fn cell(grams: f64) -> String {
    if grams > 0.0 {
        format!("{grams:.1}")
    } else {
        "-".to_owned()
    }
}

/// What of the other product gives a tree the nitrogen of this round, and what it brings beside.
fn instead(held: Nutrients, offered: Nutrients) -> String {
    let Some(found) = swap(held, offered) else {
        return String::new();
    };
    let over = [
        ("P2O5", found.over.p2o5),
        ("K2O", found.over.k2o),
        ("MgO", found.over.mgo),
    ];
    let over: Vec<String> = over
        .iter()
        .map(|(name, grams)| (name, format!("{grams:+.1}")))
        .filter(|(_, grams)| !matches!(grams.as_str(), "+0.0" | "-0.0"))
        .map(|(name, grams)| format!("{name} {grams}"))
        .collect();
    let over = if over.is_empty() {
        String::new()
    } else {
        format!(" ({})", over.join(", "))
    };
    format!("; or {:.0} of the other{over}", found.weight)
}
