"""Makes demo-data/messy: one list of an invented valley with the faults that offices' lists have, in
five formats, and its ledger: what is to become of each odd cell.

Needs openpyxl, and LibreOffice for the last two formats:
    python3 tests/messy/make.py
"""

import csv
import datetime
import pathlib
import subprocess
import tempfile

import openpyxl

HEADS = ["Farmer's name", "Tel.", "Village", "Consent", "How", "Plot", "Area (ha)", "Clone",
         "Trees", "Planted on", "Language", "Remarks"]
COLUMNS = ["name", "phone", "group", "consent_on", "consent_how", "block", "area", "clone",
           "planted", "planted_on", "language", ""]
TITLE = [["List of farmers, KOLO"], ["as of the meeting in October, typed by the office"], []]

FIRST = ["Arlo", "Bessa", "Corin", "Dulma", "Eskil", "Fenna", "Garo", "Hesper", "Ilmo", "Jorun",
         "Kessa", "Lorin", "Mavo", "Nerit", "Orsa", "Pavel", "Quim", "Rosko", "Silva", "Tambo",
         "Ulrit", "Vesna", "Wendo", "Xaro", "Yorik", "Zemba"]
LAST = ["Abrand", "Colm", "Dreve", "Fosk", "Gantry", "Holm", "Jesk", "Kintar", "Lond", "Morvan",
        "Nask", "Ostler", "Prill", "Rusk", "Sandor", "Tolland", "Varga", "Wick", "Yelm", "Zorn"]

# column, cell, outcome, value. "right": mended without a doubt; "ask": proposed; "refuse".
CASES = [
    ("phone", "7700900201", "right", "+447700900201"),
    ("phone", "447700900202", "right", "+447700900202"),
    ("phone", "'07700900203", "right", "+447700900203"),
    ("phone", "(0)7700-900.204", "right", "+447700900204"),
    ("phone", "0044 7700 900205", "right", "+447700900205"),
    ("phone", "+44 (0)7700 900206", "right", "+447700900206"),
    ("phone", "\uff10\uff17\uff17\uff10\uff10\uff19\uff10\uff10\uff12\uff10\uff17", "right", "+447700900207"),
    ("phone", "07700\u00a0900208", "right", "+447700900208"),
    ("phone", "7700900209.0", "right", "+447700900209"),
    ("phone", "4.47700900210E+11", "ask", "447700900210"),
    ("phone", "4.477E+11", "refuse", ""),
    ("phone", "O77OO900211", "ask", "07700900211"),
    ("phone", "07700900212 / 07700900213", "ask", "07700900212; 07700900213"),
    ("phone", "07700900214 (wife)", "ask", "07700900214"),
    ("phone", "none", "right", ""),
    ("phone", "-", "right", ""),
    ("area", "1,2", "right", "1.2 ha"),
    ("area", "1.2 ha", "right", "1.2 ha"),
    ("area", "1.2 HA", "right", "1.2 ha"),
    ("area", "3 acres", "right", "3 acre"),
    ("area", "8-2-50", "ask", "8.625"),
    ("area", "1 1/2", "ask", "1.5"),
    ("area", "1 half", "ask", "1.5"),
    ("area", ",8", "ask", "0.8"),
    ("area", "1,200", "refuse", ""),
    ("planted", "520.0", "right", "520"),
    ("planted", "520 trees", "ask", "520"),
    ("planted", "1,200", "ask", "1200"),
    ("planted", "about 500", "refuse", ""),
    ("planted_on", "20/11/2024", "right", "2024-11-20"),
    ("planted_on", "5/6/2024", "right", "2024-06-05"),
    ("planted_on", "2024-11-20 00:00:00", "right", "2024-11-20"),
    ("planted_on", "45616", "ask", "2024-11-20"),
    ("planted_on", "Nov 2024", "right", "2024-11-15"),
    ("planted_on", "2024-11", "right", "2024-11-15"),
    ("planted_on", "2024", "right", "2024-07-01"),
    ("planted_on", "2567", "ask", "2024"),
    ("planted_on", "2021, rains", "ask", "2021"),
    ("planted_on", "1970-01-01", "refuse", ""),
    ("planted_on", "1900-01-01", "refuse", ""),
    ("planted_on", "31/02/2024", "refuse", ""),
    ("planted_on", "2031-01-01", "refuse", ""),
    ("consent_on", "Y", "refuse", ""),
    ("consent_on", "no", "ask", ""),
    ("consent_on", "", "right", ""),
    ("consent_how", "refused", "ask", ""),
    ("consent_how", "deceased 2026", "ask", ""),
    ("language", "English", "right", "en"),
    ("language", "French", "right", "fr"),
    ("clone", "PB 260", "right", "PB260"),
    ("clone", "pb-260", "right", "PB260"),
    ("clone", "?", "right", ""),
    ("clone", "PB260, GT1", "refuse", ""),
    ("group", "kolo", "right", "KOLO"),
    ("name", "Jos\u00c3\u00a9 Prill", "ask", "Jos\u00e9 Prill"),
    ("name", "Maximiliana Constantina of the Upper Valley Road", "refuse", ""),
]


