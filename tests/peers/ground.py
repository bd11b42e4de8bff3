"""Areas on the WGS84 ellipsoid as PyPI geographiclib and pyproj have them.

In: {"places": [[latitude, longitude], ...]}, not closed.
Out for each: {"geographiclib": square metres, "pyproj": square metres, "round": metres}.
"""

import json
import sys

from geographiclib.geodesic import Geodesic
from pyproj import Geod

for line in sys.stdin:
    places = json.loads(line)["places"]
    polygon = Geodesic.WGS84.Polygon()
    for latitude, longitude in places:
        polygon.AddPoint(latitude, longitude)
    _, around, area = polygon.Compute(False, True)
    longitudes = [place[1] for place in places]
    latitudes = [place[0] for place in places]
    other, _ = Geod(ellps="WGS84").polygon_area_perimeter(longitudes, latitudes)
    print(json.dumps({"geographiclib": abs(area), "pyproj": abs(other), "round": around}))
