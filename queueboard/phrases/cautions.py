"""Short cautions for the bench, the packing and the hand-over: common practice, which defers to local rules.

They remind; they are no instruction in safe working. Where no source stands beside a line it is common practice of the
trade, no source. Law, carriers' rules and the guidance of the machine's maker come first everywhere.
"""

BENCH: tuple[str, ...] = (
    "No gloves at a running belt or wheel: they are drawn in. Sleeves, cords, hair and jewellery too.",
    "Edge never into the belt or wheel; it runs off the edge. The tip stays off the belt's corner.",
    "Eye protection on, bystanders' eyes too; stand out of line.",
    "Dust: extraction on, a fitted respirator for fine dust, not a paper mask. Ceramic and stone stay wet.",
    "Switch off at the mains and wait until it has stopped before changing a belt: off still coasts.",
    "Look at the belt's joint and tracking, and let it run up before use.",
    "Do not reach for a falling knife. Hot steel: dip it, never test it with a finger.",
    "Knives from meat, hides or hooves are washed first.",
)
"""For the bench: day list and day sheet."""

PACKING: tuple[str, ...] = (
    "Machine off. Now cut-resistant gloves: yes for packing, never at a running belt.",
    "An edge guard or folded card on every edge, the tip covered, taped to itself and not to the blade; nothing loose.",
    "A strong box, cushioned so that no edge cuts through. On the inner wrap: CAUTION, FRESHLY SHARPENED.",
    "Check the carrier's current rules for blades, and local law (age checks, forbidden kinds, abroad).",
)
"""For packing a parcel."""

HAND_OVER: tuple[str, ...] = (
    "Wrapped edges only, handle first; say that they are sharper than before.",
    "Handing blades to minors: local law and the shop's own rule.",
    "Wash before use. A kitchen washes and sanitises by its local food code.",
    "Keeping goods for money, or goods nobody fetches: check local law first.",
)
"""For the counter."""

FOR_CUSTOMERS: tuple[str, ...] = (
    "CAUTION: FRESHLY SHARPENED. Open on a table and take the edge guards off last, handle in hand.",
    "Wash before use. A kitchen washes and sanitises by its local food code.",
    "Not as sharp as you wished, or something amiss? Tell us soon and keep the wrapping.",
)
"""On the paper that goes with the knives."""

END_OF_DAY: tuple[str, ...] = (
    "Dust tray emptied into a lidded metal bin outdoors, steel apart from aluminium, wood dust and oily rags.",
    "Look again after 20 minutes; that second look is not an all-clear. No household vacuum.",
    "Wet dust of aluminium, magnesium or titanium can give off gas that burns.",
)
"""For the last minutes of the day."""

BENCH_SHORT = "No gloves at a running belt · eyes covered · dust · edge never into the belt"
"""One line of a screen for the bench."""

PACKING_SHORT = "Machine off, gloves on · guard every edge · carrier's rules and local law"
"""One line of a screen for packing and close-out of a parcel."""

HAND_OVER_SHORT = "Edges wrapped, handle first · minors: local law · wash before use"
"""One line of a screen for close-out at the counter."""

NO_ADVICE = "Reminders only: local law, the carrier's rules and the maker's guidance come first."
"""Stands under every list of cautions on paper."""
