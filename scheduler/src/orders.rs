//! How many plants to order, and by when.

use chrono::NaiveDate;

use crate::{calendar::Order, days, number};

/// Plants to order so that every point is planted and spares are left: points and spares, and
/// what is lost on the way on top of both, rounded up once. Shares are in per cent.
///
/// None when everything would be lost on the way.
#[must_use]
pub fn plants_to_order(points: u32, spares_pct: f64, transit_loss_pct: f64) -> Option<u32> {
    let arriving = 1.0 - transit_loss_pct / 100.0;
    if arriving <= 0.0 {
        return None;
    }
    number::ceil(f64::from(points) * (1.0 + spares_pct / 100.0) / arriving)
}

/// The last day on which to order for planting on this day: the nursery's lead and the slack
/// before it.
#[must_use]
pub fn order_by(planned_on: NaiveDate, lead_days: u32, slack_days: u32) -> Option<NaiveDate> {
    days::before(planned_on, lead_days.checked_add(slack_days)?)
}

/// The lead of the material that is usual in this calendar, in days.
#[must_use]
pub fn usual_lead_days(order: &Order) -> Option<u32> {
    order.lead_days.get(&order.material).copied()
}
