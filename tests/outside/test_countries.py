"""What a new shop is offered by its country, against ISO 4217, CLDR and the IANA time zone data.

values/countries.json: lines of ISO 4217's list of current currencies as the public domain copy of the Frictionless data
sets prints them, and the measurement systems and paper sizes of CLDR 47. Zones: zone.tab of the tzdata package.
"""

import json
from importlib.resources import files
from pathlib import Path

import pytest
from holidays import list_supported_countries

from queueboard.seedfiles import seed_text
from queueboard.settings.countries import Country, read_countries

COUNTRIES = read_countries(seed_text("countries.toml"))
PUBLISHED = json.loads((Path(__file__).parent / "values" / "countries.json").read_text(encoding="utf-8"))
LINES: dict[str, str] = PUBLISHED["iso_4217"]
SYSTEMS: dict[str, str] = PUBLISHED["cldr_measurement_system"]
PAPERS: dict[str, str] = PUBLISHED["cldr_paper_size"]
WORLD = "001"
ZONE_LINES = (files("tzdata") / "zoneinfo" / "zone.tab").read_text(encoding="utf-8").splitlines()
ZONES = {(row[0], row[2]) for row in (line.split("\t") for line in ZONE_LINES if not line.startswith("#"))}


@pytest.mark.parametrize("country", COUNTRIES, ids=lambda country: country.code)
def test_a_country_is_offered_its_own(country: Country) -> None:
    """Its currency has two decimals and is its own, its clock is one of its zones; paper and lengths as people use."""
    _, _, currency, _, decimals = LINES[country.code].split(",")
    assert (country.currency, decimals) == (currency, "2")
    assert (country.code, country.zone) in ZONES
    assert country.paper == {"A4": "A4", "US-Letter": "letter"}[PAPERS.get(country.code, PAPERS[WORLD])]
    assert (country.length_unit == "in") == (SYSTEMS.get(country.code, SYSTEMS[WORLD]) == "US")
    assert country.code in list_supported_countries()


def test_no_country_stands_there_twice() -> None:
    """Each code is there once, and those chosen by a digit stand first, few enough for one digit with the last."""
    codes = [country.code for country in COUNTRIES]
    short = [bool(country.short) for country in COUNTRIES]
    assert len(set(codes)) == len(codes)
    assert short == sorted(short, reverse=True)
    assert 1 <= sum(short) <= 8
