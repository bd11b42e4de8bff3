//! The office's pages: who sees which, what attacks them, and that they say what texts say.

mod attacks;
mod figures;
mod looking;
mod roles;
mod texts;
mod writing;

use budwood::engine::{
    Input, Knock, Told,
    looks::{Look, Part, Seen, Unseen, Viewer},
};

use crate::fixture::desk::Desk;

/// Invented: two groups with an adviser each, and one of every role in the first.
const ROLL: &str = "\
row,group,name,role,phone,language,consent_on,consent_how,adviser,zone,calendar,rains_start,rains_end,block,area,unit,clone,planted_on,planted,latitude,longitude
group,KOLO,,,,,,,Mara Tindel,Asia/Jakarta,fao,1 Nov,30 Apr,,,,,,,,
group,RIVA,,,,,,,Ben Tarr,Asia/Jakarta,fao,1 Nov,30 Apr,,,,,,,,
person,,Mara Tindel,adviser,+447700900100,en,2025-09-01,contract,,,,,,,,,,,,,
person,,Ben Tarr,adviser,+447700900101,en,2025-09-01,contract,,,,,,,,,,,,,
person,KOLO,Tamo Oss,farmer,+447700900005,en,2025-09-12,signed sheet,,,,,,,,,,,,,
person,KOLO,Lia Wend,leader,+447700900006,en,2025-09-12,signed sheet,,,,,,,,,,,,,
person,KOLO,Ilse Vann,clerk,+447700900102,en,2025-09-01,contract,,,,,,,,,,,,,
person,KOLO,Nils Orr,nursery,+447700900103,en,2025-09-01,contract,,,,,,,,,,,,,
person,KOLO,Vera Lund,viewer,+447700900104,en,2025-09-01,contract,,,,,,,,,,,,,
person,RIVA,Keti Olm,farmer,+447700900008,en,2025-09-12,signed sheet,,,,,,,,,,,,,
block,KOLO,Tamo Oss,,,,,,,,,,,A,1.1,ha,PB260,2025-11-12,520,-1.2431,101.4978
block,KOLO,Lia Wend,,,,,,,,,,,A,0.9,ha,PB260,2025-11-12,400,-1.2462,101.5044
block,RIVA,Keti Olm,,,,,,,,,,,A,1.1,ha,PB260,2025-11-12,500,-1.2493,101.4934
";

/// Ten in the morning where the groups live.
const MORNING: &str = "2026-06-15T03:00:00Z";

const TAMO: &str = "+447700900005";
const MARA: &str = "+447700900100";

fn desk() -> Desk {
    Desk::open_list(MORNING, ROLL.as_bytes(), |_| {})
}

/// What is told at the door.
fn door(desk: &mut Desk, knock: Knock) -> Told {
    desk.input(Input::Door(knock))
}

/// The code that arrives after a name was given; none when none does.
fn texted(desk: &mut Desk, name: &str) -> Option<(String, String)> {
    door(desk, Knock::Name(name.to_owned()));
    let sent = desk.send_all().pop()?;
    Some((sent.to, sent.text.chars().take(6).collect()))
}

/// Somebody who came in by their name and code.
fn comes_in(desk: &mut Desk, name: &str) -> Viewer {
    let (_, code) = texted(desk, name).expect("a code");
    let name = name.to_owned();
    let told = door(desk, Knock::Code { name, code });
    told.entered.expect("they are let in")
}

fn look(desk: &mut Desk, viewer: &Viewer, look: Look) -> Result<Box<Seen>, Unseen> {
    let viewer = viewer.clone();
    desk.input(Input::Look { viewer, look })
        .seen
        .expect("an answer")
}

/// Every word of a page, in English, a line for each row.
fn words(seen: &Seen) -> Vec<String> {
    let texts = budwood::wording::Texts::built_in().expect("what ships is sound");
    let tongue = texts.tongue(&["en"]);
    let mut lines = vec![tongue.whole(&seen.title)];
    for part in &seen.parts {
        match part {
            Part::Note(value) => lines.push(tongue.whole(value)),
            Part::Table(grid) => {
                lines.push(tongue.whole(&grid.title));
                let row = |cells: &Vec<budwood::engine::looks::Cell>| {
                    let cells = cells.iter().map(|cell| tongue.whole(&cell.value));
                    cells.collect::<Vec<String>>().join(" | ")
                };
                lines.extend(grid.rows.iter().map(row));
            }
            Part::Weeks(weeks) => {
                for (who, weeks) in &weeks.rows {
                    let signs = weeks.iter().map(|week| {
                        let signs = [
                            (week.done, 'd'),
                            (week.seen, 's'),
                            (week.asked, '?'),
                            (week.late, '!'),
                        ];
                        let signs = signs.iter().filter(|(is, _)| *is).map(|(_, sign)| *sign);
                        signs.collect::<String>()
                    });
                    let signs: Vec<String> = signs.collect();
                    lines.push(format!("{}: {}", tongue.whole(&who.value), signs.join(",")));
                }
            }
            Part::Matter(waits) => lines.push(waits.text.clone()),
            Part::Spots(spots) => lines.push(format!("{} spots", spots.spots.len())),
            Part::Fix { .. } => lines.push("this is wrong".to_owned()),
            Part::Ranges(ranges) => lines.push(format!("{} ranges", ranges.len())),
        }
    }
    lines
}
