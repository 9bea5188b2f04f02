"""Make the test recordings of the held-out voices: sentences of the grammar and ordinary talk.

    python eval_clips.py FOLDER SENTENCES TALK [ENGINE ...]

Writes FLAC files and ``clips.tsv`` (file, voice, kind, words); kind is ``in`` for sentences of the grammar and ``out`` for talk.
"""
import random
import sys
from pathlib import Path

import numpy as np
import soundfile as sf

import voices
from kokoro_phonemes import engine_in, spoken
from sentences import Sentences

MODEL_FOLDER = Path(__file__).with_name("tts")
TEST_TALK = """how is your sleep these days|i walked about five miles on sunday|they charged me eighteen dollars for parking|we moved here in nineteen ninety
my son plays guitar and the piano|could you turn the radio down please|her flight lands at seven forty|i think it was the fourteenth of june
put ice on it for twenty minutes|he is thirty five or thirty six|there are two of them in the drawer|what did the surgeon say about it
i can not hold a pen for long|that one costs ninety nine|it was sixty percent off|meet me at a quarter past ten
squeeze the sponge as hard as you like|my neighbor fell off a ladder|do you take insurance cards|i lost my glasses again|stop when it gets too much
we had fifty guests at the wedding|let us try the blue band instead|the traffic was awful this morning|can somebody answer that phone
give me one more second|it is bus number forty three|i did three sets of twelve|the left one feels different from the right one|she has pain in the shoulder
open the window a little|extend your stay by ten days|you may flex the rules a bit|the index is up five percent|next please""".replace("\n", "|").split("|")


def kokoro_speaker():
    engine = engine_in(MODEL_FOLDER)

    def speak(voice, words, r):
        speed, variety = r.uniform(0.85, 1.15), r.choice(["en-us", "en-gb"])
        return voices.to_model_rate(*spoken(engine, voice, voices.spoken_form(words), variety, speed))

    return speak


def texts(sentences, talk, r):
    grammar = Sentences().grammar
    rows = [("in", grammar.draw(r)) for _ in range(sentences)]
    pool = list(TEST_TALK)
    r.shuffle(pool)
    return rows + [("out", pool[i % len(pool)].split()) for i in range(talk)]


def main():
    folder, sentences, talk, engines = Path(sys.argv[1]), int(sys.argv[2]), int(sys.argv[3]), sys.argv[4:]
    folder.mkdir(parents=True, exist_ok=True)
    with open(folder / "clips.tsv", "a", encoding="utf-8") as index:
        for place, (engine, voice) in enumerate(voices.HELD_OUT):
            if engines and engine not in engines:
                continue
            r = random.Random(7000 + place)
            speak = kokoro_speaker() if engine == "kokoro" else voices.speaker(engine)
            for number, (kind, words) in enumerate(texts(sentences, talk, r)):
                samples = speak(voice, words, r)
                name = f"{engine}-{voice}-{kind}-{number:03d}.flac".replace("+", "-").replace("_", "-")
                sf.write(folder / name, (samples / np.abs(samples).max() * 0.5).astype(np.float32), voices.RATE, subtype="PCM_16")
                index.write(f"{name}\t{engine}-{voice}\t{kind}\t{' '.join(words)}\n")
                index.flush()


if __name__ == "__main__":
    main()
