"""Findings at many samples: what is cheap at every one, what takes a search where it matters.

What comes out of a search (roller forces) is computed exactly at some hundred samples. A surface
through these tells at which of the others a finding comes near its limit, and there it is computed
exactly too: the surface alone decides only where it cannot err by as much.
"""

import numpy as np
from numpy.typing import NDArray

from reviewer.studying.blocks import Columns, Job
from reviewer.studying.study import FAILS, OPEN, PASSES, Course, Key
from reviewer.studying.surface import Array, fitted, terms_count

UNSEEN = -1  # the verdict of a sample at which a finding was not judged
EXACT = 2.5  # times as many exact samples as a surface has terms
LEAST_EXACT = 40
MOST_NEAR = 1500  # samples near a limit that are computed exactly
SCANNED = 4  # samples of each finding that are judged again in every case
NEARLY = 1e-9

Chosen = NDArray[np.intp]


def checked(job: Job, columns: Columns, chosen: Chosen) -> tuple[dict[Key, Course], Job]:
    """Findings at some samples, the worst of them judged again in every case.

    Returns them with the job on all the cases that turned out to govern.
    """
    while True:
        found = job.run(columns, chosen)
        worst = sorted({int(index) for each in found.values() for index in _worst(each)})
        whole = job.in_every_case.run(columns, chosen[worst])
        missed = {
            int(whole[key].case[place])
            for key, course in found.items()
            for place, index in enumerate(worst)
            if _is_missed(whole[key], place, course, index)
        }
        if missed <= set(job.cases):
            return found, job
        job = job.on({*job.cases, *missed})


def screened(job: Job, columns: Columns, scaled: Array) -> dict[Key, Course]:
    """Findings that take a search at all samples; `scaled` are these from -1 to 1 of each band."""
    samples = len(scaled)
    exact = max(LEAST_EXACT, int(EXACT * terms_count(scaled.shape[1])))
    if exact + MOST_NEAR >= samples:
        return checked(job, columns, np.arange(samples))[0]
    first, job = checked(job, columns, np.arange(exact))
    found = {key: _lengthened(course, samples) for key, course in first.items()}
    wanted = np.zeros(samples, dtype=bool)
    for key, course in first.items():
        if _is_a_number(course):
            wanted[exact:] |= _guessed(found[key], course, scaled)[exact:]
        else:
            wanted[exact : exact + MOST_NEAR] = True
    _put_exact(job, columns, found, np.flatnonzero(wanted))
    return found


def _is_a_number(course: Course) -> bool:
    judged = np.isin(course.verdict, (PASSES, FAILS)).all()
    return bool(judged and not np.isnan(course.utilisation).any())


def _guessed(whole: Course, exact: Course, scaled: Array) -> NDArray[np.bool_]:
    """Let a surface judge all but the first samples, and tell which are too near to the limit."""
    first = len(exact.verdict)
    surface = fitted(scaled[:first], exact.utilisation)
    guess = surface.at(scaled)
    whole.utilisation[first:] = guess[first:]
    whole.verdict[first:] = np.where(guess[first:] > 1.0, FAILS, PASSES)
    away = np.abs(guess - 1.0)
    nearest = np.argsort(away, kind="stable")[:MOST_NEAR]
    near = np.zeros(len(guess), dtype=bool)
    near[nearest] = away[nearest] <= surface.error
    return near


def _put_exact(job: Job, columns: Columns, found: dict[Key, Course], chosen: Chosen) -> None:
    if len(chosen):
        for key, course in job.run(columns, chosen).items():
            found[key].verdict[chosen] = course.verdict
            found[key].utilisation[chosen] = course.utilisation


def _worst(course: Course) -> Chosen:
    """The nominal sample and those at which a finding is used most, or judged most gravely."""
    used = np.where(np.isnan(course.utilisation), -np.inf, course.utilisation)
    last = np.argsort(used, kind="stable")[-SCANNED:]
    return np.unique(np.concatenate([[0, int(np.argmax(course.verdict == OPEN))], last]))


def _is_missed(whole: Course, place: int, course: Course, index: int) -> bool:
    """Whether the judgement in every case is another than that on the chosen cases."""
    if whole.verdict[place] != course.verdict[index]:
        return True
    more = whole.utilisation[place] - course.utilisation[index]
    return bool(more > NEARLY * max(1.0, abs(whole.utilisation[place])))


def _lengthened(course: Course, samples: int) -> Course:
    """A course over the first samples, made as long as all of them; the others are not seen."""
    verdict = np.full(samples, UNSEEN, np.int8)
    used = np.full(samples, np.nan)
    case = np.zeros(samples, int)
    first = len(course.verdict)
    verdict[:first], used[:first], case[:first] = course.verdict, course.utilisation, course.case
    return Course(course.rule, course.part, course.others, verdict, used, case)
