//! Names of records. Each is a number of its own kind, so that one cannot stand for another.

macro_rules! id {
    ($(#[$doc:meta])* $name:ident($inner:ty)) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name(pub $inner);

        impl core::fmt::Display for $name {
            fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
                self.0.fmt(f)
            }
        }
    };
}

id! {
    /// A person.
    PersonId(u32)
}
id! {
    /// A group of farmers.
    GroupId(u32)
}
id! {
    /// A block of land.
    BlockId(u32)
}
id! {
    /// A fact in the log; later facts have larger numbers.
    EventId(u64)
}
id! {
    /// A message in or out; later messages have larger numbers.
    MessageId(u64)
}
