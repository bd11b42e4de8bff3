//! What leaves is counted, and the operator is warned as the month's money goes.

use crate::{
    engine::{said::Said, step::Step},
    words::{ledger::WARNED_AT_PCT, message::Outbound},
};

impl Step<'_> {
    /// A text that a gateway has, or may have: from the first time on it counts, and only once.
    pub(crate) fn counted(&mut self, outbound: Outbound) -> Outbound {
        if outbound.sent_at.is_some() {
            return outbound;
        }
        let gateway = outbound.gateway.as_deref().unwrap_or_default();
        let way = self.setup.ways.get(gateway);
        let price = way.and_then(|way| way.price_micro);
        let price_micro = price.map(|price| price.saturating_mul(outbound.parts.into()));
        self.ledger().add(gateway, outbound.parts, price_micro);
        Outbound {
            sent_at: Some(self.now),
            price_micro: outbound.price_micro.or(price_micro),
            ..outbound
        }
    }

    /// How much of the month's budget is gone, where that is news to the operator.
    pub(crate) fn budget_warning(&mut self) -> Vec<Said> {
        let view = self.view();
        let Some(gone) = view.gone_pct() else {
            return Vec::new();
        };
        let reached = WARNED_AT_PCT.into_iter().filter(|pct| *pct <= gone);
        let reached = reached.max().unwrap_or_default();
        let warned = view.ledger().warned_pct;
        if reached == warned {
            return Vec::new();
        }
        let said = view.to_operator(view.budget_told(reached));
        // Of a budget that was made larger the shares are told anew.
        self.ledger().warned_pct = reached;
        said.filter(|_| reached > warned).into_iter().collect()
    }
}
