"""Write am/final.mdl and conf/ of a Vosk model from trained weights: python export.py BASE_MODEL_FOLDER WEIGHTS.npz OUT_MODEL_FOLDER"""
import sys
from pathlib import Path

import numpy as np

from kaldi_model import KaldiModel

MFCC = "--use-energy=false\n--num-mel-bins=40\n--num-ceps=40\n--low-freq=20\n--high-freq=7600\n--allow-upsample=true\n--allow-downsample=true\n"
DECODER = (
    "--min-active=200\n--max-active=7000\n--beam=15.0\n--lattice-beam=3.0\n--acoustic-scale=1.0\n--frame-subsampling-factor=3\n"
    "--endpoint.silence-phones=1\n--endpoint.rule2.min-trailing-silence=0.5\n--endpoint.rule3.min-trailing-silence=0.75\n"
    "--endpoint.rule4.min-trailing-silence=1.0\n"
)


def write_model(base, weights, out):
    out = Path(out)
    for part in ("am", "conf"):
        (out / part).mkdir(parents=True, exist_ok=True)
    KaldiModel(f"{base}/am/final.mdl").write(out / "am" / "final.mdl", dict(np.load(weights)))
    (out / "conf" / "mfcc.conf").write_text(MFCC)
    (out / "conf" / "model.conf").write_text(DECODER)


if __name__ == "__main__":
    write_model(*sys.argv[1:4])
