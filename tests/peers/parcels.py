"""Files for partners as PyPI shapely, geojson, icalendar and openpyxl read them.

In: {"overlap": [ring, ring]}, {"places": path}, {"days": path} or {"book": path}; rings are lists of
[latitude, longitude], not closed.
Out: {"pct": per cent of the smaller}; {"errors": [...], "shapes": [[type, valid, area], ...],
"decimals": the fewest}; {"days": [[uid, first day, title], ...], "errors": [...]};
{"rows": [[...], ...]}.
"""

import json
import math
import re
import sys

import geojson
import icalendar
import openpyxl
from shapely.geometry import Polygon, shape


def flat(ring):
    narrow = math.cos(math.radians(ring[0][0]))
    return narrow, ring[0]


for line in sys.stdin:
    question = json.loads(line)
    if "overlap" in question:
        one, other = question["overlap"]
        narrow, (north, east) = flat(one)
        lands = [Polygon([((x - east) * narrow, y - north) for y, x in ring]) for ring in (one, other)]
        smaller = min(land.area for land in lands)
        print(json.dumps({"pct": lands[0].intersection(lands[1]).area / smaller * 100}))
    elif "places" in question:
        with open(question["places"], encoding="utf-8") as file:
            text = file.read()
        read = geojson.loads(text)
        shapes = []
        for feature in read["features"]:
            land = shape(feature["geometry"])
            rings = [land.exterior.is_ccw] if land.geom_type == "Polygon" else [True]
            shapes.append([land.geom_type, land.is_valid and all(rings), land.centroid.x, land.centroid.y])
        pairs = re.findall(r"\[\s*-?\d+\.(\d+),\s*-?\d+\.(\d+)\s*\]", text)
        written = [decimals for pair in pairs for decimals in pair]
        print(json.dumps({
            "errors": [str(error) for error in [read.errors()] if error],
            "shapes": shapes,
            "decimals": min(map(len, written), default=0),
        }))
    elif "days" in question:
        with open(question["days"], "rb") as file:
            calendar = icalendar.Calendar.from_ical(file.read())
        days = [
            [str(event["UID"]), event["DTSTART"].dt.isoformat(), str(event["SUMMARY"])]
            for event in calendar.walk("VEVENT")
        ]
        print(json.dumps({"days": days, "errors": [str(error) for error in calendar.errors]}))
    else:
        sheet = openpyxl.load_workbook(question["book"]).active
        rows = [[None if cell is None else str(cell) for cell in row] for row in sheet.iter_rows(values_only=True)]
        print(json.dumps({"rows": rows}))
