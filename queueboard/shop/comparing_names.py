"""The name and address on file held against those of the label, and of the customer's note."""

from queueboard.clean import folded
from queueboard.parcels.comparing import Written, compare
from queueboard.shop.picture import BoxPicture
from queueboard.values.compared import Compared, Source
from queueboard.values.customer import Customer

NameAndAddress = tuple[str, str]


def compare_label(customer: Customer, on_label: NameAndAddress, on_note: NameAndAddress = ("", "")) -> Compared:
    """What is on file against what was typed from the label and from the note; what is empty is left out."""
    return compare(
        {
            Source.FILE: Written(name=customer.name, address=address_on_file(customer)),
            Source.LABEL: Written(name=on_label[0], address=on_label[1]),
            Source.NOTE: Written(name=on_note[0], address=on_note[1]),
        }
    )


def compare_box(box: BoxPicture) -> Compared:
    """The same for a box as it stands."""
    label = box.label
    if label is None:
        return compare_label(box.customer, ("", ""))
    return compare_label(box.customer, (label.name_on, label.address_on), (label.note_name, label.note_address))


def address_on_file(customer: Customer) -> str:
    """Address and town of a customer in one line, the town once; empty without an address: a town alone is none."""
    if not customer.address.strip() or folded(customer.town) in folded(customer.address):
        return customer.address.strip()
    return f"{customer.address.strip()}, {customer.town}"
