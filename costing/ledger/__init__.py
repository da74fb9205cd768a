"""Runs a route, adds the lot, keeps every posting, proves that it closes."""
