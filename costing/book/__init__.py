"""The mill's book read from its sheets, wherever their cells come from: a file, or a spreadsheet program."""
