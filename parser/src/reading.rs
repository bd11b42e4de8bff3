//! What a text says: the result of reading it.
//!
//! The promise: every word of the text ends up in [`Reading::words`], with what it was taken for.

mod entry;
mod word;

use alloc::{string::String, vec::Vec};

use crate::{
    details::{Details, Extent, Material, Measure, Unit, named},
    glyphs::names::Names,
    kind::Kind,
    span::Span,
    when::When,
};

pub use crate::details::Unnamed;
pub use entry::Entry;
pub use word::{Taken, Word};

/// Who is thought to be texting. It decides which words are commands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sender {
    /// A registered farmer or leader.
    Farmer,
    /// An adviser: a group's or member's name is a question about it.
    Adviser,
    /// Not registered, or not a number.
    Unknown,
}

/// Words that only this conversation knows.
#[derive(Clone, Copy, Debug)]
pub struct Known<'a> {
    /// Language packs to use, by code; empty means all that are loaded.
    pub languages: &'a [&'a str],
    /// The farmer's own block names ("B", "Hill"), tried before anything else.
    pub blocks: &'a [&'a str],
    /// Group names (advisers).
    pub groups: &'a [&'a str],
    /// Names of a few people: those who share this phone.
    pub members: &'a [&'a str],
    /// Names of the people of whole groups: the adviser's, or the leader's own.
    pub rolls: &'a [&'a Names],
    /// Who texts.
    pub sender: Sender,
}

/// Everything that a text says.
#[derive(Clone, Debug, Default, PartialEq)]
#[expect(clippy::struct_excessive_bools, reason = "each is so of a text")]
pub struct Reading {
    /// Work and sights reported, in the order of the text.
    pub reports: Vec<Report>,
    /// What is said to the bot itself. Usually none or one.
    pub acts: Vec<Act>,
    /// The text is nothing but a number, a block name or a person's name: it may fill a question.
    pub bare: Option<Bare>,
    /// Why reports here must not be stored as facts: a plan, a question, a third person.
    pub stances: Vec<Stance>,
    /// Something that a person must see.
    pub alarm: Option<Alarm>,
    /// A member named in the text ("from Tamo: dead 4 A"), as in [`Known::members`].
    pub member: Option<String>,
    /// What could not be understood, and where.
    pub problems: Vec<Problem>,
    /// Every word, with what it was taken for.
    pub words: Vec<Word>,
    /// The language pack that most words came from.
    pub language: Option<String>,
    /// The reports stand beside what is said to the bot, or beside an alarm: both hold.
    pub both: bool,
    /// How much likelier the reports are than any other reading, in steps of what was learned.
    pub margin: i32,
    /// A correction, if what was told before has one of its two values.
    pub amends: Option<Correction>,
    /// Something is asked, and it is not sure what.
    pub asks: bool,
    /// There is an action word, a block or a number: worth an example when nothing was understood.
    pub about_work: bool,
    /// A word of need that nothing was made of: family, a body, a phone, or a word that may be fire
    /// misspelt.
    pub may_need: bool,
    /// Blocks that are meant without their names ("weeded both blocks").
    pub unnamed: Option<Unnamed>,
}

/// One fact as said, names unresolved.
#[derive(Clone, Debug, PartialEq)]
pub struct Report {
    /// What kind.
    pub kind: Kind,
    /// The rest of what was said.
    pub details: Details,
    /// The block as named, in the spelling of [`Known::blocks`] when it is one of those.
    pub block: Option<String>,
    /// When, if said.
    pub when: Option<When>,
    /// Why this should be confirmed before it is stored.
    pub doubts: Vec<Doubt>,
    /// Where in the text.
    pub span: Span,
}

/// Why a report should be confirmed.
#[derive(Clone, Debug, PartialEq)]
pub enum Doubt {
    /// A misspelt word was taken for another that could also be a real word ("deaf" for dead).
    Repaired {
        /// As written.
        from: String,
        /// As taken.
        to: String,
    },
    /// A letter in a number was taken for a digit ("12O").
    LetterForDigit(String),
    /// A number said loosely ("one twenty", "a dozen").
    LooseNumber(u32),
    /// A range ("10 to 12"): ask which.
    Range(u32, u32),
    /// A unit was guessed (410 for a girth: millimetres).
    GuessedUnit(Unit),
    /// A list that can be read two ways ("41, 43,5, 39").
    CommaList,
    /// All, half, many, burnt: large and not counted.
    Whole(Extent),
    /// Two numbers could be the count.
    TwoCounts(u32, u32),
    /// A number that found no slot, as written ("fertilised A 2": bags, kilograms or trees?).
    LooseEnd(String),
    /// A name that we do not know stands where the one who did it stands.
    SomebodyElse(String),
    /// A word of every day that has nothing to do with trees ("sprayed kitchen 2 B").
    StrangeWord(String),
    /// A word that two languages read differently, of a phone whose language is not known.
    TwoLanguages(String),
    /// Understood by likeness to what others wrote; another reading is nearly as likely.
    Likeness,
}

