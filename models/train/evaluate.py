"""Judge a model on recordings it never heard: right, wrong and accepted, refused; real-time factor; digits of people.

    python evaluate.py MODEL GRAPH.fst SPEECH_FOLDER PEOPLE_FOLDER DIGITS_FOLDER OUT.json [--processes N] [--limit N]

SPEECH_FOLDER comes from eval_clips.py (kinds in and out), PEOPLE_FOLDER and DIGITS_FOLDER are the held-out halves of recordings.py.
Noises of the tests are made here and by nothing in training: water, ventilation, metal, and the talk of held-out people.
A sentence is right if it means the same as what was said (m c p = m p, one oh five = a hundred and five ...), refused if the decoded
words are no sentence of the grammar or the least sure word is under the limit, and else wrong and accepted.
"""
import argparse
import json
import multiprocessing
import shutil
import tempfile
import time
import zlib
from collections import defaultdict
from pathlib import Path

import numpy as np
import soundfile as sf

from jsgf import Grammar

RATE = 16000
SEED = 20
SNRS = (None, 15, 5)
ONES = "zero one two three four five six seven eight nine".split()
TEENS = "ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split()
TENS = "twenty thirty forty fifty sixty seventy eighty ninety".split()
NUMBER = {w: str(n) for n, w in enumerate(ONES + TEENS)} | {w: str(10 * n) for n, w in enumerate(TENS, 2)} | {"oh": "0"}
SAME = {"long": "middle", "small": "little", "flex": "flexion", "hyper": "hyperextension", "ab": "abduction", "degrees": "", "degree": "",
        "millimeters": "millimeter", "centimeters": "centimeter", "inches": "inch", "a": "", "and": "", "thumb": "", "finger": "",
        "negative": "minus", "placement": "", "interphalangeal": "i p", "metacarpophalangeal": "m p", "carpometacarpal": "c m c"}


class Acceptor:
    """Says whether a row of words is a sentence of the grammar. Used by one thread at a time."""

    def __init__(self, grammar):
        arcs, self.start, self.end = grammar.arcs()
        self.steps, self.free = defaultdict(list), defaultdict(list)
        for source, target, word, _ in arcs:
            (self.steps[source, word] if word else self.free[source]).append(target)

    def _closed(self, states):
        waiting = list(states)
        while waiting:
            for target in self.free[waiting.pop()]:
                if target not in states:
                    states.add(target)
                    waiting.append(target)
        return states

    def accepts(self, words):
        states = self._closed({self.start})
        for word in words:
            states = self._closed({t for s in states for t in self.steps[s, word]})
        return self.end in states


def number_value(words):
    """The number that a row of number words says, as a string of digits."""
    if len(words) == 2 and words[0] in TENS and words[1] in ONES[1:]:
        return str(int(NUMBER[words[0]]) + int(NUMBER[words[1]]))
    if "hundred" in words:
        rest = words[words.index("hundred") + 1 :]
        return str(100 + int(number_value(rest) or 0)) if rest else "100"
    if len(words) == 1:
        return NUMBER[words[0]]
    if all(w in ONES + ["oh"] for w in words):
        return "".join(NUMBER[w] for w in words)
    if words[0] == "one":
        return "1" + number_value(words[1:])
    return " ".join(NUMBER[w] for w in words)


def meaning(words):
    """Words reduced to what they mean."""
    words = [w for w in words if w not in ("a", "and")]
    result, run = [], []
    for word in words + [""]:
        if word in NUMBER or word == "hundred":
            run.append(word)
            continue
        if run:
            result.append(number_value(run))
            run = []
        result.append(SAME.get(word, word))
    return " ".join(" ".join(result).replace("m c p", "m p").split())


def rng_of(*key):
    return np.random.default_rng([SEED, zlib.crc32(repr(key).encode())])


def power(x):
    return float(np.sqrt((x**2).mean()) + 1e-9)


def shaped(rng, count, gain):
    spectrum = np.fft.rfft(rng.normal(size=count))
    return np.fft.irfft(spectrum * gain(np.fft.rfftfreq(count, 1 / RATE)), count)


