"""Messages of a modem, written and read by libGammu (Debian's python3-gammu).

Debian puts the module where its own Python looks, so that one runs this script.
"""
import datetime
import json
import sys

import gammu

SENT = datetime.datetime(2026, 11, 30, 20, 0, 5)


def written(question):
    """The messages that bring a text, as octets with the centre's number in front."""
    buffer = question["text"]
    is_wide = question["wide"]
    info = {
        "Class": -1,
        "Unicode": is_wide,
        "Entries": [{"ID": question["id"], "Buffer": buffer}],
    }
    messages = gammu.EncodeSMS(info)
    for message in messages:
        message["Type"] = "Deliver"
        message["Number"] = question["from"]
        message["SMSC"] = {"Number": "+447700900001", "Location": 0}
        message["DateTime"] = message["SMSCDateTime"] = SENT
    return {"messages": [gammu.EncodePDU(message, "Deliver").hex() for message in messages]}


def read(question):
    """What a message of ours says."""
    message = gammu.DecodePDU(bytes.fromhex(question["message"]), True)
    header = message["UDH"]
    return {
        "to": message["Number"],
        # The module takes each escape for a letter more, and gives what lies behind the text.
        "text": message["Text"].split("\0")[0],
        "of": header["AllParts"],
        "number": header["PartNumber"],
        "reference": header["ID8bit"],
        "kind": message["Type"],
    }


for line in sys.stdin:
    question = json.loads(line)
    answer = written(question) if "text" in question else read(question)
    print(json.dumps(answer))
