"""The grammar of an expression: + - * / ( ), a few functions, names of sizes.

    sum     = product { (+|-) product }
    product = signed { (*|/) signed }
    signed  = [+|-] atom
    atom    = figure | name | function ( sum {, sum} ) | ( sum )

There are no powers, no attributes and no other calls, so that every text ends
in a small tree or in a refusal with its column.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from tommybar.design.quantities import UNITS, Dims
from tommybar.design.tokens import Token, cut, wrong
from tommybar.refusals import nearest

DEEPEST_BRACKET = 25
FUNCTIONS = {
    "min": (1, 20),
    "max": (1, 20),
    "round": (1, 2),
    "sqrt": (1, 1),
    "sin": (1, 1),
    "cos": (1, 1),
    "tan": (1, 1),
    "asin": (1, 1),
    "acos": (1, 1),
    "atan": (1, 1),
}
"""Functions, with the least and the most figures that they take."""


@dataclass(frozen=True)
class Leaf:
    """A figure in house units; ``dims`` None is a bare one."""

    value: float
    dims: Dims | None
    column: int


@dataclass(frozen=True)
class Name:
    """The name of a size."""

    name: str
    column: int


@dataclass(frozen=True)
class Call:
    """A function of one or more expressions."""

    function: str
    arguments: tuple[Tree, ...]
    column: int


@dataclass(frozen=True)
class Pair:
    """Two expressions with a sign between them; the column is the sign's."""

    sign: str
    left: Tree
    right: Tree
    column: int


Tree = Leaf | Name | Call | Pair


@lru_cache(maxsize=4096)
def parse(text: str) -> Tree:
    """The tree of an expression, or a refusal with the column.

    >>> parse("2 * web").sign
    '*'
    """
    return _Parser(cut(text)).whole()


def names_in(tree: Tree) -> Iterator[Name]:
    """Every name of a size in the tree, from left to right."""
    if isinstance(tree, Name):
        yield tree
    elif isinstance(tree, Call):
        for one in tree.arguments:
            yield from names_in(one)
    elif isinstance(tree, Pair):
        yield from names_in(tree.left)
        yield from names_in(tree.right)


def refuse_size_name(name: str) -> str:
    """Why ``name`` cannot be the name of a size, or an empty string."""
    if not name.isascii() or not name.isidentifier():
        return "A size is named with letters, digits and underlines, a letter first."
    if name in FUNCTIONS or name in UNITS:
        return f'"{name}" is taken by a function or a unit.'
    return ""


class _Parser:
    def __init__(self, tokens: list[Token]) -> None:
        self.tokens, self.at, self.depth = tokens, 0, 0

    @property
    def token(self) -> Token:
        return self.tokens[self.at]

    def take(self, *signs: str) -> Token | None:
        """The next token when it is one of these signs, else None."""
        token = self.token
        if token.kind == "sign" and token.text in signs:
            self.at += 1
            return token
        return None

    def whole(self) -> Tree:
        if self.token.kind == "end":
            raise wrong(1, "The expression is empty.", "Give a figure or the name of a size.")
        tree = self.sum()
        token = self.token
        if token.kind != "end":
            if token.text == ",":
                raise wrong(token.column, "A comma stands here.", "Write decimals with a point: 0.5.")
            if token.text == ")":
                raise wrong(token.column, "This bracket closes nothing.", "Take it out, or open one before.")
            raise wrong(
                token.column, f'"{token.text}" follows without a sign.', "A sign is missing before it."
            )
        return tree

    def sum(self) -> Tree:
        tree = self.product()
        while sign := self.take("+", "-"):
            self.refuse_second_sign()
            tree = Pair(sign.text, tree, self.product(), sign.column)
        return tree

    def product(self) -> Tree:
        tree = self.signed()
        while sign := self.take("*", "/"):
            if sign.text == "/" and self.token.fraction:
                remedy = f"Write ({self.token.text}) if it divides by the fraction."
                raise wrong(self.token.column, f'"/ {self.token.text}" can be read two ways.', remedy)
            tree = Pair(sign.text, tree, self.signed(), sign.column)
        return tree

    def signed(self) -> Tree:
        sign = self.take("+", "-")
        if not sign:
            return self.atom()
        self.refuse_second_sign()
        tree = self.atom()
        return Pair("*", Leaf(-1.0, None, sign.column), tree, sign.column) if sign.text == "-" else tree

    def refuse_second_sign(self) -> None:
        if self.token.kind == "sign" and self.token.text in "+-":
            raise wrong(self.token.column, "Two signs stand side by side.", "Bracket the second: a - (-b).")

    def atom(self) -> Tree:
        token = self.token
        self.at += 1
        if token.kind == "figure":
            return Leaf(token.value, token.dims, token.column)
        if token.kind == "name":
            if self.token.kind == "sign" and self.token.text == "(":
                return self.call(token)
            if token.text in FUNCTIONS:
                raise wrong(token.column, f'"{token.text}" wants brackets.', f"Write {token.text}(...).")
            return Name(token.text, token.column)
        if token.text == "(":
            return self.bracketed(token)[0]
        if token.kind == "end":
            raise wrong(token.column, "The expression breaks off here.", "A figure or a name is missing.")
        raise wrong(token.column, f'"{token.text}" stands where a figure should.', "Give a figure or a name.")

    def call(self, name: Token) -> Tree:
        if name.text not in FUNCTIONS:
            near = nearest(name.text, FUNCTIONS) or f"There are {', '.join(FUNCTIONS)}."
            raise wrong(name.column, f'There is no function "{name.text}".', near)
        bracket = self.token
        self.at += 1
        arguments = self.bracketed(bracket, many=True)
        least, most = FUNCTIONS[name.text]
        if not least <= len(arguments) <= most:
            want = str(least) if least == most else f"{least} to {most}"
            raise wrong(name.column, f"{name.text} takes {want} figures; it has {len(arguments)}.")
        return Call(name.text, tuple(arguments), name.column)

    def bracketed(self, bracket: Token, many: bool = False) -> list[Tree]:
        self.depth += 1
        if self.depth > DEEPEST_BRACKET:
            what = f"Brackets are nested {self.depth} deep; at most {DEEPEST_BRACKET}."
            raise wrong(bracket.column, what, "Name a part of the expression.")
        trees = [self.sum()]
        while many and self.take(","):
            trees.append(self.sum())
        if not self.take(")"):
            if self.token.text == ",":
                raise wrong(self.token.column, "A comma stands here.", "Write decimals with a point: 0.5.")
            raise wrong(bracket.column, "This bracket is not closed.", 'Add ")".')
        self.depth -= 1
        return trees
