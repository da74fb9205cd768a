"""The formulas in Excel on Windows, through the open-source part of xlwings."""
