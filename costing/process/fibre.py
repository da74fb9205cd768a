"""What hot liquors dissolve of grey cotton."""

from __future__ import annotations

from costing.process.postings import GREY, PROCESS, Book

ACID = "galacturonic_acid"  # stands for the pectic acids of the fibre
EXTRACT = "cotton_extract"  # the rest of the organic matter that a box dissolves
DISSOLVED = "dissolved by the scour"


def post_dissolved(book: Book, weight_loss: float, ash_share: float, acid: float) -> None:
    """Post what dissolves for what it is: the entry of the yarn posted all of its dry matter as cotton.

    Parameters
    ----------
    book : Book
        Takes the lines.
    weight_loss : float
        Dry matter that dissolves [kg/kg].
    ash_share : float
        Mineral part of it [fraction].
    acid : float
        Pectic acid in the rest of it [kg/kg].
    """
    organic = weight_loss * (1.0 - ash_share)
    book.move("cotton", DISSOLVED, weight_loss, PROCESS, GREY)
    book.move(ACID, DISSOLVED, acid, GREY, PROCESS)
    book.move(EXTRACT, DISSOLVED, organic - acid, GREY, PROCESS)
    book.move("cotton_ash", DISSOLVED, weight_loss - organic, GREY, PROCESS)
