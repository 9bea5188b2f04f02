package org.arcsay.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.arcsay.analysis.SeriesPlans;
import org.arcsay.app.Settings;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.review.OutcomeWords;
import org.arcsay.session.Context;
import org.arcsay.session.Dictation;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Does what the user guide says: runs its commands in order in one fresh data folder, after writing the files that it shows,
 * and says its phrases to a session over a real records file, which must answer in the guide's words.
 */
class GuideTest {
    private static final Path GUIDE = Path.of("docs/guide.md");
    private static final String PROGRAM = "./arcsay ";
    private static final String SETTINGS = "settings.properties";

    /** Commands that open a window; only their options are checked. */
    private static final Set<String> WINDOWS = Set.of("measure", "review", "compare");

    @TempDir
    private Path folder;

    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|\\S+");

    /**
     * A fenced block.
     *
     * @param language first word behind the fence
     * @param rest the other words, such as a file name or the grammar of phrases
     */
    private record Block(String language, String rest, int line, List<String> lines) {
        String text() {
            return String.join("\n", lines) + "\n";
        }
    }

    private static List<Block> blocks() throws IOException {
        List<Block> blocks = new ArrayList<>();
        List<String> guide = Files.readAllLines(GUIDE);
        for (int i = 0; i < guide.size(); i++) {
            if (guide.get(i).startsWith("```")) {
                int end = i + 1;
                while (!guide.get(end).equals("```")) {
                    end++;
                }
                String[] info = guide.get(i).substring(3).split(" ", 2);
                blocks.add(new Block(info[0], info.length > 1 ? info[1] : "", i + 1, guide.subList(i + 1, end)));
                i = end;
            }
        }
        return blocks;
    }

    @Test
    void everyBlockIsOfAKindThatIsChecked() throws IOException {
        for (Block block : blocks()) {
            boolean checked = Set.of("sh", "spoken").contains(block.language())
                    || !block.rest().isEmpty();
            assertTrue(
                    checked, () -> "line " + block.line() + ": nothing checks a block of '" + block.language() + "'");
        }
    }

    @Test
    void everyCommandOfTheGuideWorksInOrder() throws Exception {
        Path home = Files.createDirectory(folder.resolve("home"));
        Path user = Files.createDirectory(folder.resolve("user"));
        Shell shell = new Shell(home);
        int run = 0;
        for (Block block : blocks()) {
            if (block.language().equals("sh")) {
                for (String line : block.lines()) {
                    run(shell, line, user);
                    run++;
                }
            } else if (!block.rest().isEmpty() && !block.language().equals("spoken")) {
                write(block, home, user);
            }
        }
        assertTrue(run >= 30, "only " + run + " commands in the guide");
    }

    private static void write(Block block, Path home, Path user) throws Exception {
        Path file = block.rest().equals(SETTINGS)
                ? home.resolve("config").resolve(SETTINGS)
                : Path.of(block.rest().replace("~", user.toString()));
        Files.createDirectories(file.getParent());
        Files.writeString(file, block.text());
        if (block.rest().equals(SETTINGS)) {
            Settings.read(file);
        }
    }

    /** A line such as {@code ./arcsay check # exit 8}; without the remark it must end with exit code 0. */
    private static void run(Shell shell, String line, Path user) throws IOException {
        if (line.startsWith("mkdir ")) {
            Files.createDirectories(
                    Path.of(line.replaceFirst("^mkdir (-p )?", "").replace("~", user.toString())));
            return;
        }
        assertTrue(line.startsWith(PROGRAM), line);
        String[] parts = line.substring(PROGRAM.length()).split("\\s+#\\s+exit ");
        int exit = parts.length > 1 ? Integer.parseInt(parts[1].strip()) : ExitCode.OK;
        List<String> arguments = new ArrayList<>(WORD.matcher(parts[0])
                .results()
                .map(word -> word.group(1) != null ? word.group(1) : word.group())
                .map(word -> word.replace("~", user.toString()))
                .toList());
        boolean microphone = arguments.get(0).equals("capture") && !arguments.contains("--wav");
        if (WINDOWS.contains(arguments.get(0)) || microphone) {
            arguments.add("--help");
        }
        Shell.Answer answer = shell.arcsay(arguments.toArray(String[]::new));
        int expected = arguments.contains("--lexicon") && lacksPronunciations(answer) ? ExitCode.CHECK_FAILED : exit;
        assertEquals(expected, answer.code(), () -> line + " said " + answer);
        answer.mustSay(expected);
    }

    /** The guide says that own words need a model with its pronunciations; without them, the program must say so. */
    private static boolean lacksPronunciations(Shell.Answer answer) {
        return answer.out().contains("comes without its pronunciations (graph/lexicon.txt)");
    }

    @TestFactory
    Stream<DynamicTest> everyPhraseOfTheGuideIsAnsweredAsTheGuideSays() throws IOException {
        return blocks().stream()
                .filter(block -> block.language().equals("spoken"))
                .map(block -> DynamicTest.dynamicTest("line " + block.line(), () -> say(block)));
    }

    private void say(Block block) throws Exception {
        boolean hand = block.rest().contains("hand");
        Path records = Files.createDirectory(folder.resolve("spoken-" + block.line()));
        SpokenGrammar grammar = hand ? SpokenGrammar.hand() : SpokenGrammar.standard();
        Path settings = Files.writeString(
                records.resolve(SETTINGS), block.rest().contains("minus") ? "sign = minus-is-deficit" : "");
        try (Dictation dictation = new Dictation(
                records,
                Settings.read(settings).clinic(),
                Context.START,
                grammar,
                SeriesPlans.standard().named(hand ? "index" : "thumb-full").orElseThrow())) {
            List<String> said = new ArrayList<>();
            for (String line : block.lines()) {
                String phrase = line.split(" {2,}→ ")[0];
                said.add(phrase + " → " + OutcomeWords.of(dictation.say(phrase.strip())));
            }
            assertEquals(
                    String.join(
                            "\n",
                            block.lines().stream()
                                    .map(line -> line.replaceAll(" {2,}→ ", " → "))
                                    .toList()),
                    String.join("\n", said),
                    "line " + block.line());
        }
    }

    @Test
    void everyCommandAndOptionOfTheGuideStandsInABlockThatIsRun() throws IOException {
        String guide = Files.readString(GUIDE);
        List<String> commands = blocks().stream()
                .filter(block -> block.language().equals("sh"))
                .flatMap(block -> block.lines().stream())
                .filter(line -> line.startsWith(PROGRAM))
                .map(line -> line.split(" +")[1])
                .toList();
        Optional<String> unknown = Stream.of(guide.split("`"))
                .filter(code -> code.startsWith("arcsay "))
                .map(code -> code.split(" +")[1])
                .filter(command -> !commands.contains(command))
                .findFirst();
        assertEquals(Optional.empty(), unknown);
    }
}
