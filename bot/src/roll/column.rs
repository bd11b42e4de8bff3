//! The columns of the roll, and which kind of row uses which.

use std::fmt;

/// What a row describes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RowKind {
    /// A group of farmers.
    Group,
    /// A person.
    Person,
    /// A block of land.
    Block,
}

impl RowKind {
    /// Every kind.
    pub const ALL: [Self; 3] = [Self::Group, Self::Person, Self::Block];

    /// The word in the column `row`.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Group => "group",
            Self::Person => "person",
            Self::Block => "block",
        }
    }
}

impl fmt::Display for RowKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

macro_rules! columns {
    ($($(#[$doc:meta])* $variant:ident = $name:literal in [$($kind:ident),+],)+) => {
        /// A column of the roll.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum Column { $($(#[$doc])* $variant,)+ }

        impl Column {
            /// Every column.
            pub const ALL: &'static [Self] = &[$(Self::$variant),+];

            /// The name in the first line of the file.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self { $(Self::$variant => $name),+ }
            }

            /// Whether rows of this kind have a use for it.
            #[must_use]
            pub fn is_for(self, kind: RowKind) -> bool {
                match self { $(Self::$variant => [$(RowKind::$kind),+].contains(&kind)),+ }
            }
        }
    };
}

columns! {
    /// What the row describes.
    Row = "row" in [Group, Person, Block],
    /// Short name of a group.
    Group = "group" in [Group, Person, Block],
    /// Who looks after the group.
    Adviser = "adviser" in [Group],
    /// Time zone.
    Zone = "zone" in [Group],
    /// Calendar profile.
    Calendar = "calendar" in [Group],
    /// Day on which phones are charged.
    MarketDay = "market_day" in [Group],
    /// Usual first day of the rains.
    RainsStart = "rains_start" in [Group],
    /// Usual last day of the rains.
    RainsEnd = "rains_end" in [Group],
    /// A person's name; in a block row, the owner's.
    Name = "name" in [Person, Block],
    /// What a person does.
    Role = "role" in [Person],
    /// Phone numbers, `;` between them.
    Phone = "phone" in [Person],
    /// Language pack.
    Language = "language" in [Person],
    /// Day of consent.
    ConsentOn = "consent_on" in [Person],
    /// How consent is known.
    ConsentHow = "consent_how" in [Person],
    /// Short name of a block.
    Block = "block" in [Block],
    /// Area.
    Area = "area" in [Block],
    /// Unit of the area.
    Unit = "unit" in [Block],
    /// Slope in per cent.
    SlopePct = "slope_pct" in [Block],
    /// Metres between rows.
    RowM = "row_m" in [Block],
    /// Metres between the trees of a row.
    TreeM = "tree_m" in [Block],
    /// Degrees north of the equator; south is negative.
    Latitude = "latitude" in [Block],
    /// Degrees east of Greenwich; west is negative.
    Longitude = "longitude" in [Block],
    /// Day on which planting is meant to begin.
    PlannedOn = "planned_on" in [Block],
    /// Clone.
    CloneName = "clone" in [Block],
    /// Day of planting, or its month or year.
    PlantedOn = "planted_on" in [Block],
    /// Trees planted.
    Planted = "planted" in [Block],
}

impl Column {
    /// The column with this name.
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL
            .iter()
            .copied()
            .find(|column| column.name() == name)
    }
}

impl fmt::Display for Column {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}
