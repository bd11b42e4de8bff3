//! The provider's book: every text, and whether the service said that it has it.
//!
//! A text that was not acknowledged is sent again with the same id, before the farmer's later
//! ones, as a provider does.

use super::{
    chance::Chance,
    place::{FARMERS, number},
};

/// A text of a farmer.
#[derive(Clone)]
pub(crate) struct Text {
    /// The provider's id.
    pub(crate) id: String,
    /// Which farmer.
    pub(crate) farmer: usize,
    /// How many trees it says were planted.
    pub(crate) trees: u32,
    /// Whether the service said that it has it.
    pub(crate) is_acknowledged: bool,
}

impl Text {
    /// The sender's number.
    pub(crate) fn from(&self) -> String {
        number(self.farmer)
    }

    /// What the farmer wrote.
    pub(crate) fn words(&self) -> String {
        format!("planted {} block A", self.trees)
    }
}

/// All texts of one store, oldest first.
#[derive(Clone, Default)]
pub(crate) struct Ledger {
    pub(crate) texts: Vec<Text>,
    written: Vec<u32>,
}

impl Ledger {
    /// Farmers write so many texts more. Each tells a number of trees that they have not told
    /// before: the same again would be taken for impatience.
    pub(crate) fn write(&mut self, texts: u64, chance: &mut Chance) {
        self.written.resize(FARMERS, 0);
        for _ in 0..texts {
            let farmer = chance.place(FARMERS);
            self.written[farmer] += 1;
            self.texts.push(Text {
                id: format!("g-{}", self.texts.len()),
                farmer,
                trees: self.written[farmer],
                is_acknowledged: false,
            });
        }
    }

    /// What is still to be sent, in order.
    pub(crate) fn waiting(&self) -> Vec<Text> {
        let waiting = self.texts.iter().filter(|text| !text.is_acknowledged);
        waiting.cloned().collect()
    }

    /// How many the service has acknowledged.
    pub(crate) fn acknowledged(&self) -> usize {
        self.texts.len() - self.waiting().len()
    }

    /// The service said that it has this one.
    pub(crate) fn acknowledge(&mut self, id: &str) {
        let index: usize = id.trim_start_matches("g-").parse().unwrap();
        self.texts[index].is_acknowledged = true;
    }
}
