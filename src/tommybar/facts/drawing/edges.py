"""Edges of undefined shape, ISO 13715: how sharp, how broken, and how it is written."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from pathlib import Path

from tommybar.facts.table import Source, Table, read_table
from tommybar.refusals import Refusal


@dataclass(frozen=True)
class Edge:
    """One edge state: the signed size beside the symbol [mm] and what it means outside and inside."""

    size_mm: float
    state: str
    external: str
    internal: str

    @property
    def text(self) -> str:
        """The size as it is written beside the symbol, with its sign."""
        return f"{self.size_mm:+g}"


def recommended_edges() -> tuple[Edge, ...]:
    """Recommended edge sizes, most material left on first.

    Parameters
    ----------
    None

    Returns
    -------
    tuple of Edge
        Size [mm] and meaning

    Examples
    --------
    >>> [edge.text for edge in recommended_edges()][4:10]
    ['+0.1', '+0.05', '+0.02', '-0.02', '-0.05', '-0.1']

    References
    ----------
    .. [1] ISO 13715:2017 (from memory).
    """
    return tuple(
        Edge(float(size), row["state"], row["external"], row["internal"])
        for row in _table().figures["states"]
        for size in row["sizes"]
    )


def edge_of_size(size_mm: float) -> Edge:
    """What an edge size beside the symbol means.

    Parameters
    ----------
    size_mm : float
        Signed size, from -2.5 to +2.5, not 0: plus leaves material on, minus
        takes it off [mm]

    Returns
    -------
    Edge
        The recommended size nearest to it and its meaning [mm]

    Raises
    ------
    Refusal
        If the size is 0 or beyond the recommended sizes.

    Examples
    --------
    >>> edge_of_size(-0.3).external, edge_of_size(-0.3).internal
    ('broken edge, free of burr', 'undercut')

    References
    ----------
    .. [1] ISO 13715:2017 (from memory).
    """
    if size_mm == 0 or not abs(size_mm) <= 2.5:
        raise Refusal(
            f"The edge size is {size_mm:g} mm; ISO 13715 recommends sizes up to 2.5 mm with a sign.",
            "Dimension a larger chamfer or radius by itself.",
        )
    same_side = [edge for edge in recommended_edges() if edge.size_mm * size_mm > 0]
    return min(same_side, key=lambda edge: abs(edge.size_mm - size_mm))


def source() -> Source:
    """Where the figures of this module come from.

    Parameters
    ----------
    None

    Returns
    -------
    Source
        Title, year and how it was checked [-]

    Examples
    --------
    >>> source().title
    'ISO 13715'

    References
    ----------
    .. [1] The [source] head of edges.toml.
    """
    return _table().source


@cache
def _table() -> Table:
    return read_table(Path(__file__).with_name("edges.toml"))
