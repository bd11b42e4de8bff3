//! Why a person must see a text.

use budwood_parser::Alarm;

/// Why a person must see a text.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Concern {
    /// The text tells of trouble.
    Alarm(Alarm),
    /// They ask to be called.
    CallMe,
    /// A question or a wish that the bot has no answer to.
    Question,
    /// It may be about work or a need, and nobody knows what it says.
    Unclear,
}

impl Concern {
    /// The name in records.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Alarm(alarm) => alarm.name(),
            Self::CallMe => "call_me",
            Self::Question => "question",
            Self::Unclear => "unclear",
        }
    }

    /// The concern with this name.
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        let others = [Self::CallMe, Self::Question, Self::Unclear];
        let alarm = || Alarm::from_name(name).map(Self::Alarm);
        let other = others.into_iter().find(|one| one.name() == name);
        other.or_else(alarm)
    }

    /// Whether somebody's life may hang on it.
    #[must_use]
    pub const fn is_danger(self) -> bool {
        matches!(
            self,
            Self::Alarm(Alarm::Fire | Alarm::Snake | Alarm::Danger | Alarm::Illness)
        )
    }
}
