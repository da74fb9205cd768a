"""Tests of the tables and of their readers."""
