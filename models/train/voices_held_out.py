"""Which voices no training may hear. Alone in a file so that the training machine needs no synthesis packages."""
import hashlib

KOKORO = ("jm_kumo", "am_michael", "bf_emma", "ff_siwis", "bm_lewis", "zf_xiaobei")
# The test part of AN4.
AN4 = "fcaw fjlp fvap marh mdms2 menk miry mjgm mjwl mmxg".split()
HELD_OUT_PREFIXES = (
    "flite-awb", "festival-ked", "espeak-en-gb-scotland", "rhvoice-ksp", "fsdd-theo", "fsdd-nicolas",
    *(f"kokoro-{name}" for name in KOKORO),
    *(f"an4-{name}" for name in AN4),
)
COMMANDS = "commands-"
COMMANDS_RANGE, COMMANDS_HELD_PERCENT = 2**27, 20


def is_held_out(voice):
    return voice.startswith(HELD_OUT_PREFIXES) or (voice.startswith(COMMANDS) and is_held_out_of_commands(voice.removeprefix(COMMANDS)))


def is_held_out_of_commands(speaker):
    """By the rule that Speech Commands itself gives for its validation and testing parts, a tenth of the speakers each."""
    share = int(hashlib.sha1(speaker.encode()).hexdigest(), 16) % COMMANDS_RANGE / (COMMANDS_RANGE - 1)
    return 100 * share < COMMANDS_HELD_PERCENT
