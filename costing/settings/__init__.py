"""What the user gives: checked when made, never changed after."""
