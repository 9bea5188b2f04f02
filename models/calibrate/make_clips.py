"""Makes the recordings with which the costs of the strict graph are calibrated: make_clips.py FOLDER tune|accent|near|report|speakers|choice|commands

Needs espeak-ng, flite, festival with festvox-kdlpc16k, sox, and for "report", "speakers", "choice" and "commands" Kokoro, for
"accent", "near" and "commands" RHVoice. "near" has talk and readings of other joints that begin or end like what the grammar knows,
"commands" no readings. Writes 16 kHz WAV files and clips.tsv (file, voice, in or out of the grammar,
words). The sentences are invented; the same ones come out on every run.
"""

import pathlib
import random
import subprocess
import sys

sys.path.append(str(pathlib.Path(__file__).parent.parent / "train"))
from kokoro_phonemes import engine_in, spoken

ONES = "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split()
TENS = "twenty thirty forty fifty sixty seventy eighty ninety".split()
FINGERS = ["index", "middle", "long", "ring", "little", "small"]
COMMANDS = """disregard that|begin session|end session|right thumb active|left thumb|pain at end range|say again|read back
what is missing|where am i|stand by|go ahead|other hand|no pain|second trial|hard end feel|note swollen|passive motion""".replace(
    "\n", "|").split("|")
SHORT = """yes|no|right hand|left hand|other hand|right thumb|left thumb|right thumb passive|left thumb active|active|passive|passive motion
disregard that|second trial|no pain|pain at end range|hard end feel|note swollen|correction left hand|correction passive|end session
skip that because of pain""".replace("\n", "|").split("|")
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

NEAR = """elbow flexion seventy five|wrist flexion forty|knee flexion ninety|hip flexion thirty|i p flexion about seventy
shoulder abduction sixty|the i p joint is stiff|m p flexion was fifty last week|flexion sixty|index finger flexion twenty
i think i p flexion fifty|he said m p flexion eighty yesterday|radial deviation twenty|ulnar deviation thirty five|grip strength forty
pinch seven kilos|i p flexion sixty something|m p flexion maybe forty|toe extension ten|ankle flexion fifteen degrees
last time i p flexion was thirty|so radial abduction is not bad at fifty|thumb circumference sixty five millimeters
is your left thumb sore|touch the little finger please|bend it to ninety if you can|extension is what we want|opposition is hard for you
the right hand is fine|active people heal faster""".replace("\n", "|").split("|")


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


def kokoro(name, spelled, raw):
    """Kokoro needs the packages and the model files of ../train (KOKORO names the folder with kokoro.onnx and voices_all.npz of kokoro_voices.py)."""
    import os

    import soundfile

    if not ENGINES:
        ENGINES.append(engine_in(pathlib.Path(os.environ["KOKORO"])))
    samples, rate = spoken(ENGINES[0], name, spelled, "en-gb" if name.startswith("b") else "en-us", 1.0)
    soundfile.write(raw, samples, rate, subtype="PCM_16")


ENGINES = []


def speak(voice, words, target):
    spelled = " ".join(w.upper() if len(w) == 1 and w not in "ai" or words.startswith(("i p", "thumb i p")) and w == "i" else w for w in words.split())
    raw = target.with_suffix(".raw.wav")
    engine, name = voice.split(" ", 1)
    if engine == "kokoro":
        kokoro(name, spelled, raw)
    elif engine == "espeak":
        run(["espeak-ng", "-v", name, "-s", "150", "-w", str(raw), spelled])
    elif engine == "flite":
        run(["flite", "-voice", name, "-t", spelled, "-o", str(raw)])
    elif engine == "rhvoice":
        run(["RHVoice-test", "-p", name, "-o", str(raw)], spelled.encode())
    else:
        run(["text2wave", "-eval", f"(voice_{name})", "-o", str(raw)], spelled.encode())
    run(["sox", str(raw), "-r", "16000", "-c", "1", "-b", "16", str(target), "gain", "-n", "-9", "pad", "0.4", "1.0"])
    raw.unlink()


def run(command, text=None):
    subprocess.run(command, input=text, check=True, capture_output=True)


# The costs are tuned on voices of which training heard none; figures are reported on the others, which neither has heard.
VOICES = {
    "tune": ["espeak en-gb-scotland+f3", "espeak en-gb-scotland+m2"],
    "accent": ["rhvoice ksp"],
    "near": ["espeak en-gb-scotland+f3", "espeak en-gb-scotland+m2", "rhvoice ksp"],
    "report": ["flite awb", "festival ked_diphone", "kokoro jm_kumo"],
    "speakers": ["kokoro am_michael", "kokoro bf_emma", "kokoro ff_siwis"],
    "choice": ["kokoro bm_lewis", "kokoro zf_xiaobei"],
    "commands": ["espeak en-gb-scotland+f3", "espeak en-gb-scotland+m2", "rhvoice ksp", "kokoro bm_lewis", "kokoro zf_xiaobei"],
}
SENTENCES = 80
SEEDS = {"tune": 11, "accent": 13, "near": 14, "report": 12, "speakers": 15, "choice": 16, "commands": 17}


def main(folder, kind):
    r = random.Random(SEEDS[kind])
    voices = VOICES[kind]
    folder.mkdir(parents=True, exist_ok=True)
    rows = []
    if kind == "near":
        rows += [(voice, "out", words) for voice in voices for words in NEAR]
    elif kind == "commands":
        rows += [(voice, "in", words) for voice in voices for words in SHORT]
    else:
        for voice in voices:
            rows += [(voice, "in", reading(r)) for _ in range(SENTENCES)]
        rows += [(voices[i % len(voices)], "out", words) for i, words in enumerate(TALK)]
    lines = ["file\tvoice\tgrammar\twords"]
    for i, (voice, grammar, words) in enumerate(rows):
        speak(voice, words, folder / f"{grammar}-{i:03}.wav")
        lines.append(f"{grammar}-{i:03}.wav\t{voice}\t{grammar}\t{words}")
    (folder / "clips.tsv").write_text("\n".join(lines) + "\n")


main(pathlib.Path(sys.argv[1]), sys.argv[2])
