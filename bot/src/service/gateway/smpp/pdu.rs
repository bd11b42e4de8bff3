//! The messages of SMPP 3.4 that an account needs, as octets and back.
//!
//! What we write is as the standard says. What we read is taken as far as it goes: fields of the
//! wrong length, unknown parameters and commands never break the line, because a centre sends what
//! was not acknowledged again after each bind. Deliberately absent: what a text in it says.

use crate::service::gateway::octets::Octets;

/// Octets of the header (3.2).
pub(super) const HEADER: usize = 16;

/// A message longer than this is no message: a payload has 64 KiB at most (5.3.2.32).
pub(super) const LENGTH_MAX: usize = 70_000;

/// The commands (5.1.2.1). An answer has the highest bit set.
pub(super) mod command {
    pub(in super::super) const BIND_RECEIVER: u32 = 0x01;
    pub(in super::super) const BIND_TRANSMITTER: u32 = 0x02;
    pub(in super::super) const SUBMIT: u32 = 0x04;
    pub(in super::super) const DELIVER: u32 = 0x05;
    pub(in super::super) const UNBIND: u32 = 0x06;
    pub(in super::super) const BIND_TRANSCEIVER: u32 = 0x09;
    pub(in super::super) const ENQUIRE_LINK: u32 = 0x15;
    pub(in super::super) const GENERIC_NACK: u32 = 0x8000_0000;
    pub(in super::super) const ANSWER: u32 = 0x8000_0000;
}

/// Optional parameters (5.3.2).
mod parameter {
    pub(super) const RECEIPTED_ID: u16 = 0x001e;
    pub(super) const SAR_REFERENCE: u16 = 0x020c;
    pub(super) const SAR_TOTAL: u16 = 0x020e;
    pub(super) const SAR_NUMBER: u16 = 0x020f;
    pub(super) const PAYLOAD: u16 = 0x0424;
    pub(super) const STATE: u16 = 0x0427;
}

/// The head of a message.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Head {
    pub(super) command: u32,
    pub(super) status: u32,
    pub(super) sequence: u32,
}

/// An address as the standard has it: kind of number, numbering plan, digits or letters.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Address {
    pub(super) ton: u8,
    pub(super) npi: u8,
    pub(super) digits: String,
}

/// A part of a longer text (5.3.2.22 to 24).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Sar {
    pub(super) reference: u16,
    pub(super) of: u8,
    pub(super) number: u8,
}

/// A text, one way or the other (4.4.1, 4.6.1).
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Message {
    pub(super) from: Address,
    pub(super) to: Address,
    pub(super) esm_class: u8,
    pub(super) validity: String,
    pub(super) registered: u8,
    pub(super) coding: u8,
    /// The text; of a long one in one message it stands behind, as a parameter.
    pub(super) octets: Vec<u8>,
    pub(super) is_payload: bool,
    pub(super) sar: Option<Sar>,
    /// What a receipt is about, and how far that is, where parameters tell it.
    pub(super) receipted: Option<String>,
    pub(super) state: Option<u8>,
}

/// Who binds (4.1.1).
pub(super) struct Bind<'a> {
    pub(super) command: u32,
    pub(super) system_id: &'a str,
    pub(super) password: &'a str,
    pub(super) system_type: &'a str,
}

impl Head {
    /// The length of the whole message, and its head.
    pub(super) fn read(octets: &[u8; HEADER]) -> (usize, Self) {
        let mut reader = Octets(octets);
        let length = reader.long();
        let head = Self {
            command: reader.long(),
            status: reader.long(),
            sequence: reader.long(),
        };
        (usize::try_from(length).unwrap_or(usize::MAX), head)
    }

    /// A message with this body.
    pub(super) fn with(self, body: &[u8]) -> Vec<u8> {
        let length = u32::try_from(HEADER + body.len()).unwrap_or(u32::MAX);
        let mut octets = Vec::with_capacity(HEADER + body.len());
        for field in [length, self.command, self.status, self.sequence] {
            octets.extend(field.to_be_bytes());
        }
        octets.extend(body);
        octets
    }
}

impl Bind<'_> {
    pub(super) fn body(&self) -> Vec<u8> {
        let mut body = Vec::new();
        // With their zero: 16, 9 and 13 octets.
        put_text(&mut body, self.system_id, 15);
        put_text(&mut body, self.password, 8);
        put_text(&mut body, self.system_type, 12);
        // Version 3.4; any kind of number, any plan, no range of addresses.
        body.extend([0x34, 0, 0, 0]);
        body
    }
}

