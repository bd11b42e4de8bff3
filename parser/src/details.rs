//! What a report says beside its kind, block and date.

use alloc::{string::String, vec::Vec};

use crate::kind::{Kind, Slot};

/// The slots of a report. A slot that was not said is empty.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Details {
    /// Trees (or holes, pegs, plants), a whole number.
    pub count: Option<u32>,
    /// The sample of "12 of 30": how many were looked at.
    pub of: Option<u32>,
    /// Weak trees, counted beside the dead.
    pub weak: Option<u32>,
    /// Land worked on.
    pub area: Option<Measure>,
    /// Clone as the farmer called it ("PB260").
    pub clone_name: Option<String>,
    /// Planting material.
    pub material: Option<Material>,
    /// Fertiliser or spray, as called ("npk", "urea").
    pub product: Option<String>,
    /// Grade ("15-15-15").
    pub formula: Option<String>,
    /// Weight or packs of fertiliser or seed.
    pub amount: Option<Measure>,
    /// Whether the amount is for each tree or in all.
    pub per: Option<Per>,
    /// Girths or heights in centimetres.
    pub values_cm: Vec<f64>,
    /// What sickness.
    pub ailment: Option<Ailment>,
    /// What did the harm or killed the trees.
    pub cause: Option<Cause>,
    /// How much of the block, when no count was given.
    pub extent: Option<Extent>,
    /// Cover or food crop ("rice").
    pub species: Option<String>,
    /// The job that was not done.
    pub not_done: Option<Kind>,
    /// Rain or none.
    pub wetness: Option<Wetness>,
    /// Rain in millimetres.
    pub mm: Option<f64>,
    /// What came.
    pub supply: Option<Supply>,
}

impl Details {
    /// Whether only a part of the block was done: the rest of this work stays to do.
    #[must_use]
    pub fn is_part_of(&self, kind: Kind) -> bool {
        let is_part = matches!(self.extent, Some(Extent::Half | Extent::Few));
        is_part && kind.keeps(Slot::Part)
    }
}

/// A value with the unit that it was said in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measure {
    /// The value, not negative.
    pub value: f64,
    /// The unit as said.
    pub unit: Unit,
}

macro_rules! named {
    ($(#[$doc:meta])* $name:ident { $($(#[$vdoc:meta])* $variant:ident = $text:literal,)+ }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $name { $($(#[$vdoc])* $variant,)+ }

        impl $name {
            /// Every value.
            pub const ALL: &'static [Self] = &[$(Self::$variant),+];

            /// The name in records, language packs and `budwood read`.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self { $(Self::$variant => $text),+ }
            }

            /// The value with this name.
            #[must_use]
            pub fn from_name(name: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|value| value.name() == name)
            }
        }
    };
}
pub(crate) use named;

named! {
    /// A unit of area, weight, pack or length.
    Unit {
        /// Hectare.
        Hectare = "ha",
        /// Acre.
        Acre = "acre",
        /// Rai, 1,600 square metres.
        Rai = "rai",
        /// Square metre.
        SquareMetre = "m2",
        /// Kilogram.
        Kilogram = "kg",
        /// Gram.
        Gram = "g",
        /// Bag or sack, its weight not said.
        Bag = "bag",
        /// Tin or bucket.
        Tin = "tin",
        /// Cup or handful.
        Cup = "cup",
        /// Litre.
        Litre = "l",
        /// Metre.
        Metre = "m",
        /// Centimetre.
        Centimetre = "cm",
        /// Millimetre.
        Millimetre = "mm",
        /// Inch.
        Inch = "inch",
        /// Foot.
        Foot = "foot",
    }
}

impl Unit {
    /// Whether this measures land.
    #[must_use]
    pub const fn is_area(self) -> bool {
        matches!(
            self,
            Self::Hectare | Self::Acre | Self::Rai | Self::SquareMetre
        )
    }

    /// Whether this measures length.
    #[must_use]
    pub const fn is_length(self) -> bool {
        matches!(
            self,
            Self::Metre | Self::Centimetre | Self::Millimetre | Self::Inch | Self::Foot
        )
    }
}

named! {
    /// Planting material.
    Material {
        /// Plant in a bag of soil.
        Polybag = "polybag",
        /// Bare-root budded stump.
        BuddedStump = "budded_stump",
        /// Tall, mini or core stump.
        Stump = "stump",
        /// Unbudded seedling.
        Seedling = "seedling",
    }
}

named! {
    /// Whether an amount is for each tree or in all.
    Per {
        /// For each tree.
        Tree = "tree",
        /// In all.
        Total = "total",
    }
}

named! {
    /// A sickness, by what the farmer sees.
    Ailment {
        /// White root disease.
        WhiteRoot = "white_root",
        /// Leaf fall.
        LeafFall = "leaf_fall",
        /// Pink disease.
        Pink = "pink",
        /// Leaf spots.
        LeafSpot = "leaf_spot",
        /// Powdery mildew.
        Mildew = "mildew",
        /// Dieback.
        Dieback = "dieback",
        /// Termites.
        Termites = "termites",
        /// Something else.
        Other = "other",
    }
}

named! {
    /// What did the harm.
    Cause {
        /// Wind.
        Wind = "wind",
        /// Fire.
        Fire = "fire",
        /// Flood.
        Flood = "flood",
        /// Drought.
        Drought = "drought",
        /// Animals.
        Animals = "animals",
        /// Theft.
        Theft = "theft",
        /// Termites.
        Termites = "termites",
        /// Something else.
        Other = "other",
    }
}

impl Cause {
    /// Whether branches may hang loose, or trees fall, where this was: of an unknown cause too.
    #[must_use]
    pub const fn leaves_hanging(self) -> bool {
        match self {
            Self::Wind | Self::Fire | Self::Other => true,
            Self::Flood | Self::Drought | Self::Animals | Self::Theft | Self::Termites => false,
        }
    }
}

named! {
    /// How much of the block.
    Extent {
        /// A few trees.
        Few = "few",
        /// Many trees.
        Many = "many",
        /// About half.
        Half = "half",
        /// All.
        All = "all",
    }
}

named! {
    /// Rain or none.
    Wetness {
        /// The ground is soaked.
        Soaked = "soaked",
        /// No rain.
        None = "none",
    }
}

named! {
    /// What came.
    Supply {
        /// Plants.
        Plants = "plants",
        /// Fertiliser.
        Fertiliser = "fertiliser",
    }
}

/// Blocks that are meant without their names.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unnamed {
    /// "Both".
    Both,
    /// "All".
    All,
}
