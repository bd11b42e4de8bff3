"""Numbers in words, as PyPI num2words2 writes them.

In: {"lang": "en", "last": 2000}. Out for each number: {"number": 21, "words": "twenty-one"}.
"""

import json
import sys

from num2words2 import num2words

for line in sys.stdin:
    question = json.loads(line)
    for number in range(question["last"] + 1):
        words = num2words(number, lang=question["lang"])
        print(json.dumps({"number": number, "words": words}))
