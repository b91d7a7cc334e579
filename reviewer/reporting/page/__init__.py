"""The page: a sheet of one self-contained file for the bench and for whoever reviews a change."""
