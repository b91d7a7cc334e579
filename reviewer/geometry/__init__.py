"""Outlines, travels and clearances."""
