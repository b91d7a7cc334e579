"""Drawings of a design to scale: plan, elevation, and a gap against travel; SVG without colour.

    from reviewer.reporting.drawings.plan import plan_drawing
    from reviewer.reporting.drawings.elevation import elevation_drawing
    from reviewer.reporting.drawings.marks import Mark

    plan_drawing(review, "open", [Mark(1, finding), ...], name="plan-open") -> str

`marks` are findings with the numbers under which a report lists them: what they want changed gets
a dimension line, the gap that they are about a circle, and their number stands beside the name of
their part. Without marks a drawing shows the design alone. The text that comes back is one `svg`
element with a view box, `role="img"`, title and desc; it fills the width of what holds it up to
1.6 times its own size and is legible from 390 pixels on. Ink is `currentColor`; a page that is
dark sets `color`, and `--paper` to its background. `name` begins every id in it, so that drawings
of one page do not share ids. A configuration that there is not raises
`reviewer.reporting.drawings.scene.NoSuchConfiguration`, with the names that there are.
"""
