"""What people see: workbook, command line; they know the rooms, no equations by name."""
