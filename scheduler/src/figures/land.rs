//! What is known of the land itself: where it lies, and how large it is.

use super::{Figure, Name, Table, Window};
use crate::land::directory::Consent;

/// Land larger than this needs its outline, not only a point: Regulation (EU) 2023/1115, article 2,
/// point 28.
pub const OUTLINE_HECTARES: f64 = 4.0;

/// How far the map of some land is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Mapped {
    /// Blocks.
    pub blocks: usize,
    /// Of these, without a point.
    pub no_point: usize,
    /// Without a size.
    pub no_area: usize,
    /// So large that a point is not enough.
    pub large: usize,
    /// Of these, buyers may be told.
    pub shared: usize,
    /// Of these, they may not: their owner said so.
    pub kept: usize,
}

impl Table<'_> {
    /// How far the map is.
    #[must_use]
    pub fn mapped(&self) -> Figure<Mapped> {
        let mut mapped = Mapped::default();
        let stands = self.farmers.iter().flat_map(|farmer| {
            let sharing = &farmer.person.sharing;
            farmer.stands.iter().map(move |stand| (stand, sharing))
        });
        for (stand, sharing) in stands {
            let hectares = stand.block.hectares();
            mapped.shared += usize::from(sharing.is_given());
            mapped.kept += usize::from(matches!(sharing, Consent::Withdrawn { .. }));
            mapped.blocks += 1;
            mapped.no_point += usize::from(stand.block.point.is_none());
            mapped.no_area += usize::from(hectares.is_none());
            mapped.large += usize::from(hectares.is_some_and(|size| size > OUTLINE_HECTARES));
        }
        self.figure(Name::Mapped, Window::ALL, mapped)
    }
}
