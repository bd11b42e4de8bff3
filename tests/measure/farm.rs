//! Farms: blocks with names, trees and an age, so that it is known what a true report can say.

use serde_json::{Map, Value, json};

use crate::{
    chance::Chance,
    draw::{between, pick, weighted},
    speech::Speech,
};

/// Trees that one hectare holds at the spacing of the first calendar that ships.
const TREES_PER_HA: u32 = 500;

/// What happens on a block of this age.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Stage {
    /// Being prepared.
    Bare,
    /// The first twelve months.
    First,
    /// Years two and three.
    Young,
    /// Until opening: girths.
    Growing,
    /// Opening.
    Tapping,
}

#[derive(Clone, Debug)]
pub(crate) struct Plot {
    pub(crate) name: String,
    pub(crate) stage: Stage,
    pub(crate) planted: u32,
    pub(crate) dead: u32,
    pub(crate) replaced: u32,
    /// Trees that the land holds, for a block that is being prepared.
    pub(crate) holds: u32,
}

impl Plot {
    pub(crate) const fn alive(&self) -> u32 {
        self.planted + self.replaced - self.dead
    }

    pub(crate) const fn gaps(&self) -> u32 {
        self.dead - self.replaced
    }
}

/// How a farmer names blocks; one way for all of them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Naming {
    Letters,
    Numbers,
    Codes,
    Words,
}

#[derive(Clone, Debug)]
pub(crate) struct Farm {
    pub(crate) naming: Naming,
    pub(crate) plots: Vec<Plot>,
}

impl Farm {
    pub(crate) fn draw(chance: &mut Chance, speech: &Speech) -> Self {
        let ways = [
            (Naming::Letters, 70),
            (Naming::Numbers, 15),
            (Naming::Codes, 10),
            (Naming::Words, 5),
        ];
        let naming = *weighted(chance, &ways);
        let number = *weighted(chance, &[(1_usize, 25), (2, 30), (3, 25), (4, 20)]);
        let names: Vec<String> = match naming {
            Naming::Letters => ["A", "B", "C", "D"].map(str::to_owned).to_vec(),
            Naming::Numbers => ["1", "2", "3", "4"].map(str::to_owned).to_vec(),
            Naming::Codes => ["A1", "A2", "B1", "B2"].map(str::to_owned).to_vec(),
            Naming::Words => speech.names.0.clone(),
        };
        let plots = names
            .into_iter()
            .take(number)
            .map(|name| plot(chance, name))
            .collect();
        Self { naming, plots }
    }

    /// The farm as the context of a line tells it.
    pub(crate) fn context(&self) -> Value {
        let plots = self.plots.iter().map(|plot| {
            let told = if plot.stage == Stage::Bare {
                json!({"planted": 0, "area_ha": f64::from(plot.holds) / f64::from(TREES_PER_HA)})
            } else if plot.replaced > 0 {
                json!({"planted": plot.planted, "dead": plot.dead, "replaced": plot.replaced})
            } else {
                json!({"planted": plot.planted, "dead": plot.dead})
            };
            (plot.name.clone(), told)
        });
        Value::Object(plots.collect::<Map<_, _>>())
    }

    /// A block, any of them.
    pub(crate) fn plot<'a>(&'a self, chance: &mut Chance) -> &'a Plot {
        pick(chance, &self.plots)
    }
}

fn plot(chance: &mut Chance, name: String) -> Plot {
    let stages = [
        (Stage::Bare, 20),
        (Stage::First, 35),
        (Stage::Young, 20),
        (Stage::Growing, 15),
        (Stage::Tapping, 10),
    ];
    let stage = *weighted(chance, &stages);
    let trees = between(chance, 3, 60) * 10;
    if stage == Stage::Bare {
        return Plot {
            name,
            stage,
            planted: 0,
            dead: 0,
            replaced: 0,
            holds: trees,
        };
    }
    let planted = trees - between(chance, 0, 9);
    let dead = between(chance, 0, planted / 8);
    let replaced = between(chance, 0, dead);
    Plot {
        name,
        stage,
        planted,
        dead,
        replaced,
        holds: trees,
    }
}
