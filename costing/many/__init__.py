"""Many quotes at once, over arrays: the same code as for one, with the same numbers."""
