"""Taking in the shop's own numbers: what only the shop's file or the list of holidays can refuse."""

import pytest

from queueboard.errors import SettingsError
from queueboard.seedfiles import seed_text
from queueboard.shop.numbers import settings_text, take_settings
from queueboard.shop.opening import Shop
from tests.shop.place import by, counter

STARTER = seed_text("settings.toml")
EUROS = STARTER.replace('currency = "USD"', 'currency = "EUR"')


def test_amounts_are_not_turned_into_another_currency(shop: Shop) -> None:
    """Before anything has a price the currency may change; after that it is refused by its line, and stays."""
    take_settings(shop, by(), EUROS)
    counter(shop)

    line = STARTER[: STARTER.index('currency = "USD"')].count("\n") + 1
    with pytest.raises(SettingsError, match=f"line {line}: the amounts in the shop's file are in EUR"):
        take_settings(shop, by(), STARTER)

    assert settings_text(shop) == EUROS
    take_settings(shop, by(), EUROS + "\n# a remark\n")


@pytest.mark.parametrize(
    ("wrong", "key"), [('country = "XX"', "country"), ('country = "US"\nregion = "QQ" #', "region")]
)
def test_an_unknown_country_or_region_is_named_by_its_line(shop: Shop, wrong: str, key: str) -> None:
    """What only the list of public holidays can tell is refused like any other mistake."""
    text = STARTER.replace('country = "US"', wrong, 1).replace('region = ""', "", 1 if key == "region" else 0)

    line = next(n for n, written in enumerate(text.splitlines(), 1) if written.startswith(key))
    with pytest.raises(SettingsError, match=f"line {line}: No public holidays are known"):
        take_settings(shop, by(), text)
