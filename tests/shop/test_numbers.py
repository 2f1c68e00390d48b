"""The shop's own numbers, changed while the shop has boxes."""

from datetime import timedelta

import pytest

from queueboard.errors import ChangedError, RuleError, SettingsError
from queueboard.phrases.moves import step_words, undo_words
from queueboard.seedfiles import seed_text
from queueboard.shop.looking import look
from queueboard.shop.numbers import settings_before, take_settings
from queueboard.shop.opening import Shop
from queueboard.shop.saying import told_versus_seen
from queueboard.shop.settings_now import settings_text
from queueboard.shop.undoing import last_undo, steps, undo
from tests.shop.place import NOW, by, counter, planned_box

STARTER = seed_text("settings.toml")
IN_EUROS = STARTER.replace('currency = "USD"', 'currency = "EUR"')


def test_a_new_shop_chooses_its_currency(shop: Shop) -> None:
    """As long as no box is there, the starter's currency is changed like any other number."""
    take_settings(shop, by(), IN_EUROS)

    assert look(shop, NOW).settings.currency == "EUR"


def test_amounts_stay_in_the_currency_they_were_taken_in(shop: Shop) -> None:
    """Once there is a box another currency is refused with both named, and the old numbers stay in force."""
    counter(shop)

    with pytest.raises(RuleError, match=r"stays USD: .* called EUR"):
        take_settings(shop, by(), IN_EUROS)

    assert settings_text(shop) == STARTER
    take_settings(shop, by(), STARTER.replace('"Fernlea Edge"', '"Another name"'))
    assert look(shop, NOW).settings.name == "Another name"


def test_undo_changes_no_currency_under_the_amounts(shop: Shop) -> None:
    """Taking back the settings that chose the currency is refused as well once a box has its prices in it."""
    take_settings(shop, by(), IN_EUROS)
    chose = steps(shop, "J")[0]
    counter(shop)

    with pytest.raises(RuleError, match=r"stays EUR: .* called USD"):
        undo(shop, by(), chose.group_id)

    assert look(shop, NOW).settings.currency == "EUR"


def test_settings_of_looser_times_can_be_replaced(shop: Shop) -> None:
    """What an older queueboard took in and this one refuses says so at its line, and does not bar what mends it."""
    box = planned_box(shop, counter(shop).box.number)
    long = STARTER + "\n[[closures]]\nfirst = 2026-12-24\nlast = 2028-01-02\nreason = 'slip'\n"
    shop.database.run("UPDATE settings SET text = ?", (long,))
    with pytest.raises(SettingsError, match=r"line [0-9]{3}: this closure lasts 375 days"):
        look(shop, NOW)

    assert settings_before(shop) is None
    take_settings(shop, by(minutes=5), STARTER)
    assert look(shop, NOW).boxes == (box,)
    assert [one.number for one in told_versus_seen(shop, NOW + timedelta(days=9))] == [box.box.number]


@pytest.mark.parametrize(
    ("country", "region", "at"),
    [("ZZ", "", "country = "), ("ZZ", "NY", "country = "), ("US", "QQ", "region = ")],
)
def test_a_place_without_holidays_is_named_by_its_line(shop: Shop, country: str, region: str, at: str) -> None:
    """A country that no list of public holidays knows, or a region of a known one, is a mistake in its own line."""
    text = STARTER.replace('country = "US"', f'country = "{country}"').replace('region = ""', f'region = "{region}"')
    line = STARTER[: STARTER.index(at)].count("\n") + 1

    with pytest.raises(SettingsError, match=rf"^line {line}: No public holidays are known for .*{region or country}"):
        take_settings(shop, by(), text)

    assert settings_text(shop) == STARTER


def test_a_check_on_a_day_to_come_is_refused(shop: Shop) -> None:
    """What is last checked was checked: the line is named, and the numbers stay as they were."""
    with pytest.raises(SettingsError, match=r"^line [0-9]+: 2027-01-05 is still to come, and today is 2026-11-09"):
        take_settings(shop, by(), STARTER.replace("# tax = 2026-11-02", "tax = 2027-01-05"))

    assert settings_text(shop) == STARTER


def test_numbers_changed_in_another_window_are_not_lost(shop: Shop) -> None:
    """Who changed an older text is told so, and what the other window wrote stays in force."""
    theirs = STARTER.replace("price = 9.00", "price = 9.50")
    take_settings(shop, by("JT"), theirs, seen=STARTER)

    with pytest.raises(ChangedError, match="another window"):
        take_settings(shop, by(), STARTER.replace("after_days = 365", "after_days = 100"), seen=STARTER)

    assert settings_text(shop) == theirs


def test_what_is_written_out_and_taken_in_again_is_the_same_text(shop: Shop) -> None:
    """Byte for byte, whatever stands in it: remarks, odd spaces, other line ends."""
    odd = STARTER.replace("\n", "\r\n").replace("price = 9.00", "price   =\t9.00  # é 刃")

    take_settings(shop, by(), odd)
    take_settings(shop, by(), settings_text(shop), seen=odd)

    assert settings_text(shop).encode() == odd.encode()


def test_history_says_which_number_changed(shop: Shop) -> None:
    """Section, key, old and new; a remark alone is told as before, and the undo says what it goes back over."""
    text = settings_text(shop)
    take_settings(shop, by(minutes=1), text + "\n# a remark\n")
    take_settings(shop, by(minutes=2), text.replace("= 730", "= 400").replace('"Fernlea Edge"', '"Ida Quillon"'))

    newest, remark = steps(shop, "J")[:2]
    assert step_words(newest) == "settings taken in: shop.name changed, keeping.erase_after_days 730 -> 400"
    assert undo_words(newest).startswith("go back to the settings before: shop.name changed, keeping.")
    assert step_words(remark) == "settings taken in"
    undo(shop, by(minutes=3), newest.group_id)
    again = last_undo(shop, "J")
    assert again is not None
    assert step_words(again).startswith("undone: settings taken in: shop.name changed")
    told = [str(row[0]) for row in shop.database.rows("SELECT about FROM history WHERE about IS NOT NULL")]
    assert not [about for about in told if "Quillon" in about or "Fernlea" in about]
