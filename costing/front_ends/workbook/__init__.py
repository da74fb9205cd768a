"""The mill's book as a spreadsheet file: how it looks, how it is written and how it is read."""
