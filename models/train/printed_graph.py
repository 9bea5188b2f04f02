"""The program's own grammar graph as OpenFst prints it, and sentences drawn from it.

    fstprint --isymbols=words.txt --osymbols=words.txt Gr.fst > grammar.txt

``Gr.fst`` and ``words.txt`` lie in the folder that the program fits to its grammar, ``~/.cache/arcsay/models/fitted-*/graph``.
"""
from collections import Counter
from dataclasses import dataclass
from pathlib import Path

NOTHING = "<eps>"
ENDING = 0.5


@dataclass(frozen=True)
class PrintedGraph:
    """States are numbers, costs natural logarithms. ``arcs``: (from, to, word, cost); ``silent``: from -> [(to, cost)]; ``ends``: state -> cost."""

    start: int
    arcs: tuple
    silent: dict
    ends: dict

    @staticmethod
    def read(path):
        return PrintedGraph.parse(Path(path).read_text(encoding="utf-8").splitlines())

    @staticmethod
    def parse(lines):
        arcs, silent, ends, start = [], {}, {}, None
        for fields in map(str.split, lines):
            start = int(fields[0]) if start is None else start
            if len(fields) < 4:
                ends[int(fields[0])] = float(fields[1]) if len(fields) > 1 else 0.0
                continue
            source, target, cost = int(fields[0]), int(fields[1]), float(fields[4]) if len(fields) > 4 else 0.0
            if fields[2] == NOTHING:
                silent.setdefault(source, []).append((target, cost))
            else:
                arcs.append((source, target, fields[2], cost))
        return PrintedGraph(start, tuple(arcs), silent, ends)


class Walks:
    """Draws sentences that keep to the grammar, ways seldom taken first, so that all are taken sooner or later. Used by one thread at a time."""

    def __init__(self, graph):
        around = {target for targets in graph.silent.values() for target, _ in targets}
        self.start, self.ends, self.ways, self.taken = graph.start, graph.ends, {}, Counter()
        for source, target, word, _ in graph.arcs:
            if target not in around:
                self.ways.setdefault(source, []).append((source, target, word))

    def draw(self, r):
        words, state = [], self.start
        while not words or state not in self.ends or (state in self.ways and r.random() > ENDING):
            ways = self.ways[state]
            way = r.choices(ways, [1 / (1 + self.taken[w]) for w in ways])[0]
            self.taken[way] += 1
            words.append(way[2])
            state = way[1]
        return words
