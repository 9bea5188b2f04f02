package org.arcsay.app;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.recogniser.ModelCache;
import org.arcsay.recogniser.ModelException;
import org.arcsay.recogniser.ModelFolder;
import org.arcsay.recogniser.Recogniser;
import org.arcsay.recogniser.SentencePause;
import org.arcsay.recogniser.VoskModel;

/**
 * A loaded speech model fitted to the grammar; any one thread at a time. Load it once.
 *
 * <p>The model is the given folder, or else the one that comes with the program.
 */
public final class Ears implements AutoCloseable {
    private final VoskModel model;
    private final String version;
    private final List<String> missingWords;

    private Ears(VoskModel model, String version, List<String> missingWords) {
        this.model = model;
        this.version = version;
        this.missingWords = missingWords;
    }

    /**
     * Checks, fits and loads a model.
     *
     * @param cache folder for unpacked and fitted models
     * @param folder another model than the built-in one
     * @param pause the silence that ends a sentence
     * @throws ModelException when the model is missing, damaged or of the wrong kind
     */
    public static Ears open(Path cache, Optional<Path> folder, SpokenGrammar grammar, SentencePause pause)
            throws ModelException {
        ModelCache models = new ModelCache(cache);
        ModelFolder source = folder.isPresent() ? ModelFolder.check(folder.get()) : models.bundled();
        ModelCache.Fitted fitted = models.fit(source, grammar.graph(), grammar.ownWords(), pause);
        String name = folder.map(path -> String.valueOf(path.getFileName())).orElse(ModelCache.BUNDLED);
        return new Ears(
                VoskModel.load(fitted.folder().path()),
                name + "@" + fitted.folder().checksum(),
                fitted.missingWords());
    }

    /** As above, with the usual pause. */
    public static Ears open(Path cache, Optional<Path> folder, SpokenGrammar grammar) throws ModelException {
        return open(cache, folder, grammar, SentencePause.usual());
    }

    /** Name and checksum of the model, stored with every entry. */
    public String version() {
        return version;
    }

    /** Words of the grammar that the model lacks; sentences with them cannot be heard. */
    public List<String> missingWords() {
        return missingWords;
    }

    /** What the user should know of the words that the model lacks. */
    public Optional<String> warning() {
        return missingWords.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        "The speech model does not know these words of the grammar, so phrases with them are not heard: "
                                + String.join(", ", missingWords));
    }

    /** A recogniser owned by the calling thread. */
    public Recogniser recogniser(int sampleRate) {
        return model.recogniser(sampleRate);
    }

    @Override
    public void close() {
        model.close();
    }
}
