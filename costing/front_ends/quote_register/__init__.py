"""The register of quotes: one embedded database file beside the workbook, to which is only added."""