/// What is said to the bot itself.
#[derive(Clone, Debug, PartialEq)]
pub enum Act {
    /// Yes; also "1" as the whole text.
    Yes,
    /// No, wrong; also "2" as the whole text.
    No,
    /// The job named by the last nudge is done.
    Done,
    /// Remind again after so many days, or after the usual time.
    Later(Option<u16>),
    /// An earlier report was wrong.
    Correct(Correction),
    /// Take the last report back.
    Undo,
    /// How does this work?
    Help,
    /// No more texts. Only ever the whole message.
    Stop,
    /// Begin, join, texts again.
    Start,
    /// A question.
    Query(Query),
}

/// "no 102 not 120", "A not B", "dead 21 not 210 B".
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Correction {
    /// Which slot, when it can be told from the words.
    pub field: Option<Field>,
    /// The old value as written.
    pub from: Option<String>,
    /// The right value as written.
    pub to: Option<String>,
    /// Kind of the event meant, if named.
    pub kind: Option<Kind>,
    /// Block of the event meant, if named.
    pub block: Option<String>,
}

named! {
    /// A slot that can be corrected.
    Field {
        /// The count.
        Count = "count",
        /// The block.
        Block = "block",
        /// The date.
        Date = "date",
        /// The kind.
        Kind = "kind",
        /// Measured values.
        Values = "values_cm",
        /// Area.
        Area = "area",
        /// Amount.
        Amount = "amount",
    }
}

/// A question, with the names in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Query {
    /// About what.
    pub topic: Topic,
    /// Group, as in [`Known::groups`] when it is one of those.
    pub group: Option<String>,
    /// Person, as in [`Known::members`] when it is one of those.
    pub member: Option<String>,
    /// Block.
    pub block: Option<String>,
    /// Kind of work asked about ("how much fertiliser", "prune KOLO").
    pub kind: Option<Kind>,
    /// An area in the question ("how many plants for 1.2 ha").
    pub area: Option<Measure>,
    /// "this week", "in 3 days": how far to look, in days.
    pub period_days: Option<u16>,
    /// A number in the question, such as a code.
    pub number: Option<u32>,
    /// Yes or no in the question ("window KOLO yes").
    pub yes: Option<bool>,
    /// The language asked for, as written ("language fr").
    pub language: Option<String>,
    /// The sort of plants that it is about ("how stump").
    pub material: Option<Material>,
    /// What is entered in a book.
    pub entry: Entry,
}

