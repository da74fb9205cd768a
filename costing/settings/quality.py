"""What of the metres made is not of first quality, by depth of shade, and what that part brings back."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, ClassVar, NamedTuple

from costing.construction import sets
from costing.quantities import InputError, quantity, shown
from costing.settings.building import check_fields

if TYPE_CHECKING:
    from costing.settings.mill import Enquiry

SHARES = ("off_shade_share", "seconds_share")
VALUES = ("off_shade_value", "seconds_value")


@dataclass(frozen=True)
class ShadeDepth:
    """One depth of shade: up to how much dye it goes, and what of its metres is not of first quality.

    An empty share counts nothing; an empty bound is that of the darkest, which has none.
    """

    GROUPS: ClassVar[tuple[str, ...]] = ("seconds",)

    code: str
    off_shade_value: float
    seconds_value: float
    depth_up_to: float | None = None
    off_shade_share: float | None = None
    seconds_share: float | None = None
    where: str = ""

    def __post_init__(self) -> None:
        check_fields(self, self.where or f"depth {self.code}")


class Sorting(NamedTuple):
    """How the metres of one enquiry are sorted.

    Attributes
    ----------
    dye_on_yarn : float
        Dye on the yarn, of all steps together, of the grey yarn [fraction].
    depth : str
        Its depth of shade; "" where the book has none for it.
    off_shade_share, seconds_share : float
        Of the metres made [fraction].
    off_shade_value, seconds_value : float
        What one of these metres brings back, of the cost of a metre made [fraction].
    """

    dye_on_yarn: float
    depth: str = ""
    off_shade_share: float = 0.0
    seconds_share: float = 0.0
    off_shade_value: float = 0.0
    seconds_value: float = 0.0

    @property
    def first_quality(self) -> float:
        """Metres of first quality, of the metres made [fraction]."""
        share: float = sets.first_quality_share(self.off_shade_share, self.seconds_share)
        return share


def dye_on_yarn_of(steps: Sequence[Any]) -> float:
    """Dye that stays on the yarn, of the grey yarn, all steps together [fraction].

    Indigo counts as such, any other dye as its recipe does.
    """
    total = 0.0
    for step in steps:
        for name in ("indigo_on_yarn", "dye_on_yarn"):
            total = total + getattr(step, name, 0.0)
        offered = getattr(step, "dye_offered", None)
        if offered is not None:
            total = total + offered * step.dye_exhaustion * step.dye_fixation
    return total


def depth_of(dye_on_yarn: float, depths: Mapping[str, ShadeDepth]) -> ShadeDepth | None:
    """The first depth, from the lightest on, that goes up to so much dye; None where none does."""
    for depth in depths.values():
        if depth.depth_up_to is None or dye_on_yarn <= depth.depth_up_to:
            return depth
    return None


def sorting_of(enquiry: Enquiry, steps: Sequence[Any], depths: Mapping[str, ShadeDepth]) -> Sorting:
    """Shares and values of an enquiry: its own shares, or those of its depth of shade.

    Parameters
    ----------
    enquiry : Enquiry
        May give shares of its own.
    steps : sequence
        Of its route.
    depths : mapping
        Name -> depth of shade, the lightest first.

    Raises
    ------
    InputError
        More dye than any depth goes up to, where shares are given.
    """
    dye = dye_on_yarn_of(steps)
    depth = depth_of(dye, depths)
    own = [getattr(enquiry, name) for name in SHARES]
    if depth is None:
        given = [share for item in depths.values() for share in (item.off_shade_share, item.seconds_share)]
        if all(share is None for share in (*own, *given)):
            return Sorting(dye)
        ends = (
            f"the darkest goes up to {_told(max(depths.values(), key=_bound))}" if depths else "it has none"
        )
        raise InputError(
            f"enquiry {enquiry.code}",
            f"its recipe has {shown(quantity('dye_on_yarn'), dye)} of dye on the yarn, and no depth of the "
            f"sheet Quality goes up to that: {ends}; accepted is a last depth whose bound is empty",
        )
    off_shade, seconds = (
        given if given is not None else (of_depth if of_depth is not None else 0.0)
        for given, of_depth in zip(own, (depth.off_shade_share, depth.seconds_share))
    )
    return Sorting(dye, depth.code, off_shade, seconds, depth.off_shade_value, depth.seconds_value)


def _bound(depth: ShadeDepth) -> float:
    return depth.depth_up_to or 0.0


def _told(depth: ShadeDepth) -> str:
    return shown(quantity("depth_up_to"), _bound(depth))


def check_order(depths: Mapping[str, ShadeDepth]) -> None:
    """Refuse bounds that do not rise, and a depth below one that has no end.

    Raises
    ------
    InputError
        At the first depth that no recipe could ever fall in.
    """
    before: ShadeDepth | None = None
    for depth in depths.values():
        if before is not None and before.depth_up_to is None:
            raise InputError(
                before.where,
                f"the bound of the depth {before.code!r} is empty and {depth.code!r} stands below it; "
                "accepted is an empty bound in the last row alone",
            )
        if before is not None and depth.depth_up_to is not None and depth.depth_up_to <= _bound(before):
            raise InputError(
                depth.where,
                f"the depth {depth.code!r} goes up to {_told(depth)} and {before.code!r} above it to "
                f"{_told(before)}; accepted are bounds that rise from row to row",
            )
        before = depth
