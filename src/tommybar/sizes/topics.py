"""The topics of the look-up, listed by hand; a topic's module is imported when it is asked for.

Both doors, the command line and the page, ask here.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from importlib import import_module

from tommybar.facts.answer import Answer
from tommybar.refusals import Refusal, nearest


@dataclass(frozen=True)
class Topic:
    """One topic: its word, the module that answers, an example, and the options it takes."""

    name: str
    module: str
    about: str
    example: str
    options: tuple[str, ...] = ()


TOPICS = (
    Topic("limits", "tommybar.sizes.limits_topic", "limits of a size", "limits 8 H7"),
    Topic(
        "fit",
        "tommybar.sizes.fit_topic",
        "a hole and a shaft together",
        "fit 8 H7/g6",
        ("hole", "shaft"),
    ),
    Topic(
        "thread", "tommybar.facts.threads.topic", "screw threads", "thread M6", ("percent", "drill", "deep")
    ),
    Topic("drill", "tommybar.facts.drills.topic", "drill sizes", 'drill "#7"', ("point",)),
    Topic("fastener", "tommybar.facts.fasteners.topic", "screws, nuts, washers", "fastener nut M6"),
    Topic(
        "taper",
        "tommybar.facts.tapers.topic",
        "tapers and their settings",
        "taper Morse 2",
        ("bar", "length", "work"),
    ),
    Topic(
        "circle",
        "tommybar.facts.circles.topic",
        "holes on a circle",
        "circle 6 33",
        ("start", "convention"),
    ),
    Topic(
        "divide",
        "tommybar.facts.dividing.topic",
        "dividing head and rotary table",
        "divide 7 --ratio 40",
        ("ratio", "plates", "vernier"),
    ),
    Topic(
        "gears",
        "tommybar.facts.gears.topic",
        "change gears",
        'gears 1.25 --leadscrew "8 tpi"',
        ("leadscrew", "gears", "slot", "module", "span", "within"),
    ),
    Topic(
        "material",
        "tommybar.facts.materials.topic",
        "materials, pairs that rub, unknown offcuts",
        "material CW614N",
        ("on", "density", "within", "magnet"),
    ),
    Topic(
        "speed",
        "tommybar.facts.cutting.topic",
        "cutting speeds and feeds",
        'speed "mild steel" HSS turning 25',
        ("tool", "operation", "diameter"),
    ),
    Topic("general", "tommybar.facts.drawing.topic", "general tolerances", "general 25 m"),
    Topic(
        "drawing",
        "tommybar.facts.drawing.office_topic",
        "sheets, edges, finish, preferred numbers",
        "drawing sheet A3",
    ),
    Topic(
        "adhesive",
        "tommybar.facts.adhesives.topic",
        "adhesives and solders",
        "adhesive cyanoacrylate",
        ("diameter", "length"),
    ),
    Topic("balance", "tommybar.facts.balance.topic", "balance grades", "balance flywheel"),
)


def topic_of(name: str) -> Topic:
    """The topic of a word; an unknown word is refused and the nearest one offered.

    Parameters
    ----------
    name : str
        The topic's word, for example "thread" [word]

    Returns
    -------
    Topic
        Where it is answered, with an example and the options it takes

    Raises
    ------
    Refusal
        If there is no such topic.

    Examples
    --------
    >>> topic_of("thread").example
    'thread M6'

    References
    ----------
    The source of an answer is named in the answer; this is the list of topics.
    """
    for topic in TOPICS:
        if topic.name == name:
            return topic
    words = [topic.name for topic in TOPICS]
    raise Refusal(f'"{name}" is not a topic; there are {", ".join(words)}.', nearest(name, words))


def look_up(name: str, keys: tuple[str, ...], options: Mapping[str, str]) -> Answer:
    """The answer of a topic; an option that the topic does not take is refused.

    Parameters
    ----------
    name : str
        The topic's word [word]
    keys : tuple of str
        What of it, for example ("8", "H7"); lengths without unit in [mm]
    options : mapping
        The topic's options by name, as typed

    Returns
    -------
    Answer
        Figures, rows and the source

    Raises
    ------
    Refusal
        If there is no such topic, the topic does not take the option, or
        the key lies outside its table.

    Examples
    --------
    >>> look_up("thread", ("M6",), {}).key
    'M6'

    References
    ----------
    The answer names its own source.
    """
    topic = topic_of(name)
    for option in options:
        if option not in topic.options:
            taken = ", ".join(f"--{one}" for one in topic.options) or "none"
            raise Refusal(f"The topic {name} does not take --{option}; it takes {taken}.", "Leave it out.")
    answer: Answer = import_module(topic.module).answer(keys, options)
    return answer
