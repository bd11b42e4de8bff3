//! How many plants to order, and by when.

use chrono::NaiveDate;

use crate::{
    handbook::calendar::Order,
    sums::{days, rounding},
};

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
    rounding::ceil(f64::from(points) * (1.0 + spares_pct / 100.0) / arriving)
}

/// These plants rounded up to whole trays or bundles. None when a bundle holds none.
#[must_use]
pub fn in_bundles(plants: u32, bundle: u32) -> Option<u32> {
    plants.checked_next_multiple_of(bundle)
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

#[cfg(test)]
mod tests {
    use chrono::NaiveDate;

    use super::{in_bundles, order_by, plants_to_order};

    fn day(text: &str) -> NaiveDate {
        text.parse().unwrap()
    }

    /// Worked by hand: points and spares, rounded up.
    #[test]
    fn plants_with_spares() {
        assert_eq!(plants_to_order(190, 10.0, 0.0), Some(190 + 19));
        assert_eq!(plants_to_order(444, 15.0, 0.0), Some(444 + 67));
        assert_eq!(plants_to_order(500, 25.0, 0.0), Some(500 + 125));
        assert_eq!(plants_to_order(714, 5.0, 0.0), Some(714 + 36));
        assert_eq!(plants_to_order(1_111, 10.0, 0.0), Some(1_111 + 112));
    }

    /// 571 x 1.1 / 0.97 = 647.5.
    #[test]
    fn plants_with_spares_and_loss_on_the_way() {
        assert_eq!(plants_to_order(571, 10.0, 3.0), Some(648));
        assert_eq!(plants_to_order(0, 10.0, 3.0), Some(0));
        assert_eq!(plants_to_order(571, 10.0, 100.0), None);
        assert_eq!(plants_to_order(u32::MAX, 10.0, 3.0), None);
    }

    /// A nursery that packs in trays of 24 sells 648 as they are, and 22 trays for 511.
    #[test]
    fn plants_come_in_whole_trays() {
        assert_eq!(in_bundles(648, 24), Some(648));
        assert_eq!(in_bundles(511, 24), Some(528));
        assert_eq!(in_bundles(511, 0), None);
        assert_eq!(in_bundles(u32::MAX, 24), None);
    }

    /// Leads of CNRA, Cote d'Ivoire, fiche no. 1: 20 months for budded stumps, 10 for bag plants;
    /// and of the Rubber Board of India: about 200 days, here with two weeks in hand.
    #[test]
    fn orders_are_reckoned_back_from_planting() {
        let planting = day("2027-06-01");
        assert_eq!(order_by(planting, 608, 0), Some(day("2025-10-01")));
        assert_eq!(order_by(planting, 304, 0), Some(day("2026-08-01")));
        assert_eq!(
            order_by(day("2027-06-10"), 200, 14),
            Some(day("2026-11-08"))
        );
        assert_eq!(order_by(planting, u32::MAX, 1), None);
    }
}
