"""Weighted mean of networks trained one from another: python average.py OUT.npz SHARE WEIGHTS.npz [SHARE WEIGHTS.npz ...]

The shares are scaled to sum to one; the means and variances of the batch normalisation are averaged like the weights.
"""
import sys

import numpy as np

if __name__ == "__main__":
    shares = np.array(sys.argv[2::2], "f4")
    networks = [np.load(path) for path in sys.argv[3::2]]
    common = set.intersection(*(set(n.files) for n in networks))
    np.savez(sys.argv[1], **{k: sum(s * np.asarray(n[k], "f4") for s, n in zip(shares / shares.sum(), networks)) for k in sorted(common)})
