"""Drawings of a design to scale: plan, elevation, and a gap against travel; SVG without colour."""
