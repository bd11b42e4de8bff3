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

/// Whether a kind of row needs a column.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Need {
    /// Every such row must have it.
    Must,
    /// It may be empty.
    May,
}

macro_rules! columns {
    ($($(#[doc = $doc:literal])+
       $variant:ident = $name:literal, $example:literal, [$($kind:ident $need:ident),+];)+) => {
        /// A column of the roll.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum Column { $($(#[doc = $doc])+ $variant,)+ }

        impl Column {
            /// Every column.
            pub const ALL: &'static [Self] = &[$(Self::$variant),+];

            /// The name in the first line of the file.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self { $(Self::$variant => $name),+ }
            }

            /// What is in it, as the comment of its row says.
            #[must_use]
            pub fn what(self) -> String {
                let comment = match self { $(Self::$variant => concat!($($doc),+)),+ };
                comment.trim_start().replace('`', "")
            }

            /// A cell that is right.
            #[must_use]
            pub const fn example(self) -> &'static str {
                match self { $(Self::$variant => $example),+ }
            }

            /// Whether rows of this kind need it; none when they have no use for it.
            #[must_use]
            pub fn need(self, kind: RowKind) -> Option<Need> {
                let needs: &[(RowKind, Need)] = match self {
                    $(Self::$variant => &[$((RowKind::$kind, Need::$need)),+]),+
                };
                needs.iter().find(|(of, _)| *of == kind).map(|(_, need)| *need)
            }
        }
    };
}

columns! {
    /// What the row describes: group, person or block.
    Row = "row", "group", [Group Must, Person Must, Block Must];
    /// Short name of the group, one word. Farmers and leaders need one.
    Group = "group", "KOLO", [Group Must, Person May, Block May];
    /// Who looks after the group: the name of an adviser in the list.
    Adviser = "adviser", "Mara Tindel", [Group May];
    /// Time zone, as the IANA names it. A new group needs it.
    Zone = "zone", "Asia/Jakarta", [Group Must];
    /// Calendar that the group goes by. A new group needs it.
    Calendar = "calendar", "fao", [Group Must];
    /// Day of the week on which phones are charged.
    MarketDay = "market_day", "Sat", [Group May];
    /// Usual first day of the rains; two with ; where it rains twice a year.
    RainsStart = "rains_start", "1 Apr; 1 Sep", [Group May];
    /// Usual last day of the rains, as many as `rains_start` has.
    RainsEnd = "rains_end", "15 Jul; 15 Nov", [Group May];
    /// Name of the person; in a block row, of the owner.
    Name = "name", "Tamo Rill", [Person Must, Block Must];
    /// farmer, leader, adviser, clerk, nursery or viewer; without it farmer.
    Role = "role", "farmer", [Person May];
    /// Phone number; several with ; between them.
    Phone = "phone", "+447700900001", [Person May];
    /// Language of the answers; without it the adviser's.
    Language = "language", "en", [Person May];
    /// Day on which the person agreed. Without it no nudge is ever sent.
    ConsentOn = "consent_on", "2026-09-05", [Person May];
    /// How that is known; only with `consent_on`.
    ConsentHow = "consent_how", "signed sheet", [Person May];
    /// Day on which the person agreed that buyers are told of their land.
    ShareOn = "share_on", "2026-09-05", [Person May];
    /// How that is known; only with `share_on`.
    ShareHow = "share_how", "signed sheet", [Person May];
    /// Work that the person was shown at trainings, with ; between.
    Shown = "shown", "pruned", [Person May];
    /// Short name of the block, one word; the farmer's own.
    Block = "block", "B2", [Block Must];
    /// Size of the land. Without it no trees can be reckoned.
    Area = "area", "1.2", [Block May];
    /// Unit of the size: ha, acre, rai or m2; only with `area`.
    Unit = "unit", "ha", [Block May];
    /// Slope in per cent.
    SlopePct = "slope_pct", "8", [Block May];
    /// Metres between rows; only with `tree_m`. Without both the calendar's.
    RowM = "row_m", "7", [Block May];
    /// Metres between the trees of a row; only with `row_m`.
    TreeM = "tree_m", "3", [Block May];
    /// Degrees north of the equator (south is negative); only with `longitude`.
    Latitude = "latitude", "1.25", [Block May];
    /// Degrees east of Greenwich (west is negative); only with `latitude`.
    Longitude = "longitude", "103.5", [Block May];
    /// Day on which planting is meant to begin.
    PlannedOn = "planned_on", "2027-11-15", [Block May];
    /// Clone that is or will be planted.
    CloneName = "clone", "GT1", [Block May];
    /// Day, month or year of a planting that is done; only with `planted`.
    PlantedOn = "planted_on", "2024-11", [Block May];
    /// Trees that were planted then; only with `planted_on`.
    Planted = "planted", "480", [Block May];
    /// Of these so many live; only with `planted`.
    Alive = "alive", "457", [Block May];
    /// Day on which they were counted; only with `alive`.
    CountedOn = "counted_on", "2026-03-15", [Block May];
    /// Girths in centimetres, with ; between them; only with `measured_on`.
    Girths = "girths", "41; 43.5; 39", [Block May];
    /// Day on which they were measured; only with `girths`.
    MeasuredOn = "measured_on", "2026-03-15", [Block May];
    /// Trees that are opened for tapping; only with `opened_on`.
    Opened = "opened", "120", [Block May];
    /// Day on which the first were opened; only with `opened`.
    OpenedOn = "opened_on", "2026-03-15", [Block May];
    /// Day of the last weeding.
    WeededOn = "weeded_on", "2026-08-20", [Block May];
    /// Day of the last feeding.
    FedOn = "fed_on", "2026-06-02", [Block May];
    /// Day of the last cutting of side shoots.
    PrunedOn = "pruned_on", "2026-07-10", [Block May];
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
