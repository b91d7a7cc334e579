"""From a design to quantities: load path, cases, plan, evaluation."""