def name_of(at):
    return f"{FIRST[at % len(FIRST)]} {LAST[(at * 7 + at // len(FIRST)) % len(LAST)]}"


def rows():
    lines, ledger = [], []
    first = len(TITLE) + 2
    for at, (column, cell, outcome, value) in enumerate(CASES):
        row = {
            "name": name_of(at), "phone": f"+447700900{at + 100:03}", "group": "KOLO",
            "consent_on": "2026-09-05", "consent_how": "signed sheet", "block": "A",
            "area": "1.2", "clone": "GT1", "planted": "520", "planted_on": "2024-11-20",
            "language": "en",
        }
        row[column] = cell
        if column == "area" and cell in ("3 acres", "8-2-50", "1 1/2", "1 half"):
            row["planted"] = "600"
        if column == "planted" and cell == "1,200":
            row["area"] = "2.4"
        if column == "area" and cell == ",8":
            row["planted"] = "400"
        if column == "consent_on" and cell == "":
            row["consent_how"] = ""
        lines.append([row.get(column, "") for column in COLUMNS])
        ledger.append([first + at, row["name"], column, cell, outcome, value])
    # The same land in rai, written under a head that says hectares: 1,224 trees on 12.
    at = len(CASES)
    lines.append([name_of(at), f"+447700900{at + 100:03}", "KOLO", "2026-09-05", "signed sheet", "A",
                  "12", "GT1", "1224", "2024-11-20", "en", "check the land"])
    ledger.append([first + at, name_of(at), "unit", "ha", "ask", "rai"])
    # A second block of the first farmer, and a third person typed twice.
    lines.append([name_of(0), "", "KOLO", "", "", "B", "0.8", "RRIM 600", "380", "2024-11-20", "", ""])
    ledger.append([first + at + 1, name_of(0), "clone", "RRIM 600", "right", "RRIM600"])
    lines.append([name_of(2), "+447700900102", "KOLO", "2026-09-05", "signed sheet"])
    ledger.append([first + at + 2, name_of(2), "name", name_of(2), "refuse", ""])
    lines.append(["Total", "", "", "", "", "", "75.2"])
    return lines, ledger


def main():
    folder = pathlib.Path(__file__).resolve().parents[2] / "demo-data" / "messy"
    folder.mkdir(exist_ok=True)
    lines, ledger = rows()
    table = TITLE + [HEADS] + lines
    with open(folder / "list.csv", "w", encoding="utf-8-sig", newline="") as file:
        csv.writer(file, delimiter=";").writerows(table)
    with open(folder / "list-wide.txt", "w", encoding="utf-16", newline="") as file:
        csv.writer(file, delimiter="\t").writerows(table)
    book = openpyxl.Workbook()
    page = book.active
    page.title = "farmers"
    for row in table:
        page.append(row)
    for row in page.iter_rows(min_row=len(TITLE) + 2):
        for cell in row:
            # A spreadsheet keeps whole numbers and days as such where they were typed so.
            if cell.value == "7700900201":
                cell.value = 7700900201
            if cell.value == "2024-11-20 00:00:00":
                cell.value = datetime.datetime(2024, 11, 20)
    book.create_sheet("notes").append(["typed in October"])
    book.save(folder / "list.xlsx")
    for kind in ("ods", "xls"):
        with tempfile.TemporaryDirectory() as home:
            subprocess.run(
                ["soffice", f"-env:UserInstallation=file://{home}", "--headless", "--convert-to",
                 kind, "--outdir", str(folder), str(folder / "list.xlsx")],
                check=True, capture_output=True)
    with open(folder / "ledger.csv", "w", encoding="utf-8", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(["line", "who", "column", "found", "outcome", "value"])
        writer.writerows(ledger)


main()
