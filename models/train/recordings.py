"""Bring recordings of people into the layout of the synthetic voices.

    python recordings.py digits GIT_FOLDER OUT      Free Spoken Digit Dataset, four training speakers and two held-out ones
    python recordings.py orders GIT_FOLDER OUT      spoken coffee orders (Apache-2.0), one half as babble, the other half for tests
    python recordings.py words GIT_FOLDER OUT       single words of hundreds of people (Apache-2.0), for training

GIT_FOLDER is a clone (bare or not). Held-out material goes to OUT/held, the rest to OUT/train.
"""
import io
import subprocess
import sys
from pathlib import Path

import numpy as np
import soundfile as sf

from voices import RATE, to_model_rate

DIGITS = "zero one two three four five six seven eight nine".split()
HELD_OUT_SPEAKERS = {"theo", "nicolas"}
FRAME, MARGIN = 320, 12
SPOKEN_WORDS = ("computer", "smart mirror", "view glass")


def git_files(repository, prefix):
    def run(*arguments):
        return subprocess.run(["git", "-C", repository, *arguments], check=True, capture_output=True).stdout

    for line in run("ls-tree", "-r", "HEAD", prefix).decode().splitlines():
        about, path = line.split("\t")
        if path.strip('"').endswith(".wav"):
            content = run("cat-file", "blob", about.split()[2])
            if content:
                yield Path(path), content


def read(content):
    samples, rate = sf.read(io.BytesIO(content))
    samples = to_model_rate(samples if samples.ndim == 1 else samples.mean(1), rate)
    return (samples / (np.abs(samples).max() + 1e-6) * 0.5).astype(np.float32)


def trimmed(samples):
    """Without most of the silence around the words."""
    frames = np.abs(samples[: len(samples) // FRAME * FRAME]).reshape(-1, FRAME).mean(1)
    loud = np.flatnonzero(frames > 0.12 * frames.max())
    return samples[max(0, (loud[0] - MARGIN) * FRAME) : (loud[-1] + MARGIN) * FRAME]


def digits(repository, out):
    for path, content in git_files(repository, "recordings"):
        digit, speaker, _ = path.stem.split("_")
        kind = "held" if speaker in HELD_OUT_SPEAKERS else "train"
        yield kind, f"{path.stem}.flac", f"fsdd-{speaker}", DIGITS[int(digit)], read(content)


def orders(repository, out):
    for place, (path, content) in enumerate(sorted(git_files(repository, "data/speech/clean"))):
        kind = "held" if place % 2 else "train"
        yield kind, f"order_{place:03d}.flac", "orders", "", read(content)


def single_words(repository, out):
    for spoken in SPOKEN_WORDS:
        for path, content in git_files(repository, f"audio/{spoken}"):
            yield "train", f"{spoken.replace(' ', '_')}_{path.stem}.flac", "people", spoken, trimmed(read(content))


def main():
    what, repository, out = sys.argv[1], sys.argv[2], Path(sys.argv[3])
    indexes = {}
    for kind, name, speaker, words, samples in {"digits": digits, "orders": orders, "words": single_words}[what](repository, out):
        folder = out / kind
        if kind not in indexes:
            folder.mkdir(parents=True, exist_ok=True)
            indexes[kind] = open(folder / "texts.0.tsv", "w", encoding="utf-8")
        sf.write(folder / name, samples, RATE, subtype="PCM_16")
        indexes[kind].write(f"{name}\t{speaker}\t{words}\n")
    for index in indexes.values():
        index.close()


if __name__ == "__main__":
    main()
