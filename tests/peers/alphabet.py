"""The GSM default alphabet as PyPI gsmcodecs has it (3GPP TS 23.038).

In, one line: {"last": 131071}. Out, one line for each character that the alphabet can carry:
its code point and how many septets it takes.
"""

import codecs
import json
import sys

import gsmcodecs

codecs.register(gsmcodecs.findCodec)
last = json.loads(sys.stdin.readline())["last"]
for point in range(last + 1):
    if 0xD800 <= point <= 0xDFFF:
        continue
    try:
        septets = len(chr(point).encode("gsm23.038"))
    except UnicodeEncodeError:
        continue
    print(json.dumps({"point": point, "septets": septets}))
