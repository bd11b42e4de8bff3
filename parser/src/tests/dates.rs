//! Days as said. Calendar: the Gregorian rule for leap years; Thai years run 543 ahead (both from
//! ISO 8601 and the Unicode calendar data, from memory).

use super::{check, check_as};

#[test]
fn relative_days() {
    check("planted 120 B today", "planted @B 120 on=0d");
    check("planted 120 B yest", "planted @B 120 on=1d");
    check("day before yesterday planted 120 B", "planted @B 120 on=2d");
    check("planted 120 B 3 days ago", "planted @B 120 on=3d");
    check("weeded A three days ago", "weeded @A on=3d");
    check("weeded A 2 weeks ago", "weeded @A on=14d");
    check("weeded A a week ago", "weeded @A on=last_week");
    check("weeded A last week", "weeded @A on=last_week");
    check("weeded A last month", "weeded @A on=last_month");
    check(
        "2 bags npk on A 3 days ago",
        "fertilised @A product=npk amount=2bag on=3d",
    );
}

#[test]
fn weekdays_are_the_last_of_that_name() {
    check("pruned B monday", "pruned @B on=monday");
    check("pruned B last fri", "pruned @B on=friday");
    check("on sunday pruned B", "pruned @B on=sunday");
}

#[test]
fn calendar_days() {
    check("planted 120 B 12/5", "planted @B 120 on=12/5");
    check("planted 120 B 12/5/26", "planted @B 120 on=12/5/2026");
    check("planted 120 B 12.05.2026", "planted @B 120 on=12/5/2026");
    check("planted 120 B 2026-05-12", "planted @B 120 on=12/5/2026!");
    check("planted 120 B 12 May", "planted @B 120 on=12/5!");
    check("planted 120 B 12th of May", "planted @B 120 on=12/5!");
    check("planted 120 B May 12", "planted @B 120 on=12/5!");
    check(
        "planted 120 B on 12 May 2026",
        "planted @B 120 on=12/5/2026!",
    );
    check("planted 120 B 12may", "planted @B 120 on=12/5!");
    check("planted 120 B 29/2", "planted @B 120 on=29/2");
    check("planted 120 B 2026.03.13", "planted @B 120 on=13/3/2026");
}

#[test]
fn a_day_by_its_number_alone() {
    check("planted 120 B on the 15th", "planted @B 120 on=day15");
    check("weeded A 9th", "weeded @A on=day9");
    check("weeded the 15th row of A", "weeded @A extent=few");
    check_as("fr", "planté 120 B le 9", "planted @B 120 on=day9");
    check_as(
        "pt",
        "plantei 120 mudas no B dia 9",
        "planted @B 120 on=day9",
    );
    check_as("id", "tanam 120 batang B tgl 9", "planted @B 120 on=day9");
    check_as("vi", "trồng 120 cây lô B ngày 9", "planted @B 120 on=day9");
    check_as("th", "ปลูก 120 ต้น แปลง B วันที่ 9", "planted @B 120 on=day9");
    check_as(
        "ms",
        "tanam 120 pokok B 9 haribulan",
        "planted @B 120 on=day9",
    );
}

/// "1/2 of A" is a part, "12/5" a day; "A 1/2" may be either and is asked about.
#[test]
fn a_part_of_a_block_is_no_day() {
    check("weeded 1/2 of A", "weeded @A extent=half");
    check("weeded 1/2 A", "weeded @A extent=half");
    check("cleared 3/4 block B", "cleared @B extent=few");
    check("planted 120 B on 1/2", "planted @B 120 on=1/2");
    check("planted 120 B 1/2", "planted @B 120 ?loose_end(1/2)");
}

#[test]
fn thai_years_are_taken_back() {
    check("planted 120 B 12/5/2569", "planted @B 120 on=12/5/2026");
    check("planted 120 B 12/5/69", "planted @B 120 on=12/5/2026");
}

#[test]
fn days_that_do_not_exist_are_a_problem() {
    check("planted 120 B 31/2", "planted @B 120 | %no_such_day");
    check("planted 120 B 29/2/2025", "planted @B 120 | %no_such_day");
    check("planted 120 B 31 april", "planted @B 120 | %no_such_day");
    check(
        "planted 120 B 5000 days ago",
        "planted @B 120 | %no_such_day",
    );
}

#[test]
fn a_grade_is_no_day() {
    check(
        "npk 15-15-15 2 bags B",
        "fertilised @B product=npk grade=15-15-15 amount=2bag",
    );
    check(
        "npk 20-10-10 2 bags B",
        "fertilised @B product=npk grade=20-10-10 amount=2bag",
    );
    check(
        "12-12-17 npk 50kg B",
        "fertilised @B product=npk grade=12-12-17 amount=50kg",
    );
    check("npk 15 15 15 B", "fertilised @B product=npk grade=15-15-15");
    check("fertilised A with 20-8-20", "fertilised @A grade=20-8-20");
}

#[test]
fn a_day_is_carried_over() {
    check(
        "yesterday planted 120 B and 8 died",
        "planted @B 120 on=1d + dead @B 8 on=1d",
    );
    check(
        "planted 120, dead 8 B yesterday",
        "planted @B 120 on=1d + dead @B 8 on=1d",
    );
    check(
        "planted 120 B today, weeded A yesterday",
        "planted @B 120 on=0d + weeded @A on=1d",
    );
}
