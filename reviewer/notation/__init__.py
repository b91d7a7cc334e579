"""Quantities, units, names and problems, as people write and read them."""
