"""Which voices no training may hear. Alone in a file so that the training machine needs no synthesis packages."""

HELD_OUT_PREFIXES = ("flite-awb", "festival-ked", "espeak-en-gb-scotland", "kokoro-jm_kumo", "rhvoice-ksp", "fsdd-theo", "fsdd-nicolas")


def is_held_out(voice):
    return voice.startswith(HELD_OUT_PREFIXES)