impl Message {
    /// The body of a text that we send. None for one that is too long.
    pub(super) fn body(&self) -> Option<Vec<u8>> {
        let mut body = vec![0];
        for address in [&self.from, &self.to] {
            body.extend([address.ton, address.npi]);
            put_text(&mut body, &address.digits, 20);
        }
        body.extend([self.esm_class, 0, 0, 0]);
        put_text(&mut body, &self.validity, 16);
        body.extend([self.registered, 0, self.coding, 0]);
        if self.is_payload {
            body.push(0);
            put_parameter(&mut body, parameter::PAYLOAD, &self.octets)?;
        } else {
            body.push(
                u8::try_from(self.octets.len())
                    .ok()
                    .filter(|length| *length < 255)?,
            );
            body.extend(&self.octets);
        }
        if let Some(sar) = self.sar {
            put_parameter(
                &mut body,
                parameter::SAR_REFERENCE,
                &sar.reference.to_be_bytes(),
            )?;
            put_parameter(&mut body, parameter::SAR_TOTAL, &[sar.of])?;
            put_parameter(&mut body, parameter::SAR_NUMBER, &[sar.number])?;
        }
        Some(body)
    }

    /// Reads the body of a text that came. None where it ends before its text begins.
    pub(super) fn read(body: &[u8]) -> Option<Self> {
        let mut reader = Octets(body);
        reader.text()?;
        let from = reader.address()?;
        let to = reader.address()?;
        let esm_class = reader.octet()?;
        let _protocol_and_priority = (reader.octet()?, reader.octet()?);
        let _schedule = reader.text()?;
        let validity = reader.text()?;
        let registered = reader.octet()?;
        let _replace = reader.octet()?;
        let coding = reader.octet()?;
        let _canned = reader.octet()?;
        let length = usize::from(reader.octet()?);
        let octets = reader.take(length)?.to_vec();
        let mut message = Self {
            from,
            to,
            esm_class,
            validity,
            registered,
            coding,
            octets,
            ..Self::default()
        };
        message.read_parameters(reader);
        Some(message)
    }

    /// What cannot be read as a parameter ends them.
    fn read_parameters(&mut self, mut reader: Octets<'_>) {
        let (mut reference, mut of, mut number) = (None, None, None);
        while let Some((tag, value)) = reader.parameter() {
            match (tag, value) {
                (parameter::PAYLOAD, octets) if self.octets.is_empty() => {
                    self.octets = octets.to_vec();
                    self.is_payload = true;
                }
                (parameter::RECEIPTED_ID, id) => {
                    let id = String::from_utf8_lossy(id);
                    self.receipted = Some(id.trim_end_matches('\0').to_owned());
                }
                (parameter::STATE, [state]) => self.state = Some(*state),
                (parameter::SAR_REFERENCE, [high, low]) => {
                    reference = Some(u16::from_be_bytes([*high, *low]));
                }
                (parameter::SAR_TOTAL, [total]) => of = Some(*total),
                (parameter::SAR_NUMBER, [which]) => number = Some(*which),
                _ => {}
            }
        }
        if let (Some(reference), Some(of), Some(number)) = (reference, of, number) {
            self.sar = Some(Sar {
                reference,
                of,
                number,
            });
        }
    }
}

/// The text that a body begins with, such as the id in the answer to a text; empty where there is
/// none.
pub(super) fn first_text(body: &[u8]) -> String {
    let end = body.iter().position(|octet| *octet == 0);
    let text = body.get(..end.unwrap_or(body.len())).unwrap_or_default();
    String::from_utf8_lossy(text).into_owned()
}

/// What is longer is cut, which the configuration has ruled out for what is ours.
fn put_text(body: &mut Vec<u8>, text: &str, most: usize) {
    let plain = text.bytes().filter(|octet| *octet != 0);
    body.extend(plain.take(most));
    body.push(0);
}

fn put_parameter(body: &mut Vec<u8>, tag: u16, value: &[u8]) -> Option<()> {
    body.extend(tag.to_be_bytes());
    body.extend(u16::try_from(value.len()).ok()?.to_be_bytes());
    body.extend(value);
    Some(())
}

impl<'a> Octets<'a> {
    /// Zero where there is nothing left, which a head has not.
    fn long(&mut self) -> u32 {
        let octets = self.take(4).and_then(|four| <[u8; 4]>::try_from(four).ok());
        u32::from_be_bytes(octets.unwrap_or_default())
    }

    /// Up to a zero, of any length and in any letters.
    fn text(&mut self) -> Option<String> {
        let end = self.0.iter().position(|octet| *octet == 0)?;
        let text = self.take(end)?;
        self.octet()?;
        Some(String::from_utf8_lossy(text).into_owned())
    }

