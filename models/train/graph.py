"""Write the graph folder of a Vosk model: HCLr.fst from the lexicon, a word loop as Gr.fst, words.txt and phone tables.

    python graph.py OUT_GRAPH_FOLDER

Needs OpenFst's command-line tools (Debian: libfst-tools); the look-ahead conversion renumbers the words, so words.txt is written last.
"""
import os
import subprocess
import sys
import tempfile
from pathlib import Path

import numpy as np

from kaldi_model import KALDI_PHONES, POSITIONS, kaldi_phone
from lexicon import PHONES, SILENCE, UNKNOWN, UNKNOWN_WORD, load_lexicon, numbers

SILENCE_COST = 0.7
UNKNOWN_COST = 3.0
START, LOOP, AFTER_WORD = 0, 1, 2


class PrefixTree:
    """Transition-id arcs of all words, sharing beginnings. Used by one thread at a time."""

    def __init__(self):
        self.arcs, self.states, self.shared = [], 3, {}

    def phone(self, source, phone, word=0, cost=0.0):
        target = self.states
        self.states += 1
        self.arcs.append((source, target, 2 * phone, word, cost))
        self.arcs.append((target, target, 2 * phone - 1, 0, 0.0))
        return target

    def skip(self, source, target, cost=0.0):
        self.arcs.append((source, target, 0, 0, cost))

    def word(self, pronunciation, word):
        node, prefix = LOOP, ()
        for place, phone in enumerate(pronunciation):
            last = place == len(pronunciation) - 1
            position = "S" if len(pronunciation) == 1 else "B" if place == 0 else "E" if last else "I"
            number = kaldi_phone(phone, position)
            if last:
                self.skip(self.phone(node, number, word), AFTER_WORD)
                return
            prefix += (number,)
            if prefix not in self.shared:
                self.shared[prefix] = self.phone(node, number)
            node = self.shared[prefix]


def tree_of(words, lexicon):
    tree = PrefixTree()
    silence = kaldi_phone(SILENCE, "S")
    tree.skip(tree.phone(START, silence), LOOP)
    tree.skip(START, LOOP)
    tree.skip(tree.phone(AFTER_WORD, silence, cost=SILENCE_COST), LOOP)
    tree.skip(AFTER_WORD, LOOP, SILENCE_COST)
    for number, word in enumerate(words, 1):
        for pronunciation in lexicon.get(word, ()):
            tree.word(numbers(pronunciation), number)
    tree.skip(tree.phone(LOOP, kaldi_phone(UNKNOWN_WORD, "S"), words.index(UNKNOWN) + 1, UNKNOWN_COST), AFTER_WORD)
    return tree


def lookahead_library():
    found = sorted(Path("/usr/lib").glob("*/libfstlookahead.so.*"))
    if not found:
        raise FileNotFoundError("libfstlookahead not found: install Debian's libfst-tools")
    return str(found[0])


def shell(command, **environment):
    subprocess.run(["bash", "-c", "set -o pipefail; " + command], check=True, env=os.environ | environment)


def write_graph(folder):
    folder = Path(folder)
    (folder / "phones").mkdir(parents=True, exist_ok=True)
    lexicon = load_lexicon()
    words = sorted(lexicon) + [UNKNOWN]
    tree = tree_of(words, lexicon)
    with tempfile.TemporaryDirectory() as work:
        with open(f"{work}/hcl.txt", "w") as file:
            file.writelines(f"{a} {b} {i} {o} {w:g}\n" for a, b, i, o, w in sorted(tree.arcs))
            file.write(f"{LOOP} 0\n{AFTER_WORD} 0\n")
        with open(f"{work}/g.txt", "w") as file:
            file.writelines(f"0 0 {n} {n} {np.log(len(words)):g}\n" for n in range(1, len(words) + 1))
            file.write("0 0\n")
        shell(f"fstcompile {work}/hcl.txt | fstarcsort --sort_type=olabel > {work}/hcl.fst")
        shell(
            f"fstconvert --fst_type=olabel_lookahead --save_relabel_opairs={work}/new.txt {work}/hcl.fst {folder}/HCLr.fst",
            LD_PRELOAD=lookahead_library(),
        )
        shell(
            f"fstcompile {work}/g.txt | fstrelabel --relabel_ipairs={work}/new.txt --relabel_opairs={work}/new.txt"
            f" | fstarcsort --sort_type=ilabel | fstconvert --fst_type=const > {folder}/Gr.fst"
        )
        renumbered = dict(map(int, line.split()) for line in open(f"{work}/new.txt") if line.strip())
    (folder / "words.txt").write_text("<eps> 0\n" + "".join(f"{w} {renumbered.get(n, n)}\n" for n, w in enumerate(words, 1)))
    (folder / "disambig_tid.int").write_text(f"{2 * KALDI_PHONES + 1}\n")
    kinds = dict(zip(POSITIONS, ("begin", "internal", "end", "singleton")))
    rows = [f"{n} {kinds[POSITIONS[(n - 3) % 4]]}\n" for n in range(3, KALDI_PHONES + 1)]
    (folder / "phones" / "word_boundary.int").write_text("1 nonword\n2 singleton\n" + "".join(rows))
    names = [f"{phone}_{position} {kaldi_phone(n, position)}\n" for n, phone in enumerate(PHONES, 1) for position in POSITIONS]
    (folder / "phones.txt").write_text("<eps> 0\nSIL 1\nSPN 2\n" + "".join(names))
    return len(words)


if __name__ == "__main__":
    print(write_graph(sys.argv[1]), "words")
