"""A small reader of JSGF grammars: draws sentences from one and turns one into a finite-state acceptor.

Handles weights, groups, options and rule references; no recursion, repeats or tags, which the grammar does not use.
"""
import math
import re
from dataclasses import dataclass
from pathlib import Path

DEFAULT_PATH = Path(__file__).with_name("speech.jsgf")


@dataclass(frozen=True)
class Word:
    text: str


@dataclass(frozen=True)
class Rule:
    name: str


@dataclass(frozen=True)
class Sequence:
    parts: tuple


@dataclass(frozen=True)
class Choice:
    options: tuple
    weights: tuple


SILENT = Sequence(())


class Parser:
    """Turns the right side of one rule into a tree. Used by one thread at a time."""

    def __init__(self, text):
        self.tokens = re.findall(r"<[^>]+>|/[\d.]+/|[()\[\]|]|[^\s()\[\]|</]+", text)
        self.place = 0

    def peek(self):
        return self.tokens[self.place] if self.place < len(self.tokens) else None

    def take(self):
        self.place += 1
        return self.tokens[self.place - 1]

    def choice(self):
        options, weights = [], []
        while True:
            weight = 1.0
            if self.peek() and self.peek().startswith("/"):
                weight = float(self.take().strip("/"))
            options.append(self.sequence())
            weights.append(weight)
            if self.peek() != "|":
                break
            self.take()
        return options[0] if len(options) == 1 else Choice(tuple(options), tuple(weights))

    def sequence(self):
        parts = []
        while self.peek() and self.peek() not in ")]|":
            parts.append(self.item())
        return parts[0] if len(parts) == 1 else Sequence(tuple(parts))

    def item(self):
        token = self.take()
        if token in "([":
            weight = float(self.take().strip("/")) if self.peek().startswith("/") and token == "[" else 1.0
            inner = self.choice() if token == "[" else self.group(token)
            self.take()
            return Choice((inner, SILENT), (weight, 1.5)) if token == "[" else inner
        return Rule(token.strip("<>")) if token.startswith("<") else Word(token)

    def group(self, _):
        return self.choice()


class Grammar:
    """The rules of one JSGF file. Immutable."""

    def __init__(self, text):
        body = re.sub(r"/\*.*?\*/", " ", text, flags=re.S)
        rules = re.findall(r"(public\s+)?<([\w]+)>\s*=\s*([^;]*);", body)
        self.rules = {name: Parser(right).choice() for _, name, right in rules}
        self.start = next(name for public, name, _ in rules if public)

    @staticmethod
    def read(path=DEFAULT_PATH):
        return Grammar(Path(path).read_text(encoding="utf-8"))

    def words(self):
        found = set()

        def visit(node):
            if isinstance(node, Word):
                found.add(node.text)
            for part in getattr(node, "parts", ()) + getattr(node, "options", ()):
                visit(part)

        for node in self.rules.values():
            visit(node)
        return found

    def draw(self, random, rule=None):
        """Return one random sentence as a list of words."""
        return self._draw(self.rules[rule or self.start], random)

    def _draw(self, node, random):
        if isinstance(node, Word):
            return [node.text]
        if isinstance(node, Rule):
            return self._draw(self.rules[node.name], random)
        if isinstance(node, Sequence):
            return [word for part in node.parts for word in self._draw(part, random)]
        return self._draw(random.choices(node.options, node.weights)[0], random)

    def arcs(self, first_state=0):
        """Return (arcs, start, end): arcs are (from, to, word or None, cost); costs are -ln of the choice's share."""
        arcs = []
        states = [first_state + 2]

        def new_state():
            states[0] += 1
            return states[0] - 1

        def build(node, source, target, cost=0.0):
            if isinstance(node, Word):
                arcs.append((source, target, node.text, cost))
            elif isinstance(node, Rule):
                build(self.rules[node.name], source, target, cost)
            elif isinstance(node, Choice):
                total = sum(node.weights)
                for option, weight in zip(node.options, node.weights):
                    build(option, source, target, cost - math.log(weight / total))
            elif not node.parts:
                arcs.append((source, target, None, cost))
            else:
                state = source
                for place, part in enumerate(node.parts):
                    following = target if place == len(node.parts) - 1 else new_state()
                    build(part, state, following, cost if place == 0 else 0.0)
                    state = following

        build(self.rules[self.start], first_state, first_state + 1)
        return arcs, first_state, first_state + 1
