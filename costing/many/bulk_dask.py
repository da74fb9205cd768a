"""The quotes of a table that is cut into partitions, on one machine or on several: Dask does the rest."""

from __future__ import annotations

from typing import Any

from costing.many.bulk import bulk_quotes
from costing.settings.mill import Mill


def bulk_partitions(mill: Mill, frame: Any, like: str = "") -> Any:
    """Quote every row of a Dask table, partition by partition.

    Parameters
    ----------
    mill : Mill
        The mill's book, with costs.
    frame : dask.dataframe.DataFrame
        As the table of `bulk_quotes`.
    like : str, optional
        As of `bulk_quotes`.

    Returns
    -------
    dask.dataframe.DataFrame
        The same partitions with what their rows come to; nothing is worked out before it is asked for. A
        refusal counts the rows of its own partition.
    """

    def quoted(part: Any) -> Any:
        return bulk_quotes(mill, part, like)

    return frame.map_partitions(quoted, meta=quoted(frame._meta))
