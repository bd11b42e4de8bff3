"""Figures for a monitor, read by the parser of PyPI prometheus-client.

In: {"page": "..."}. Out: [[family, type, unit, sample, labels, value], ...].
"""

import json
import sys

from prometheus_client.openmetrics.parser import text_string_to_metric_families

for line in sys.stdin:
    page = json.loads(line)["page"]
    print(
        json.dumps(
            [
                [family.name, family.type, family.unit, sample.name, sample.labels, sample.value]
                for family in text_string_to_metric_families(page)
                for sample in family.samples
            ]
        )
    )
