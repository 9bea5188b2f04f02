"""Write am/final.mdl of a Vosk model from trained weights, and conf/ as in the base: python export.py BASE_MODEL_FOLDER WEIGHTS.npz OUT_MODEL_FOLDER"""
import shutil
import sys
from pathlib import Path

import numpy as np

from kaldi_model import KaldiModel


def write_model(base, weights, out):
    base, out = Path(base), Path(out)
    (out / "am").mkdir(parents=True, exist_ok=True)
    shutil.copytree(base / "conf", out / "conf", dirs_exist_ok=True)
    KaldiModel(str(base / "am" / "final.mdl")).write(out / "am" / "final.mdl", dict(np.load(weights)))


if __name__ == "__main__":
    write_model(*sys.argv[1:4])
