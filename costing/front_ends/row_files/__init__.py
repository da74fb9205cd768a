"""Files of rows that another system of the mill writes: which column is what, and what stands in them."""
