//! The plan as a page for a person.

use std::collections::BTreeMap;

use budwood_scheduler::{
    Clock, TaskKind,
    handbook::calendar::Citation,
    land::stand::trees_per_hectare,
    plan::{StepKind, life::Done},
};
use chrono::NaiveDate;

use super::{
    Planned, Shape,
    costs::{Month, months_apart},
    feeding, measuring,
};
use crate::wording::{NudgeText, Tongue, nudge};

/// Busiest and dearest months that are named.
const NAMED: usize = 3;

pub(super) fn of(planned: &Planned, tongue: &Tongue<'_>) -> String {
    let mut page = head(planned);
    page += &steps(planned, tongue);
    page += &summary(planned, tongue);
    page += &feeding::of(planned);
    page += &measuring::of(planned);
    page += &list(planned, tongue);
    page += &texts(planned, tongue);
    page + &money(planned)
}

fn head(planned: &Planned) -> String {
    let calendar = &planned.calendar;
    let (row_m, in_row_m) = planned.spacing_m;
    let order = &calendar.order;
    let mut page = format!(
        "{:.2} ha at {row_m} x {in_row_m} m ({:.0} trees a hectare), planting {}. Calendar {}: {}\n\n",
        planned.hectares,
        trees_per_hectare(row_m, in_row_m),
        planned.planting,
        calendar.name,
        calendar.title
    );
    let from = match &planned.shape {
        Shape::Outline(ground) => format!(
            "inside the outline ({:.0} m round), {} m from it",
            ground.boundary_m, planned.margin_m
        ),
        Shape::Rectangle => format!(
            "rows along the rectangle, {} m inside its sides",
            planned.margin_m
        ),
        Shape::Area => "area over spacing, rounded down".to_owned(),
    };
    page += &format!(
        "points  {:>6}  {from}; the pegs on the land override it\n",
        planned.points
    );
    page += &format!(
        "order   {:>6}  with {} % spares{} and {} % lost on the way{}\n",
        planned.order,
        order.spares_pct,
        sure(planned, "order.spares_pct"),
        order.transit_loss_pct,
        sure(planned, "order.transit_loss_pct"),
    );
    page + &losses(planned) + &opening(planned) + &slope(planned) + &season(planned)
}

/// Dead plants that publications reckon with: an Indonesian text for estates calls 5 % tolerable,
/// a guide of north-west Vietnam has 15 to 25 % of spares, of which 20 are taken here.
const LOSSES_PCT: (u32, u32) = (5, 20);

fn losses(planned: &Planned) -> String {
    let (few, many) = LOSSES_PCT;
    let of_points = |pct| planned.points * pct / 100;
    let told = format!("{}-{}", of_points(few), of_points(many));
    format!("losses  {told:>6}  plants die at first, where {few} to {many} % do\n")
}

fn opening(planned: &Planned) -> String {
    let Some(range) = planned.opening else {
        return "opening      -  too far ahead to say\n".to_owned();
    };
    format!(
        "opening {:>6}  years after planting is likely, in {}; four times out of five from {} to {}, before a tree is measured\n",
        format!(
            "{:.1}",
            f64::from(months_apart(planned.planting, range.likely)) / 12.0
        ),
        range.likely.format("%Y-%m"),
        range.earliest.format("%Y-%m"),
        range.latest.format("%Y-%m"),
    )
}

fn slope(planned: &Planned) -> String {
    let rule = planned.calendar.slope;
    let over = |limit: Option<f64>| limit.is_some_and(|limit| planned.slope_pct > limit);
    let said = if over(rule.most_pct) {
        "steeper than this calendar plants at all"
    } else if over(rule.terrace_pct) {
        "terraces and cover"
    } else if over(Some(rule.contour_pct)) {
        "rows along the contour"
    } else {
        return String::new();
    };
    format!("slope   {:>4} %  {said}\n", planned.slope_pct)
}

fn season(planned: &Planned) -> String {
    use chrono::Datelike;
    let months = &planned.calendar.planting.months;
    if months.is_empty() || months.contains(&planned.planting.month()) {
        return String::new();
    }
    let names: Vec<String> = months.iter().map(ToString::to_string).collect();
    format!(
        "season          this calendar plants in months {}\n",
        names.join(", ")
    )
}

/// How sure a value is, when it is less than published.
fn sure(planned: &Planned, path: &str) -> String {
    match planned.calendar.citation(path) {
        Some(Citation { confidence, .. }) if !confidence.is_published() => {
            format!(" ({})", confidence.name())
        }
        Some(_) | None => String::new(),
    }
}

