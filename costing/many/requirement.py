"""What thousands of dye lots take: lots that differ in their length alone run through the ledger together."""

from __future__ import annotations

from collections.abc import Hashable, Mapping, Sequence
from dataclasses import fields
from functools import partial
from operator import attrgetter
from typing import Any

import numpy

from costing.ledger.whole import open_ledger
from costing.many.lot_curve import LENGTH
from costing.many.quotes import run_parted
from costing.purchasing.requirement import Uses, from_store
from costing.quantities import InputError
from costing.settings.inputs import Place, with_inputs
from costing.settings.mill import Enquiry, Mill

BUT_LENGTH = attrgetter(*(field.name for field in fields(Enquiry) if field.name != LENGTH.name))


def together(mill: Mill, enquiries: Sequence[Enquiry]) -> list[Uses | InputError]:
    """As `costing.purchasing.requirement.one_by_one`, over arrays."""
    alike: dict[Any, list[int]] = {}
    for number, enquiry in enumerate(enquiries):
        alike.setdefault(BUT_LENGTH(enquiry), []).append(number)
    found: list[Any] = [None] * len(enquiries)
    for places in alike.values():
        lengths = numpy.array([enquiries[number].order_length for number in places])
        outcome = run_parted(partial(_work, mill, enquiries[places[0]]), {LENGTH: lengths}, len(places))
        lines = {str(code): numbers.tolist() for code, numbers in outcome.values.items()}
        for case, number in enumerate(places):
            refused = outcome.refused.get(case)
            found[number] = refused or {code: line[case] for code, line in lines.items()}
    return found


def _work(mill: Mill, enquiry: Enquiry, values: Mapping[Place, Any]) -> Mapping[Hashable, Any]:
    changed, asked = with_inputs(mill, enquiry, values)
    found: dict[Hashable, Any] = dict(from_store(open_ledger(changed, asked), changed).items())
    return found
