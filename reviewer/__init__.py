"""Reviews designs of moving furniture and shop machines before the wood is cut."""
