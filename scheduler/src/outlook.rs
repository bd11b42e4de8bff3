//! What is to be expected of a stand and of the season: growth, opening, gaps, rain.

pub mod census;
pub mod filling;
pub mod forecast;
pub mod growth;
pub mod infill;
pub mod onset;
pub mod rain;
pub mod readiness;
