"""Makes the recordings with which the costs of the strict graph are calibrated: make_clips.py FOLDER

Needs espeak-ng, flite, festival and sox. Writes 16 kHz WAV files and clips.tsv (file, voice, in or out of the grammar,
words). The sentences are invented; the same ones come out on every run.
"""

import pathlib
import random
import subprocess
import sys

ONES = "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split()
TENS = "twenty thirty forty fifty sixty seventy eighty ninety".split()
FINGERS = ["index", "middle", "long", "ring", "little", "small"]
COMMANDS = """disregard that|begin session|end session|right thumb active|left thumb|pain at end range|say again|read back
what is missing|where am i|stand by|go ahead|other hand|no pain|second trial|hard end feel|note swollen|passive motion""".replace(
    "\n", "|").split("|")
TALK = """how does that feel|does it hurt at fifty|let me see your hand please|we will do that again on friday
you had it in a splint for six weeks right|turn it over and relax|the weather is nice today|two more and then we are done
can you make a fist for me|it is a bit stiff in the morning|i have an appointment at ten thirty|that is better than last time
keep your fingers straight|i was fixing the roof and slipped|my daughter is nine years old|take your time
rest your arm on the table|put the heat pack on for fifteen minutes|do ten of these three times a day|is the swelling going down
one two three four five|the doctor said maybe in march|where did you park your car|it cost me about forty dollars
i can feel it pulling here|open and close|that was the left one not the right one|she is off on thursday
we need to order more tape|hold it there for thirty seconds|could you pass me the towel|i sleep with my hand under the pillow
sorry i am late the bus did not come|seventy percent of people get that|do not push too hard|it clicks when i bend it
the other therapist measured sixty i think|are you left handed|let us try with the putty|good morning how are you today
i live at number eighteen|please sit down over here|so the thumb goes to the little finger like this|that was my fifth visit
your wrist looks much better|you can drive again after eight weeks|wash it with warm water|no it only hurts at night
hello|okay then|thank you|one moment|excuse me|yes of course|not yet|maybe forty or fifty|almost there|and now the next one
try to touch each finger|see you in two weeks""".replace("\n", "|").split("|")


def number(n):
    if n >= 100:
        return "one hundred" + (" " + number(n - 100) if n > 100 else "")
    if n < 20:
        return ONES[n]
    return TENS[n // 10 - 2] + (" " + ONES[n % 10] if n % 10 else "")


def reading(r):
    degrees = r.choice(["", "", " degrees"])
    head = r.choice(["", "", "", "active ", "passive ", "right ", "left "])
    hinge = r.choice(["m p", "i p", "m c p", "thumb i p", "thumb m p", "interphalangeal"])
    kind = r.randrange(8)
    if kind < 3:
        return f"{head}{hinge} flexion {number(r.randrange(5, 100))}{degrees}"
    if kind == 3:
        return f"{head}{hinge} {r.choice(['hyperextension', 'extension lag', 'extension deficit', 'lacks'])} {number(r.randrange(1, 50))}{degrees}"
    if kind == 4:
        return f"{head}{r.choice(['', '', 'c m c '])}{r.choice(['radial', 'palmar'])} abduction {number(r.randrange(10, 75))}{degrees}"
    if kind == 5:
        return f"{head}opposition {r.choice(FINGERS)} {r.choice(['touches', number(r.randrange(1, 60)) + ' millimeters'])}"
    if kind == 6:
        return r.choice([f"correction {number(r.randrange(1, 100))}", f"{hinge} {number(r.randrange(0, 20))} to {number(r.randrange(30, 99))}"])
    return r.choice(COMMANDS)


def speak(voice, words, target):
    spelled = " ".join(w.upper() if len(w) == 1 and w not in "ai" or words.startswith(("i p", "thumb i p")) and w == "i" else w for w in words.split())
    raw = target.with_suffix(".raw.wav")
    engine, name = voice.split(" ", 1)
    if engine == "espeak":
        command = ["espeak-ng", "-v", name, "-s", "150", "-w", str(raw), spelled]
    elif engine == "flite":
        command = ["flite", "-voice", name, "-t", spelled, "-o", str(raw)]
    else:
        command = ["text2wave", "-eval", f"(voice_{name})", "-o", str(raw)]
    subprocess.run(command, input=spelled.encode() if engine == "festival" else None, check=True, capture_output=True)
    subprocess.run(["sox", str(raw), "-r", "16000", "-c", "1", "-b", "16", str(target), "gain", "-n", "-9", "pad", "0.4", "1.0"],
                   check=True, capture_output=True)
    raw.unlink()


VOICES = ["espeak en-us+m7", "espeak en-gb-x-rp+f4", "flite slt", "flite rms", "festival kal_diphone"]


def main(folder):
    r = random.Random(11)
    folder.mkdir(parents=True, exist_ok=True)
    rows = ["file\tvoice\tgrammar\twords"]
    for i in range(120):
        rows.append((f"in-{i:03}.wav", VOICES[i % 5], "in", reading(r)))
    for i, words in enumerate(TALK):
        rows.append((f"out-{i:03}.wav", VOICES[i % 5], "out", words))
    for row in rows[1:]:
        speak(row[1], row[3], folder / row[0])
    (folder / "clips.tsv").write_text("\n".join(r if isinstance(r, str) else "\t".join(r) for r in rows) + "\n")


main(pathlib.Path(sys.argv[1]))
