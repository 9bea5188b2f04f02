"""Bring recorded noises into shape: everyday sounds of the open collection that comes with rafaelmardojai/blanket.

    python noises.py CLONE DATA HELD

Most recordings become one row for training (DATA/noise/recorded.ogg, two minutes of each at most). A restaurant and rain are held
out and go to HELD as WAV files, beside ventilation and metal as evaluate.py makes them: the noises with which the calibration adds up
what a clinic sounds like. Licences of the recordings: SOURCES.md.
"""
import io
import subprocess
import sys
from pathlib import Path

import numpy as np
import soundfile as sf

from evaluate import metal, ventilation
from voices import RATE, to_model_rate

TRAINING = ("birds", "boat", "city", "fireplace", "storm", "train", "waves", "wind")
HELD = {"restaurant": "coffee-shop", "rain": "rain"}
LONGEST = 120
MADE_SECONDS = 60
LOUDNESS = 2000


def recording(clone, name):
    content = subprocess.run(["git", "-C", clone, "show", f"HEAD:data/resources/sounds/{name}.ogg"], check=True, capture_output=True).stdout
    samples, rate = sf.read(io.BytesIO(content), always_2d=True)
    return level(to_model_rate(samples.mean(1)[: LONGEST * rate], rate))


def level(samples):
    scaled = samples * LOUDNESS / np.sqrt((samples**2).mean())
    return np.clip(np.rint(scaled), -32768, 32767).astype("int16")


def main():
    clone, data, held = sys.argv[1], Path(sys.argv[2]) / "noise", Path(sys.argv[3])
    for folder in (data, held):
        folder.mkdir(parents=True, exist_ok=True)
    row = np.concatenate([recording(clone, name) for name in TRAINING])
    sf.write(data / "recorded.ogg", row, RATE, format="OGG", subtype="OPUS")
    print(f"{len(row) / RATE:.0f} s of {len(TRAINING)} recordings for training")
    for name, original in HELD.items():
        sf.write(held / f"{name}.wav", recording(clone, original), RATE)
    rng = np.random.default_rng(8)
    for maker in (ventilation, metal):
        sf.write(held / f"{maker.__name__}.wav", level(maker(rng, MADE_SECONDS * RATE)), RATE)


if __name__ == "__main__":
    main()
