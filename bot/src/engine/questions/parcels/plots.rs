//! Where blocks lie, for a buyer who must show it (Regulation (EU) 2023/1115, article 9: a point up
//! to four hectares, an outline above, six decimals): only of those who agreed that buyers are told,
//! and only what is sound. Everything else is listed with what is missing.

use std::collections::BTreeMap;

use budwood_scheduler::{
    Block, BlockId, Consent, GroupId, Person, figures::OUTLINE_HECTARES, words::point::Point,
};
use serde_json::{Map, Value, json};

use super::{Parcel, hectares, table};
use crate::{
    engine::view::View,
    parcel::{
        overlap::shared_pct,
        places::{Degrees, Place, Shape},
    },
    sheet::{Cell, ColumnKind, Sheet},
    words::{outline::TakenOutline, outline_area::Ground},
};

/// Two points nearer than this are one place told twice (common practice of buyers' checks).
const SAME_PLACE_KM: f64 = 0.010;
/// Two outlines may share so much: devices are a few metres off.
const SHARED_PCT_MAX: f64 = 5.0;
/// A block further than this from the middle of its group lies somewhere else, such as in the sea.
const FAR_KM: f64 = 50.0;

/// A block with its owner, and where it lies if that is sound.
struct Plot<'a> {
    block: &'a Block,
    owner: &'a Person,
    hectares: Option<f64>,
    outline: Option<&'a TakenOutline>,
    shape: Option<Shape>,
    findings: Vec<String>,
}

impl Plot<'_> {
    fn point(&self) -> Option<Point> {
        match self.shape.as_ref()? {
            Shape::Point((latitude, longitude)) => Some(Point {
                latitude: *latitude,
                longitude: *longitude,
            }),
            Shape::Polygon(corners) => corners.first().map(|(latitude, longitude)| Point {
                latitude: *latitude,
                longitude: *longitude,
            }),
        }
    }
}

impl<'a> View<'a> {
    pub(super) fn plots_parcel(self) -> Parcel {
        let (mut plots, silent) = self.plots();
        self.find_far(&mut plots);
        find_doubled(&mut plots);
        find_overlaps(&mut plots);
        let is_sound = |plot: &&Plot<'_>| plot.shape.is_some() && plot.findings.is_empty();
        let sound: Vec<&Plot<'_>> = plots.iter().filter(is_sound).collect();
        let mut people: Vec<&Person> = sound.iter().map(|plot| plot.owner).collect();
        people.dedup_by_key(|person| person.id);
        let notes = vec![
            format!(
                "{} blocks of {} people who agreed that buyers are told their name and where their \
                 land lies. {silent} blocks of others are left out.",
                sound.len(),
                people.len()
            ),
            format!(
                "{} blocks of people who agreed are left out, as something is missing or wrong; \
                 missing.csv says what. A point in the sea is found by lying more than 50 km from \
                 its group; there is no map of coasts in it.",
                plots.len() - sound.len()
            ),
            "Degrees on WGS84, longitude first. Areas in hectares: measured on the ellipsoid where \
             there is an outline, else as told."
                .to_owned(),
        ];
        Parcel {
            places: Some(sound.iter().map(|plot| self.plot_place(plot)).collect()),
            sheets: vec![
                self.plot_table(&sound),
                self.missing_table(&plots),
                consent_table(&people),
            ],
            people: people.len(),
            blocks: sound.len(),
            notes,
            days: None,
        }
    }

    /// The blocks of those who agreed, by owner, and how many there are of others.
    fn plots(self) -> (Vec<Plot<'a>>, usize) {
        let mut plots = Vec::new();
        let mut silent = 0;
        let people = self.world.directory.persons();
        for owner in people.filter(|person| !person.erased) {
            let blocks = self.world.directory.blocks_of(owner.id);
            if owner.sharing.is_given() {
                plots.extend(blocks.map(|block| self.plot(block, owner)));
            } else {
                silent += blocks.count();
            }
        }
        (plots, silent)
    }

