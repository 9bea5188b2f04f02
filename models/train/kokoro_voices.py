"""Gather Kokoro's voices from the npm package kokoro-js (``npm pack kokoro-js@1.2.1``) into one file.

    python kokoro_voices.py kokoro-js-1.2.1.tgz OUT.npz

A voice is 510 styles of 256 numbers, one for each length of a sentence. All are kept, the held-out ones too, since the tests speak with them.
"""
import sys
import tarfile
from pathlib import Path

import numpy as np

SHAPE = (510, 1, 256)


def main():
    with tarfile.open(sys.argv[1]) as package:
        voices = {
            Path(member.name).stem: np.frombuffer(package.extractfile(member).read(), "<f4").reshape(SHAPE)
            for member in package.getmembers()
            if member.name.startswith("package/voices/")
        }
    np.savez_compressed(sys.argv[2], **voices)
    print(len(voices), "voices")


if __name__ == "__main__":
    main()
