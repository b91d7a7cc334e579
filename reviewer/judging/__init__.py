"""From quantities to findings: the rule language, packs, verdicts."""
