"""The tables of ``reference_tables/``: every value keeps its source and its locator.

The list of sources itself is in `costing.reference_data.source_list`, which needs Python 3.11.
"""

from costing.reference_data.default_values import Default, default, defaults
from costing.reference_data.materials_and_cautions import (
    Caution,
    CommercialForm,
    PublishedRange,
    Substance,
    cautions,
    materials,
    published_ranges,
    substances,
)
from costing.reference_data.table_files import fingerprint, folder
from costing.reference_data.trade_words import cautions_of, meaning_of, spelled, trade_words
from costing.reference_data.treatment_removals import Removal, treatment_removals

__all__ = [
    "Caution",
    "CommercialForm",
    "Default",
    "PublishedRange",
    "Removal",
    "Substance",
    "cautions",
    "cautions_of",
    "default",
    "defaults",
    "fingerprint",
    "folder",
    "materials",
    "meaning_of",
    "published_ranges",
    "spelled",
    "substances",
    "trade_words",
    "treatment_removals",
]