    fn plot(self, block: &'a Block, owner: &'a Person) -> Plot<'a> {
        let outline = self.world.outlines.get(&block.id);
        let ground = outline.map(|outline| Ground::of(&outline.corners));
        let measured = ground.as_ref().and_then(|ground| ground.as_ref().ok());
        let hectares = measured
            .map(|ground| ground.hectares)
            .or_else(|| block.hectares());
        let mut findings = Vec::new();
        if let Some(Err(error)) = &ground {
            findings.push(format!("the outline cannot be used: {error}"));
        }
        let point = block.point.map(|point| (point.latitude, point.longitude));
        let corners = outline.map(|outline| Shape::Polygon(outline.corners.clone()));
        let shape = match hectares {
            None => {
                findings.push("its area is not known".to_owned());
                None
            }
            Some(hectares) if hectares > OUTLINE_HECTARES => {
                if corners.is_none() {
                    findings.push("above 4 ha and without an outline".to_owned());
                }
                corners
            }
            Some(_) => point.map(Shape::Point).or(corners),
        };
        if shape.is_none() && findings.is_empty() {
            findings.push("nobody took its place".to_owned());
        }
        findings.extend(shape.as_ref().and_then(rough));
        Plot {
            block,
            owner,
            hectares,
            outline,
            shape,
            findings,
        }
    }

    /// Blocks that lie far from the middle of their group.
    fn find_far(self, plots: &mut [Plot<'_>]) {
        let mut of_group: BTreeMap<GroupId, Vec<Point>> = BTreeMap::new();
        for block in self.world.directory.blocks() {
            let owner = self.person(block.owner).and_then(|owner| owner.group);
            if let (Some(group), Some(point)) = (owner, block.point) {
                of_group.entry(group).or_default().push(point);
            }
        }
        let middles: BTreeMap<GroupId, Point> = of_group
            .into_iter()
            .filter_map(|(group, points)| Some((group, middle(points)?)))
            .collect();
        for plot in plots {
            let middle = plot.owner.group.and_then(|group| middles.get(&group));
            if let (Some(point), Some(middle)) = (plot.point(), middle) {
                let km = point.kilometres_to(*middle);
                if km > FAR_KM {
                    let found = format!("{km:.0} km from the middle of its group");
                    plot.findings.push(found);
                }
            }
        }
    }

    /// The names are those that the European Commission asks for in files of places under the
    /// regulation (from memory); how an outline was taken is beside them.
    fn plot_place(self, plot: &Plot<'_>) -> Place {
        let mut properties = Map::new();
        let mut put = |name: &str, value: Value| properties.insert(name.to_owned(), value);
        put("ProducerName", json!(plot.owner.name));
        put("ProducerCountry", json!(self.setup.country));
        put("ProductionPlace", json!(self.place_name(plot)));
        put("Area", json!(rounded(plot.hectares.unwrap_or_default())));
        if let (Some(outline), Some(Shape::Polygon(_))) = (plot.outline, &plot.shape) {
            put("OutlineTaken", json!(outline.how.name()));
            put("OutlineTakenOn", json!(outline.on.to_string()));
        }
        Place {
            id: plot.block.id.to_string(),
            shape: plot.shape.clone().unwrap_or(Shape::Point((0.0, 0.0))),
            properties,
        }
    }

    fn place_name(self, plot: &Plot<'_>) -> String {
        format!("{} {}", self.group_name(plot.owner.group), plot.block.name)
    }

    fn plot_table(self, plots: &[&Plot<'_>]) -> Sheet {
        let mut sheet = table(
            "plots",
            "Blocks and where they lie",
            &[
                ("block_id", ColumnKind::Number),
                ("producer", ColumnKind::Words),
                ("group", ColumnKind::Words),
                ("block", ColumnKind::Words),
                ("country", ColumnKind::Words),
                ("area_ha", ColumnKind::Number),
                ("area_source", ColumnKind::Words),
                ("shape", ColumnKind::Words),
                ("latitude", ColumnKind::Number),
                ("longitude", ColumnKind::Number),
                ("outline_taken", ColumnKind::Words),
                ("outline_taken_on", ColumnKind::Day),
            ],
        );
        for plot in plots {
            let is_polygon = matches!(plot.shape, Some(Shape::Polygon(_)));
            let outline = plot.outline.filter(|_| is_polygon);
            let point = plot.point();
            let source = match plot.outline {
                Some(_) => "outline",
                None => &plot.block.area_source,
            };
            sheet.rows.push(vec![
                plot.block.id.0.into(),
                plot.owner.name.as_str().into(),
                self.group_name(plot.owner.group).into(),
                plot.block.name.as_str().into(),
                self.setup.country.as_str().into(),
                hectares(plot.hectares),
                source.into(),
                if is_polygon { "polygon" } else { "point" }.into(),
                degrees(point.map(|point| point.latitude)),
                degrees(point.map(|point| point.longitude)),
                outline.map(|outline| outline.how.name()).into(),
                outline.map_or(Cell::Blank, |outline| Cell::Day(outline.on)),
            ]);
        }
        sheet
    }

    fn missing_table(self, plots: &[Plot<'_>]) -> Sheet {
        let words = ColumnKind::Words;
        let mut sheet = table(
            "missing",
            "Blocks that are left out, and why",
            &[
                ("block_id", ColumnKind::Number),
                ("producer", words),
                ("group", words),
                ("block", words),
                ("what", words),
            ],
        );
        for plot in plots {
            for finding in &plot.findings {
                sheet.rows.push(vec![
                    plot.block.id.0.into(),
                    plot.owner.name.as_str().into(),
                    self.group_name(plot.owner.group).into(),
                    plot.block.name.as_str().into(),
                    finding.as_str().into(),
                ]);
            }
        }
        sheet
    }
}

fn consent_table(people: &[&Person]) -> Sheet {
    let mut sheet = table(
        "consent",
        "Who agreed that buyers are told, since when, and how it is known",
        &[
            ("producer", ColumnKind::Words),
            ("agreed_on", ColumnKind::Day),
            ("how", ColumnKind::Words),
        ],
    );
    for person in people {
        if let Consent::Given { on, how } = &person.sharing {
            sheet.rows.push(vec![
                person.name.as_str().into(),
                Cell::Day(*on),
                how.as_str().into(),
            ]);
        }
    }
    sheet
}

/// What tells that a place was not taken where the block is.
fn rough(shape: &Shape) -> Option<String> {
    let corners: &[Degrees] = match shape {
        Shape::Point(point) => std::slice::from_ref(point),
        Shape::Polygon(corners) => corners,
    };
    if corners.iter().any(|(lat, lon)| lat.abs() + lon.abs() < 0.5) {
        return Some("it lies where both degrees are nought".to_owned());
    }
    // One in ten thousand places ends with two noughts in both degrees by chance.
    let is_short = |degrees: f64| (degrees * 10_000.0 - (degrees * 10_000.0).round()).abs() < 1e-6;
    corners
        .iter()
        .all(|(lat, lon)| is_short(*lat) && is_short(*lon))
        .then(|| "its degrees have four decimals or fewer: six are asked for".to_owned())
}

/// The point in the middle, each degree by itself: one that is far off does not move it.
fn middle(points: Vec<Point>) -> Option<Point> {
    let half = |mut degrees: Vec<f64>| {
        degrees.sort_by(f64::total_cmp);
        degrees.get(degrees.len() / 2).copied()
    };
    let (latitudes, longitudes) = points
        .into_iter()
        .map(|point| (point.latitude, point.longitude))
        .unzip();
    Some(Point {
        latitude: half(latitudes)?,
        longitude: half(longitudes)?,
    })
}

/// Points that lie nearly on each other.
fn find_doubled(plots: &mut [Plot<'_>]) {
    let mut by_latitude: Vec<(usize, Point)> = Vec::new();
    for (at, plot) in plots.iter().enumerate() {
        if let Some(Shape::Point(_)) = plot.shape {
            by_latitude.extend(plot.point().map(|point| (at, point)));
        }
    }
    by_latitude.sort_by(|one, other| one.1.latitude.total_cmp(&other.1.latitude));
    let mut found: Vec<(usize, BlockId)> = Vec::new();
    let ids: Vec<BlockId> = plots.iter().map(|plot| plot.block.id).collect();
    for (place, (one, point)) in by_latitude.iter().enumerate() {
        let others = by_latitude.iter().skip(place + 1);
        // Ten metres are less than a ten-thousandth of a degree of latitude.
        let near = others.take_while(|(_, other)| other.latitude - point.latitude < 1e-4);
        for (other, _) in near.filter(|(_, other)| point.kilometres_to(*other) < SAME_PLACE_KM) {
            if let (Some(mine), Some(theirs)) = (ids.get(*one), ids.get(*other)) {
                found.push((*one, *theirs));
                found.push((*other, *mine));
            }
        }
    }
    for (at, other) in found {
        if let Some(plot) = plots.get_mut(at) {
            let what = format!("less than 10 m from the point of block {other}");
            plot.findings.push(what);
        }
    }
}

/// Outlines that lie over each other by more than devices explain.
fn find_overlaps(plots: &mut [Plot<'_>]) {
    let mut found: Vec<(usize, String)> = Vec::new();
    for (one, plot) in plots.iter().enumerate() {
        let Some(Shape::Polygon(mine)) = &plot.shape else {
            continue;
        };
        for (other, known) in plots.iter().enumerate().skip(one + 1) {
            let Some(Shape::Polygon(theirs)) = &known.shape else {
                continue;
            };
            let pct = shared_pct(mine, theirs);
            if pct > SHARED_PCT_MAX {
                for (at, with) in [(one, known.block.id), (other, plot.block.id)] {
                    let what = format!("{pct:.0} % of the smaller lie over block {with}");
                    found.push((at, what));
                }
            }
        }
    }
    for (at, what) in found {
        if let Some(plot) = plots.get_mut(at) {
            plot.findings.push(what);
        }
    }
}

fn degrees(value: Option<f64>) -> Cell {
    #[expect(
        clippy::cast_possible_truncation,
        reason = "degrees are at most 180, and a cast of this kind stops at the ends of the range"
    )]
    value.map_or(Cell::Blank, |value| {
        Cell::Figure((value * 1_000_000.0).round() as i64, 6)
    })
}

fn rounded(hectares: f64) -> f64 {
    (hectares * 10_000.0).round() / 10_000.0
}
