"""Costing of denim warp dyeing: what a recipe takes, costs and sends to the drain."""

__version__ = "0.1.0"
