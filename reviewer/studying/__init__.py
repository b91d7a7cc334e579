"""Questions over many evaluations: traces, remedies, sizes, tolerances."""
