"""The solver behind supports: columns of one-way springs, and how they are settled."""
