//! Who may do what, and to whose records: one table. Whatever is asked or done looks here.
//!
//! Everybody on the list tells of their own blocks and asks about them; that is in no row. Deliberately
//! absent: what needs a code, which is the questions' `codes`.

use budwood_parser::{Sender, Topic};
use budwood_scheduler::Role;

/// What somebody does by a text to records that are not theirs alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Verb {
    /// Ask about groups and their people.
    Look,
    /// Ask whose number it is, and what texts cost.
    LookAtNumbers,
    /// Ask the books of a group: who is missing, who was trained, who has paid.
    LookAtBooks,
    /// Enter something in them.
    KeepBooks,
    /// Ask about plants of nurseries.
    LookAtPlants,
    /// Tell what a nursery has and gives out.
    RaisePlants,
    /// Report for somebody.
    ReportFor,
    /// Text rows of a printed sheet back.
    TextSheet,
    /// Read the texts that wait, store them, pass them on, close them.
    ReadQueue,
    /// Put right what others told.
    Fix,
    /// Leave people in peace, and remind them again.
    Hold,
    /// Take rights from a lost phone, give them to another.
    MovePhones,
    /// Say that the phone of the adviser is lost.
    ReportAdvisersPhone,
    /// Open and hold the planting window, let neighbours look.
    OpenAndWarn,
    /// Send words of one's own.
    Announce,
    /// Promise something, and look at one's own week.
    Promise,
    /// Give groups to another adviser.
    HandOver,
    /// Let land and people pass from one to another.
    MovePeople,
}

/// Whose records they reach.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Reach {
    /// Nobody's.
    Nobody,
    /// Those of the own group.
    OwnGroup,
    /// Those of the groups that they look after.
    Advised,
}

impl Verb {
    /// Who may do it, and to whose records: farmer, leader, adviser, clerk, nursery, viewer.
    const fn row(self) -> [Reach; 6] {
        use Reach::{Advised as Adv, Nobody as No, OwnGroup as Own};
        match self {
            Self::Look => [No, No, Adv, Own, No, Own],
            Self::LookAtNumbers | Self::ReadQueue => [No, No, Adv, Own, No, No],
            Self::LookAtBooks => [No, Own, Adv, Own, No, Own],
            Self::TextSheet => [No, Own, Adv, Own, No, No],
            Self::LookAtPlants => [No, No, Adv, Own, Own, Own],
            Self::RaisePlants => [No, No, Adv, No, Own, No],
            Self::KeepBooks | Self::ReportFor | Self::Fix => [No, Own, Adv, No, No, No],
            Self::ReportAdvisersPhone => [No, Own, Adv, Own, No, No],
            Self::Hold
            | Self::MovePhones
            | Self::OpenAndWarn
            | Self::Announce
            | Self::Promise
            | Self::HandOver
            | Self::MovePeople => [No, No, Adv, No, No, No],
        }
    }

    /// What a question or a command does; none when anybody may.
    pub(crate) const fn of(topic: Topic) -> Option<Self> {
        Some(match topic {
            Topic::Late
            | Topic::Quiet
            | Topic::Gaps
            | Topic::Sick
            | Topic::Visit
            | Topic::Member
            | Topic::Dead
            | Topic::Cause
            | Topic::Girth
            | Topic::Ready
            | Topic::Bags
            | Topic::Paid
            | Topic::Last
            | Topic::Root
            | Topic::Rain
            | Topic::Wind
            | Topic::Harm
            | Topic::Fire
            | Topic::Train
            | Topic::Grant
            | Topic::Map
            | Topic::Best
            | Topic::Labour
            | Topic::Clone
            | Topic::Job
            | Topic::More
            | Topic::Count
            | Topic::Open => Self::Look,
            Topic::List | Topic::Trained | Topic::Buying => Self::LookAtBooks,
            Topic::Stock | Topic::Sent | Topic::Allot | Topic::PickUp => Self::LookAtPlants,
            Topic::Cost | Topic::Whose => Self::LookAtNumbers,
            Topic::Waiting | Topic::Pass => Self::ReadQueue,
            Topic::Window | Topic::Hold | Topic::Warn => Self::OpenAndWarn,
            Topic::LeaveAlone | Topic::GoOn => Self::Hold,
            Topic::Lost => Self::ReportAdvisersPhone,
            Topic::Found | Topic::Moved => Self::MovePhones,
            Topic::Tell | Topic::Ask | Topic::AskHarm => Self::Announce,
            Topic::Promise | Topic::Kept | Topic::Week => Self::Promise,
            Topic::HandOver => Self::HandOver,
            Topic::Fix => Self::Fix,
            Topic::Owner | Topic::Divide | Topic::Join | Topic::Leave | Topic::Contact => {
                Self::MovePeople
            }
            Topic::Status
            | Topic::Next
            | Topic::When
            | Topic::HowMuch
            | Topic::MayI
            | Topic::MyData
            | Topic::Erase
            | Topic::CallMe
            | Topic::Who
            | Topic::Price
            | Topic::Order
            | Topic::Meeting
            | Topic::Language
            | Topic::Other
            | Topic::HowTo
            | Topic::Advice
            | Topic::Share => return None,
        })
    }
}

/// Whose records somebody of this role reaches by it.
pub(crate) const fn reach(role: Role, verb: Verb) -> Reach {
    let [farmer, leader, adviser, clerk, nursery, viewer] = verb.row();
    match role {
        Role::Farmer => farmer,
        Role::Leader => leader,
        Role::Adviser => adviser,
        Role::Clerk => clerk,
        Role::Nursery => nursery,
        Role::Viewer => viewer,
    }
}

/// Whether they reach any.
pub(crate) const fn may(role: Role, verb: Verb) -> bool {
    !matches!(reach(role, verb), Reach::Nobody)
}

/// Whether what they do to the records of others waits for a code: sender numbers can be forged, and
/// nobody confirms what such a text says.
pub(crate) const fn needs_code(role: Role) -> bool {
    may(role, Verb::ReadQueue)
}

/// How their texts are read: who asks about groups does so by their names.
pub(crate) const fn sender(role: Role) -> Sender {
    if may(role, Verb::Look) {
        Sender::Adviser
    } else {
        Sender::Farmer
    }
}
