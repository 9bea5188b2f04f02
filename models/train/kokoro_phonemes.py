"""The symbols that Kokoro learned English with: one letter for a diphthong or an affricate, where espeak-ng writes two (from memory of
the program that wrote its training phonemes; all of them are in the network's vocabulary). With espeak-ng's own symbols "five", "nine"
and "fourteen" of some voices are heard as other words.
"""

SAME = (("aɪ", "I"), ("aʊ", "W"), ("eɪ", "A"), ("ɔɪ", "Y"), ("dʒ", "ʤ"), ("tʃ", "ʧ"), ("ɚ", "əɹ"), ("ɐ", "ə"), ("r", "ɹ"))
BRITISH = (("əʊ", "Q"), ("oʊ", "Q"), ("eə", "ɛː"), ("iə", "ɪə"))
AMERICAN = (("oʊ", "O"), ("ɜːɹ", "ɜɹ"), ("ɜː", "ɜɹ"), ("ɪə", "iə"), ("ː", ""))


def in_kokoros_symbols(phonemes, british):
    for old, new in SAME + (BRITISH if british else AMERICAN):
        phonemes = phonemes.replace(old, new)
    return phonemes
