"""A measurement of the thing that was built: what a design records, and what it comes to."""

from reviewer.parts.kind import Kind
from reviewer.parts.row import Choice, Date, Flag, Measure, Row, Text

STEPS = ("half", "full", "proof")
OWN_WEIGHT = "own weight"
ZEROS = ("nothing", OWN_WEIGHT)

MEASUREMENT = Kind(
    name="measurement",
    says="a measurement of what was built, to be held against what is predicted",
    carries_load=False,
    rows=(
        Row(
            "test",
            "text",
            "name of the test; without one it is called measured_1 and so on",
            Text(),
        ),
        Row("quantity", "text", "what was measured: a part's quantity, as ring.rim_sink", Text()),
        Row(
            "configuration",
            "text",
            "the configuration in which it was measured",
            Text(),
        ),
        Row("step", "text", "how much of the load was on", Choice(STEPS, default="full")),
        Row(
            "factor",
            "1",
            "factor on the loads of a proof step",
            Measure(above=0.0, at_most=3.0, example="1.25"),
            formula=lambda proof: proof,
            needs={"proof": "limit.proof_load"},
        ),
        Row(
            "zero",
            "text",
            "under what the gauge was set to zero",
            Choice(ZEROS, default="nothing"),
        ),
        Row("by", "text", "who measured it", Text()),
        Row("on", "text", "the day on which it was measured", Date()),
        Row("revision", "text", "the revision of the design that it was measured on", Text()),
        Row("of", "text", "the file of the design that it was measured on", Text()),
        Row(
            "fingerprint",
            "text",
            "marks of the given values that it was measured on, as the load-test sheet prints them",
            Text(),
        ),
        Row(
            "proven",
            "truth",
            "whether it was repeated and can be relied on, so that it may calibrate",
            Flag(),
        ),
        Row("calibrates", "text", "the value of a part that it settles: arms.modulus", Text()),
        # What a study makes of it.
        Row("off_by", "1", "reading less prediction, as a share of the prediction"),
        Row("tolerated", "1", "difference that tolerances and the reading itself explain"),
        Row("reading", "text", "what was read"),
        Row("expected", "text", "what is predicted, and between which limits"),
        Row("explained", "text", "the values best able to explain the difference"),
        Row("changes", "1", "values behind the quantity that have changed since"),
        Row("changed", "text", "those values"),
        Row("uncalibrated", "1", "how many values it was to calibrate and could not"),
        Row("calibration", "text", "what it calibrated, or why it could not"),
    ),
)
