"""How long reading takes, against composing the same text with PyYAML's C parser.

Run it: python tests/bench/bench_reading.py
"""

import sys
from timeit import repeat

import yaml

from reviewer.reading.events import read_yaml

DESIGN = """\
design: Fernleigh potting bench
revision: C
lengths: mm
service: public
reached_by: [adults, children]
parts:
  base: {kind: base, feet: {count: 5, circle: 900}, height: 620, mass: 24 kg}
  ring:
    kind: slewing_ring
    carried_by: base
    plate:     {material: birch plywood, thickness: 18, diameter: 560}
    carry:     {bearing: "6001", count: 10, circle: 460}            # under the plate
    hold_down: {bearing: "6000", count: 5, circle: 460, gap: 0.15}  # over the plate
    side:      {bearing: "6000", count: 5, gap: 0.05}               # on the edge
  arms: {kind: arm, carried_by: ring, count: 5, section: {tube: [30, 30, 2]}, reach: 430}
  trays:
    kind: tray
    carried_by: arms
    plate: {material: birch plywood, thickness: 12, width: 300, length: 400}
    offset: 0
  shaft: {kind: shaft, carried_by: base, diameter: 12, length: 340, material: steel}
  clamp: {kind: clamp, carried_by: shaft, engagement: 22, bolt: M5x20}
  skirt: {kind: skirt, carried_by: base, thickness: 12, height: 90, supports: 5}
  top: {kind: top, carried_by: arms, thickness: 18, diameter: 900, material: oak}
configurations: {closed: {}, open: {trays.offset: 210}}
loads:
  soil: {force: 600 N, over: top}
  lean: {force: 500 N, on: trays, at: rim, all_round: true}
  sit: {force: 1200 N, on: top, at: {radius: 160 mm}, all_round: true}
  drop: {force: 300 N, on: top, at: {radius: 0 mm}}
combinations:
  potting: {soil: 1.0, own_weight: 1.0}
  leaning: {soil: 1.0, lean: 1.5, own_weight: 0.9}
  sitting: {sit: 1.5, own_weight: 0.9}
concessions:
  - rule: slewing_ring.uplift_held
    on: ring
    by: the maker
    because: the ring is never turned while it is empty
    until: 2027-05-01
measured:
  - {what: trays.sag, under: {force: 20 kg, at: rim}, value: 1.6 mm, on: 2026-03-02}
  - {what: ring.play, value: 0.3 mm, on: 2026-03-02}
  - {what: top.sag, under: {force: 40 kg, at: rim}, value: 0.4 mm, on: 2026-03-02}
"""


def milliseconds(work: object, number: int = 200) -> float:
    """Return the least mean time of a call over several runs."""
    return min(repeat(work, number=number, repeat=9)) / number * 1e3  # type: ignore[arg-type]


def main() -> int:
    """Print the times and their ratio."""
    if not yaml.__with_libyaml__:
        print("PyYAML has no libyaml here: nothing to compare")
        return 1
    read = milliseconds(lambda: read_yaml(DESIGN, "bench.yaml"))
    composed = milliseconds(lambda: yaml.compose(DESIGN, yaml.CSafeLoader))
    print(f"{len(DESIGN.encode())} bytes: read_yaml {read:.3f} ms, compose {composed:.3f} ms")
    print(f"ratio {read / composed:.2f}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
