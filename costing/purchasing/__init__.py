"""The buyer's view of the ledger: dye lots from the order book, requirement, orders, actual use."""
