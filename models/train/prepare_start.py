"""Take the starting weights out of a Vosk model folder: python prepare_start.py MODEL_FOLDER OUT.npz"""
import sys

import numpy as np

from kaldi_model import KaldiModel

if __name__ == "__main__":
    weights = KaldiModel(f"{sys.argv[1]}/am/final.mdl").weights()
    np.savez(sys.argv[2], **{k: np.asarray(v, "f2" if k.endswith(".W") else "f4") for k, v in weights.items()})
