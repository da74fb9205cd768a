"""The drain view of a ledger: streams, loads, oxygen demand."""
