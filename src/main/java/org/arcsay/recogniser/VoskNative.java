package org.arcsay.recogniser;

import com.sun.jna.Library;
import com.sun.jna.Native;
import com.sun.jna.Platform;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/** Unpacks and loads libvosk, once a process; any thread may ask for it. */
final class VoskNative {
    private static final String ENCODING = "UTF-8";
    private static final int NO_CHATTER = -1;

    /** Loaded in this order: on Windows the library finds its runtime only when that is loaded already. */
    private static final Map<String, List<String>> FILES = Map.of(
            "linux-x86-64", List.of("libvosk.so"),
            "darwin", List.of("libvosk.dylib"),
            "win32-x86-64", List.of("libwinpthread-1.dll", "libgcc_s_seh-1.dll", "libstdc++-6.dll", "libvosk.dll"));

    private VoskNative() {}

    /** The library, ready and quiet. */
    static VoskLibrary library() {
        return Holder.LIBRARY;
    }

    private static final class Holder {
        private static final VoskLibrary LIBRARY = load();
    }

    private static VoskLibrary load() {
        String platform = Platform.isMac() ? "darwin" : Platform.RESOURCE_PREFIX;
        List<String> files = FILES.get(platform);
        if (files == null) {
            throw new RecogniserException("Speech recognition does not run on this kind of computer (" + platform
                    + "). It runs on 64-bit Intel/AMD Linux and Windows and on Macs; entries can still be typed.");
        }
        try {
            return load(platform, files);
        } catch (IOException | UnsatisfiedLinkError e) {
            throw new RecogniserException(
                    "The speech recogniser could not be started (" + e.getMessage()
                            + "). Check that the temporary folder is writable and programs may run from it.",
                    e);
        }
    }

    private static VoskLibrary load(String platform, List<String> files) throws IOException {
        Path folder = Files.createTempDirectory("arcsay-vosk");
        folder.toFile().deleteOnExit();
        for (String file : files) {
            unpack("/" + platform + "/" + file, folder.resolve(file));
        }
        Map<String, Object> options = Map.of(Library.OPTION_STRING_ENCODING, ENCODING);
        for (String runtime : files.subList(0, files.size() - 1)) {
            System.load(folder.resolve(runtime).toString());
        }
        VoskLibrary library =
                Native.load(folder.resolve(files.get(files.size() - 1)).toString(), VoskLibrary.class, options);
        library.vosk_set_log_level(NO_CHATTER);
        return library;
    }

    private static void unpack(String resource, Path target) throws IOException {
        try (InputStream in = VoskNative.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IOException("the program's file " + resource + " is missing");
            }
            Files.copy(in, target);
        }
        target.toFile().deleteOnExit();
    }
}
