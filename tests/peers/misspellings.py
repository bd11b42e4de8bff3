"""Listed misspellings, as PyPI codespell has them.

In: {"words": ["planted", ...]}. Out for each misspelling that stands for one of these words alone:
{"wrong": "platned", "right": "planted"}.
"""

import json
import sys
from importlib.resources import files

lines = files("codespell_lib").joinpath("data/dictionary.txt").read_text(encoding="utf-8")
for line in sys.stdin:
    words = set(json.loads(line)["words"])
    for entry in lines.splitlines():
        wrong, _, right = entry.partition("->")
        rights = [word.strip() for word in right.split(",") if word.strip()]
        if len(rights) == 1 and rights[0] in words and wrong.isalpha():
            print(json.dumps({"wrong": wrong, "right": rights[0]}))
