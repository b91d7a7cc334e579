"""What a ring and a hub say of their rim in the same words, so that the two can be compared."""

from reviewer.parts.row import Row


def rim_sums(turns: str) -> tuple[Row, ...]:
    """Sink, movement and tilt of the rim as sums of their shares; `turns` is what tilts."""
    return (
        Row(
            "rim_sink",
            "m",
            "how far the farthest rim sinks where it is loaded",
            formula=lambda springs, plate: springs + plate,
            needs={"springs": "rim.from_springs", "plate": "rim.from_plate"},
            read="at the farthest rim, right beside the load, from a beam on what carries it",
        ),
        Row(
            "rim.moves",
            "m",
            "free play and elastic sink of the rim together",
            formula=lambda play, sink: play + sink,
            needs={"play": "play.rim", "sink": "rim_sink"},
        ),
        Row(
            "rim.tilts",
            "rad",
            f"free and elastic tilt of the {turns} together",
            formula=lambda play, tilt: play + tilt,
            needs={"play": "play.tilt", "tilt": "tilt"},
        ),
    )
