"""Speak the lines of a script into WAV files for the live-capture test.

    venv/bin/python tools/voice/make_script.py VOICE.onnx script.txt src/test/resources/live

One utterance a line. Writes one WAV a line (16 kHz, 16-bit, mono, silence trimmed) and script.tsv (file, words).
"""
import pathlib
import sys

import numpy as np
import soundfile as sf
from piper import PiperVoice
from scipy.signal import resample_poly

from make_clips import RATE, fade, level, synthesise, trim


def spell(words):
    return " ".join(word.upper() if len(word) == 1 else word for word in words.split())


def main(model, script, out):
    out = pathlib.Path(out)
    out.mkdir(parents=True, exist_ok=True)
    voice = PiperVoice.load(model)
    common = np.gcd(RATE, voice.config.sample_rate)
    rows = []
    for number, words in enumerate(pathlib.Path(script).read_text().splitlines(), 1):
        samples = synthesise(voice, spell(words), 1.0)
        samples = resample_poly(samples, RATE // common, voice.config.sample_rate // common)
        name = f"{number:02d}-{words.replace(' ', '-')}.wav"
        sf.write(out / name, fade(level(trim(samples))), RATE, subtype="PCM_16")
        rows.append(f"{name}\t{words}\n")
    (out / "script.tsv").write_text("".join(rows))


if __name__ == "__main__":
    main(*sys.argv[1:])
