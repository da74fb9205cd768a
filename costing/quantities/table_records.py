"""What a mill writes down: what was made, what left the store, and what stands in a comparison of the two."""

from __future__ import annotations

from costing.quantities.quantity import Quantity as Q  # noqa: N817  (one row a line)

RECORDS = (
    Q("yarn_made", "kg", "kg", 0.0, 1e8, "saleable grey yarn that was made"),
    Q("cloth_made", "m", "m", 0.0, 1e9, "finished cloth that was made"),
    Q("issued_mass", "kg", "kg", -1e7, 1e8, "product as delivered that left the store; a return is below 0"),
    Q("price_paid", "money/kg", "money/kg", 0.0, 1e6, "price of this delivery at the gate, freight in"),
    Q("actual_strength", "", "%", 1.0, 100.0, "active part of what was used in fact"),
    Q("standard_strength", "", "%", 1.0, 100.0, "active part in the standard"),
    Q("part_mass", "kg", "kg", 0.0, 1e9, "mass of one product, or of one kind of what was made"),
    Q("total_mass", "kg", "kg", 0.0, 1e10, "mass of all together, in fact"),
    Q("standard_total_mass", "kg", "kg", 0.0, 1e10, "mass of all together, in the standard or the plan"),
    Q("standard_share", "", "%", 0.0, 100.0, "share in all together, in the standard or the plan"),
)
