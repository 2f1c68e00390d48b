"""Name and address on file, on the label and on the note: what differs is said, and nothing is guessed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from queueboard.parcels.comparing import Written, compare
from queueboard.values.compared import Part, Source

FILE, LABEL, NOTE = Source.FILE, Source.LABEL, Source.NOTE

Case = tuple[str, str, dict[Part, tuple[str, str]]]


def addresses(on_file: str, on_label: str) -> dict[Part, tuple[str, str]]:
    """What differs between two addresses, by part: what stands on file, and on the label."""
    found = compare({FILE: Written(address=on_file), LABEL: Written(address=on_label)})
    return {one.part: (one.says[FILE], one.says[LABEL]) for one in found.differences}


def names(on_file: str, on_label: str) -> dict[Part, tuple[str, str]]:
    """What differs between two names."""
    found = compare({FILE: Written(name=on_file), LABEL: Written(name=on_label)})
    return {one.part: (one.says[FILE], one.says[LABEL]) for one in found.differences}


SAME_ADDRESSES = [
    ("12 Harbour Street, Osterby", "12 Harbour St., Osterby"),
    ("12 Harbour Street Osterby", "12, HARBOUR ST; OSTERBY"),
    ("St. John's Street 4", "Saint Johns St 4"),
    ("7 Old Mill Road", "7 old mill rd."),
    ("7 Quay Avenue", "7 Quay Ave"),
    ("Hauptstraße 12, 04321 Dünmere", "Hauptstr. 12, 04321 Dunmere"),
    ("Hauptstrasse 12", "HAUPTSTR 12"),
    ("12a Harbour St", "12 A Harbour Street"),
    ("12 North Pier Lane", "12 N. Pier Ln"),
    ("12 Pier Lane, Apartment 4", "12 Pier Lane apt. 4"),
    ("12 Pier Lane, Flat 4", "Flat 4, 12 Pier Lane"),
    ("12 Pier Lane, Apt 4", "12 Pier Lane #4"),
    ("PO Box 14, Osterby", "P.O. Box 14, Osterby"),
    ("12 Pier Lane, Osterby 04321", "12 Pier Lane, Osterby 04321-1234"),
    ("12 Pier Lane, Osterby AB1 2CD", "12 Pier Lane, Osterby ab12cd"),
    ("12 Pier Lane, Osterby K1A 0B6", "12 Pier Lane, Osterby K1A-0B6"),
    ("No. 12 Pier Lane", "12 Pier Lane"),
    ("Rue de l'Église 3", "rue de l’eglise 3"),
    ("5th Avenue 20", "20 5th Ave"),
    ("12-14 Pier Lane", "12–14 Pier Lane"),
    ("1200 Main Street", "1200 Main St"),
]


@pytest.mark.parametrize(("on_file", "on_label"), SAME_ADDRESSES)
def test_ways_of_writing_are_no_difference(on_file: str, on_label: str) -> None:
    """Case, accents, points and usual short forms are folded; the order of the parts does not matter."""
    assert addresses(on_file, on_label) == {}
    assert addresses(on_label, on_file) == {}


DIFFERENT_ADDRESSES: list[Case] = [
    ("12 Harbour St", "21 Harbour St", {Part.HOUSE: ("12", "21")}),
    ("12 Harbour St", "12a Harbour St", {Part.HOUSE: ("12", "12a")}),
    ("12 Harbour St", "12-14 Harbour St", {Part.HOUSE: ("12", "12-14")}),
    ("12 Harbour St", "Harbour St", {Part.HOUSE: ("12", "")}),
    ("Harbour St", "12 Harbour St", {Part.HOUSE: ("", "12")}),
    ("1200 Main St", "1201 Main St", {Part.HOUSE: ("1200", "1201")}),
    ("12 Pier Lane, Osterby 04321", "12 Pier Lane, Osterby 04312", {Part.POSTCODE: ("04321", "04312")}),
    ("12 Pier Lane, Osterby 04321", "12 Pier Lane, Osterby", {Part.POSTCODE: ("04321", "")}),
    (
        "12 Pier Lane, Osterby 04321-1234",
        "12 Pier Lane, Osterby 04321-9999",
        {Part.POSTCODE: ("04321-1234", "04321-9999")},
    ),
    ("Hauptstr. 12, 8400 Dunmere", "Hauptstr. 12, 8401 Dunmere", {Part.POSTCODE: ("8400", "8401")}),
    ("8 Pier Lane AB1 2CD", "8 Pier Lane AB1 2CE", {Part.POSTCODE: ("AB1 2CD", "AB1 2CE")}),
    ("12 Harbour St", "12 Harbor St", {Part.STREET: ("Harbour", "Harbor")}),
    ("12 Harbour St", "12 Harbour Rd", {Part.STREET: ("St", "Rd")}),
    ("12 North Pier Lane", "12 South Pier Lane", {Part.STREET: ("North", "South")}),
    ("12 Pier Lane, Osterby", "12 Pier Lane, Dunmere", {Part.TOWN: ("Osterby", "Dunmere")}),
    ("12 Pier Lane, Osterby", "12 Pier Lane", {Part.TOWN: ("Osterby", "")}),
    ("Hafen 12, Osterby", "Haven 12, Osterby", {Part.STREET_OR_TOWN: ("Hafen", "Haven")}),
    ("12 Pier Lane, Flat 4", "12 Pier Lane, Flat 5", {Part.FLAT: ("4", "5")}),
    ("12 Pier Lane, Flat 4", "12 Pier Lane", {Part.FLAT: ("4", "")}),
    ("5th Avenue 20", "6th Avenue 20", {Part.STREET: ("5th", "6th")}),
    ("PO Box 14", "PO Box 41", {Part.FLAT: ("14", "41")}),
    (
        "12 Harbour St, Osterby",
        "21 Harbor St, Dunmere",
        {Part.HOUSE: ("12", "21"), Part.STREET: ("Harbour", "Harbor"), Part.TOWN: ("Osterby", "Dunmere")},
    ),
    ("12 12 Pier Lane", "12 Pier Lane", {Part.HOUSE: ("12 12", "12")}),
    ("12 Route 45", "45 Route 12", {Part.HOUSE: ("12 45", "45 12")}),
]


@pytest.mark.parametrize(("on_file", "on_label", "differ"), DIFFERENT_ADDRESSES)
def test_what_differs_is_said_by_its_part(on_file: str, on_label: str, differ: dict[Part, tuple[str, str]]) -> None:
    """House numbers, postcodes, streets and towns each show both sides as they were written."""
    assert addresses(on_file, on_label) == differ
    assert addresses(on_label, on_file) == {part: (label, file) for part, (file, label) in differ.items()}


@pytest.mark.parametrize(
    ("on_file", "on_label"),
    [
        ("R. Tallis", "R Tallis"),
        ("Maren Tallis", "TALLIS, MAREN"),
        ("Ms Verrin", "Verrin"),
        ("Dr. Jürgen Øst", "Jurgen Ost"),
        ("O'Hara", "O’Hara"),
        ("Anne-Marie Pol", "Anne Marie Pol"),
        ("[red]x[/]", "[RED]X[/]"),
    ],
)
def test_names_written_otherwise_are_the_same(on_file: str, on_label: str) -> None:
    """Case, accents, order, points and forms of address are no difference."""
    assert names(on_file, on_label) == {}


@pytest.mark.parametrize(
    ("on_file", "on_label", "differ"),
    [
        ("Maren Tallis", "Karen Tallis", {Part.NAME: ("Maren", "Karen")}),
        ("Maren Tallis", "M. Tallis", {Part.NAME: ("Maren", "M")}),
        ("Maren Tallis", "Tallis", {Part.NAME: ("Maren", "")}),
        ("Tallis", "Verrin", {Part.NAME: ("Tallis", "Verrin")}),
        ("包丁", "刀", {Part.NAME: ("包丁", "刀")}),
    ],
)
def test_other_names_are_said(on_file: str, on_label: str, differ: dict[Part, tuple[str, str]]) -> None:
    """An initial is not guessed to be the name, and a name of one letter more is another name."""
    assert names(on_file, on_label) == differ


def test_three_ways_show_who_says_what() -> None:
    """Where one of three differs, all three stand beside each other; what nobody typed is not compared."""
    found = compare(
        {
            FILE: Written(name="R. Tallis", address="12 Harbour St, Osterby"),
            LABEL: Written(name="R. Tallis", address="21 Harbour Street, Osterby"),
            NOTE: Written(address="12 Harbour St., Osterby"),
        }
    )

    assert [one.part for one in found.differences] == [Part.HOUSE]
    assert found.differences[0].says == {FILE: "12", LABEL: "21", NOTE: "12"}
    assert found.names == (FILE, LABEL)
    assert found.addresses == (FILE, LABEL, NOTE)


def test_what_is_not_typed_is_not_compared() -> None:
    """With nothing on the label there is nothing to compare, which is not the same as no difference."""
    found = compare({FILE: Written(name="Oake", address="12 Pier Lane"), LABEL: Written()})

    assert found.differences == ()
    assert (found.names, found.addresses) == ((FILE,), (FILE,))


words = st.text(max_size=40)


@given(words, words)
def test_any_text_can_be_compared(one: str, other: str) -> None:
    """Whatever was typed: nothing breaks, a text never differs from itself, and the sides may change places."""
    assert addresses(one, one) == names(one, one) == {}
    assert addresses(one, other) == {part: (b, a) for part, (a, b) in addresses(other, one).items()}
