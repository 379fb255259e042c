"""``load_made(path)``: the record of one making."""

from __future__ import annotations

from pathlib import Path

from tommybar.design.validation import unit_of, validated
from tommybar.design.yaml_file import YamlFile, read_yaml
from tommybar.made.entries import MadeFile
from tommybar.made.record import Made, Measured, Ticked, Whereabouts


def load_made(path: str | Path) -> Made:
    """What a made file says; raises :class:`Refusal` with every fault of the file at once."""
    return made_of(read_yaml(path))


def made_of(yaml: YamlFile) -> Made:
    """The record in a file that has been read, entries in the order in which they were written."""
    file = validated(MadeFile, yaml, unit_of(yaml))
    measured, ticks, whereabouts = [], [], []
    for one in file.made:
        if one.size is not None and one.is_ is not None:
            measured.append(Measured(one.size, one.is_, one.with_, one.on, one.by, one.note))
        elif one.part is not None:
            whereabouts.append(Whereabouts(one.part, one.where, one.on, one.by, one.note))
        else:
            key = one.card or one.step or ""
            done = one.done if one.done is not None else False
            ticks.append(Ticked(key, done, one.on, one.by, one.skipped, one.note, len(measured)))
    return Made(file.of, tuple(measured), tuple(ticks), tuple(whereabouts))
