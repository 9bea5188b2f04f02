package org.arcsay.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.AclEntry;
import java.nio.file.attribute.AclEntryPermission;
import java.nio.file.attribute.AclEntryType;
import java.nio.file.attribute.AclFileAttributeView;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.EnumSet;
import java.util.List;

/** Creates files and folders that only their owner may read or write, by POSIX mode or by access control list. */
final class OwnerOnly {
    private static final FileAttribute<?> FOLDER =
            PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------"));
    private static final FileAttribute<?> FILE =
            PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"));

    private OwnerOnly() {}

    /** Creates the folder and its missing parents; a folder that is there keeps its permissions. */
    static void createFolder(Path folder) throws IOException {
        if (Files.isDirectory(folder)) {
            return;
        }
        Path parent = folder.toAbsolutePath().getParent();
        if (parent != null) {
            createFolder(parent);
        }
        if (posix(folder)) {
            Files.createDirectory(folder, FOLDER);
        } else {
            restrictByList(Files.createDirectory(folder));
        }
    }

    /**
     * Creates an empty file.
     *
     * @throws java.nio.file.FileAlreadyExistsException when it is there
     */
    static void createFile(Path file) throws IOException {
        if (posix(file)) {
            Files.createFile(file, FILE);
        } else {
            restrictByList(Files.createFile(file));
        }
    }

    private static boolean posix(Path path) {
        Path existing = path.toAbsolutePath();
        while (existing != null && !Files.exists(existing)) {
            existing = existing.getParent();
        }
        Path asked = existing == null ? path.getFileSystem().getPath(".") : existing;
        try {
            return Files.getFileStore(asked).supportsFileAttributeView(PosixFileAttributeView.class);
        } catch (IOException e) {
            // In a container the list of mounted disks may not tell on which one the folder lies.
            return Files.getFileAttributeView(asked, PosixFileAttributeView.class) != null;
        }
    }

    private static void restrictByList(Path path) throws IOException {
        AclFileAttributeView view = Files.getFileAttributeView(path, AclFileAttributeView.class);
        if (view != null) {
            view.setAcl(List.of(AclEntry.newBuilder()
                    .setType(AclEntryType.ALLOW)
                    .setPrincipal(view.getOwner())
                    .setPermissions(EnumSet.allOf(AclEntryPermission.class))
                    .build()));
        }
    }
}
