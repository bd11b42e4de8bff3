//! The names of the texts: one row for each in `bot/texts/*.ftl`.
//!
//! A text that the code asks for and no file has does not compile; that each file has exactly
//! these, and that each is asked for, is tested. Texts that name one thing of a table are a family:
//! its members follow from the table. Deliberately absent: what the texts say.

use std::borrow::Cow;

use budwood_parser::{Ailment, Alarm, Cause, Effect, Kind, Unit};
use budwood_scheduler::TaskKind;
use chrono::Weekday;

macro_rules! keys {
    ($($(#[$doc:meta])* $variant:ident = $name:literal,)+) => {
        /// The name of a text.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[expect(missing_docs, reason = "the text in English says what it is")]
        pub enum Key {
            $($(#[$doc])* $variant,)+
            /// A day of the week.
            Weekday(Weekday),
            /// A month, 1 to 12.
            Month(u32),
            Unit(Unit),
            Ailment(Ailment),
            /// What did damage.
            Cause(Cause),
            /// What a person is called for.
            Alarm(Alarm),
            /// A job in one or two words.
            Job(TaskKind),
            /// Work that was done, as a noun.
            Kind(Kind),
            /// What a report counts: of kinds that are counted.
            Bare(Kind),
            /// Work of which the day is what counts, as it is read back.
            Round(Kind),
            /// The same with a number: of kinds that have one.
            RoundCount(Kind),
            /// The nudge for a job.
            Nudge(TaskKind),
        }

        impl Key {
            /// Those that stand for one text each.
            const ALONE: &'static [Self] = &[$(Self::$variant),+];

            /// The name in the files.
            #[must_use]
            pub fn name(self) -> Cow<'static, str> {
                let of = |family: &str, name: &str| Cow::Owned(format!("{family}-{name}"));
                match self {
                    $(Self::$variant => Cow::Borrowed($name),)+
                    Self::Weekday(day) => of("weekday", &day.number_from_monday().to_string()),
                    Self::Month(number) => of("month", &number.to_string()),
                    Self::Unit(unit) => of("unit", unit.name()),
                    Self::Ailment(ailment) => of("ailment", ailment.name()),
                    Self::Cause(cause) => of("cause", cause.name()),
                    Self::Alarm(alarm) => of("alarm", alarm.name()),
                    Self::Job(task) => of("job", task.name()),
                    Self::Kind(kind) => of("kind", kind.name()),
                    Self::Bare(kind) => of("bare", kind.name()),
                    Self::Round(kind) => of("said", &kind.name().replace('_', "-")),
                    Self::RoundCount(kind) => {
                        let said = Self::Round(kind).name();
                        Cow::Owned(format!("{said}-count"))
                    }
                    Self::Nudge(task) => of("nudge", task.name()),
                }
            }
        }
    };
}

impl Key {
    /// Every key.
    pub fn all() -> impl Iterator<Item = Self> {
        const DAYS: [Weekday; 7] = [
            Weekday::Mon,
            Weekday::Tue,
            Weekday::Wed,
            Weekday::Thu,
            Weekday::Fri,
            Weekday::Sat,
            Weekday::Sun,
        ];
        let tasks = || TaskKind::ALL.iter().copied();
        let kinds = || Kind::ALL.iter().copied();
        let rounds = || {
            kinds()
                .filter(|kind| matches!(kind.effect(), Effect::Round | Effect::Pegs | Effect::Fed))
        };
        let alone = Self::ALONE.iter().copied();
        alone
            .chain(DAYS.map(Self::Weekday))
            .chain((1..=12).map(Self::Month))
            .chain(Unit::ALL.iter().copied().map(Self::Unit))
            .chain(Ailment::ALL.iter().copied().map(Self::Ailment))
            .chain(Cause::ALL.iter().copied().map(Self::Cause))
            .chain(Alarm::ALL.iter().copied().map(Self::Alarm))
            .chain(tasks().map(Self::Job))
            .chain(kinds().map(Self::Kind))
            .chain(kinds().filter(|kind| kind.is_counted()).map(Self::Bare))
            .chain(rounds().map(Self::Round))
            .chain(
                rounds()
                    .filter(|kind| kind.wants_count())
                    .map(Self::RoundCount),
            )
            .chain(tasks().map(Self::Nudge))
    }
}

keys! {
    // Days.
    Day = "day",
    DayYear = "day-year",
    MonthYear = "month-year",
    Span = "span",
    // Numbers and languages. Other languages are called by these names too, separated by commas.
    Decimal = "decimal",
    YearsAhead = "years-ahead",
    LanguageName = "language-name",
    LanguageCalled = "language-called",
    Languages = "languages",
    LanguageSet = "language-set",
    // What was stored, read back.
    ReadBack = "read-back",
    ReadBackRain = "read-back-rain",
    ClauseOn = "clause-on",
    SaidPart = "said-part",
    SaidHolesDug = "said-holes-dug",
    SaidReceivedPlants = "said-received-plants",
    SaidReceivedPlantsUncounted = "said-received-plants-uncounted",
    SaidReceivedFertiliser = "said-received-fertiliser",
    SaidReceived = "said-received",
    SaidPlanted = "said-planted",
    SaidDead = "said-dead",
    SaidDeadNone = "said-dead-none",
    SaidReplaced = "said-replaced",
    SaidBranched = "said-branched",
    SaidBranchedUncounted = "said-branched-uncounted",
    SaidNotBranched = "said-not-branched",
    SaidNotBranchedUncounted = "said-not-branched-uncounted",
    SaidBranchInduction = "said-branch-induction",
    SaidBranchInductionUncounted = "said-branch-induction-uncounted",
    SaidGirth = "said-girth",
    SaidGirthShare = "said-girth-share",
    SaidHeight = "said-height",
    SaidDisease = "said-disease",
    SaidDiseaseCount = "said-disease-count",
    SaidDiseaseNone = "said-disease-none",
    SaidDamage = "said-damage",
    SaidDamageCount = "said-damage-count",
    SaidDamageNone = "said-damage-none",
    SaidIntercropSownUnnamed = "said-intercrop-sown-unnamed",
    SaidIntercropNone = "said-intercrop-none",
    SaidTappingOpened = "said-tapping-opened",
    SaidNotDone = "said-not-done",
    SaidNotDoneUnnamed = "said-not-done-unnamed",
    SaidRainSoaked = "said-rain-soaked",
    SaidRainNone = "said-rain-none",
    SaidRainMm = "said-rain-mm",
    Amount = "amount",
    // How the block stands after it.
    StandPlanted = "stand-planted",
    StandRoom = "stand-room",
    Living = "living",
    LivingFilled = "living-filled",
    StandDead = "stand-dead",
    StandAlive = "stand-alive",
    StandFilled = "stand-filled",
    StandNext = "stand-next",
    StandReady = "stand-ready",
    StandMeets = "stand-meets",
    StandClose = "stand-close",
    StandEarly = "stand-early",
    FeedSum = "feed-sum",
    FeedDoses = "feed-doses",
    FeedBrief = "feed-brief",
    FeedGrams = "feed-grams",
    FeedWeight = "feed-weight",
    FieldRound = "field-round",
    RoundDone = "round-done",
    WalkThen = "walk-then",
    WalkWeeds = "walk-weeds",
    WalkShoots = "walk-shoots",
    WalkRoots = "walk-roots",
    WalkLeaves = "walk-leaves",
    WalkCrops = "walk-crops",
    StandLook = "stand-look",
    StandSick = "stand-sick",
    StandHarm = "stand-harm",
    StandSickUntold = "stand-sick-untold",
    StandTold = "stand-told",
    StandHarmUntold = "stand-harm-untold",
    StandLabel = "stand-label",
    // Correcting.
    Changed = "changed",
    Moved = "moved",
    TakenBack = "taken-back",
    TakenBackAsk = "taken-back-ask",
    TakenBackCount = "taken-back-count",
    NothingToUndo = "nothing-to-undo",
    UnsureChange = "unsure-change",
    // Asking before storing.
    Confirm = "confirm",
    ConfirmFor = "confirm-for",
    WhyArea = "why-area",
    WhyAlive = "why-alive",
    WhyGaps = "why-gaps",
    WhyLarge = "why-large",
    WhyAgain = "why-again",
    WhyOdd = "why-odd",
    WhyShrunk = "why-shrunk",
    WhyInches = "why-inches",
    WhyHeaped = "why-heaped",
    WhySum = "why-sum",
    WhyThin = "why-thin",
    WhyFeed = "why-feed",
    WhyBefore = "why-before",
    WhyNotPlanted = "why-not-planted",
    WhyWord = "why-word",
    WhyNone = "why-none",
    AskBlock = "ask-block",
    AskBlockUnknown = "ask-block-unknown",
    NoBlocks = "no-blocks",
    AskCount = "ask-count",
    AskCountRange = "ask-count-range",
    AskValues = "ask-values",
    AskValuesHeight = "ask-values-height",
    AskDate = "ask-date",
    AskForWhom = "ask-for-whom",
    Dropped = "dropped",
    BareOther = "bare-other",
    // Not understood, help, leaving.
    Unclear = "unclear",
    Stranger = "stranger",
    Help = "help",
    HelpAdviser = "help-adviser",
    Example = "example",
    Stopped = "stopped",
    Started = "started",
    Welcome = "welcome",
    SameAgain = "same-again",
    // Farmers ask.
    Now = "now",
    NowNothing = "now-nothing",
    NowNone = "now-none",
    MyBlocks = "my-blocks",
    MyBlock = "my-block",
    MyBlockEmpty = "my-block-empty",
    WhenTask = "when-task",
    WhenTap = "when-tap",
    WhenTapUnknown = "when-tap-unknown",
    WhenTapEarly = "when-tap-early",
    HowManyPlants = "how-many-plants",
    HowMuchFeed = "how-much-feed",
    FeedRing = "feed-ring",
    /// Land in the unit of the place.
    Land = "land",
    HowMuchUnknown = "how-much-unknown",
    MayTapNo = "may-tap-no",
    MayTapNoUsual = "may-tap-no-usual",
    MayTapCheck = "may-tap-check",
    MayPlantWait = "may-plant-wait",
    MayPlantYes = "may-plant-yes",
    MayFillYes = "may-fill-yes",
    MayFillWait = "may-fill-wait",
    MayFillLate = "may-fill-late",
    MaySpray = "may-spray",
    MayOther = "may-other",
    MayYes = "may-yes",
    Who = "who",
    MyData = "my-data",
    ConsentNone = "consent-none",
    CallMe = "call-me",
    CallMeUntold = "call-me-untold",
    CallMeNotice = "call-me-notice",
    AlarmNotice = "alarm-notice",
    MatterNotice = "matter-notice",
    ConcernCallMe = "concern-call-me",
    ConcernQuestion = "concern-question",
    ConcernUnclear = "concern-unclear",
    FirstFire = "first-fire",
    FirstSnake = "first-snake",
    FirstDanger = "first-danger",
    FirstIllness = "first-illness",
    ToldAdviser = "told-adviser",
    ToldNobody = "told-nobody",
    Grief = "grief",
    Told = "told",
    NotTold = "not-told",
    OnlyDone = "only-done",
    SickNotice = "sick-notice",
    ClusterNotice = "cluster-notice",
    WarnAsk = "warn-ask",
    WarnDone = "warn-done",
    WarnNone = "warn-none",
    GirthNotice = "girth-notice",
    OpenNotice = "open-notice",
    NoAnswer = "no-answer",
    Later = "later",
    NothingOpen = "nothing-open",
    Done = "done",
    EraseAsk = "erase-ask",
    Erased = "erased",
    NothingHeld = "nothing-held",
    CodeWrong = "code-wrong",
    CodeLocked = "code-locked",
    VisitAsk = "visit-ask",
    StopAsk = "stop-ask",
    HeldBack = "held-back",
    Digest = "digest",
    // Jobs in one or two words.
    WalkEvery = "walk-every",
    WalkAll = "walk-all",
    PitEdge = "pit-edge",
    PitRound = "pit-round",
    DatumGround = "datum-ground",
    DatumUnion = "datum-union",
    Usual = "usual",
    // Nudges. One job, a date, one reply word.
    NudgeOpenUsual = "nudge-open-usual",
    NudgeNear = "nudge-near",
    // Texts that wait for the adviser, and people who are left in peace.
    WaitingList = "waiting-list",
    WaitingNone = "waiting-none",
    WaitingPerson = "waiting-person",
    WaitingNext = "waiting-next",
    WaitingNextStore = "waiting-next-store",
    WaitingNextNumber = "waiting-next-number",
    WaitingClosed = "waiting-closed",
    WaitingOld = "waiting-old",
    Held = "held",
    HeldUntil = "held-until",
    GoneOn = "gone-on",
    NotHeld = "not-held",
    // Phones that are lost or found, and numbers that are others now.
    PhoneLostAsk = "phone-lost-ask",
    PhoneLost = "phone-lost",
    PhoneLostAdviser = "phone-lost-adviser",
    PhoneFoundAsk = "phone-found-ask",
    PhoneFound = "phone-found",
    PhoneNone = "phone-none",
    PhoneIsLost = "phone-is-lost",
    NumberAsk = "number-ask",
    NumberMoved = "number-moved",
    NumberOwn = "number-own",
    NumberUnread = "number-unread",
    NumberTaken = "number-taken",
    // The operator is told how the service is.
    OperatorBudget = "operator-budget",
    OperatorDisk = "operator-disk",
    OperatorDown = "operator-down",
    OperatorOldest = "operator-oldest",
    OperatorRefused = "operator-refused",
    OperatorShare = "operator-share",
    OperatorSilent = "operator-silent",
    OperatorSpent = "operator-spent",
    OperatorState = "operator-state",
    OperatorStateSilent = "operator-state-silent",
    OperatorStopsAll = "operator-stops-all",
    OperatorStopsNone = "operator-stops-none",
    OperatorStopsSome = "operator-stops-some",
    OperatorTrouble = "operator-trouble",
    OperatorWell = "operator-well",
    // The adviser asks.
    Status = "status",
    StatusDue = "status-due",
    StatusDueNone = "status-due-none",
    StatusLate = "status-late",
    StatusLateNone = "status-late-none",
    StatusCheck = "status-check",
    LeftInPeace = "left-in-peace",
    FeedLost = "feed-lost",
    AlivePct = "alive-pct",
    AlivePctVisited = "alive-pct-visited",
    AliveUnknown = "alive-unknown",
    TaskCount = "task-count",
    More = "more",
    MoreJobs = "more-jobs",
    StatusAll = "status-all",
    StatusLine = "status-line",
    LateAll = "late-all",
    GapsAll = "gaps-all",
    SickAll = "sick-all",
    GroupCount = "group-count",
    GroupFirst = "group-first",
    GapsOrder = "gaps-order",
    LateList = "late-list",
    LateNone = "late-none",
    LatePerson = "late-person",
    LatePersonTold = "late-person-told",
    QuietList = "quiet-list",
    QuietNone = "quiet-none",
    QuietPerson = "quiet-person",
    QuietPersonNever = "quiet-person-never",
    GapsList = "gaps-list",
    GapsNone = "gaps-none",
    GapsPerson = "gaps-person",
    SickList = "sick-list",
    SickListCluster = "sick-list-cluster",
    SickNone = "sick-none",
    SickPerson = "sick-person",
    VisitList = "visit-list",
    VisitNone = "visit-none",
    VisitCluster = "visit-cluster",
    VisitLost = "visit-lost",
    VisitQuiet = "visit-quiet",
    VisitEnding = "visit-ending",
    FeedGroup = "feed-group",
    GirthList = "girth-list",
    GirthNone = "girth-none",
    FeedNone = "feed-none",
    Member = "member",
    MemberTold = "member-told",
    MemberNever = "member-never",
    MemberBlock = "member-block",
    MemberBlockEmpty = "member-block-empty",
    MemberDue = "member-due",
    MemberGirth = "member-girth",
    MemberBehind = "member-behind",
    MemberAhead = "member-ahead",
    MemberReady = "member-ready",
    MemberNoBlocks = "member-no-blocks",
    MemberWhich = "member-which",
    WindowAsk = "window-ask",
    WindowOpened = "window-opened",
    RainOpen = "rain-open",
    RainHold = "rain-hold",
    RainFew = "rain-few",
    RainBegunNotice = "rain-begun-notice",
    RainStoppedNotice = "rain-stopped-notice",
    RainStoppedNoticeOpen = "rain-stopped-notice-open",
    HoldNone = "hold-none",
    HoldAsk = "hold-ask",
    PlantingHeld = "planting-held",
    NotYourGroup = "not-your-group",
}
