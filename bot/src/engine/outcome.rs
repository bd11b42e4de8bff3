//! What became of what came in, in a word or two: for the log, and kept with each text for good.

use std::fmt;

macro_rules! outcomes {
    ($($(#[$doc:meta])* $variant:ident = $word:literal,)+) => {
        /// What became of what came in.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum Outcome {
            $($(#[$doc])* $variant,)+
        }

        impl Outcome {
            /// Every outcome.
            pub const ALL: &'static [Self] = &[$(Self::$variant),+];

            /// The word in records. It stays: records are kept for ever.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self { $(Self::$variant => $word),+ }
            }
        }
    };
}

outcomes! {
    /// Facts were stored.
    Recorded = "recorded",
    /// An earlier fact was put right.
    Changed = "changed",
    /// Earlier facts were taken back.
    TakenBack = "taken back",
    /// There was nothing to take back.
    NothingToUndo = "nothing to undo",
    /// Doubtful facts were asked about.
    AskedToConfirm = "asked to confirm",
    /// Something was missing.
    AskedForSlot = "asked for a slot",
    /// A correction left open what is wrong.
    AskedWhatIsWrong = "asked what is wrong",
    /// Several people share the phone.
    AskedForWhom = "asked for whom",
    /// Something large needs a code.
    AskedForCode = "asked for a code",
    /// Something large was done.
    DoneWithCode = "done with a code",
    /// The code was another one.
    WrongCode = "wrong code",
    /// Too many wrong codes came, so none is taken for a day.
    Locked = "locked",
    /// A nudge was read, which says nothing of the work.
    Seen = "seen",
    /// What was asked about is not stored.
    Dropped = "dropped",
    /// A job was put off.
    PutOff = "put off",
    /// A question was answered.
    Answered = "answered",
    /// Help was asked for.
    Helped = "helped",
    /// No more nudges.
    Stopped = "stopped",
    /// Nudges from now on.
    Started = "started",
    /// The phone is answered in another language.
    SpeaksAnotherLanguage = "speaks another language",
    /// It is left to a person.
    ForPerson = "for a person",
    /// The adviser has seen to a text that waited.
    SeenTo = "seen to",
    /// The adviser owes something to somebody.
    Promised = "promised",
    /// It was done.
    Kept = "kept",
    /// A text waits for a colleague.
    Passed = "passed",
    /// Somebody is left in peace.
    LeftAlone = "left alone",
    /// Somebody is reminded again.
    GoneOn = "gone on",
    /// Nobody knows what it means.
    NotUnderstood = "not understood",
    /// It has nothing to do with work.
    Chat = "chat",
    /// It answers what nobody asked.
    NothingWasAsked = "nothing was asked",
    /// Who reports has no block.
    HasNoBlock = "has no block",
    /// The same report once more, from an impatient finger.
    SameAgain = "same again",
    /// Nobody on the list.
    FromStranger = "from a stranger",
    /// A sender that is no number.
    FromName = "from a name",
    /// A service number.
    FromShortCode = "from a short code",
    /// Our own text came back.
    Echo = "echo",
    /// The gateway delivered its text once more.
    DeliveredAgain = "delivered again",
    /// The network or a second gateway delivered it once more.
    DeliveredTwice = "delivered twice",
    /// Texts may leave again.
    Released = "released",
    /// They could leave already.
    WasNotHeld = "was not held",
}

impl fmt::Display for Outcome {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

#[cfg(test)]
mod tests {
    use super::Outcome;

    /// As the records have them: a word may be added, and none may change.
    const STORED: [&str; 40] = [
        "recorded",
        "changed",
        "taken back",
        "nothing to undo",
        "asked to confirm",
        "asked for a slot",
        "asked what is wrong",
        "asked for whom",
        "asked for a code",
        "done with a code",
        "wrong code",
        "locked",
        "seen",
        "dropped",
        "put off",
        "answered",
        "helped",
        "stopped",
        "started",
        "speaks another language",
        "for a person",
        "seen to",
        "promised",
        "kept",
        "passed",
        "left alone",
        "gone on",
        "not understood",
        "chat",
        "nothing was asked",
        "has no block",
        "same again",
        "from a stranger",
        "from a name",
        "from a short code",
        "echo",
        "delivered again",
        "delivered twice",
        "released",
        "was not held",
    ];

    #[test]
    fn the_words_in_records_stay() {
        let words: Vec<&str> = Outcome::ALL.iter().map(|outcome| outcome.name()).collect();
        assert_eq!(words, STORED);
    }
}
