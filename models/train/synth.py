"""Let one engine read random training texts.

    python synth.py ENGINE COUNT SEED FOLDER [GRAMMAR.txt]

Writes FLAC files (16 kHz, 16 bit) and ``texts.ENGINE.SEED.tsv`` with file, voice and words. Engines: flite, espeak, festival, rhvoice, joe.
GRAMMAR.txt as in sentences.py. The same seed gives the same texts and voices. Kokoro has its own two programs, kokoro_texts.py and kokoro_speak.py.
"""
import random
import sys
from pathlib import Path

import numpy as np
import soundfile as sf

import voices
from sentences import Sentences

SHORTEST, LONGEST = 0.2, 12.0


def main():
    engine, count, seed, folder = sys.argv[1], int(sys.argv[2]), int(sys.argv[3]), Path(sys.argv[4])
    folder.mkdir(parents=True, exist_ok=True)
    r = random.Random(seed)
    texts, speak = Sentences(*sys.argv[5:6]), voices.speaker(engine)
    with open(folder / f"texts.{engine}.{seed}.tsv", "w", encoding="utf-8") as index:
        for number in range(count):
            words, voice = texts.draw(r), voices.training_voice(engine, r)
            try:
                samples = speak(voice, words, r)
            except Exception as failure:  # one failing text must not end hours of synthesis
                print(f"{engine} {voice} could not say {' '.join(words)!r}: {failure}", file=sys.stderr, flush=True)
                continue
            if not SHORTEST <= len(samples) / voices.RATE <= LONGEST:
                continue
            name = f"{engine}_{seed}_{number:05d}.flac"
            level = np.abs(samples).max() + 1e-6
            sf.write(folder / name, (samples / level * 0.5).astype(np.float32), voices.RATE, subtype="PCM_16")
            index.write(f"{name}\t{engine}-{voice}\t{' '.join(words)}\n")
            index.flush()


if __name__ == "__main__":
    main()
