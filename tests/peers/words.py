"""Numbers in words, as three libraries write them: PyPI num2words2 (all languages), vn-numberwords
(Vietnamese), pythainlp (Thai).

In: {"lang": "en", "last": 2000}. Out for each number and library: {"number": 21, "words":
"twenty-one"}.
"""

import json
import sys

from num2words2 import num2words
from pythainlp.util import num_to_thaiword
from vn_numberwords import number_to_words

OTHERS = {"th": num_to_thaiword, "vi": number_to_words}

for line in sys.stdin:
    question = json.loads(line)
    lang = question["lang"]
    for number in range(question["last"] + 1):
        spellings = [num2words(number, lang=lang)]
        if lang in OTHERS:
            spellings.append(OTHERS[lang](number))
        for words in dict.fromkeys(spellings):
            print(json.dumps({"number": number, "words": words}))
