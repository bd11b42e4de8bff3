//! Questions and their figures: they look, and change nothing.

pub(crate) mod adviser;
pub(crate) mod answers;
pub(crate) mod block_facts;
pub(crate) mod cluster;
pub(crate) mod farmer;
pub(crate) mod girth;
pub(crate) mod summary;
pub(crate) mod visits;
pub(crate) mod work;
