"""Prepare Kokoro synthesis: texts to phoneme numbers, some with a foreign accent, so that the speaking machine needs only onnxruntime.

    python kokoro_texts.py COUNT SEED OUT.json [GRAMMAR.txt]
"""
import json
import random
import sys

from kokoro_phonemes import in_kokoros_symbols
from sentences import Sentences
from voices import spoken_form

ACCENTS = (
    (("θ", "t"), ("ð", "d"), ("w", "v")),
    (("θ", "s"), ("ð", "z"), ("ɹ", "ʁ")),
    (("θ", "f"), ("ð", "v")),
    (("ɪ", "i"), ("ʊ", "u"), ("æ", "a")),
    (("ɹ", "ɾ"), ("oʊ", "o"), ("eɪ", "e")),
    (("ɚ", "ə"), ("ɾ", "t"), ("æ", "ɛ")),
    (("v", "w"), ("θ", "t"), ("ð", "d"), ("ɹ", "ɾ")),
    (("z", "s"), ("d ", "t "), ("ʌ", "a")),
)

# Without an end of the sentence the last word is often mumbled away.
ENDS = (".", ".", ".", "!", ",")


def accented(phonemes, r):
    if r.random() < 0.65:
        return phonemes
    for old, new in r.choice(ACCENTS):
        if r.random() < 0.8:
            phonemes = phonemes.replace(old, new)
    return phonemes


def main():
    from kokoro_onnx.tokenizer import Tokenizer

    count, seed, out = int(sys.argv[1]), int(sys.argv[2]), sys.argv[3]
    r, texts, tokenizer = random.Random(seed), Sentences(*sys.argv[4:5]), Tokenizer()
    rows = []
    for _ in range(count):
        words = texts.draw(r)
        variety = r.choice(["en-us", "en-us", "en-gb"])
        phonemes = accented(tokenizer.phonemize(spoken_form(words), variety), r)
        phonemes = in_kokoros_symbols(phonemes, variety == "en-gb") + r.choice(ENDS)
        rows.append({"words": " ".join(words), "tokens": tokenizer.tokenize(phonemes)})
    with open(out, "w", encoding="utf-8") as file:
        json.dump(rows, file, separators=(",", ":"))


if __name__ == "__main__":
    main()
