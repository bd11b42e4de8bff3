/*
 * What a power cut, or a kill at one chosen call, leaves on the disk.
 *
 * A preload library. It sees every call that changes a file below one folder, numbers them over
 * all threads, and just before a chosen one ends the process:
 *
 *   POWERLOSS_DIR=path     only files below it count
 *   POWERLOSS_AFTER=N      end just before the N-th call
 *   POWERLOSS_MODE=kill    leave the files as they are                  (as SIGKILL does)
 *   POWERLOSS_MODE=all     undo every change that no sync covered       (as a power cut may)
 *   POWERLOSS_MODE=random  undo a random part of them, some torn at 512 bytes
 *   POWERLOSS_SEED=N       for the random mode
 *   POWERLOSS_DEAF=/name   a sync of files whose path ends so does nothing: the check of the check
 *   POWERLOSS_COUNT=path   at a normal end the number of calls is written there
 *
 * The exit status is 99. What POSIX promises is the measure: only fsync and fdatasync make a
 * change last; sync_file_range does not (its manual page says so). Kind to the program in one
 * thing: making, renaming and removing a file, and O_TRUNC, last at once.
 */
#define _GNU_SOURCE
#include <errno.h>
#include <fcntl.h>
#include <pthread.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <sys/uio.h>
#include <unistd.h>

#define FD_MAX 65536
#define SECTOR 512
#define ENDED 99

enum mode { KILL, ALL, RANDOM };

/* One change that no sync has covered yet. */
struct change {
    struct change *before;
    int is_truncate;
    off_t at, old_size, new_size;
    size_t len, old_len;
    char *old_bytes, *new_bytes;
};

/* A file, whichever descriptors it is open under. */
struct file {
    dev_t dev;
    ino_t ino;
    int fd;
    int is_deaf;
    struct change *last;
    struct file *next;
};

static struct {
    dev_t dev;
    ino_t ino;
    struct file *file;
    int is_known;
    int syncs_itself;
} seen[FD_MAX];

static struct file *files;
static pthread_mutex_t lock = PTHREAD_MUTEX_INITIALIZER;
static const char *folder, *deaf, *count_to;
static enum mode mode;
static long after = -1, calls;
static unsigned seed = 1;

__attribute__((constructor)) static void begin(void) {
    const char *text;
    folder = getenv("POWERLOSS_DIR");
    deaf = getenv("POWERLOSS_DEAF");
    count_to = getenv("POWERLOSS_COUNT");
    if ((text = getenv("POWERLOSS_AFTER"))) after = atol(text);
    if ((text = getenv("POWERLOSS_SEED"))) seed = (unsigned)atol(text);
    if ((text = getenv("POWERLOSS_MODE")))
        mode = !strcmp(text, "all") ? ALL : !strcmp(text, "random") ? RANDOM : KILL;
}

__attribute__((destructor)) static void finish(void) {
    if (!count_to) return;
    FILE *out = fopen(count_to, "w");
    if (!out) return;
    fprintf(out, "%ld\n", calls);
    fclose(out);
}

static int is_inside(const char *path) {
    return folder && !strncmp(path, folder, strlen(folder));
}

static int ends_with(const char *path, const char *end) {
    size_t a = strlen(path), b = strlen(end);
    return a >= b && !strcmp(path + a - b, end);
}

static struct file *find(const struct stat *st, const char *link, const char *path) {
    for (struct file *f = files; f; f = f->next)
        if (f->dev == st->st_dev && f->ino == st->st_ino) return f;
    struct file *f = calloc(1, sizeof *f);
    f->dev = st->st_dev;
    f->ino = st->st_ino;
    f->fd = (int)syscall(SYS_openat, AT_FDCWD, link, O_RDWR | O_CLOEXEC, 0);
    f->is_deaf = deaf && ends_with(path, deaf);
    f->next = files;
    return files = f;
}

/* The file of a descriptor, if it lies below the folder. */
static struct file *file_of(int fd) {
    struct stat st;
    char link[64], path[4096];
    if (!folder || fd < 0 || fd >= FD_MAX) return NULL;
    if (syscall(SYS_fstat, fd, &st)) return NULL;
    if (!S_ISREG(st.st_mode) && !S_ISDIR(st.st_mode)) return NULL;
    if (seen[fd].is_known && seen[fd].dev == st.st_dev && seen[fd].ino == st.st_ino)
        return seen[fd].file;
    snprintf(link, sizeof link, "/proc/self/fd/%d", fd);
    ssize_t n = readlink(link, path, sizeof path - 1);
    if (n < 0) return NULL;
    path[n] = 0;
    seen[fd].is_known = 1;
    seen[fd].dev = st.st_dev;
    seen[fd].ino = st.st_ino;
    seen[fd].syncs_itself = (fcntl(fd, F_GETFL) & (O_DSYNC | O_SYNC)) != 0;
    return seen[fd].file = is_inside(path) ? find(&st, link, path) : NULL;
}

