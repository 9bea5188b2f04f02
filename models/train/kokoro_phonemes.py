"""Kokoro's speech for the tests, and the symbols that it learned English with: one letter for a diphthong or an affricate, where espeak-ng writes two (from memory of
the program that wrote its training phonemes; all of them are in the network's vocabulary). With espeak-ng's own symbols "five", "nine"
and "fourteen" of some voices are heard as other words.
"""

SAME = (("aɪ", "I"), ("aʊ", "W"), ("eɪ", "A"), ("ɔɪ", "Y"), ("dʒ", "ʤ"), ("tʃ", "ʧ"), ("ɚ", "əɹ"), ("ɐ", "ə"), ("r", "ɹ"))
BRITISH = (("əʊ", "Q"), ("oʊ", "Q"), ("eə", "ɛː"), ("iə", "ɪə"))
AMERICAN = (("oʊ", "O"), ("ɜːɹ", "ɜɹ"), ("ɜː", "ɜɹ"), ("ɪə", "iə"), ("ː", ""))

# Tests speak with espeak-ng's symbols in this voice, as in all its figures so far.
OLD_SYMBOLS = {"jm_kumo"}


def in_kokoros_symbols(phonemes, british):
    for old, new in SAME + (BRITISH if british else AMERICAN):
        phonemes = phonemes.replace(old, new)
    return phonemes


def engine_in(folder):
    """Kokoro as kokoro_onnx reads it, from the network and the voices of kokoro_voices.py in a folder."""
    from kokoro_onnx import Kokoro

    return Kokoro(str(folder / "kokoro.onnx"), str(folder / "voices_all.npz"))


def spoken(engine, voice, text, variety, speed):
    """Samples and rate of a text that kokoro_onnx's engine reads; variety is en-us or en-gb."""
    phonemes = engine.tokenizer.phonemize(text, variety)
    if voice not in OLD_SYMBOLS:
        phonemes = in_kokoros_symbols(phonemes, variety == "en-gb") + "."
    return engine.create(phonemes, voice=voice, speed=speed, is_phonemes=True)
