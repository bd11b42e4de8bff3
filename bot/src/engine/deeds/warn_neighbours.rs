//! On the adviser's word, after a code: those near a cluster are asked to look at their trees.

use budwood_parser::Ailment;
use budwood_scheduler::{
    BlockId, Body, GroupId, Person,
    group::health::{Cluster, Family, Place, neighbours},
};

use crate::{
    args,
    engine::{step::Step, turn::Turn},
    wording::{Key, short},
    words::message::{Deed, Question},
};

impl Step<'_> {
    /// Asks the adviser for the code before the neighbours of the largest cluster are asked to
    /// look.
    pub(crate) fn ask_warn(
        &mut self,
        turn: &Turn,
        speaker: &Person,
        group: GroupId,
    ) -> &'static str {
        let tongue = self.tongue(speaker);
        let name = self.group_named(group);
        let today = self.today_of(speaker.id);
        let cluster = self.clusters_of(group, today).into_iter().next();
        let near = cluster.map(|cluster| (self.near(speaker, &cluster), cluster));
        let Some((near, cluster)) = near.filter(|(near, _)| !near.is_empty()) else {
            let text = tongue.whole(Key::WarnNone, args! { "group" => name.as_str() });
            self.answer(&turn.number, turn.message, text);
            return "answered";
        };
        let code = self.code(turn);
        let ailment = tongue.ailment(cluster.ailment);
        let text = tongue.fit(|length| {
            tongue.say(
                Key::WarnAsk,
                args! {
                    "group" => short(&name, length),
                    "ailment" => ailment.as_str(),
                    "count" => cluster.reports,
                    "blocks" => near.len(),
                    "code" => code.as_str(),
                },
            )
        });
        let ailment = cluster.ailment;
        let deed = Deed::Warn { group, ailment };
        self.ask(turn, turn.speaker, Question::Code { code, deed }, text);
        "asked for a code"
    }

    /// Each block nearby gets a fact; the job to look follows from it, and its text keeps to the
    /// hours, the rest and the consent of every nudge.
    pub(crate) fn do_warn(
        &mut self,
        turn: &Turn,
        speaker: &Person,
        group: GroupId,
        ailment: Ailment,
    ) {
        let on = self.today_of(speaker.id);
        let clusters = self.clusters_of(group, on);
        // One more report meanwhile may have changed the sign that most people name.
        let is_same = |cluster: &&Cluster| Some(cluster.family) == Family::of(ailment);
        let cluster = clusters.iter().find(is_same);
        let near = cluster.map_or_else(Vec::new, |cluster| self.near(speaker, cluster));
        for block in &near {
            let telling = self.telling(turn, turn.speaker);
            let block = *block;
            self.record(telling, None, Body::Warned { block, ailment, on });
        }
        let tongue = self.tongue(speaker);
        let args = args! {
            "blocks" => near.len(),
            "ailment" => tongue.ailment(ailment),
            "group" => self.group_named(group),
        };
        let text = tongue.whole(Key::WarnDone, args);
        self.answer(&turn.number, turn.message, text);
    }

    /// Blocks of the adviser's groups with living trees, near a cluster and not in it.
    fn near(&self, adviser: &Person, cluster: &Cluster) -> Vec<BlockId> {
        let directory = &self.world.directory;
        let places: Vec<Place> = directory
            .groups_of(adviser.id)
            .flat_map(|group| directory.members(group.id))
            .flat_map(|person| directory.blocks_of(person.id))
            .filter(|block| {
                let state = self.world.states.get(&block.id);
                state.is_some_and(|state| state.alive() > 0)
            })
            .map(|block| self.place(block))
            .collect();
        neighbours(cluster, &places).into_iter().collect()
    }

    fn group_named(&self, group: GroupId) -> String {
        let group = self.world.directory.group(group);
        group.map(|group| group.name.clone()).unwrap_or_default()
    }
}
