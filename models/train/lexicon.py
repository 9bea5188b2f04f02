"""The pronunciation lexicon of ``grammar/lexicon.txt`` as phone numbers.

A line is ``word<TAB>pronunciation | pronunciation``; a pronunciation is a row of CMUdict phones without stress marks.
"""
from functools import lru_cache
from pathlib import Path

PHONES = (
    "AA AE AH AO AW AY B CH D DH EH ER EY F G HH IH IY JH K L M N NG OW OY P R S SH T TH UH UW V W Y Z ZH"
).split()
SILENCE = 0
PHONE_NUMBER = {phone: number for number, phone in enumerate(PHONES, 1)}
UNKNOWN_WORD = len(PHONES) + 1
PHONE_COUNT = len(PHONES) + 2
UNKNOWN = "[unk]"
DEFAULT_PATH = Path(__file__).resolve().parents[2] / "grammar" / "lexicon.txt"


def parse_lexicon(text):
    """Return word -> tuple of pronunciations, each a tuple of phone names."""
    entries = {}
    for number, line in enumerate(text.splitlines(), 1):
        if not line.strip() or line.startswith("#"):
            continue
        word, _, rest = line.partition("\t")
        pronunciations = tuple(tuple(p.split()) for p in rest.split("|"))
        strange = {phone for p in pronunciations for phone in p} - PHONE_NUMBER.keys()
        if strange or not all(pronunciations) or word in entries:
            raise ValueError(f"lexicon line {number}: {line!r}: unknown phone, empty pronunciation or repeated word")
        entries[word] = pronunciations
    return entries


@lru_cache(maxsize=None)
def load_lexicon(path=DEFAULT_PATH):
    return parse_lexicon(Path(path).read_text(encoding="utf-8"))


def numbers(pronunciation):
    return [PHONE_NUMBER[phone] for phone in pronunciation]
