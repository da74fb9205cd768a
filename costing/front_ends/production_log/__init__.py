"""A mill's own record of production, read into what ran on which day."""
