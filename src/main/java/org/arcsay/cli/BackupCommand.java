package org.arcsay.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.arcsay.store.Backup;
import org.arcsay.store.Backups;
import org.arcsay.store.DataFolder;
import org.arcsay.store.SealedFiles;
import org.arcsay.store.StoreException;
import org.arcsay.store.VisitStore;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Makes a backup now, or lists those there are. */
@Command(
        name = "backup",
        mixinStandardHelpOptions = true,
        description = {
            "Checks the records in full and copies them; the copy is checked before it gets its name.",
            "Backups beside the records do not help when the disk is lost: take one elsewhere with --sealed."
        })
final class BackupCommand implements Callable<Integer> {
    @Mixin
    private Place place;

    @Mixin
    private Password password;

    @Option(
            names = "--sealed",
            paramLabel = "FILE",
            description = "Write an encrypted copy to FILE instead, for another disk. A lost password is final.")
    private @Nullable Path sealed;

    @Option(names = "--list", description = "Only list the backups, newest first, each checked in full.")
    private boolean list;

    record BackupView(String file, String made, String purpose, boolean good) {
        static BackupView of(Backup backup, boolean good) {
            return new BackupView(
                    backup.file().toString(),
                    backup.made().toString(),
                    backup.purpose().name().toLowerCase(Locale.ROOT),
                    good);
        }

        String text() {
            return String.format(Locale.ROOT, "%-8s %-7s %s  %s", good ? "good" : "DAMAGED", purpose, made, file);
        }
    }

    @Override
    public Integer call() throws Exception {
        if (list) {
            List<BackupView> views = views(place.folder());
            place.print(
                    views,
                    String.join(
                            System.lineSeparator(),
                            views.stream().map(BackupView::text).toList()));
        } else if (sealed != null) {
            seal(sealed);
        } else {
            try (VisitStore store = place.storeToKeep()) {
                BackupView made = BackupView.of(Backups.beside(store.file()).make(store, Instant.now()), true);
                place.print(made, made.file());
            }
        }
        return ExitCode.OK;
    }

    static List<BackupView> views(DataFolder folder) throws StoreException {
        Backups backups = Backups.beside(folder.database());
        return backups.list().stream()
                .map(backup -> BackupView.of(backup, backups.isGood(backup)))
                .toList();
    }

    private void seal(Path target) throws StoreException, CliException {
        try (VisitStore store = place.storeToKeep()) {
            char[] secret = password.fresh(place.keyboard());
            try {
                SealedFiles.backUp(store, target, secret);
            } finally {
                Arrays.fill(secret, ' ');
            }
        }
        place.out().println(target);
        place.err().println("Keep the password apart from the file: without it nobody can open the file again.");
    }
}
