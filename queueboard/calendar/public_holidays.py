"""Public holidays, looked up once for the shop's file: the library that knows them is slow to load."""

from datetime import date

from queueboard.errors import SettingsError


class UnknownPlaceError(SettingsError):
    """The list of public holidays does not know a country or its region; *key* is the setting that is at fault."""

    def __init__(self, sentence: str, key: str) -> None:
        super().__init__(sentence)
        self.key = key


def public_holidays(country: str, region: str, first_year: int, last_year: int) -> tuple[tuple[date, str], ...]:
    """Days and names of the public holidays of both years and those between, by day; none for an empty country.

    A holiday that is kept on another day, because it falls on a weekend, is listed with both days. UnknownPlaceError
    for a country or region that the list does not know.
    """
    if not country:
        return ()
    from holidays import country_holidays, list_supported_countries

    try:
        found = country_holidays(country, subdiv=region or None, years=range(first_year, last_year + 1))
    except NotImplementedError:
        where = f"region “{region}” of country “{country}”" if region else f"country “{country}”"
        raise UnknownPlaceError(
            f"No public holidays are known for {where}. Correct country and region in the settings, "
            "or leave them empty and write the closed days as closures.",
            "region" if region and country in list_supported_countries() else "country",
        ) from None
    return tuple(sorted(found.items()))
