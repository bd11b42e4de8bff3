//! The header that may stand before a text, with its elements (3GPP TS 23.040, 9.2.3.24).

/// What a header says.
#[derive(Debug, Default, PartialEq, Eq)]
pub(crate) struct Header {
    /// Reference, number of parts, which.
    pub(crate) part: Option<(u16, u8, u8)>,
    /// It is for a program and not for people.
    pub(crate) has_port: bool,
}

/// The header of a part, with its length: the reference of its text, of how many parts, which.
pub(crate) const fn of_part(reference: u8, of: u8, number: u8) -> [u8; 6] {
    [5, 0, 3, reference, of, number]
}

impl Header {
    /// Reads the elements of a header, without its length. What is broken ends it.
    pub(crate) fn read(mut elements: &[u8]) -> Self {
        let mut header = Self::default();
        while let [kind, length, rest @ ..] = elements {
            let Some((value, after)) = rest.split_at_checked(usize::from(*length)) else {
                break;
            };
            match (kind, value) {
                (0x00, [reference, of, number]) => {
                    header.part = Some((u16::from(*reference), *of, *number));
                }
                (0x08, [high, low, of, number]) => {
                    header.part = Some((u16::from_be_bytes([*high, *low]), *of, *number));
                }
                (0x04 | 0x05, _) => header.has_port = true,
                _ => {}
            }
            elements = after;
        }
        // A part that is none of the parts, or the only one, is a text of its own.
        header.part = header
            .part
            .filter(|(_, of, number)| *of > 1 && (1..=*of).contains(number));
        header
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn headers_are_read_as_far_as_they_go() {
        let part = |elements: &[u8]| Header::read(elements).part;
        assert_eq!(part(&[0, 3, 9, 2, 1]), Some((9, 2, 1)));
        assert_eq!(part(&[8, 4, 1, 2, 3, 3]), Some((258, 3, 3)));
        assert_eq!(part(&[0x25, 1, 5, 0, 3, 9, 2, 1]), Some((9, 2, 1)));
        for none in [
            &[0, 3, 9, 1, 1][..],
            &[0, 3, 9, 2, 0],
            &[0, 3, 9, 2, 3],
            &[0, 3, 9],
            &[0],
            &[],
        ] {
            assert_eq!(part(none), None, "{none:?}");
        }
        assert!(Header::read(&[5, 4, 0, 0, 0x23, 0xf0]).has_port);
        let [length, elements @ ..] = of_part(9, 3, 2);
        assert_eq!(
            (usize::from(length), part(&elements)),
            (elements.len(), Some((9, 3, 2)))
        );
    }
}
