package org.arcsay.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.Placement;
import org.arcsay.model.Remark;
import org.arcsay.model.Side;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FileDraftsTest {
    @TempDir
    private Path folder;

    @Test
    void whatWasHalfTypedComesBackExactly() throws IOException {
        Draft correction = Draft.of(
                        DemoVisit.visit().entry(DemoVisit.MP_EXTENSION_ENTRY).orElseThrow())
                .withValue("lacks 1")
                .withPlacement(Placement.LATERAL)
                .withPain(Optional.of(Remark.PainPlace.AT_REST), "x")
                .withFeel(Optional.of(Remark.Feel.STIFF))
                .withNote("tape on the \"dorsal\" side")
                .withWhy("misheard");
        List<Draft> drafts = List.of(correction, Draft.empty().withSide(Side.LEFT));
        new FileDrafts(folder).keep(7, drafts);
        assertEquals(drafts, new FileDrafts(folder).load(7));
        assertEquals(List.of(), new FileDrafts(folder).load(8));
    }

    @Test
    void keepingNoneRemovesTheFile() throws IOException {
        FileDrafts drafts = new FileDrafts(folder.resolve("made/when/needed"));
        drafts.keep(7, List.of(Draft.empty().withSide(Side.LEFT)));
        drafts.keep(7, List.of());
        assertEquals(List.of(), drafts.load(7));
        try (var files = Files.list(folder.resolve("made/when/needed"))) {
            assertEquals(0, files.count());
        }
    }

    @Test
    void aDamagedFileIsPutAsideAndSaidSo() throws IOException {
        Files.writeString(folder.resolve("visit-7.json"), "[{\"entry\": 3,");
        FileDrafts drafts = new FileDrafts(folder);
        String message = assertThrows(IOException.class, () -> drafts.load(7)).getMessage();
        assertTrue(message.contains("visit-7.json.unreadable"), message);
        assertTrue(Files.exists(folder.resolve("visit-7.json.unreadable")));
        assertEquals(List.of(), drafts.load(7));
    }

    @Test
    void onlyTheOwnerCanReadThem() throws IOException {
        assumeTrue(folder.getFileSystem().supportedFileAttributeViews().contains("posix"));
        new FileDrafts(folder).keep(7, List.of(Draft.empty().withSide(Side.LEFT)));
        String mode = PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve("visit-7.json")));
        assertFalse(mode.substring(3).matches(".*[rwx].*"), mode);
    }
}
