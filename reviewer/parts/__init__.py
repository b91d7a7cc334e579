"""The kinds of part and the fields and quantities that each declares."""
