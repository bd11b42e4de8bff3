//! The names of the texts that are printed: one row for each in `bot/texts/office/*.ftl`.
//!
//! They are no SMS, so no length binds them, and what is tested of SMS is not asked of them. That
//! each file has exactly these is tested.

macro_rules! papers {
    ($($variant:ident = $name:literal,)+) => {
        /// The name of a text that is printed.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[expect(missing_docs, reason = "the text in English says what it is")]
        pub enum Paper {
            $($variant,)+
        }

        impl Paper {
            /// Every one.
            pub const ALL: &'static [Self] = &[$(Self::$variant),+];

            /// The name in the files.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self {
                    $(Self::$variant => $name,)+
                }
            }
        }
    };
}

papers! {
    SheetMeeting = "sheet-meeting",
    SheetShares = "sheet-shares",
    SheetPickup = "sheet-pickup",
    SheetVisits = "sheet-visits",
    SheetHolds = "sheet-holds",
    SheetNumber = "sheet-number",
    SheetPrinted = "sheet-printed",
    SheetTextBack = "sheet-text-back",
    SheetOfPeople = "sheet-of-people",
    SheetBags = "sheet-bags",
    SheetPrice = "sheet-price",
    SheetPlants = "sheet-plants",
    SheetSlots = "sheet-slots",
    SheetRestricted = "sheet-restricted",
    ColumnRow = "column-row",
    ColumnFarmer = "column-farmer",
    ColumnBlock = "column-block",
    ColumnPlanted = "column-planted",
    ColumnAlive = "column-alive",
    ColumnGaps = "column-gaps",
    ColumnDue = "column-due",
    ColumnDead = "column-dead",
    ColumnFilled = "column-filled",
    ColumnWeeded = "column-weeded",
    ColumnFed = "column-fed",
    ColumnSignature = "column-signature",
    ColumnTrees = "column-trees",
    ColumnGrams = "column-grams",
    ColumnKilograms = "column-kilograms",
    ColumnBags = "column-bags",
    ColumnMoney = "column-money",
    ColumnPaid = "column-paid",
    ColumnReceived = "column-received",
    ColumnTime = "column-time",
    ColumnClone = "column-clone",
    ColumnOrdered = "column-ordered",
    ColumnGot = "column-got",
    ColumnSpare = "column-spare",
    ColumnPlace = "column-place",
    ColumnPhone = "column-phone",
    ColumnReason = "column-reason",
    ColumnBring = "column-bring",
    ColumnNotes = "column-notes",
    ColumnSince = "column-since",
    ColumnUntil = "column-until",
    BringKnife = "bring-knife",
    BringCount = "bring-count",
    BringTape = "bring-tape",
    BringEar = "bring-ear",
    HoldGrief = "hold-grief",
    HoldOpen = "hold-open",
    SheetCensus = "sheet-census",
    SheetCards = "sheet-cards",
    SheetSeason = "sheet-season",
    SheetHandover = "sheet-handover",
    SheetCensusOf = "sheet-census-of",
    SheetCensusHow = "sheet-census-how",
    SheetCensusString = "sheet-census-string",
    SheetSeasonHow = "sheet-season-how",
    ColumnTree = "column-tree",
    ColumnGirth = "column-girth",
    ColumnLine = "column-line",
    ColumnAdviser = "column-adviser",
    ColumnWords = "column-words",
    ColumnRules = "column-rules",
    ColumnWeek = "column-week",
    ColumnJobs = "column-jobs",
    ColumnRains = "column-rains",
    ColumnWhat = "column-what",
    ColumnDetails = "column-details",
    RainsBegin = "rains-begin",
    RainsEnd = "rains-end",
    WhatSick = "what-sick",
    WhatPromise = "what-promise",
    WhatUnanswered = "what-unanswered",
    WhatHold = "what-hold",
    CardWords = "card-words",
    CardRules = "card-rules",
}
