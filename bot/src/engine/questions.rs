//! Questions and their figures: they take a view, and cannot change anything.

pub(crate) mod address;
pub(crate) mod adviser;
pub(crate) mod adviser_notices;
pub(crate) mod block_facts;
pub(crate) mod cluster;
pub(crate) mod codes;
pub(crate) mod corrections;
pub(crate) mod due_now;
pub(crate) mod farmer;
pub(crate) mod figures;
pub(crate) mod girth;
pub(crate) mod language;
pub(crate) mod member;
pub(crate) mod operator;
pub(crate) mod own_words;
pub(crate) mod rains;
pub(crate) mod read_back;
pub(crate) mod roll_plan;
pub(crate) mod round;
pub(crate) mod scene;
pub(crate) mod shared_phone;
pub(crate) mod tasks;
pub(crate) mod visits;
pub(crate) mod waiting;
pub(crate) mod welcome;
pub(crate) mod work;
