package org.arcsay.recogniser;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.arcsay.grammar.Lexicon;

/**
 * A maker's command, for one thread: builds the graph of a model folder anew from the lexicon, after a change of either.
 * Arguments: the model folder, the lexicon file. The checksum list has to be made anew afterwards (models/README.md).
 */
final class ModelGraphs {
    private ModelGraphs() {}

    public static void main(String[] arguments) throws Exception {
        Path model = Path.of(arguments[0]);
        Path lexicon = Path.of(arguments[1]);
        LexiconGraph graph = LexiconGraph.compile(
                Lexicon.read(lexicon), ModelFolder.check(model).phones());
        Files.write(model.resolve(ModelFolder.LEXICON_GRAPH), graph.fst());
        Files.writeString(model.resolve(ModelFolder.WORDS), graph.words());
        Files.copy(lexicon, model.resolve("graph/lexicon.txt"), StandardCopyOption.REPLACE_EXISTING);
        System.out.println(graph.wordIds().size() + " words, " + graph.fst().length + " bytes");
    }
}
