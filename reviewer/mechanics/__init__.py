"""Pure formulas on SI numbers or numpy arrays; they know no files and no rules."""
