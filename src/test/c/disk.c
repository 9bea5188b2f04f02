/*
 * Preloaded into a process, this writes down what it does to the files below the folder DISK_FOLDER, in the file DISK_LOG:
 *   W path offset length, then the bytes      written
 *   S path                                    forced to the disk
 *   T path size                               cut
 *   U path                                    removed
 *   R old new                                 renamed
 * and, when DISK_FAIL names a file that holds a number n, makes the n-th write or force from then on fail: the
 * number counts down; at zero the call fails with ENOSPC (writes) or EIO (forces), once.
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <pthread.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/syscall.h>
#include <unistd.h>

static pthread_mutex_t lock = PTHREAD_MUTEX_INITIALIZER;
static int log_fd = -1;

static void put(const void *bytes, size_t length) {
    const char *at = bytes;
    while (length > 0) {
        long done = syscall(SYS_write, log_fd, at, length);
        if (done <= 0) {
            return;
        }
        at += done;
        length -= done;
    }
}

static const char *folder(void) { return getenv("DISK_FOLDER"); }

static int ready(void) {
    const char *name = getenv("DISK_LOG");
    if (log_fd < 0 && name != NULL) {
        log_fd = syscall(SYS_openat, AT_FDCWD, name, O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600);
    }
    return log_fd >= 0;
}

static int watched(const char *path) {
    const char *wanted = folder();
    return wanted != NULL && path != NULL && strncmp(path, wanted, strlen(wanted)) == 0;
}

static int path_of(int fd, char *path, size_t size) {
    char link[64];
    snprintf(link, sizeof link, "/proc/self/fd/%d", fd);
    ssize_t length = readlink(link, path, size - 1);
    if (length < 0) {
        return 0;
    }
    path[length] = 0;
    return watched(path);
}

/* Whether this call is the one that has to fail. */
static int doomed(void) {
    const char *name = getenv("DISK_FAIL");
    char text[32] = {0};
    if (name == NULL) {
        return 0;
    }
    int fd = syscall(SYS_openat, AT_FDCWD, name, O_RDWR);
    if (fd < 0) {
        return 0;
    }
    long length = syscall(SYS_read, fd, text, sizeof text - 1);
    long left = length > 0 ? atol(text) : 0;
    if (left > 0) {
        length = snprintf(text, sizeof text, "%-20ld", left - 1);
        syscall(SYS_pwrite64, fd, text, length, 0L);
    }
    syscall(SYS_close, fd);
    return left == 1;
}

static void note_write(const char *path, long offset, const void *bytes, size_t length) {
    char head[4400];
    int n = snprintf(head, sizeof head, "W %s %ld %zu\n", path, offset, length);
    pthread_mutex_lock(&lock);
    if (ready()) {
        put(head, n);
        put(bytes, length);
    }
    pthread_mutex_unlock(&lock);
}

static void note(const char *format, ...) {
    char line[8800];
    va_list arguments;
    va_start(arguments, format);
    int n = vsnprintf(line, sizeof line, format, arguments);
    va_end(arguments);
    pthread_mutex_lock(&lock);
    if (ready()) {
        put(line, n);
    }
    pthread_mutex_unlock(&lock);
}

static ssize_t write_at(int fd, const void *bytes, size_t length, long offset) {
    char path[4096];
    if (!path_of(fd, path, sizeof path)) {
        return syscall(SYS_pwrite64, fd, bytes, length, offset);
    }
    if (doomed()) {
        errno = ENOSPC;
        return -1;
    }
    ssize_t done = syscall(SYS_pwrite64, fd, bytes, length, offset);
    if (done > 0) {
        note_write(path, offset, bytes, done);
    }
    return done;
}

ssize_t pwrite(int fd, const void *bytes, size_t length, off_t offset) { return write_at(fd, bytes, length, offset); }
ssize_t pwrite64(int fd, const void *bytes, size_t length, off64_t offset) { return write_at(fd, bytes, length, offset); }

ssize_t write(int fd, const void *bytes, size_t length) {
    char path[4096];
    if (fd <= 2 || !path_of(fd, path, sizeof path)) {
        return syscall(SYS_write, fd, bytes, length);
    }
    if (doomed()) {
        errno = ENOSPC;
        return -1;
    }
    long offset = syscall(SYS_lseek, fd, 0L, SEEK_CUR);
    ssize_t done = syscall(SYS_write, fd, bytes, length);
    if (done > 0) {
        note_write(path, offset, bytes, done);
    }
    return done;
}

static int force(int fd, long call) {
    char path[4096];
    int known = path_of(fd, path, sizeof path);
    if (known && doomed()) {
        errno = EIO;
        return -1;
    }
    int result = syscall(call, fd);
    if (known && result == 0) {
        note("S %s\n", path);
    }
    return result;
}

int fsync(int fd) { return force(fd, SYS_fsync); }
int fdatasync(int fd) { return force(fd, SYS_fdatasync); }

static int cut(int fd, long size) {
    char path[4096];
    int result = syscall(SYS_ftruncate, fd, size);
    if (result == 0 && path_of(fd, path, sizeof path)) {
        note("T %s %ld\n", path, size);
    }
    return result;
}

int ftruncate(int fd, off_t size) { return cut(fd, size); }
int ftruncate64(int fd, off64_t size) { return cut(fd, size); }

int unlink(const char *path) {
    int result = syscall(SYS_unlink, path);
    if (result == 0 && watched(path)) {
        note("U %s\n", path);
    }
    return result;
}

int rename(const char *old, const char *new) {
    int result = syscall(SYS_rename, old, new);
    if (result == 0 && watched(new)) {
        note("R %s %s\n", old, new);
    }
    return result;
}
