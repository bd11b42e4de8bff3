//! What a text enters in a book.

use alloc::{string::String, vec::Vec};

use crate::when::When;

/// What is entered in a book of a group or a nursery: "paid Yano 47.40, Nilo 30", "stock GT1 600".
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Entry {
    /// Each person that is named, with the number behind the name.
    pub lines: Vec<(String, Option<f64>)>,
    /// The first number that belongs to nobody.
    pub amount: Option<f64>,
    /// A clone.
    pub clone_name: Option<String>,
    /// A day.
    pub when: Option<When>,
    /// What stands behind the word that begins the text, as it was written: a name that is new.
    pub words: String,
}
