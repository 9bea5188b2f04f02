package org.arcsay.review;

import com.fasterxml.jackson.annotation.JsonIgnoreProperties;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import org.arcsay.model.Remark;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;

/** Drafts as one small JSON file a visit, readable by their owner only. Safe for use by one thread at a time. */
public final class FileDrafts implements Drafts {
    private static final JsonMapper JSON = JsonMapper.builder()
            .addMixIn(Remark.class, NamedRemark.class)
            .addMixIn(Draft.class, PlainDraft.class)
            .build();

    private final Path folder;

    /**
     * @param folder made when first needed; its parent must be the user's own data folder
     */
    public FileDrafts(Path folder) {
        this.folder = folder;
    }

    @JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
    @JsonSubTypes({
        @JsonSubTypes.Type(value = Remark.Pain.class, name = "pain"),
        @JsonSubTypes.Type(value = Remark.Quality.class, name = "quality"),
        @JsonSubTypes.Type(value = Remark.Note.class, name = "note")
    })
    private interface NamedRemark {}

    @JsonIgnoreProperties("new")
    private interface PlainDraft {}

    @Override
    public List<Draft> load(long visit) throws IOException {
        Path file = file(visit);
        if (!Files.exists(file)) {
            return List.of();
        }
        try {
            return List.of(JSON.readValue(Files.readAllBytes(file), Draft[].class));
        } catch (JacksonException damaged) {
            Path aside = aside(visit);
            Files.move(file, aside, StandardCopyOption.REPLACE_EXISTING);
            throw new IOException(
                    "A half-typed correction could not be read and was put aside as " + aside + ". Type it again.",
                    damaged);
        }
    }

    @Override
    public void keep(long visit, List<Draft> drafts) throws IOException {
        if (drafts.isEmpty()) {
            Files.deleteIfExists(file(visit));
            return;
        }
        makeFolder();
        Path fresh = Files.createTempFile(folder, "draft", ".tmp");
        try {
            Files.write(fresh, JSON.writeValueAsBytes(drafts));
            Files.move(fresh, file(visit), StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
        } finally {
            Files.deleteIfExists(fresh);
        }
    }

    private void makeFolder() throws IOException {
        Files.createDirectories(folder);
        if (folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx------"));
        }
    }

    /** Removes everything half-typed of a visit, also what could not be read. */
    public void forget(long visit) throws IOException {
        Files.deleteIfExists(file(visit));
        Files.deleteIfExists(aside(visit));
    }

    private Path aside(long visit) {
        return folder.resolve("visit-" + visit + ".json.unreadable");
    }

    private Path file(long visit) {
        return folder.resolve("visit-" + visit + ".json");
    }
}
