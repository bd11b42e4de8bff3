//! Placeholder: the handbook of one source, as data.
/// Placeholder.
#[derive(Clone, Debug, PartialEq)]
pub struct Calendar {}
