package org.arcsay.audio;

import java.nio.charset.StandardCharsets;
import java.util.List;

/** Names of other file types by their first bytes, so that a refusal can say what the file is. */
final class Containers {
    private record Mark(int offset, String bytes, String name) {}

    private static final List<Mark> MARKS = List.of(
            new Mark(0, "fLaC", "FLAC"),
            new Mark(0, "OggS", "Ogg (Vorbis or Opus)"),
            new Mark(0, "ID3", "MP3"),
            new Mark(0, "\u00ff\u00fb", "MP3"),
            new Mark(0, "\u00ff\u00f3", "MP3"),
            new Mark(0, "\u00ff\u00f1", "AAC"),
            new Mark(4, "ftyp", "MPEG-4 (M4A or MP4)"),
            new Mark(0, "FORM", "AIFF"),
            new Mark(0, "caff", "Core Audio (CAF)"),
            new Mark(0, "#!AMR", "AMR"),
            new Mark(0, "\u001aE\u00df\u00a3", "Matroska or WebM"),
            new Mark(0, "RIFX", "big-endian WAV"),
            new Mark(0, "RF64", "64-bit WAV (RF64)"),
            new Mark(0, "RIFF", "a RIFF file without WAVE sound"),
            new Mark(0, ".snd", "Sun audio (AU)"));

    private Containers() {}

    static String nameOf(byte[] start) {
        String text = new String(start, StandardCharsets.ISO_8859_1);
        return MARKS.stream()
                .filter(mark -> text.startsWith(mark.bytes(), mark.offset()))
                .map(Mark::name)
                .findFirst()
                .orElse("no kind of sound file known here");
    }
}
