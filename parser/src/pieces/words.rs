//! What each word of the text was taken for.

use alloc::{string::ToString, vec::Vec};

use crate::{
    glyphs::fold::Folded,
    lists::piece::{Piece, Sense},
    meaning::{Meaning, Plain},
    reading::{Stance, Taken, Word},
};

/// Every word, in order; of the marks only the question mark is one.
pub(crate) fn words(pieces: &[Piece<'_>], folded: &Folded<'_>) -> Vec<Word> {
    let mut words = Vec::with_capacity(pieces.len());
    for piece in pieces {
        if !matches!(piece.sense, Sense::Mark(mark) if mark != '?') {
            words.push(Word {
                span: folded.span(piece.start, piece.end),
                taken: taken(piece),
                repaired: piece.repaired.map(ToString::to_string),
            });
        }
    }
    words
}

fn taken(piece: &Piece<'_>) -> Taken {
    match &piece.sense {
        Sense::Listed(listed) => listed
            .meanings()
            .map(taken_for)
            .next()
            .unwrap_or(Taken::Unknown),
        Sense::Number(number) => Taken::Number(number.value),
        Sense::List { values, .. } => Taken::Number(values.iter().next().unwrap_or(0.0)),
        Sense::Range(value, _) | Sense::Share(value, _) => Taken::Number(f64::from(*value)),
        Sense::Metres(value) => Taken::Number(*value),
        Sense::Fraction(above, below) => {
            Taken::Number(f64::from(*above) / f64::from((*below).max(1)))
        }
        Sense::Grade => Taken::Product,
        Sense::When(when) => Taken::When(*when),
        Sense::Block(name) => Taken::Block((*name).to_string()),
        Sense::Group(_) | Sense::Member(_) => Taken::Name,
        Sense::Mark(_) => Taken::Question,
        Sense::Clock | Sense::Spacing => Taken::Filler,
        Sense::Triple(_)
        | Sense::NoSuchDay
        | Sense::TooLarge
        | Sense::NoNumber
        | Sense::TwoKinds(..)
        | Sense::Unknown => Taken::Unknown,
    }
}

fn taken_for(meaning: Meaning) -> Taken {
    match meaning {
        Meaning::Kind(kind) => Taken::Kind(kind),
        Meaning::Ailment(ailment) => Taken::Ailment(ailment),
        Meaning::Cause(cause) => Taken::Cause(cause),
        Meaning::Fertiliser | Meaning::Spray => Taken::Product,
        Meaning::Crop | Meaning::Cover => Taken::Species,
        Meaning::Clone => Taken::Clone,
        Meaning::Material(_) | Meaning::Unit(_) | Meaning::Land(_) | Meaning::Per(_) => Taken::Unit,
        Meaning::Stance(Stance::Plan) => Taken::Future,
        Meaning::Stance(Stance::Question) => Taken::Question,
        Meaning::Topic(_) | Meaning::AdviserTopic(_) => Taken::Command,
        Meaning::Plain(plain) => taken_for_plain(plain),
        Meaning::Extent(_)
        | Meaning::Wetness(_)
        | Meaning::DaysAgo(_)
        | Meaning::Weekday(_)
        | Meaning::Month(_)
        | Meaning::Ago(_)
        | Meaning::Period(_)
        | Meaning::Stance(_)
        | Meaning::Alarm(_)
        | Meaning::Numeral(_) => Taken::Filler,
    }
}

fn taken_for_plain(plain: Plain) -> Taken {
    match plain {
        Plain::Block | Plain::BothBlocks | Plain::EveryBlock | Plain::Land | Plain::Row => {
            Taken::BlockWord
        }
        Plain::Trees | Plain::Gaps | Plain::Round => Taken::Unit,
        Plain::Negation | Plain::NotYet | Plain::Ahead => Taken::Negation,
        Plain::Yes
        | Plain::No
        | Plain::Done
        | Plain::Later
        | Plain::Undo
        | Plain::Help
        | Plain::Stop
        | Plain::Start
        | Plain::Correction
        | Plain::Instead => Taken::Command,
        Plain::Courtesy => Taken::Courtesy,
        Plain::Tall
        | Plain::Weak
        | Plain::LastYear
        | Plain::LastWeek
        | Plain::LastMonth
        | Plain::AgoBefore
        | Plain::Year
        | Plain::Clock
        | Plain::BuddhistMonth
        | Plain::Last
        | Plain::Next
        | Plain::Of
        | Plain::To
        | Plain::And
        | Plain::At
        | Plain::From
        | Plain::Subject
        | Plain::Relative
        | Plain::Body
        | Plain::Phone
        | Plain::Lost
        | Plain::DayNumber
        | Plain::Group
        | Plain::Filler => Taken::Filler,
    }
}
