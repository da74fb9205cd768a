"""Tests of the buyer's view."""