    fn address(&mut self) -> Option<Address> {
        Some(Address {
            ton: self.octet()?,
            npi: self.octet()?,
            digits: self.text()?,
        })
    }

    /// The next parameter. A stray zero behind the text is passed over.
    fn parameter(&mut self) -> Option<(u16, &'a [u8])> {
        if self.0.first() == Some(&0) && self.0.get(1).is_none_or(|next| *next > 0x14) {
            self.octet()?;
        }
        let tag = self.take(2)?;
        let tag = u16::from_be_bytes(<[u8; 2]>::try_from(tag).ok()?);
        let length = self.take(2)?;
        let length = u16::from_be_bytes(<[u8; 2]>::try_from(length).ok()?);
        // One whose length is wrong is read as far as it goes.
        let length = usize::from(length).min(self.0.len());
        Some((tag, self.take(length)?))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn octets(hex: &str) -> Vec<u8> {
        let digit = |at| u8::from_str_radix(hex.get(at..at + 2).unwrap(), 16).unwrap();
        (0..hex.len()).step_by(2).map(digit).collect()
    }

    // The example of the specification (SMPP 3.4, 3.2.5; version 5.0 prints the same).
    #[test]
    fn a_bind_is_that_of_the_specification() {
        let bind = Bind {
            command: command::BIND_TRANSMITTER,
            system_id: "SMPP3TEST",
            password: "secret08",
            system_type: "SUBMIT1",
        };
        let head = Head {
            command: bind.command,
            status: 0,
            sequence: 1,
        };
        let mut body = bind.body();
        // The example leaves the version open and asks for one kind of number, which we do not.
        let at = body.len() - 4;
        body.splice(at.., [0, 1, 1, 0]);
        let expected = octets(
            "0000002F000000020000000000000001534D50503354455354007365637265743038005355424D495431\
             0000010100",
        );
        let ours = head.with(&body);
        assert_eq!(ours, expected);
        let (length, read) = Head::read(ours.first_chunk().unwrap());
        assert_eq!((length, read), (47, head));
    }

    fn text() -> Message {
        Message {
            from: Address {
                ton: 1,
                npi: 1,
                digits: "447700900123".into(),
            },
            to: Address {
                ton: 3,
                npi: 0,
                digits: "12345".into(),
            },
            validity: "000001000000000R".into(),
            registered: 1,
            coding: 8,
            octets: vec![0x0e, 0x2d],
            sar: Some(Sar {
                reference: 300,
                of: 2,
                number: 1,
            }),
            ..Message::default()
        }
    }

    #[test]
    fn a_text_is_read_as_it_was_written() {
        for message in [
            text(),
            Message {
                octets: vec![b'x'; 2_000],
                is_payload: true,
                sar: None,
                ..text()
            },
        ] {
            assert_eq!(Message::read(&message.body().unwrap()), Some(message));
        }
        let too_long = Message {
            octets: vec![0; 255],
            ..text()
        };
        assert_eq!(too_long.body(), None);
    }

    /// What centres have been seen to send; none of it breaks the line.
    #[test]
    fn odd_messages_are_read_as_far_as_they_go() {
        let body = text().body().unwrap();
        let stray = [body.as_slice(), &[0]].concat();
        assert_eq!(Message::read(&stray), Some(text()));
        let vendor = [body.as_slice(), &[0x14, 0x00, 0x00, 0x01, 7]].concat();
        assert_eq!(Message::read(&vendor), Some(text()));
        let wrong_length = [body.as_slice(), &[0x04, 0x27, 0xff, 0xff, 2]].concat();
        assert_eq!(Message::read(&wrong_length).unwrap().state, Some(2));
        let long_name = Message {
            from: Address {
                ton: 5,
                npi: 0,
                digits: "caf\u{e9} of the upper valley".into(),
            },
            ..text()
        };
        let mut raw = vec![0, 5, 0];
        raw.extend(b"caf\xe9 of a valley with a long name\0");
        raw.extend(text().body().unwrap().get(17..).unwrap());
        let read = Message::read(&raw).unwrap();
        assert!(read.from.digits.starts_with("caf\u{fffd} of"), "{read:?}");
        assert_eq!(read.octets, long_name.octets);
        for end in 0..40 {
            // Never a panic, and none of these has a whole text.
            assert_eq!(Message::read(body.get(..end).unwrap()), None, "{end}");
        }
    }

    #[test]
    fn the_id_is_read_with_and_without_its_zero() {
        assert_eq!(first_text(b"4b1\0rest"), "4b1");
        assert_eq!(first_text(b"4b1"), "4b1");
        assert_eq!(first_text(b""), "");
    }
}