fn steps(planned: &Planned, tongue: &Tongue<'_>) -> String {
    let mut page = "\nBy when\n".to_owned();
    for step in &planned.steps {
        let what = match step.what {
            StepKind::Measure => "have the land measured".to_owned(),
            StepKind::Order(material) => {
                format!(
                    "order at the latest ({})",
                    material.name().replace('_', " ")
                )
            }
            StepKind::Job(kind) => tongue.job(kind),
            StepKind::Collect => "plants arrive".to_owned(),
            StepKind::RefillPits => "fill the pits again".to_owned(),
            StepKind::Water => "water the bag plants".to_owned(),
            StepKind::PlantingDay => "plant, when the adviser opens the window".to_owned(),
            StepKind::LastFilling => "last day for filling gaps".to_owned(),
        };
        page += &format!("  {}  {what}\n", step.by);
    }
    page
}

/// Jobs by year after planting; 0 is what comes before it.
fn summary(planned: &Planned, tongue: &Tongue<'_>) -> String {
    let mut rows: BTreeMap<TaskKind, [u32; 8]> = BTreeMap::new();
    for done in &planned.years {
        let year = year(done, planned.planting);
        if let Some(cell) = rows.entry(done.task.kind).or_default().get_mut(year) {
            *cell += 1;
        }
    }
    let mut page = "\nRounds by year after planting (0: before)\n".to_owned();
    page += &format!("  {:<16}", "job");
    for year in 0..8 {
        page += &format!("{year:>5}");
    }
    page.push('\n');
    for kind in TaskKind::ALL {
        if let Some(cells) = rows.get(&kind) {
            page += &format!("  {:<16}", tongue.job(kind));
            for cell in cells {
                let shown = if *cell == 0 {
                    "-".to_owned()
                } else {
                    cell.to_string()
                };
                page += &format!("{shown:>5}");
            }
            page.push('\n');
        }
    }
    page
}

fn year(done: &Done, planting: NaiveDate) -> usize {
    if done.on < planting {
        return 0;
    }
    usize::try_from(done.month / 12)
        .unwrap_or(usize::MAX)
        .saturating_add(1)
}

fn list(planned: &Planned, tongue: &Tongue<'_>) -> String {
    let mut page = "\nThe list, done on the day it is due\n".to_owned();
    page += &format!(
        "  {:<10}  {:>5}  {:<16}  {:<9}  {:<10}  {}\n",
        "due", "month", "job", "clock", "late after", "figures"
    );
    for done in &planned.years {
        let month = if done.on < planned.planting {
            "-".to_owned()
        } else {
            done.month.to_string()
        };
        let line = format!(
            "  {:<10}  {month:>5}  {:<16}  {:<9}  {:<10}  {}",
            done.on,
            tongue.job(done.task.kind),
            clock(done.task.clock),
            done.task.late_after,
            figures(done),
        );
        page += line.trim_end();
        page.push('\n');
    }
    page
}

const fn clock(clock: Clock) -> &'static str {
    match clock {
        Clock::Planting => "planting",
        Clock::Season => "season",
        Clock::Trees => "trees",
        Clock::Office => "office",
    }
}

fn figures(done: &Done) -> String {
    let figures = &done.task.figures;
    let mut parts = Vec::new();
    parts.extend(figures.trees.map(|trees| trees.to_string()));
    parts.extend(
        figures
            .kilograms
            .map(|kilograms| format!("{kilograms:.0} kg")),
    );
    parts.extend(figures.height_m.map(|metres| format!("{metres} m")));
    parts.extend(figures.girth_cm.map(|cm| format!("{cm} cm")));
    parts.extend(
        figures
            .distance_m
            .map(|metres| format!("{metres} m off the row")),
    );
    parts.extend(figures.width_m.map(|metres| format!("{metres} m wide")));
    parts.join(", ")
}

/// Each job once: how urgent, on what condition, and the text.
fn texts(planned: &Planned, tongue: &Tongue<'_>) -> String {
    let mut page = "\nThe texts, the most urgent first\n".to_owned();
    let mut kinds = TaskKind::ALL;
    kinds.sort_by_key(|kind| kind.urgency());
    for kind in kinds {
        let Some(done) = planned.years.iter().find(|done| done.task.kind == kind) else {
            continue;
        };
        let text = tongue.word(&nudge(NudgeText {
            name: "Tamo",
            block: "A",
            task: &done.task,
            by: done.task.late_after,
            adviser: "Mara",
            is_new: false,
        }));
        let published = planned.calendar.is_published(kind);
        let rests = if published {
            ""
        } else {
            " [not published in full]"
        };
        page += &format!(
            "  {:>2} {}: {}{rests}\n     {text}\n",
            kind.urgency(),
            tongue.job(kind),
            condition(kind)
        );
    }
    page
}

