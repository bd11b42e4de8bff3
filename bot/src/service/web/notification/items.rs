//! One item, or a list of them: senders write both where the interface allows several.

use std::{fmt, marker::PhantomData};

use serde::{
    Deserialize, Deserializer,
    de::{DeserializeOwned, Error, MapAccess, SeqAccess, Visitor, value::MapAccessDeserializer},
};
use serde_json::Value;

use crate::words::limits;

/// One item or several, as many as [`limits::NOTIFICATION_ITEMS_MAX`]; of one that cannot be read,
/// why.
pub(super) struct Items<T>(pub(super) Vec<Result<T, String>>);

// Not derived: that would ask for `T: Default`.
impl<T> Default for Items<T> {
    fn default() -> Self {
        Self(Vec::new())
    }
}

impl<'de, T: DeserializeOwned> Deserialize<'de> for Items<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        // Not an untagged enum: its errors would say no more than that nothing fits.
        deserializer.deserialize_any(OneOrMany(PhantomData))
    }
}

struct OneOrMany<T>(PhantomData<T>);

impl<'de, T: DeserializeOwned> Visitor<'de> for OneOrMany<T> {
    type Value = Items<T>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("an object or a list of objects")
    }

    fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<Self::Value, A::Error> {
        T::deserialize(MapAccessDeserializer::new(map)).map(|one| Items(vec![Ok(one)]))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Self::Value, A::Error> {
        let mut items = Vec::new();
        while let Some(item) = list.next_element::<Value>()? {
            if items.len() == limits::NOTIFICATION_ITEMS_MAX {
                let max = limits::NOTIFICATION_ITEMS_MAX;
                return Err(A::Error::custom(format!(
                    "more than {max} items; send fewer"
                )));
            }
            items.push(T::deserialize(item).map_err(|error| error.to_string()));
        }
        Ok(Items(items))
    }
}
