package org.arcsay.store;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/** For one thread. A program of the tests in a process of its own, which can be killed at any moment. */
public final class ChildJvm implements AutoCloseable {
    private final Process process;
    private final BufferedReader lines;

    private ChildJvm(Process process) {
        this.process = process;
        this.lines = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    }

    public static ChildJvm start(Class<?> main, String... arguments) throws IOException {
        return start(Map.of(), main, arguments);
    }

    public static ChildJvm start(Map<String, String> environment, Class<?> main, String... arguments)
            throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-Xmx256m",
                "-cp",
                System.getProperty("java.class.path"),
                main.getName()));
        command.addAll(List.of(arguments));
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment().putAll(environment);
        return new ChildJvm(builder.start());
    }

    /** The next line it says, or null when it ended. */
    public String line() throws IOException {
        return lines.readLine();
    }

    public long pid() {
        return process.pid();
    }

    /** Kills it as the operating system does, without a chance to tidy up; what it said so far can still be read. */
    public void kill() throws InterruptedException {
        process.toHandle().destroyForcibly();
        process.waitFor();
    }

    /** What it still says after it was killed or while it runs to its end. */
    public List<String> rest() throws IOException {
        List<String> rest = new ArrayList<>();
        for (String line = line(); line != null; line = line()) {
            rest.add(line);
        }
        return rest;
    }

    public int exit() throws InterruptedException {
        if (!process.waitFor(60, TimeUnit.SECONDS)) {
            process.destroyForcibly();
            throw new IllegalStateException("the child did not end");
        }
        return process.exitValue();
    }

    @Override
    public void close() throws InterruptedException {
        kill();
    }
}
