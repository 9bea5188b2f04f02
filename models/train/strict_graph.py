"""Compile the grammar into Gr.fst beside a loop over every word that swallows other speech.

    python strict_graph.py MODEL_FOLDER ENTER_COST WORD_COST OUT/Gr.fst [FILE.jsgf]

The loop costs ENTER_COST once and WORD_COST a word; silence alone is allowed. Needs OpenFst's command-line tools.
"""
import subprocess
import sys
import tempfile
from pathlib import Path

from graph import shell
from jsgf import DEFAULT_PATH, Grammar


def word_numbers(model):
    return dict((w, int(n)) for w, n in (line.split() for line in open(f"{model}/graph/words.txt", encoding="utf-8")) if w != "<eps>")


def minimal_grammar(numbers, grammar, work):
    """Text lines of the grammar's smallest automaton."""
    arcs, start, end = grammar.arcs()
    arcs.sort(key=lambda a: a[0] != start)
    with open(f"{work}/g.txt", "w") as file:
        for source, target, word, cost in arcs:
            number = numbers[word] if word else 0
            file.write(f"{source} {target} {number} {number} {cost:.4f}\n")
        file.write(f"{end} 0\n")
    shell(f"fstcompile {work}/g.txt | fstrmepsilon | fstdeterminize | fstminimize | fstprint > {work}/m.txt")
    return Path(f"{work}/m.txt").read_text().splitlines()


def write_strict_graph(model, enter_cost, word_cost, out, path=DEFAULT_PATH):
    numbers = word_numbers(model)
    with tempfile.TemporaryDirectory() as work:
        lines = minimal_grammar(numbers, Grammar.read(path), work)
        start = lines[0].split()[0]
        loop = 1 + max(int(state) for line in lines for state in line.split()[: 2 if len(line.split()) > 2 else 1])
        for number in numbers.values():
            lines.append(f"{start} {loop} {number} {number} {enter_cost + word_cost}")
            lines.append(f"{loop} {loop} {number} {number} {word_cost}")
        lines += [f"{loop} 0", f"{start} 0"]
        Path(f"{work}/all.txt").write_text("\n".join(lines) + "\n")
        shell(f"fstcompile {work}/all.txt | fstarcsort --sort_type=ilabel | fstconvert --fst_type=const > {out}")


if __name__ == "__main__":
    write_strict_graph(sys.argv[1], float(sys.argv[2]), float(sys.argv[3]), sys.argv[4], *sys.argv[5:6])
