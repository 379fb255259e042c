"""An address as a QR code, for the camera of a tablet or a phone: as a picture of the page and as lines of a terminal.

It holds the address and nothing else: the code that lets a machine in is
read off the PC and typed.
"""

from __future__ import annotations

from html import escape

QUIET = 4  # light modules round the code (ISO/IEC 18004, from memory)
INK_ON_PAPER = "\x1b[30;107m"  # a terminal's own black on its own bright white
PLAIN = "\x1b[0m"
HALVES = {(0, 0): " ", (1, 0): "▀", (0, 1): "▄", (1, 1): "█"}  # upper and lower module of a letter


def modules_of(address: str) -> tuple[tuple[int, ...], ...]:
    """The code's modules in rows, 1 for dark, its quiet zone left out.

    Examples
    --------
    >>> rows = modules_of("http://192.168.1.20:8700/")
    >>> len(rows), len(rows[0]), rows[0][:7]
    (25, 25, (1, 1, 1, 1, 1, 1, 1))
    """
    import segno

    code = segno.make_qr(address, error="m", boost_error=False)
    return tuple(tuple(int(one) for one in row) for row in code.matrix)


def picture_of(address: str) -> str:
    """The code as SVG, dark on light by day and by night."""
    rows = modules_of(address)
    side = len(rows) + 2 * QUIET
    dark = "".join(
        f"M{x + QUIET} {y + QUIET}h1v1h-1z" for y, row in enumerate(rows) for x, one in enumerate(row) if one
    )
    return (
        f'<svg class="qr" viewBox="0 0 {side} {side}" role="img" shape-rendering="crispEdges">'
        f"<title>QR code of {escape(address)}</title>"
        f'<path fill="#fff" d="M0 0h{side}v{side}h-{side}z"/><path fill="#000" d="{dark}"/></svg>'
    )


def lines_of(address: str) -> tuple[str, ...]:
    """The code for a terminal: two rows of modules in each line, black on white whatever the terminal's colours."""
    rows = modules_of(address)
    wide = len(rows) + 2 * QUIET
    blank = (0,) * wide
    edge = (0,) * QUIET
    full = [*[blank] * QUIET, *[(*edge, *row, *edge) for row in rows], *[blank] * QUIET]
    full += [blank] * (len(full) % 2)
    pairs = zip(full[::2], full[1::2], strict=True)
    return tuple(
        INK_ON_PAPER + "".join(HALVES[one] for one in zip(upper, lower, strict=True)) + PLAIN
        for upper, lower in pairs
    )
