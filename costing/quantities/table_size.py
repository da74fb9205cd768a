"""Sizing in line behind the dye range."""

from __future__ import annotations

from costing.quantities.quantity import Quantity as Q  # noqa: N817  (one row a line)

SIZE = (
    Q(
        "size_pick_up",
        "kg/kg",
        "%",
        20.0,
        300.0,
        "size liquor on the warp behind the squeeze, of the mass of the dry unsized warp",
    ),
    Q("size_solids", "kg/kg", "%", 0.5, 50.0, "dry size in the size liquor, of the mass of the liquor"),
    Q("size_liquor", "L/kg", "L/kg", 0.0, 10.0, "size liquor that the warp takes"),
    Q("size_box_strength", "kg/L", "g/L", 1.0, 500.0, "dry size in each litre of the size box"),
    Q("size_feed_strength", "kg/L", "g/L", 1.0, 900.0, "dry size in each litre of the size liquor fed"),
    Q(
        "size_loss",
        "",
        "%",
        0.0,
        50.0,
        "size that is cooked and never reaches the warp: cooker, pipes, box, of the size cooked",
    ),
    Q("size_box_volume", "L", "L", 0.0, 10000.0, "size liquor left in box and pipes and thrown away"),
    Q("warp_size_per_metre", "kg/m", "g/m", 0.0, 2000.0, "dry size on each metre of the warp"),
    Q("sized_mass", "kg", "g", 0.001, 1e8, "bone-dry mass of the sized sample before desizing"),
    Q("desized_mass", "kg", "g", 0.001, 1e8, "bone-dry mass of the same sample after desizing"),
    Q("blank_loss", "", "%", 0.0, 20.0, "bone-dry mass that unsized yarn loses in the same desizing"),
)
