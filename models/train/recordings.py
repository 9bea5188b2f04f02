"""Bring recordings of people into the layout of the synthetic voices.

    python recordings.py digits GIT_FOLDER OUT      Free Spoken Digit Dataset, four training speakers and two held-out ones
    python recordings.py orders GIT_FOLDER OUT      spoken coffee orders (Apache-2.0), one half for training, the other half for tests
    python recordings.py words GIT_FOLDER OUT       single words of hundreds of people (Apache-2.0), for training
    python recordings.py wakes GIT_FOLDER OUT       single words of a community (public domain), for training
    python recordings.py prompts FOLDER OUT         telephone prompts of one speaker (CC BY-SA 3.0), as Debian installs them, for training
    python recordings.py an4 GIT_FOLDER OUT         letters and numbers of 84 people (free for any purpose), in the corpus' own halves
    python recordings.py commands GIT_FOLDER OUT    single words of Speech Commands (CC BY 4.0), split by speaker as its README does

GIT_FOLDER is a clone (bare or not). Held-out material goes to OUT/held, the rest to OUT/train. The orders come with what was ordered, not
with its words: pocketsphinx, which knows people's voices, finds the words among all ways of saying that order. ``prompts`` needs ffmpeg.
"""
import gzip
import io
import itertools
import json
import re
import subprocess
import sys
import tempfile
from pathlib import Path

import numpy as np
import soundfile as sf

from voices import RATE, to_model_rate
from voices_held_out import is_held_out

DIGITS = "zero one two three four five six seven eight nine".split()
FRAME, MARGIN = 320, 12
SPOKEN_WORDS = ("computer", "smart mirror", "view glass")
WAKES = {"computer/en": "computer", "athena/en": "athena", "amelia/en": "amelia", "heychatterbox/en-us": "hey chatterbox"}
ASKING = "brew|can i get|can i have|i want|get me|give me|i'd like|make me|may i have"
PROMPT_TEXTS = "/usr/share/doc/asterisk-core-sounds-en/core-sounds-en.txt.gz"
LONGEST_PROMPT = 8.0
COMMAND_FILE = re.compile(r"(?:^|[/_])([a-z]+)[/_]([0-9a-f]{8})_nohash_(\d+)\.wav")
QUIETEST_COMMAND = 0.02
AN4_PARTS = ("train", "test")


def git(repository, *arguments):
    return subprocess.run(["git", "-C", repository, *arguments], check=True, capture_output=True).stdout


def git_files(repository, prefix):
    for line in git(repository, "ls-tree", "-r", "HEAD", prefix).decode().splitlines():
        about, path = line.split("\t")
        if path.strip('"').endswith(".wav"):
            content = git(repository, "cat-file", "blob", about.split()[2])
            if content:
                yield Path(path), content


def decoded(content):
    samples, rate = sf.read(io.BytesIO(content))
    return to_model_rate(samples if samples.ndim == 1 else samples.mean(1), rate)


def levelled(samples):
    return (samples / (np.abs(samples).max() + 1e-6) * 0.5).astype(np.float32)


def read(content):
    return levelled(decoded(content))


def kind_of(voice):
    return "held" if is_held_out(voice) else "train"


