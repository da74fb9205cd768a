"""Values that hypothesis draws for a quantity: anything that the table of quantities accepts."""

from __future__ import annotations

from hypothesis import strategies as st

from costing.quantities import quantity, to_house


def values(name: str, low: float | None = None, high: float | None = None) -> st.SearchStrategy[float]:
    """Values of a quantity in its house unit; `low` and `high` narrow its range, in the usual unit."""
    item = quantity(name)
    least = item.low if low is None else low
    most = item.high if high is None else high
    if item.whole:
        return st.integers(int(least), int(most)).map(float)
    return st.floats(least, most).map(lambda value: to_house(value, item.usual, item.unit))