static void forget(struct file *f) {
    while (f->last) {
        struct change *c = f->last;
        f->last = c->before;
        free(c->old_bytes);
        free(c->new_bytes);
        free(c);
    }
}

static void undo(struct file *f, struct change *c) {
    if (c->old_len) syscall(SYS_pwrite64, f->fd, c->old_bytes, c->old_len, c->at);
    syscall(SYS_ftruncate, f->fd, c->old_size);
}

/* Each 512 bytes of a write reach the disk or do not. */
static void redo_torn(struct file *f, struct change *c) {
    for (size_t o = 0; o < c->len;) {
        size_t n = SECTOR - (size_t)(c->at + (off_t)o) % SECTOR;
        if (n > c->len - o) n = c->len - o;
        if (rand_r(&seed) & 1)
            syscall(SYS_pwrite64, f->fd, c->new_bytes + o, n, c->at + (off_t)o);
        o += n;
    }
}

static void redo_some(struct file *f, struct change *c) {
    int fate = rand_r(&seed) % 4; /* 0 and 1: it is there; 2: it is not; 3: it is torn */
    if (fate == 2) return;
    if (c->is_truncate) {
        if (fate < 2) syscall(SYS_ftruncate, f->fd, c->new_size);
    } else if (fate < 2) {
        syscall(SYS_pwrite64, f->fd, c->new_bytes, c->len, c->at);
    } else {
        redo_torn(f, c);
    }
}

static void cut(struct file *f) {
    int n = 0, i;
    struct change *c;
    for (c = f->last; c; c = c->before) n++;
    struct change **all = malloc(sizeof *all * (size_t)(n + 1));
    for (i = n, c = f->last; c; c = c->before) all[--i] = c; /* oldest first */
    for (i = n - 1; i >= 0; i--) undo(f, all[i]);
    if (mode == RANDOM)
        for (i = 0; i < n; i++) redo_some(f, all[i]);
    free(all);
}

/* Called with the lock held, so that no other thread is in the middle of a call. */
static void count(void) {
    calls++;
    if (after < 0 || calls < after) return;
    if (mode != KILL)
        for (struct file *f = files; f; f = f->next) cut(f);
    syscall(SYS_exit_group, ENDED);
}

static size_t length(const struct iovec *parts, int n) {
    size_t len = 0;
    for (int i = 0; i < n; i++) len += parts[i].iov_len;
    return len;
}

static struct change *note(struct file *f, off_t at, size_t len) {
    struct stat st;
    struct change *c = calloc(1, sizeof *c);
    syscall(SYS_fstat, f->fd, &st);
    c->at = at;
    c->len = len;
    c->old_size = c->new_size = st.st_size;
    if (at < st.st_size && len) {
        size_t n = (size_t)(st.st_size - at) < len ? (size_t)(st.st_size - at) : len;
        c->old_bytes = malloc(n);
        ssize_t got = syscall(SYS_pread64, f->fd, c->old_bytes, n, at);
        c->old_len = got > 0 ? (size_t)got : 0;
    }
    c->before = f->last;
    return f->last = c;
}

static void note_write(struct file *f, off_t at, const struct iovec *parts, int n) {
    struct change *c = note(f, at, length(parts, n));
    size_t o = 0;
    c->new_bytes = malloc(c->len + 1);
    for (int i = 0; i < n; i++) {
        memcpy(c->new_bytes + o, parts[i].iov_base, parts[i].iov_len);
        o += parts[i].iov_len;
    }
}

static void note_size(struct file *f, off_t size) {
    struct stat st;
    syscall(SYS_fstat, f->fd, &st);
    size_t lost = size < st.st_size ? (size_t)(st.st_size - size) : 0;
    struct change *c = note(f, size, lost);
    c->is_truncate = 1;
    c->new_size = size;
}

static off_t place(int fd) {
    struct stat st;
    if (!(fcntl(fd, F_GETFL) & O_APPEND)) return syscall(SYS_lseek, fd, 0, SEEK_CUR);
    syscall(SYS_fstat, fd, &st);
    return st.st_size;
}

static ssize_t write_now(int fd, const struct iovec *parts, int n, off_t at, int is_placed) {
    return is_placed ? syscall(SYS_pwritev, fd, parts, n, at, 0)
                     : syscall(SYS_writev, fd, parts, n);
}

