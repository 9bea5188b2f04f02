"""Hears recordings with pocketsphinx and the program's own grammar: pocketsphinx.py GRAPH.fsg OUT.tsv FOLDER_OF_WAVS

Needs Debian's pocketsphinx and pocketsphinx-en-us. GRAPH.fsg comes from PocketsphinxComparison (test sources), which also judges
OUT.tsv (file, words). Words of grammar/lexicon.txt that pocketsphinx's own dictionary lacks are added with their pronunciations there;
the dictionary is cut to the words of the grammar. Prints the share of real time that the recogniser itself states.
"""

import pathlib
import re
import subprocess
import sys
import tempfile

MODEL = pathlib.Path("/usr/share/pocketsphinx/model/en-us")
LEXICON = pathlib.Path(__file__).resolve().parents[2] / "grammar" / "lexicon.txt"


def dictionary(words):
    """Lines of pocketsphinx's own dictionary for the words, and of our lexicon for those that it lacks."""
    own = {}
    for line in (MODEL / "cmudict-en-us.dict").read_text().splitlines():
        name = re.sub(r"\(\d+\)$", "", line.split(" ", 1)[0])
        if name in words:
            own.setdefault(name, []).append(line)
    ours = dict(line.split("\t") for line in LEXICON.read_text().splitlines() if "\t" in line and not line.startswith("#"))
    lines, added = [x for group in own.values() for x in group], sorted(words - own.keys())
    for word in added:
        for number, phones in enumerate(ours[word].split("|"), 1):
            lines.append(f"{word}{f'({number})' if number > 1 else ''} {phones.strip()}")
    return lines, added


def main(graph, out, folder):
    words = {line.split()[4] for line in graph.read_text().splitlines() if line.startswith("TRANSITION") and len(line.split()) == 5}
    lines, added = dictionary(words)
    print(len(words), "words, added:", " ".join(added))
    names = sorted(p.stem for p in folder.glob("*.wav"))
    with tempfile.TemporaryDirectory() as work:
        work = pathlib.Path(work)
        (work / "words.dict").write_text("\n".join(lines) + "\n")
        (work / "list").write_text("\n".join(names) + "\n")
        options = ["-hmm", MODEL / "en-us", "-dict", work / "words.dict", "-fsg", graph, "-ctl", work / "list", "-cepdir", folder]
        options += ["-cepext", ".wav", "-adcin", "yes", "-adchdr", "44", "-hyp", work / "hyp", "-logfn", work / "log"]
        subprocess.run(["pocketsphinx_batch", *map(str, options)], check=True)
        rows = [re.fullmatch(r"(.*?)\s*\((\S+) -?\d+\)", line).groups() for line in (work / "hyp").read_text().splitlines()]
        print(*re.findall(r"AVERAGE .*", (work / "log").read_text())[-1:])
    out.write_text("".join(f"{name}.wav\t{heard}\n" for heard, name in rows))


main(*map(pathlib.Path, sys.argv[1:4]))