named! {
    /// What a question is about.
    Topic {
        /// How a group, a person or one's own blocks stand.
        Status = "status",
        /// Who is late.
        Late = "late",
        /// Who has not been heard of.
        Quiet = "quiet",
        /// Trees missing, plants to order.
        Gaps = "gaps",
        /// Who reports sickness.
        Sick = "sick",
        /// Whom to visit first.
        Visit = "visit",
        /// A person's blocks.
        Member = "member",
        /// What to do now.
        Next = "next",
        /// When is a job due.
        When = "when",
        /// How many plants, how much fertiliser.
        HowMuch = "how_much",
        /// May I tap, plant, spray.
        MayI = "may_i",
        /// Open the planting window of a group (adviser).
        Window = "window",
        /// Let the neighbours of a cluster look (adviser).
        Warn = "warn",
        /// Hold planting in a group again (adviser).
        Hold = "hold",
        /// Leave a person in peace (adviser).
        LeaveAlone = "leave_alone",
        /// Remind a person again (adviser).
        GoOn = "go_on",
        /// A person's phone is lost (adviser).
        Lost = "lost",
        /// It is found again (adviser).
        Found = "found",
        /// A person's number is another one now (adviser).
        Moved = "moved",
        /// Which texts wait for the adviser.
        Waiting = "waiting",
        /// What is held about me.
        MyData = "my_data",
        /// Erase my name and number.
        Erase = "erase",
        /// Please call me.
        CallMe = "call_me",
        /// Who is this.
        Who = "who",
        /// What rubber or a plant fetches or costs.
        Price = "price",
        /// Where the plants or the fertiliser are that were to come.
        Order = "order",
        /// When and where the group meets.
        Meeting = "meeting",
        /// Which languages there are, or answers in another one.
        Language = "language",
        /// Any other question.
        Other = "other",
        /// Trees that died: how many, whose, of what, of which clone (adviser).
        Dead = "dead",
        /// What it comes from, beside another topic (adviser).
        Cause = "cause",
        /// How thick the trees are (adviser).
        Girth = "girth",
        /// When stands will be ready for tapping (adviser).
        Ready = "ready",
        /// Fertiliser that is due, in bags, and each one's share (adviser).
        Bags = "bags",
        /// Who paid (adviser).
        Paid = "paid",
        /// What was told last, and in which texts (adviser).
        Last = "last",
        /// Roots looked at, and what was found (adviser).
        Root = "root",
        /// Where rain soaked the ground (adviser).
        Rain = "rain",
        /// What wind did (adviser).
        Wind = "wind",
        /// Firebreaks, and what burnt (adviser).
        Fire = "fire",
        /// Who was shown how it is done (adviser).
        Train = "train",
        /// Who passes for a part of a grant (adviser).
        Grant = "grant",
        /// What is known of the land itself (adviser).
        Map = "map",
        /// What texts cost (adviser).
        Cost = "cost",
        /// Groups beside each other (adviser).
        Best = "best",
        /// Work of the next weeks (adviser).
        Labour = "labour",
        /// Which clones stand (adviser).
        Clone = "clone",
        /// What is left of the adviser's own week (adviser).
        Week = "week",
        /// How far a kind of work is (adviser).
        Job = "job",
        /// The next part of the last list (adviser).
        More = "more",
        /// Whose number ends so (adviser).
        Whose = "whose",
        /// A text to a group or a person (adviser).
        Tell = "tell",
        /// Leaders are asked about who is silent (adviser).
        Ask = "ask",
        /// A group is asked what a storm, a fire, a flood or a drought did (adviser).
        AskHarm = "ask_harm",
        /// What one of these did (adviser).
        Harm = "harm",
        /// A text that waits goes to somebody else (adviser).
        Pass = "pass",
        /// What the adviser owes to somebody (adviser).
        Promise = "promise",
        /// It is done (adviser).
        Kept = "kept",
        /// All groups go to another adviser (adviser).
        HandOver = "hand_over",
        /// How much of a kind of work was reported (adviser).
        Count = "count",
        /// What is open with a group or a person that goes to somebody else (adviser).
        Open = "open",
        /// Put a record right (adviser).
        Fix = "fix",
        /// How a kind of work is done.
        HowTo = "how_to",
        /// A worry, without a clear question.
        Advice = "advice",
        /// Of which members nothing was told this week (leader, adviser).
        List = "list",
        /// Who came to a training (leader, adviser).
        Trained = "trained",
        /// Plants that a nursery has (nursery).
        Stock = "stock",
        /// Plants that a nursery gave out (nursery).
        Sent = "sent",
        /// How plants that are short are shared out (adviser, nursery).
        Allot = "allot",
        /// When fertiliser is bought together, and what a bag costs (leader, adviser).
        Buying = "buying",
        /// On which day plants are given out (nursery, adviser).
        PickUp = "pick_up",
        /// Whether buyers may be told of the own land.
        Share = "share",
        /// A block has another owner (adviser).
        Owner = "owner",
        /// A part of a block becomes a block of its own (adviser).
        Divide = "divide",
        /// Somebody comes to a group (adviser).
        Join = "join",
        /// Somebody leaves a group (adviser).
        Leave = "leave",
        /// A second phone for a person, of whoever does the work there (adviser).
        Contact = "contact",
    }
}

/// The whole text is one thing that may fill a question.
#[derive(Clone, Debug, PartialEq)]
pub enum Bare {
    /// A number.
    Number(f64),
    /// A block name of the farmer.
    Block(String),
    /// A known person.
    Member(String),
    /// A day.
    When(When),
    /// A list of numbers.
    Numbers(Vec<f64>),
}

named! {
    /// Why what is said is not a fact of the field.
    Stance {
        /// "will plant 120 tomorrow".
        Plan = "plan",
        /// "should i plant 120?".
        Question = "question",
        /// "give me 120 trees".
        Request = "request",
        /// "my neighbour planted 200".
        Hearsay = "hearsay",
        /// "i have 120 trees".
        Stock = "stock",
        /// "if it rains i plant".
        Hypothetical = "hypothetical",
        /// A saying that only sounds like work ("phone is dead").
        Saying = "saying",
        /// Greeting, thanks, nothing else.
        Courtesy = "courtesy",
        /// An advert or an operator's notice.
        Advert = "advert",
        /// Too few known words, or too long, to be a report.
        Chat = "chat",
    }
}

named! {
    /// Something that a person must see at once.
    Alarm {
        /// Somebody died.
        Grief = "grief",
        /// Something burns.
        Fire = "fire",
        /// A snake has bitten somebody.
        Snake = "snake",
        /// Somebody is in danger now (attack, falling trees).
        Danger = "danger",
        /// Somebody is ill or hurt.
        Illness = "illness",
        /// A complaint ("plants did not come").
        Complaint = "complaint",
        /// A phone is lost, or the number is another one.
        Number = "number",
        /// Money asked or owed.
        Money = "money",
    }
}

/// What could not be understood.
#[derive(Clone, Debug, PartialEq)]
pub enum Problem {
    /// A number that no slot wants.
    LooseEnd(Span),
    /// A number too large to be anything.
    NumberTooLarge(Span),
    /// A day that does not exist (31/2).
    NoSuchDay(Span),
    /// A word that could be two kinds of work.
    TwoKinds(Span, Kind, Kind),
    /// The text was longer than is read.
    Cut(Span),
}