def trimmed(samples):
    """Without most of the silence around the words."""
    frames = np.abs(samples[: len(samples) // FRAME * FRAME]).reshape(-1, FRAME).mean(1)
    loud = np.flatnonzero(frames > 0.12 * frames.max())
    return samples[max(0, (loud[0] - MARGIN) * FRAME) : (loud[-1] + MARGIN) * FRAME]


def digits(repository, out):
    for path, content in git_files(repository, "recordings"):
        digit, speaker, _ = path.stem.split("_")
        voice = f"fsdd-{speaker}"
        yield kind_of(voice), f"{path.stem}.flac", voice, DIGITS[int(digit)], read(content)


def orders(repository, out):
    from pocketsphinx import Decoder

    labels = json.loads(git(repository, "show", "HEAD:data/label/label.json"))
    decoder = Decoder(samprate=RATE, loglevel="FATAL")
    for word, phones in (("americano", "AH M EH R IH K AA N OW"), ("sweetener", "S W IY T AH N ER")):
        if decoder.lookup_word(word) is None:
            decoder.add_word(word, phones)
    for place, (path, content) in enumerate(sorted(git_files(repository, "data/speech/clean"))):
        samples, name = read(content), f"order_{place:03d}.flac"
        if place % 2:
            yield "held", name, "orders", "", samples
            continue
        words = found(decoder, order_grammar(labels[path.name]["slots"]), samples)
        if words:
            yield "train", name, "orders", words, samples


def order_grammar(slots):
    """Every way of saying one order, in JSGF."""
    slots = {name: value.strip() for name, value in slots.items()}
    before = [slots[name] for name in ("size", "roast", "numberOfShots") if name in slots]
    after = [slots[name] for name in ("milkAmount", "sugarAmount") if name in slots]
    heads = "|".join(" ".join(order) for order in itertools.permutations(before))
    tails = "|".join("with " + " and ".join(order) for order in itertools.permutations(after)) if after else ""
    return (
        "#JSGF V1.0; grammar order; public <order> = "
        f"[{ASKING}] [a|an] {f'({heads})' if before else ''} {slots['coffeeDrink']} {f'({tails})' if after else ''};"
    )


def found(decoder, grammar, samples):
    decoder.add_jsgf_string("order", grammar)
    decoder.activate_search("order")
    decoder.start_utt()
    decoder.process_raw((samples * 32000).astype(np.int16).tobytes(), full_utt=True)
    decoder.end_utt()
    return decoder.hyp().hypstr if decoder.hyp() else ""


def single_words(repository, out):
    for spoken in SPOKEN_WORDS:
        for path, content in git_files(repository, f"audio/{spoken}"):
            yield "train", f"{spoken.replace(' ', '_')}_{path.stem}.flac", "people", spoken, trimmed(read(content))


def wakes(repository, out):
    for folder, spoken in WAKES.items():
        for path, content in git_files(repository, folder):
            yield "train", f"wake_{path.stem}.flac", "people", spoken, trimmed(read(content))


def prompts(folder, out):
    """Numbers and letters become units that train.py strings together; the rest are short sentences."""
    for line in gzip.open(PROMPT_TEXTS, "rt", encoding="utf-8"):
        name, _, text = line.strip().partition(": ")
        source, words = Path(folder) / f"{name}.g722", plain(text)
        if words and source.exists():
            with tempfile.NamedTemporaryFile(suffix=".wav") as wav:
                subprocess.run(["ffmpeg", "-loglevel", "error", "-y", "-f", "g722", "-i", str(source), wav.name], check=True)
                samples = read(Path(wav.name).read_bytes())
            unit = re.fullmatch(r"digits/\d+|letters/[a-z]", name)
            if len(samples) <= LONGEST_PROMPT * RATE:
                yield "train", f"prompt_{name.replace('/', '_')}.flac", "units" if unit else "prompts", words, trimmed(samples)


def an4(repository, out):
    said = {}
    for part in AN4_PARTS:
        for line in git(repository, "show", f"HEAD:etc/an4_{part}.transcription").decode().splitlines():
            words, name = re.fullmatch(r"(?:<s> )?(.*?)(?: </s>)? \((\S+)\)", line).groups()
            said[name] = words.lower()
    for path, content in git_files(repository, "wav"):
        voice = f"an4-{path.stem.split('-')[1]}"
        yield kind_of(voice), f"an4_{path.stem}.flac", voice, said[path.stem], trimmed(read(content))


def commands(repository, out):
    for path, content in git_files(repository, "."):
        found_name = COMMAND_FILE.search(str(path))
        if found_name:
            word, speaker, number = found_name.groups()
            voice, samples = f"commands-{speaker}", decoded(content)
            if np.abs(samples).max() > QUIETEST_COMMAND:
                yield kind_of(voice), f"command_{word}_{speaker}_{number}.flac", voice, word, trimmed(levelled(samples))


def plain(text):
    """The words of a prompt, or nothing where it has signs whose reading is uncertain."""
    text = re.sub(r"\b\d\b", lambda digit: DIGITS[int(digit[0])], re.sub(r"\s*\[.\]$", "", text.lower()))
    text = re.sub(r"[.,;:!?\"]", " ", text).replace("-", " ")
    return "" if re.search(r"[^a-z' ]", text) else " ".join(text.split())


MAKERS = {"digits": digits, "orders": orders, "words": single_words, "wakes": wakes, "prompts": prompts, "an4": an4, "commands": commands}


def main():
    what, repository, out = sys.argv[1], sys.argv[2], Path(sys.argv[3])
    indexes = {}
    for kind, name, speaker, words, samples in MAKERS[what](repository, out):
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
