"""What a step does to yarn and liquor, per kilogram of grey yarn."""
