"""The money view of a ledger: prices, quote, rounding."""
