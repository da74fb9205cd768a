"""The registry: every spreadsheet formula once, with its name, arguments, result and example."""
