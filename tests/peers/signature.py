"""Signed requests as PyPI standardwebhooks signs them (Standard Webhooks, version 1).

In: {"key": "whsec_...", "id": "...", "timestamp": 1614265330, "body": "..."}.
Out for each: {"signature": "v1,..."}.
"""

import json
import sys
from datetime import datetime, timezone

from standardwebhooks.webhooks import Webhook

for line in sys.stdin:
    asked = json.loads(line)
    then = datetime.fromtimestamp(asked["timestamp"], tz=timezone.utc)
    signature = Webhook(asked["key"]).sign(asked["id"], then, asked["body"])
    print(json.dumps({"signature": signature}))
