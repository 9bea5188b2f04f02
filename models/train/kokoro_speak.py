"""Let Kokoro read prepared texts in mixed and perturbed voices; needs only numpy, onnxruntime and soundfile.

    python kokoro_speak.py MODEL.onnx VOICES.npz TEXTS.json PART PARTS SECONDS FOLDER

Speaks every PARTS-th text from PART on for at most SECONDS, and writes FLAC files and ``texts.PART.tsv`` as synth.py does.
The held-out voice jm_kumo is never mixed in.
"""
import json
import sys
import time
from pathlib import Path

import numpy as np
import onnxruntime
import soundfile as sf

VOICES = ("jf_alpha", "jf_gongitsune", "jf_nezumi", "jf_tebukuro")
RATE, MODEL_RATE = 24000, 16000


def style(voices, length, rng):
    """A random mixture of the voices, sometimes beyond the mixture's corners, with noise; and the strongest voice's name."""
    shares = rng.dirichlet(np.full(len(VOICES), 0.4))
    if rng.random() < 0.4:
        shares = shares * 1.6 - 0.6 / len(VOICES)
    mixed = sum(share * voices[name][length] for share, name in zip(shares, VOICES))
    noise = rng.normal(0, float(mixed.std()) * rng.uniform(0, 0.35), size=mixed.shape)
    return (mixed + noise).astype(np.float32), VOICES[int(np.argmax(shares))]


def third_less(samples):
    """24 kHz to 16 kHz."""
    from scipy.signal import resample_poly

    return resample_poly(samples, 2, 3)


def main():
    model, voice_file, texts = sys.argv[1:4]
    part, parts, seconds, folder = int(sys.argv[4]), int(sys.argv[5]), float(sys.argv[6]), Path(sys.argv[7])
    folder.mkdir(parents=True, exist_ok=True)
    options = onnxruntime.SessionOptions()
    options.intra_op_num_threads = options.inter_op_num_threads = 1
    session = onnxruntime.InferenceSession(model, options, providers=["CPUExecutionProvider"])
    voices = np.load(voice_file)
    voices = {name: voices[name] for name in VOICES}
    rows = json.loads(Path(texts).read_text(encoding="utf-8"))
    end = time.time() + seconds
    with open(folder / f"texts.{part}.tsv", "w", encoding="utf-8") as index:
        for number in range(part, len(rows), parts):
            if time.time() > end:
                break
            rng, tokens = np.random.default_rng(number), rows[number]["tokens"]
            mixed, name = style(voices, len(tokens), rng)
            speed = np.array([rng.uniform(0.8, 1.25)], dtype=np.float32)
            samples = session.run(None, {"tokens": [[0, *tokens, 0]], "style": mixed, "speed": speed})[0].ravel()
            samples = third_less(samples)
            if not np.isfinite(samples).all() or not 0.2 <= len(samples) / MODEL_RATE <= 12:
                continue
            file = f"kokoro_{number:06d}.flac"
            samples = (samples / (np.abs(samples).max() + 1e-6) * 0.5).astype(np.float32)
            sf.write(folder / file, samples, MODEL_RATE, subtype="PCM_16")
            index.write(f"{file}\tkokoro-{name}\t{rows[number]['words']}\n")
            index.flush()


if __name__ == "__main__":
    main()