def water(rng, count):
    """A tap: hiss around 1 to 6 kHz that flutters, with bubbles of rising pitch."""
    hiss = shaped(rng, count, lambda f: np.exp(-(((np.log(f + 1) - np.log(2500)) / 0.8) ** 2)))
    flutter = np.abs(np.interp(np.arange(count), np.arange(0, count + 400, 400), rng.normal(1, 0.4, count // 400 + 2)[: len(np.arange(0, count + 400, 400))]))
    sound = hiss / power(hiss) * flutter
    for _ in range(rng.poisson(count / RATE * 12)):
        length, begin, pitch = int(rng.uniform(0.01, 0.05) * RATE), rng.integers(0, count), rng.uniform(400, 2500)
        t = np.arange(length) / RATE
        bubble = np.sin(2 * np.pi * pitch * (t + 8 * t * t)) * np.exp(-t * 80) * rng.uniform(0.5, 3)
        sound[begin : begin + length] += bubble[: max(0, min(length, count - begin))]
    return sound


def ventilation(rng, count):
    t = np.arange(count) / RATE
    low = shaped(rng, count, lambda f: 1 / (1 + (f / 180) ** 1.4))
    return low / power(low) + 0.4 * np.sin(2 * np.pi * 117 * t) + 0.2 * np.sin(2 * np.pi * 234 * t + 1)


def metal(rng, count):
    """Pans and scissors: a few struck, slowly dying sets of inharmonic tones."""
    sound = 0.01 * rng.normal(size=count)
    for _ in range(1 + rng.poisson(count / RATE * 1.5)):
        begin, length = int(rng.integers(0, count)), RATE
        t = np.arange(length) / RATE
        hit = sum(rng.uniform(0.2, 1) * np.sin(2 * np.pi * rng.uniform(800, 7000) * t) * np.exp(-t * rng.uniform(6, 40)) for _ in range(6))
        sound[begin : begin + length] += hit[: max(0, min(length, count - begin))] * rng.uniform(0.3, 1)
    return sound


def clinic_noise(rng, count, people):
    talk = sum(np.resize(np.roll(people[i], rng.integers(0, RATE)), count) / power(people[i]) * rng.uniform(0.4, 1) for i in rng.choice(len(people), 4))
    kinds = [water(rng, count), ventilation(rng, count), metal(rng, count)]
    shares = rng.uniform(0, 1, 3)
    noise = talk / power(talk) + sum(s * k / power(k) for s, k in zip(shares, kinds))
    return noise / power(noise)


def heard(samples, snr, key, people):
    """What the microphone gets: 0.4 s before and 0.8 s after the speech, at a moderate level, as 16-bit samples."""
    rng = rng_of(*key, snr)
    loud = samples[np.abs(samples) > 0.02 * np.abs(samples).max()]
    speech = np.concatenate([np.zeros(int(0.4 * RATE)), samples / (power(loud)) * 1500, np.zeros(int(0.8 * RATE))])
    noise = rng.normal(size=len(speech)) * 3
    if snr is not None:
        noise = noise + clinic_noise(rng, len(speech), people) * 1500 * 10 ** (-snr / 20)
    return np.clip(speech + noise, -32767, 32767).astype(np.int16)


_shared = {}


def start_worker(model, grammar, people_folder):
    import vosk

    vosk.SetLogLevel(-1)
    _shared["recogniser"] = vosk.KaldiRecognizer(vosk.Model(model), RATE)
    _shared["recogniser"].SetWords(True)
    _shared["digits"] = vosk.KaldiRecognizer(vosk.Model(model), RATE, json.dumps(ONES + ["[unk]"]))
    paths = sorted(Path(people_folder).glob("order_*.flac"))[:40]
    _shared["people"] = [sf.read(p)[0] for p in paths]


def decode(samples, which):
    recogniser = _shared[which]
    found, begin = [], time.process_time()
    for place in range(0, len(samples), 3200):
        if recogniser.AcceptWaveform(samples[place : place + 3200].tobytes()):
            found.append(json.loads(recogniser.Result()))
    found.append(json.loads(recogniser.FinalResult()))
    recogniser.Reset()
    if which == "digits":  # a phrase list cannot hear silence: what follows the end of the utterance is no second digit
        found = [r for r in found if r["text"]][:1]
    words = [w for r in found for w in r.get("text", "").split()]
    sure = min((w["conf"] for r in found for w in r.get("result", [])), default=0.0)
    return words, sure, time.process_time() - begin


def judge(task):
    path, group, kind, words, snr = task
    samples = heard(sf.read(path)[0], snr, (Path(path).name,), _shared["people"])
    decoded, sure, seconds = decode(samples, "digits" if kind == "digit" else "recogniser")
    return dict(group=group, kind=kind, snr=snr, said=" ".join(words), decoded=" ".join(decoded), sure=sure, seconds=seconds, length=len(samples) / RATE)


def tasks(arguments):
    for folder in arguments.speech.split(","):
        counts = defaultdict(int)
        for line in (Path(folder) / "clips.tsv").read_text().splitlines():
            name, voice, kind, words = line.split("\t")
            counts[voice, kind] += 1
            if counts[voice, kind] > arguments.limit:
                continue
            for snr in SNRS:
                yield str(Path(folder) / name), voice, kind, words.split(), snr
    people = [l.split("\t") for l in (Path(arguments.people) / "texts.0.tsv").read_text().splitlines()]
    for name, _, _ in people[40 : 40 + arguments.limit]:
        for snr in SNRS:
            yield str(Path(arguments.people) / name), "people", "out", [], snr
    counts = defaultdict(int)
    for line in (Path(arguments.digits) / "texts.0.tsv").read_text().splitlines():
        name, voice, words = line.split("\t")
        counts[voice, words] += 1
        if counts[voice, words] <= max(1, arguments.limit // 10):
            yield str(Path(arguments.digits) / name), voice, "digit", words.split(), None


def verdict(row, acceptor, limit):
    decoded = row["decoded"].split()
    accepted = acceptor.accepts(decoded) and row["sure"] >= limit
    if row["kind"] == "in" and accepted and meaning(decoded) == meaning(row["said"].split()):
        return "right"
    return "wrong" if accepted else "refused"


def table(rows, acceptor, limit):
    counts = defaultdict(lambda: defaultdict(int))
    for row in rows:
        if row["kind"] == "digit":
            counts[row["group"], "digit", None]["right" if row["decoded"] == row["said"] else "wrong"] += 1
            continue
        said = verdict(row, acceptor, limit)
        counts[row["group"], row["kind"], row["snr"]][said] += 1
        counts["all", row["kind"], row["snr"]][said] += 1
    lines = []
    for (group, kind, snr), c in sorted(counts.items(), key=lambda i: (i[0][1], i[0][0], -(i[0][2] or 99))):
        total = sum(c.values())
        lines.append(f"{group:28} {kind:5} {'quiet' if snr is None else f'{snr} dB':6} n {total:4} right {100 * c['right'] / total:6.2f} wrong {100 * c['wrong'] / total:6.2f} refused {100 * c['refused'] / total:6.2f}")
    return lines


def main():
    parser = argparse.ArgumentParser()
    for name in ("model", "graph", "speech", "people", "digits", "out"):
        parser.add_argument(name)
    parser.add_argument("--processes", type=int, default=2)
    parser.add_argument("--limit", type=int, default=10000)
    arguments = parser.parse_args()
    with tempfile.TemporaryDirectory() as work:
        model = f"{work}/model"
        shutil.copytree(arguments.model, model)
        if arguments.graph != "-":
            shutil.copy(arguments.graph, f"{model}/graph/Gr.fst")
        with multiprocessing.Pool(arguments.processes, start_worker, (model, None, arguments.people)) as pool:
            rows = pool.map(judge, list(tasks(arguments)), chunksize=8)
    Path(arguments.out).write_text(json.dumps(rows))
    acceptor = Acceptor(Grammar.read())
    print("\n".join(table(rows, acceptor, 0.0)))
    for limit in (0.0, 0.5, 0.7, 0.8, 0.9, 0.95, 0.99):
        print(f"--- least sure word at least {limit}")
        print("\n".join(x for x in table(rows, acceptor, limit) if x.startswith("all")))
    print("real-time factor", round(sum(r["seconds"] for r in rows) / sum(r["length"] for r in rows), 3))


if __name__ == "__main__":
    main()
