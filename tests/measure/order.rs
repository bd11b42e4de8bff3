//! In which order the pieces of a report stand.

use crate::{
    chance::Chance,
    draw::{happens, weighted},
    token::{Token, What},
};

/// The pieces of a report; those that were not said are empty.
#[derive(Clone, Default)]
pub(crate) struct Pieces {
    pub(crate) kind: Vec<Token>,
    pub(crate) number: Vec<Token>,
    pub(crate) block: Vec<Token>,
    pub(crate) cause: Vec<Token>,
    pub(crate) day: Vec<Token>,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Order {
    KindNumberBlock,
    BlockKindNumber,
    NumberKindBlock,
    KindBlockNumber,
    BlockNumberKind,
    NumberBlockKind,
}

/// The named orders, and fifteen in a hundred in any of the six.
const ORDERS: [(Order, u64); 6] = [
    (Order::KindNumberBlock, 425),
    (Order::BlockKindNumber, 175),
    (Order::NumberKindBlock, 175),
    (Order::KindBlockNumber, 175),
    (Order::BlockNumberKind, 25),
    (Order::NumberBlockKind, 25),
];

/// A farmer finds an order in which no two numbers meet; after so many tries a comma parts them.
const TRIES: u32 = 8;

/// The pieces in some order.
pub(crate) fn arranged(chance: &mut Chance, pieces: &Pieces) -> Vec<Token> {
    let mut tokens = Vec::new();
    for _ in 0..TRIES {
        tokens = some_order(chance, pieces);
        if !numbers_meet(&tokens) {
            return tokens;
        }
    }
    part_numbers(tokens)
}

/// Kind, number and block in every order in which no two numbers meet.
pub(crate) fn in_every_order(pieces: &Pieces) -> Vec<Vec<Token>> {
    let rows = ORDERS
        .iter()
        .map(|(order, _)| row(*order, pieces, &pieces.number).concat());
    rows.filter(|row| !numbers_meet(row)).collect()
}

fn some_order(chance: &mut Chance, pieces: &Pieces) -> Vec<Token> {
    let beside = happens(chance, 5_000);
    let cause = pieces.cause.clone();
    let (with, alone) = if beside {
        (cause, Vec::new())
    } else {
        (Vec::new(), cause)
    };
    let counted = [pieces.number.clone(), with].concat();
    let mut row = row(*weighted(chance, &ORDERS), pieces, &counted);
    row.push(alone);
    let day_first = happens(chance, 3_000);
    row.insert(if day_first { 0 } else { row.len() }, pieces.day.clone());
    row.concat()
}

fn row(order: Order, pieces: &Pieces, counted: &[Token]) -> Vec<Vec<Token>> {
    let kind = || pieces.kind.clone();
    let block = || pieces.block.clone();
    let number = || counted.to_vec();
    match order {
        Order::KindNumberBlock => vec![kind(), number(), block()],
        Order::BlockKindNumber => vec![block(), kind(), number()],
        Order::NumberKindBlock => vec![number(), kind(), block()],
        Order::KindBlockNumber => vec![kind(), block(), number()],
        Order::BlockNumberKind => vec![block(), number(), kind()],
        Order::NumberBlockKind => vec![number(), block(), kind()],
    }
}

/// Two numbers side by side that are not of one list.
fn meet(one: &Token, other: &Token) -> bool {
    let listed = one.what == What::Listed && other.what == What::Listed;
    one.ends_with_digit() && other.begins_with_digit() && !listed
}

fn numbers_meet(tokens: &[Token]) -> bool {
    tokens
        .windows(2)
        .any(|pair| matches!(pair, [one, other] if meet(one, other)))
}

fn part_numbers(tokens: Vec<Token>) -> Vec<Token> {
    let mut parted: Vec<Token> = Vec::new();
    for token in tokens {
        if parted.last().is_some_and(|last| meet(last, &token)) {
            parted.push(Token::new(",", What::Mark));
        }
        parted.push(token);
    }
    parted
}
