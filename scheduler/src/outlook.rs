//! What is to be expected of a stand and of the season: growth, opening, survival, rain.

pub mod census;
pub mod filling;
pub mod forecast;
pub mod growth;
pub mod onset;
pub mod rain;
pub mod readiness;
pub mod survival;
