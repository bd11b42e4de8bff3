"""Phone numbers as PyPI phonenumbers sees them.

In, one line: {"seed": 1, "changes": 4}. Out, for each input made here: the text, the home
country, the number in E.164 (null when it is not possible), and what kind of line it is.

Inputs: the example numbers of every region and kind of line in several spellings, the same with
single digits changed, taken out and put in, the same with marks among them, and odd forms. None has letters in it: there we
differ on purpose, see numbers.rs.
"""

import json
import random
import sys

import phonenumbers
from phonenumbers import PhoneNumberFormat, PhoneNumberType, ValidationResult

HOMES = ["", "GB", "ID", "CI", "TH", "US"]
KINDS = sorted(set(PhoneNumberType.values()))
ODD = [
    "", " ", "+", "++", "0", "00", "000", "+0", "+00", "()", "+()", "-", "--", "#", "*", "*100#",
    "#31#07700900123", "*31#+447700900123", "+44 (0)7700 900123", "+44(0)(7700)900123",
    "(+44) 7700 900123", "0044 7700 900123", "00 44 7700 900123", "011 44 7700 900123",
    "+ 44 7700 900123", "+44\u00a07700\u00a0900123", "+44\u20117700\u2011900123",
    "\uff0b\uff14\uff14\uff17\uff17\uff10\uff10\uff19\uff10\uff10\uff11\uff12\uff13",
    "\u0660\u0667\u0667\u0660\u0660\u0669\u0660\u0660\u0661\u0662\u0663",
    "\u0e50\u0e58\u0e51\u0e52\u0e53\u0e54\u0e55\u0e56\u0e57\u0e58",
    "07700 900123;07700 900124", "07700 900123/07700 900124", "07700 900123, 07700 900124",
    "07700 900123#5", "07700 900123 # 5", "(07700) 900123", "[07700] 900123", "07700.900.123",
    "07700~900123", "07700/900123", "07700_900123", "7700900123", "447700900123", "44 7700 900123",
    "0447700900123", "+4477009001234", "+447700900", "+44770090", "+44", "+999123456789",
    "+883510012345", "+87812345678901", "+80012345678", "+1", "+1 555", "+15555550100",
    "999", "112", "911", "40404", "12345", "123456", "1234567", "12345678", "123456789",
    "1234567890", "12345678901", "123456789012", "1234567890123456", "0" * 16, "1" * 20,
    "0812 3456 7890", "+62 812-3456-7890", "+6208123456789", "62812345678", "021 1234567",
    "07 07 12 34 56", "+225 07 07 12 34 56", "+225 0707123456", "081 234 5678", "+66 (0) 81 234 5678",
    "+39 02 12345678", "+39 312 345 6789", "+375 801 123 4567", "+35800112345", "+54 9 11 2345 6789",
    "+52 1 55 1234 5678", "8 (912) 345-67-89", "+7 (912) 345-67-89", "=07700900123", "'07700900123",
]


MARKS = [
    " ", "-", "(", ")", "(0)", "/", ".", "#", ";", ",", ",,", "~", "*", "+", "0", "00", "'", "_", ":",
    "!", "[", "]", "- ", " #22", ";3", ", ", "\u00a0", "\u00ad", "\u2010", "\u2212", "\u3000", "\uff08",
    "\uff0d", "\uff0e", "\uff03", "\uff5e", "\u2053", "\u00b2", "\u20ac",
]


def spellings(number):
    for form in (
        PhoneNumberFormat.E164,
        PhoneNumberFormat.INTERNATIONAL,
        PhoneNumberFormat.NATIONAL,
    ):
        yield phonenumbers.format_number(number, form)
    digits = phonenumbers.format_number(number, PhoneNumberFormat.E164)[1:]
    yield digits
    yield "00" + digits


def changed(text, chance):
    """One digit changed, taken out, or put in."""
    places = [index for index, letter in enumerate(text) if letter.isdigit()]
    if not places:
        return text
    place = chance.choice(places)
    digit = str(chance.randrange(10))
    return chance.choice(
        [
            text[:place] + digit + text[place + 1 :],
            text[:place] + text[place + 1 :],
            text[:place] + digit + text[place:],
        ]
    )


def marked(text, chance):
    """Marks put in at up to three places."""
    for _ in range(chance.randint(1, 3)):
        place = chance.randint(0, len(text))
        text = text[:place] + chance.choice(MARKS) + text[place:]
    return text


def inputs(seed, changes):
    chance = random.Random(seed)
    for region in sorted(phonenumbers.SUPPORTED_REGIONS):
        for kind in KINDS:
            number = phonenumbers.example_number_for_type(region, kind)
            if number is None:
                continue
            for text in spellings(number):
                yield text, region
            yield phonenumbers.format_number(number, PhoneNumberFormat.E164), chance.choice(HOMES)
            for _ in range(changes):
                text = changed(chance.choice(list(spellings(number))), chance)
                yield text, chance.choice([region, region, *HOMES])
                yield marked(text, chance), chance.choice([region, region, *HOMES])
    for home in HOMES:
        for text in ODD:
            yield text, home


def answer(text, country):
    try:
        number = phonenumbers.parse(text, country or None)
    except phonenumbers.NumberParseException:
        return None, None
    reason = phonenumbers.is_possible_number_with_reason(number)
    if reason != ValidationResult.IS_POSSIBLE:
        return None, None
    if not phonenumbers.national_significant_number(number).strip("0"):
        return None, None
    e164 = phonenumbers.format_number(number, PhoneNumberFormat.E164)
    again = phonenumbers.parse(e164)
    if phonenumbers.format_number(again, PhoneNumberFormat.E164) != e164:
        return None, None
    return e164, PhoneNumberType.to_string(phonenumbers.number_type(number))


question = json.loads(sys.stdin.readline())
for text, country in inputs(question["seed"], question["changes"]):
    if any(letter.isalpha() for letter in text):
        continue
    e164, kind = answer(text, country)
    print(json.dumps({"text": text, "country": country, "e164": e164, "kind": kind}))
