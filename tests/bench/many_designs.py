"""Many distinct designs, made from the specimens by changing numbers, counts, materials and names.

Every design has numbers of its own; roller counts, panels, bearings and names of parts are drawn
from a few each, as in the folder of a shop. The same for the same seed.
"""

import random
import re
from pathlib import Path

SPECIMENS = Path(__file__).parents[2] / "specimens"
FROM = (
    "book_stand.yaml",
    "first_design.yaml",
    "inch_stand.yaml",
    "lift_shelf.yaml",
    "stage_turntable.yaml",
    "mechanisms/puppet_stage.yaml",
    "potting_bench/revision_a.yaml",
    "potting_bench/revision_c.yaml",
    "shop/designs/carving_stand.yaml",
    "shop/designs/paint_lift.yaml",
)
SIZES = re.compile(
    r"\b(circle|diameter|reach|inner|depth|height|length|width|span|level|inset|radius|least|most)"
    r": (\d+)(?=[,}\n])"
)
AMOUNTS = re.compile(r"\b(mass|force|own_weight_kg): (\d+(?:\.\d+)?) (kg|N|lb|lbf)\b")
THICKNESS = re.compile(r"\bthickness: (\d+)(?=[,}\n])")
GAP = re.compile(r"\bgap: (0\.\d+)")
ROLLERS = re.compile(r'(bearing: "\d+", count: )(\d+)')
PANELS = ("birch plywood", "birch plywood", "softwood plywood", "MDF")
NAMES = {"frame": ("trestle", "stand"), "ring": ("turntable",), "shelf": ("board",)}


def write_designs(folder: Path, count: int, seed: int = 7) -> list[Path]:
    """Write so many designs into a folder, in files of its subfolders; their paths in order."""
    chance = random.Random(seed)
    texts = [(SPECIMENS / name).read_text("utf-8") for name in FROM]
    (folder / ".git").mkdir(parents=True)  # so that nothing above it is looked at
    paths = []
    for number in range(count):
        path = folder / f"shelf_{number // 100:03}" / f"design_{number:05}.yaml"
        path.parent.mkdir(exist_ok=True)
        path.write_text(varied(texts[number % len(texts)], number, chance), "utf-8")
        paths.append(path)
    return paths


def varied(text: str, number: int, chance: random.Random) -> str:
    """A specimen with numbers, counts, panels and names of its own."""
    scale = chance.uniform(0.94, 1.06)
    text = SIZES.sub(lambda m: f"{m[1]}: {float(m[2]) * scale:.1f}", text)
    text = AMOUNTS.sub(
        lambda m: f"{m[1]}: {float(m[2]) * chance.uniform(0.8, 1.1):.2f} {m[3]}", text
    )
    text = THICKNESS.sub(lambda m: f"thickness: {float(m[1]) * chance.uniform(1, 1.1):.1f}", text)
    text = GAP.sub(lambda m: f"gap: {float(m[1]) * chance.uniform(0.8, 1.2):.3f}", text)
    more = chance.choice((0, 0, 1))
    text = ROLLERS.sub(lambda m: f"{m[1]}{int(m[2]) + more}", text)
    text = text.replace("birch plywood", chance.choice(PANELS))
    for name, others in NAMES.items():
        text = re.sub(rf"\b{name}\b(?!_)", chance.choice((name, name, *others)), text)
    return re.sub(r"(?m)^design: (.*)$", rf"design: \1, no. {number}", text)
