"""Run a route: step after step, per kilogram of grey yarn."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from costing.construction.counts import bone_dry_mass
from costing.process.bath_balance import Feeds
from costing.process.bath_content import BathContent
from costing.process.drying import dry_mass
from costing.process.fibre import COTTON
from costing.process.heating import Exchange
from costing.process.postings import GREY, PROCESS, YARN, Book, Line, Posting, named
from costing.process.running import RUNNERS
from costing.process.surroundings import Surroundings
from costing.process.yarn import YarnState, wetted_again
from costing.settings.material import Material
from costing.settings.steps import Drying, Step

TAKE_OFF = "take-off"
LEFT = "left on the yarn"
LOOM = "waste of the loom"


class GreyYarn(NamedTuple):
    """Part of the grey yarn that enters the range.

    Attributes
    ----------
    kind : str
        Warp yarn or weft yarn.
    material : str
        Its code in the price list.
    share : float
        Of what enters [fraction].
    waste : float
        Lost before it enters, of what is bought [fraction].
    """

    kind: str
    material: str
    share: float = 1.0
    waste: float = 0.0


class Run(NamedTuple):
    """A route, per kilogram of grey yarn.

    Attributes
    ----------
    postings : list of Posting
        Per kilogram of grey yarn; `lines` are the same, to be read by name.
    entering : list of (Step, YarnState)
        Each step with the yarn that enters it.
    dyed_yarn_per_grey : float
        Dyed yarn, with its moisture, from one kilogram of grey yarn [kg/kg].
    contents : dict
        Step -> what stands in its box, for the steps whose box fills up.
    feeds : dict
        Step -> what a dye bath is fed.
    exchanges : dict
        Step -> heat that its drain gives back.
    """

    postings: list[Posting]
    entering: list[tuple[Step, YarnState]]
    dyed_yarn_per_grey: float
    contents: dict[str, BathContent]
    feeds: dict[str, Feeds]
    exchanges: dict[str, Exchange]

    @property
    def lines(self) -> list[Line]:
        """The postings, to be read by name."""
        return named(self.postings)


def run_route(
    steps: Sequence[Step],
    materials: Mapping[str, Material],
    around: Surroundings,
    yarns: Sequence[GreyYarn],
) -> Run:
    """Run one kilogram of grey yarn, at commercial regain, through a list of steps.

    Parameters
    ----------
    steps : sequence of Step
        In the order in which the yarn meets them.
    materials : mapping
        Code -> product of the mill's list.
    around : Surroundings
        Of the run.
    yarns : sequence of GreyYarn
        What that kilogram is made of.

    Returns
    -------
    Run
        The postings, and the yarn in front of each step.

    Raises
    ------
    InputError
        From the step that cannot run.
    """
    dry = bone_dry_mass()
    yarn = YarnState(fibre=dry, regain_water=1.0 - dry, temperature=around.water_temperature)
    entry = Book("grey yarn")
    for kind, material, part, waste in yarns:
        entry.move(COTTON, kind, part * yarn.fibre, GREY, PROCESS, material)
        entry.move("water", "moisture of the grey yarn", part * yarn.regain_water, GREY, PROCESS, material)
        entry.move(COTTON, f"{kind} lost in weaving", part * waste / (1.0 - waste), GREY, LOOM, material)
    postings = entry.postings
    entering: list[tuple[Step, YarnState]] = []
    contents: dict[str, BathContent] = {}
    feeds: dict[str, Feeds] = {}
    exchanges: dict[str, Exchange] = {}
    for step in steps:
        if not isinstance(step, Drying):
            yarn = wetted_again(yarn)
        entering.append((step, yarn))
        yarn, book = RUNNERS[step.KIND](step, yarn, materials, around)
        postings.extend(book.postings)
        if book.content is not None:
            contents[step.name] = book.content
        if book.feeds is not None:
            feeds[step.name] = book.feeds
        if book.exchange is not None:
            exchanges[step.name] = book.exchange
    postings.extend(_take_off(yarn))
    dyed = dry_mass(yarn) + yarn.regain_water + yarn.liquor
    return Run(postings, entering, dyed, contents, feeds, exchanges)


def _take_off(yarn: YarnState) -> list[Posting]:
    """What is still in the process account leaves on the yarn."""
    book = Book(TAKE_OFF)
    book.move(COTTON, "dyed yarn", yarn.fibre, PROCESS, YARN)
    book.move("water", "moisture of the dyed yarn", yarn.regain_water + yarn.liquor, PROCESS, YARN)
    for source in (yarn.dissolved, yarn.loose, yarn.dried_on):
        for substance, amount in source.items():
            book.move(substance, LEFT, amount, PROCESS, YARN)
    return book.postings
