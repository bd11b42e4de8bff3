"""The numbering plans of the countries, as PyPI phonenumbers keeps them, in our own table.

In, one line: {}. Out, one line: {"table": TEXT}, where TEXT is what `bot/tables/numbering.txt`
should be. The head of that file says what each line means.
"""

import json
import re
import sys

import phonenumbers
from phonenumbers.phonemetadata import PhoneMetadata

HEAD = """\
# Phone numbers by country: what is dialled before a number, how long it is, and what its first
# digits tell. Made by tests/peers/numbering.py; change nothing by hand.
#
# The plans are those of the metadata of libphonenumber {version} (Copyright The Libphonenumber
# Authors, Apache License 2.0, see LICENSE in this folder), which names the ITU and the national
# regulators as its sources. They are put into another form here, and ways of writing, example
# numbers and names are left out.
#
#   plan REGION CODE        a country and its calling code; where countries share a code, the first
#                           one speaks for all of them
#   abroad PATTERN          what is dialled there before a calling code
#   trunk PATTERN [RULE]    what is dialled at home before a number and is no part of it; the rule
#                           says what stands in its place when the pattern's last group is there
#   starts PATTERN          how the country's numbers begin, where its code is shared
#   all LENGTHS PATTERN     every number of the country: how many digits, then in brackets how many
#                           are enough to dial it from nearby
#   service, mobile, landline LENGTHS PATTERN
#                           the first line that fits tells what a number is
"""

# The order decides: a number that could be a mobile or a landline counts as a mobile.
ROWS = [
    ("service", "premium_rate"),
    ("service", "toll_free"),
    ("service", "shared_cost"),
    ("service", "voip"),
    ("service", "personal_number"),
    ("mobile", "pager"),
    ("service", "uan"),
    ("service", "voicemail"),
    ("mobile", "mobile"),
    ("landline", "fixed_line"),
]


def lengths(found):
    return ",".join(str(length) for length in sorted(found) if length > 0)


def plan(metadata):
    yield f"plan {metadata.id} {metadata.country_code}"
    if metadata.international_prefix:
        yield f"abroad {metadata.international_prefix}"
    if metadata.national_prefix_for_parsing:
        rule = re.sub(r"\\(\d)", r"${\1}", metadata.national_prefix_transform_rule or "")
        yield f"trunk {metadata.national_prefix_for_parsing} {rule}".rstrip()
    if metadata.leading_digits:
        yield f"starts {metadata.leading_digits}"
    every = metadata.general_desc
    nearby = lengths(every.possible_length_local_only)
    nearby = f"({nearby})" if nearby else ""
    yield f"all {lengths(every.possible_length)}{nearby} {every.national_number_pattern}"
    for word, kind in ROWS:
        row = getattr(metadata, kind)
        if row is None or row.national_number_pattern is None:
            continue
        # A kind without lengths of its own has those of the whole country.
        own = lengths(row.possible_length) or lengths(every.possible_length)
        yield f"{word} {own} {row.national_number_pattern}"


def table():
    yield HEAD.format(version=phonenumbers.__version__)
    for code, regions in sorted(phonenumbers.COUNTRY_CODE_TO_REGION_CODE.items()):
        for region in regions:
            if region == "001":
                metadata = PhoneMetadata.metadata_for_nongeo_region(code)
            else:
                metadata = PhoneMetadata.metadata_for_region(region)
            yield "\n".join(plan(metadata)) + "\n"


sys.stdin.readline()
print(json.dumps({"table": "\n".join(table())}))
