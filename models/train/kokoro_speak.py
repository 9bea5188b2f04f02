"""Let Kokoro read prepared texts in mixed, perturbed and re-pitched voices, on GPUs or processor cores; needs numpy, scipy and soundfile.

    python onnx_torch.py MODEL.onnx GRAPH.pickle
    python kokoro_speak.py GRAPH.pickle VOICES.npz TEXTS.json PART PARTS SECONDS FOLDER

GRAPH.pickle needs torch and is for GPUs. MODEL.onnx in its place needs onnxruntime; it is twice as fast on a processor core, but leaves the
pitch inside the synthesis as it is.

Speaks every PARTS-th text from PART on for at most SECONDS, and writes FLAC files and ``texts.PART.tsv`` as synth.py does. Held-out
voices (voices_held_out.py) are never mixed in. VOICES.npz comes from kokoro_voices.py. A third of the sentences is spoken by one voice as
it is, the others by mixtures of two or three. Two in five mixtures get another pitch inside the synthesis and another vocal tract (the sound
is played at another speed, spoken at another to make up for it).
"""
import json
import sys
import time
from pathlib import Path

import numpy as np
import soundfile as sf
from scipy.signal import resample_poly

from voices_held_out import KOKORO as HELD_OUT

PITCH = "/encoder/Squeeze_output_0"
RATE, MODEL_RATE = 24000, 16000
HALF = 128


class OnGpu:
    """The graph as torch computes it. Used by one thread at a time."""

    def __init__(self, file, part):
        import torch
        from onnx_torch import Graph

        torch.set_num_threads(1)
        gpus = torch.cuda.device_count()
        self.torch, self.graph = torch, Graph(file, f"cuda:{part % gpus}" if gpus else "cpu")

    def speak(self, tokens, style, speed, pitch):
        self.graph.factors = {PITCH: pitch}
        on_device = lambda values: self.torch.tensor(values, dtype=self.torch.float32, device=self.graph.device)
        return self.graph.run(tokens=self.torch.tensor([tokens]), style=on_device(style), speed=on_device([speed]))[0].float().ravel().cpu().numpy()


class OnProcessor:
    """The graph as onnxruntime computes it. Used by one thread at a time."""

    def __init__(self, file):
        import onnxruntime

        options = onnxruntime.SessionOptions()
        options.intra_op_num_threads = 1
        self.session = onnxruntime.InferenceSession(file, options, providers=["CPUExecutionProvider"])

    def speak(self, tokens, style, speed, pitch):
        given = {"tokens": np.array([tokens]), "style": style, "speed": np.array([speed], "f4")}
        return self.session.run(None, given)[0].ravel()


def mixture(voices, length, rng):
    """A style between two or three voices or a little beyond them, shaken. Named after the voice that is strongest in it."""
    names = rng.choice(sorted(voices), rng.integers(2, 4), replace=False)
    shares = rng.dirichlet(np.ones(len(names)))
    if rng.random() < 0.3:
        shares = shares * 1.4 - 0.4 / len(names)
    mixed = sum(share * voices[name][length] for share, name in zip(shares, names))
    return mixed + rng.normal(0, float(mixed.std()) * rng.uniform(0, 0.3), size=mixed.shape), str(names[np.argmax(shares)])


def style(voices, length, rng):
    """The style, the voice it is named after, and whether it is nobody's."""
    if rng.random() < 0.34:
        name = str(rng.choice(sorted(voices)))
        return voices[name][length].astype(np.float32), name, False
    mixed, name = mixture(voices, length, rng)
    if rng.random() < 0.5:
        mixed[:, HALF:] = mixture(voices, length, rng)[0][:, HALF:]
    return mixed.astype(np.float32), name, True


def throat(name, made, rng):
    """Factors of pitch and of playing speed."""
    if not made or rng.random() < 0.6:
        return rng.uniform(0.92, 1.08), rng.uniform(0.97, 1.03)
    if name[1] == "f":
        return rng.uniform(0.5, 0.9), rng.uniform(0.86, 1.0)
    return rng.uniform(0.8, 1.6), rng.uniform(0.98, 1.12)


def main():
    graph_file, voice_file, texts = sys.argv[1:4]
    part, parts, seconds, folder = int(sys.argv[4]), int(sys.argv[5]), float(sys.argv[6]), Path(sys.argv[7])
    folder.mkdir(parents=True, exist_ok=True)
    reader = OnProcessor(graph_file) if graph_file.endswith(".onnx") else OnGpu(graph_file, part)
    voices = np.load(voice_file)
    voices = {name: voices[name] for name in voices.files if name not in HELD_OUT}
    rows = json.loads(Path(texts).read_text(encoding="utf-8"))
    end = time.time() + seconds
    with open(folder / f"texts.{part}.tsv", "w", encoding="utf-8") as index:
        for number in range(part, len(rows), parts):
            if time.time() > end:
                break
            rng, tokens = np.random.default_rng(number), rows[number]["tokens"]
            mixed, name, made = style(voices, len(tokens), rng)
            pitch, play = throat(name, made, rng)
            sound = reader.speak([0, *tokens, 0], mixed, rng.uniform(0.8, 1.25) / play, pitch / play)
            samples = resample_poly(sound, int(round(200 / play)), 300)
            if not np.isfinite(samples).all() or not 0.2 <= len(samples) / MODEL_RATE <= 12:
                continue
            file = f"kokoro_{number:06d}.flac"
            samples = (samples / (np.abs(samples).max() + 1e-6) * 0.5).astype(np.float32)
            sf.write(folder / file, samples, MODEL_RATE, subtype="PCM_16")
            index.write(f"{file}\tkokoro-{name}\t{rows[number]['words']}\n")
            index.flush()


if __name__ == "__main__":
    main()
