"""Drawings of a design to scale: plan, elevation, and a gap against travel; SVG without colour.

    from reviewer.reporting.drawings.plan import plan_drawing
    from reviewer.reporting.drawings.elevation import elevation_drawing
    from reviewer.reporting.drawings.marks import Mark

    from reviewer.reporting.drawings.curve import curve_drawing, gaps_with_a_curve

    plan_drawing(review, "open", [Mark(1, finding), ...], name="plan-open") -> str
    elevation_drawing(review, "open", marks, name="elevation-open") -> str
    curve_drawing(review, "middle_seam", None, marks, name="curve-1") -> str
    gaps_with_a_curve(review) -> ("middle_seam", "middle_and_trays", ...)

`marks` are findings with the numbers under which a report lists them: what they want changed gets
a dimension line, the gap that they are about a circle, and their number stands beside the name of
their part. Without marks a drawing shows the design alone. The text that comes back is one `svg`
element with a view box, `role="img"`, title and desc; it fills the width of what holds it up to
1.6 times its own size and is legible from 390 pixels on. Ink is `currentColor`; a page that is
dark sets `color`, and `--paper` to its background. `name` begins every id in it, so that drawings
of one page do not share ids. A configuration that there is not raises
`reviewer.reporting.drawings.scene.NoSuchConfiguration`, with the names that there are.
"""
