"""Names of months and weekdays and the decimal mark of a language, from CLDR as PyPI babel ships it.

In: {"lang": "en"}. Out: {"months": [["january", "jan"], ...], "weekdays": [["monday", ...], ...],
"decimal": "43.5"}; months from January, weekdays from Monday.
"""

import json
import sys

from babel import Locale
from babel.numbers import format_decimal

WIDTHS = ("wide", "abbreviated")

for line in sys.stdin:
    lang = json.loads(line)["lang"]
    locale = Locale.parse(lang)

    def names(table, first, last):
        spelled = [[table[width][place] for width in WIDTHS] for place in range(first, last + 1)]
        return [list(dict.fromkeys(names)) for names in spelled]

    months = names(locale.months["format"], 1, 12)
    weekdays = names(locale.days["format"], 0, 6)
    decimal = format_decimal(43.5, locale=lang)
    print(json.dumps({"months": months, "weekdays": weekdays, "decimal": decimal}))
