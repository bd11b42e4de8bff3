//! What each word of a text was taken for.

use alloc::string::String;

use crate::{
    details::{Ailment, Cause},
    kind::Kind,
    span::Span,
    when::When,
};

/// One word (or number, or phrase) of the text.
#[derive(Clone, Debug, PartialEq)]
pub struct Word {
    /// Where.
    pub span: Span,
    /// What it was taken for.
    pub taken: Taken,
    /// The listed word it was repaired to, if it was.
    pub repaired: Option<String>,
}

/// What a word was taken for.
#[derive(Clone, Debug, PartialEq)]
pub enum Taken {
    /// A kind of work.
    Kind(Kind),
    /// A number, with what it counts ("trees", "kg", "block", ...).
    Number(f64),
    /// A unit.
    Unit,
    /// "block", "plot".
    BlockWord,
    /// A block name.
    Block(String),
    /// A day.
    When(When),
    /// A product or grade.
    Product,
    /// A clone.
    Clone,
    /// A cause of harm.
    Cause(Cause),
    /// A sickness.
    Ailment(Ailment),
    /// A crop.
    Species,
    /// Not, not yet.
    Negation,
    /// Will, tomorrow.
    Future,
    /// A question word or mark.
    Question,
    /// A command or an answer word.
    Command,
    /// A group or a person.
    Name,
    /// Please, thanks, hello.
    Courtesy,
    /// A small word without weight.
    Filler,
    /// Not in any list.
    Unknown,
}