static ssize_t writes(int fd, const struct iovec *parts, int n, off_t at, int is_placed) {
    pthread_mutex_lock(&lock);
    struct file *f = file_of(fd);
    if (!f) { /* a socket or a pipe may make us wait, so not under the lock */
        pthread_mutex_unlock(&lock);
        return write_now(fd, parts, n, at, is_placed);
    }
    count();
    if (!seen[fd].syncs_itself) note_write(f, is_placed ? at : place(fd), parts, n);
    ssize_t result = write_now(fd, parts, n, at, is_placed);
    pthread_mutex_unlock(&lock);
    return result;
}

ssize_t write(int fd, const void *bytes, size_t len) {
    struct iovec part = {(void *)bytes, len};
    return writes(fd, &part, 1, 0, 0);
}
ssize_t pwrite(int fd, const void *bytes, size_t len, off_t at) {
    struct iovec part = {(void *)bytes, len};
    return writes(fd, &part, 1, at, 1);
}
ssize_t pwrite64(int fd, const void *bytes, size_t len, off64_t at) {
    return pwrite(fd, bytes, len, at);
}
ssize_t writev(int fd, const struct iovec *parts, int n) { return writes(fd, parts, n, 0, 0); }
ssize_t pwritev(int fd, const struct iovec *parts, int n, off_t at) {
    return writes(fd, parts, n, at, 1);
}
ssize_t pwritev64(int fd, const struct iovec *parts, int n, off64_t at) {
    return writes(fd, parts, n, at, 1);
}

int ftruncate(int fd, off_t size) {
    pthread_mutex_lock(&lock);
    struct file *f = file_of(fd);
    if (f) {
        count();
        note_size(f, size);
    }
    int result = (int)syscall(SYS_ftruncate, fd, size);
    pthread_mutex_unlock(&lock);
    return result;
}
int ftruncate64(int fd, off64_t size) { return ftruncate(fd, size); }

int fallocate(int fd, int how, off_t at, off_t len) {
    struct stat st;
    pthread_mutex_lock(&lock);
    struct file *f = file_of(fd);
    if (f && !(how & FALLOC_FL_KEEP_SIZE)) {
        count();
        syscall(SYS_fstat, fd, &st);
        note_size(f, at + len > st.st_size ? at + len : st.st_size);
    }
    int result = (int)syscall(SYS_fallocate, fd, how, at, len);
    pthread_mutex_unlock(&lock);
    return result;
}
int fallocate64(int fd, int how, off64_t at, off64_t len) { return fallocate(fd, how, at, len); }
int posix_fallocate(int fd, off_t at, off_t len) { return fallocate(fd, 0, at, len) ? errno : 0; }
int posix_fallocate64(int fd, off64_t at, off64_t len) { return posix_fallocate(fd, at, len); }

static int syncs(int fd, long call) {
    int result = 0;
    pthread_mutex_lock(&lock);
    struct file *f = file_of(fd);
    if (f) count();
    if (!f || !f->is_deaf) {
        result = (int)syscall(call, fd);
        if (f && !result) forget(f);
    }
    pthread_mutex_unlock(&lock);
    return result;
}
int fsync(int fd) { return syncs(fd, SYS_fsync); }
int fdatasync(int fd) { return syncs(fd, SYS_fdatasync); }

int sync_file_range(int fd, off64_t at, off64_t len, unsigned how) {
    pthread_mutex_lock(&lock);
    if (file_of(fd)) count();
    int result = (int)syscall(SYS_sync_file_range, fd, at, len, how);
    pthread_mutex_unlock(&lock);
    return result;
}

/* Changes of names last at once, but a kill may come before each. */
static void count_name(const char *path) {
    if (!is_inside(path)) return;
    pthread_mutex_lock(&lock);
    count();
    pthread_mutex_unlock(&lock);
}
int rename(const char *from, const char *to) {
    count_name(from);
    return (int)syscall(SYS_renameat, AT_FDCWD, from, AT_FDCWD, to);
}
int unlink(const char *path) {
    count_name(path);
    return (int)syscall(SYS_unlinkat, AT_FDCWD, path, 0);
}
int mkdir(const char *path, mode_t rights) {
    count_name(path);
    return (int)syscall(SYS_mkdirat, AT_FDCWD, path, rights);
}

int open(const char *path, int flags, ...) {
    mode_t rights = 0;
    if (flags & (O_CREAT | __O_TMPFILE)) {
        va_list rest;
        va_start(rest, flags);
        rights = va_arg(rest, mode_t);
        va_end(rest);
    }
    if (flags & (O_CREAT | O_TRUNC)) count_name(path);
    return (int)syscall(SYS_openat, AT_FDCWD, path, flags, rights);
}
int open64(const char *path, int flags, ...) {
    mode_t rights = 0;
    if (flags & (O_CREAT | __O_TMPFILE)) {
        va_list rest;
        va_start(rest, flags);
        rights = va_arg(rest, mode_t);
        va_end(rest);
    }
    return open(path, flags, rights);
}
