"""Days as people write them, read by PyPI dateparser.

The expressions are those of its own tables for each language (today, yesterday, days ago, names of
weekdays) and the month names of CLDR as PyPI babel ships them.

In: {"lang": "en", "today": "2026-03-18"}. Out: {"text": "3 days ago", "date": "2026-03-15"}; no
date where the peer does not read its own words.
"""

import json
import re
import sys
from datetime import datetime
from importlib import import_module

import dateparser
from babel import Locale

WEEKDAYS = ["monday", "tuesday", "thursday", "friday", "saturday", "sunday"]


def expressions(lang, info):
    for when, texts in info["relative-type"].items():
        if when in ("0 day ago", "1 day ago", "2 day ago", "in 1 day"):
            yield from texts
    for pattern in info["relative-type-regex"].get("\\1 day ago", []):
        for days in (2, 3, 5, 9):
            yield re.sub(r"\([^)]*\)", str(days), pattern, count=1)
    for weekday in WEEKDAYS:
        yield from info[weekday][:2]
    for width in ("wide", "abbreviated"):
        for month, name in Locale.parse(lang).months["format"][width].items():
            if month <= 3:
                yield f"7 {name}"
    yield from ("7/3", "07/03/2026", "25/2/2026", "1-3-2026")


for line in sys.stdin:
    question = json.loads(line)
    lang = question["lang"]
    today = datetime.fromisoformat(question["today"]).replace(hour=12)
    settings = {"RELATIVE_BASE": today, "PREFER_DATES_FROM": "past", "DATE_ORDER": "DMY"}
    info = import_module(f"dateparser.data.date_translation_data.{lang}").info
    for text in dict.fromkeys(expressions(lang, info)):
        date = dateparser.parse(text, languages=[lang], settings=settings)
        print(json.dumps({"text": text, "date": date and date.date().isoformat()}))
