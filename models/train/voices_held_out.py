"""Which voices no training may hear. Alone in a file so that the training machine needs no synthesis packages."""

KOKORO = ("jm_kumo", "am_michael", "bf_emma", "ff_siwis", "bm_lewis", "zf_xiaobei")
HELD_OUT_PREFIXES = (
    "flite-awb", "festival-ked", "espeak-en-gb-scotland", "rhvoice-ksp", "fsdd-theo", "fsdd-nicolas",
    *(f"kokoro-{name}" for name in KOKORO),
)


def is_held_out(voice):
    return voice.startswith(HELD_OUT_PREFIXES)