/// What must be so before a job is spoken of, as its rule checks it, and then when it is.
fn condition(kind: TaskKind) -> String {
    let words: Vec<&str> = kind.conditions().iter().map(|one| one.words()).collect();
    format!("{}; {}", words.join(", "), when(kind))
}

const fn when(kind: TaskKind) -> &'static str {
    match kind {
        TaskKind::OrderPlants => "so long before planting as the nursery needs",
        TaskKind::Clear => "in the dry season before planting",
        TaskKind::Line | TaskKind::DigPits => "months before planting",
        TaskKind::FillPits => "days before planting",
        TaskKind::RainWatch => "about the first day of the rains of the planting, once a week",
        TaskKind::Plant => "from the opened day on, not in dry or flooded soil",
        TaskKind::SowCover => "when the rains of the planting begin",
        TaskKind::SurvivalCheck => "weeks after each planting",
        TaskKind::Backfill => "while rain is left, before the last month",
        TaskKind::Weed | TaskKind::RootCheck => "when the interval of the age has passed",
        TaskKind::Feed => "in the month of the table, in the rains, not in dry or flooded soil",
        TaskKind::Prune => "when the interval has passed, at the age",
        TaskKind::Mulch | TaskKind::Firebreak => "before the rains end, up to an age",
        TaskKind::CountTall => "when the interval has passed, at the age",
        TaskKind::InduceBranching => "at the age, in the rains, once for each count",
        TaskKind::LookAtInduced => "a week or two later, until somebody looked",
        TaskKind::LeafCheck => "when the interval has passed, in the rains",
        TaskKind::Intercrop => "once a year while the trees are young",
        TaskKind::GirthCensus => "when the interval has passed, or a good sample was too small",
        TaskKind::GetReady => "months before the likely opening, once",
        TaskKind::Open => "from the least age on, in the months of opening",
        TaskKind::OpenRest => "half a year after each opening, until the stand is handed over",
        TaskKind::HandOver => "with the last tree, or after a year without another, once",
    }
}

fn money(planned: &Planned) -> String {
    let Some(costs) = &planned.costs else {
        return String::new();
    };
    let months = costs.months(&planned.years, planned.hectares, planned.points);
    let paid: f64 = months.iter().map(|month| month.paid).sum();
    let granted: f64 = months.iter().map(|month| month.granted).sum();
    let days: f64 = months.iter().map(|month| month.days).sum();
    let currency = &costs.currency;
    let mut page = format!(
        "\nMoney and labour\n  paid {paid:.0} {currency}, granted {granted:.0}, {days:.0} working days for each of {} people\n",
        costs.people
    );
    if let Some(worst) = months
        .iter()
        .min_by(|one, other| one.in_hand.total_cmp(&other.in_hand))
    {
        page += &format!(
            "  least in hand: {:.0} {currency} in month {}\n",
            worst.in_hand, worst.month
        );
    }
    if let Some(range) = planned.opening {
        let until = months_apart(planned.planting, range.likely);
        let played = months.iter().filter(|month| month.month <= until);
        let (paid, granted) = played.fold((0.0, 0.0), |(paid, granted), month| {
            (paid + month.paid, granted + month.granted)
        });
        let end = if months.iter().all(|month| month.month < until) {
            " as far as the list goes"
        } else {
            ""
        };
        page += &format!(
            "  until the likely opening, month {until}: {:.0} {currency} to find{end}\n",
            paid - granted
        );
    }
    let named = |by: fn(&Month) -> f64| {
        let mut sorted: Vec<&Month> = months.iter().collect();
        sorted.sort_by(|one, other| by(other).total_cmp(&by(one)));
        let shown = sorted.into_iter().take(NAMED);
        let shown: Vec<String> = shown
            .map(|month| format!("{} ({:.0})", month.month, by(month)))
            .collect();
        shown.join(", ")
    };
    page += &format!("  dearest months: {}\n", named(|month| month.paid));
    page + &format!("  busiest months, days: {}\n", named(|month| month.days))
}
