"""Boxes of one liquor: treatments and sulfur dye."""

from __future__ import annotations

from costing.quantities.quantity import Quantity as Q  # noqa: N817  (one row a line)

BOXES = (
    Q("first_dose", "kg/L", "g/L", 0.0, 1000.0, "first product in each litre of the bath"),
    Q("second_dose", "kg/L", "g/L", 0.0, 1000.0, "second product in each litre of the bath"),
    Q("third_dose", "kg/L", "g/L", 0.0, 1000.0, "third product in each litre of the bath"),
    Q("fourth_dose", "kg/L", "g/L", 0.0, 1000.0, "fourth product in each litre of the bath"),
    Q("fifth_dose", "kg/L", "g/L", 0.0, 1000.0, "fifth product in each litre of the bath"),
    Q("first_share", "", "%", 0.0, 100.0, "first product in the dry size"),
    Q("second_share", "", "%", 0.0, 100.0, "second product in the dry size"),
    Q("third_share", "", "%", 0.0, 100.0, "third product in the dry size"),
    Q("fourth_share", "", "%", 0.0, 100.0, "fourth product in the dry size"),
    Q("fifth_share", "", "%", 0.0, 100.0, "fifth product in the dry size"),
    Q("size_density", "kg/L", "kg/L", 0.95, 1.2, "density of the hot size liquor"),
    Q("box_temperature", "degC", "degC", 5.0, 99.0, "temperature of the box"),
    Q("box_overflow", "L/kg", "L/kg", 0.0, 50.0, "liquor of the box that overflows, at least"),
    Q(
        "auxiliary_uptake",
        "",
        "%",
        0.0,
        500.0,
        "auxiliary that the fibre draws and keeps beyond the liquor it carries, of what that liquor carries",
    ),
    Q("peroxide_broken_down", "", "%", 0.0, 100.0, "share of the peroxide left that breaks down on the yarn"),
    Q("feed_ratio", "", "", 1.2, 1000.0, "strength of what is fed over the strength of the bath"),
    Q(
        "reductant_ratio",
        "kg/kg",
        "kg/kg",
        0.0,
        5.0,
        "reductant (100 %) fed for each mass of dye fed, beside what is in the bath anyway",
    ),
    Q("bath_reductant", "kg/L", "g/L", 0.0, 100.0, "reductant (100 %) in the bath beside the ratio"),
    Q("reductant_left", "", "%", 0.0, 100.0, "share of the reductant that is neither used up nor aired"),
    Q("other_dose", "kg/L", "g/L", 0.0, 300.0, "other product as delivered in each litre of the bath"),
)
