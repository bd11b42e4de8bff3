//! Figures by group for a programme, the same as by text. Of few people none are given: who knows
//! the village would know whose they are.

use budwood_scheduler::{
    Group, GroupId,
    figures::{Name, Scope, Table},
};

use super::{hectares, table};
use crate::{
    engine::view::View,
    sheet::{Cell, ColumnKind, Sheet},
    words::limits,
};

/// Fewer people than this are not counted for others (common practice of statistical offices).
const PEOPLE_MIN: usize = 5;

impl View<'_> {
    pub(super) fn indicator_table(self) -> Sheet {
        let (number, words) = (ColumnKind::Number, ColumnKind::Words);
        let mut sheet = table(
            "indicators",
            "Figures by group",
            &[
                ("group", words),
                ("farmers", number),
                ("farmers_planted", number),
                ("blocks", number),
                ("area_ha", number),
                ("planted", number),
                ("first_alive", number),
                ("survival_pct", number),
                ("seen_by_visit_pct", number),
                ("gaps", number),
                ("left_out", words),
            ],
        );
        let groups: Vec<(&Group, Table<'_>)> = self
            .world
            .directory
            .groups()
            .map(|group| (group, self.table(group)))
            .filter(|(_, table)| !table.farmers.is_empty())
            .collect();
        let sizes: Vec<usize> = groups
            .iter()
            .map(|(_, table)| table.farmers.len())
            .collect();
        let left_out = left_out(&sizes);
        for ((group, table), is_out) in groups.iter().zip(left_out) {
            let mut row: Vec<Cell> = vec![group.name.as_str().into()];
            if is_out {
                row.extend(std::iter::repeat_n(Cell::Blank, 9));
                row.push("fewer than five people, or the sum would tell".into());
            } else {
                row.extend(self.figures_of(table));
                row.push(Cell::Blank);
            }
            sheet.rows.push(row);
        }
        let farmers = groups.into_iter().flat_map(|(_, table)| table.farmers);
        let all = Table {
            // The scope says only of whom it is asked.
            scope: Scope::Group(GroupId(0)),
            rules: &self.setup.rules,
            farmers: farmers.collect(),
        };
        if all.farmers.len() >= PEOPLE_MIN {
            let mut row: Vec<Cell> = vec!["all".into()];
            row.extend(self.figures_of(&all));
            row.push(Cell::Blank);
            sheet.rows.push(row);
        }
        sheet
    }

    fn figures_of(self, table: &Table<'_>) -> Vec<Cell> {
        let living = table.living().value;
        let stands = || table.farmers.iter().flat_map(|farmer| &farmer.stands);
        let land: f64 = stands().filter_map(|stand| stand.block.hectares()).sum();
        let seen = table.visited_pct(Name::Living, |block| {
            self.known_of(block, limits::FACTS_OF_BLOCK)
        });
        vec![
            table.farmers().value.into(),
            table.planted().value.into(),
            stands().count().into(),
            hectares(Some(land)),
            living.planted.into(),
            living.first.into(),
            living.survival_pct().into(),
            seen.into(),
            living.gaps.into(),
        ]
    }
}

/// Which groups are left out: those of few people, and where the sum of all would tell what the
/// only one of them has, the next smallest too.
fn left_out(sizes: &[usize]) -> Vec<bool> {
    let mut out: Vec<bool> = sizes.iter().map(|size| *size < PEOPLE_MIN).collect();
    let hidden: usize = sizes
        .iter()
        .zip(&out)
        .filter_map(|(size, is_out)| is_out.then_some(*size))
        .sum();
    if hidden > 0 && hidden < PEOPLE_MIN {
        let kept = sizes
            .iter()
            .enumerate()
            .filter(|(at, _)| out.get(*at) == Some(&false));
        if let Some((next, _)) = kept.min_by_key(|(_, size)| **size)
            && let Some(is_out) = out.get_mut(next)
        {
            *is_out = true;
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::left_out;

    #[test]
    fn no_sum_tells_of_few_people() {
        assert_eq!(left_out(&[12, 30, 7]), [false, false, false]);
        assert_eq!(left_out(&[12, 3, 7]), [false, true, true]);
        assert_eq!(left_out(&[4, 3, 7]), [true, true, false]);
        assert_eq!(left_out(&[2]), [true]);
        assert_eq!(left_out(&[]), [] as [bool; 0]);
    }
}
