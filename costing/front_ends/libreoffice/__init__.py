"""LibreOffice Calc: the formulas as an extension, one file to install, built from the registry."""
