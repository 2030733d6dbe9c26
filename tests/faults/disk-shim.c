/*
 * Loaded into a host process (LD_PRELOAD) by disk-shim.ts. It stands between the process and the disk, for one folder:
 * - FAULT_LOG: what is written, cut, synced, renamed and removed there is appended to this file, in order, with the
 *   bytes. A power cut is then made from it by power-cut.ts.
 * - FAULT_CONTROL: a file of numbers that the test changes while the process runs (disk-shim.ts). It ends the process
 *   before the n-th change of the disk, lets changes fail, and moves the wall clock.
 * SQLite's -shm files are left alone: they are shared memory, and are made again after a power cut.
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <pthread.h>
#include <signal.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/sendfile.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <sys/time.h>
#include <sys/uio.h>
#include <time.h>
#include <unistd.h>

#define REAL(name) \
  static __typeof__(name) *real; \
  if (!real) \
  real = (__typeof__(name) *)dlsym(RTLD_NEXT, #name)

/* As in disk-shim.ts. */
struct control {
  int64_t kill_in;    /* the process ends at the n-th change from now; 0: never */
  int64_t kinds;      /* which kinds of changes fail: bits of enum kind */
  int64_t pass_first; /* so many of them still pass */
  int64_t fail_for;   /* so many fail then */
  int64_t error;      /* with this errno */
  int64_t clock_ms;   /* added to the wall clock */
  int64_t changes;    /* how many there were so far */
  int64_t failed;     /* how many failed so far */
};
enum kind { WRITES = 1, GROWS = 2, SYNCS = 4, CREATES = 8, NAMES = 16, OPENS = 32, READS = 64 };

/* As in write-log.ts. */
enum op { CREATE = 1, OPENED, WRITE, TRUNCATE, SYNC, DATASYNC, RENAME, UNLINK, MKDIR, LINK };
struct record {
  uint32_t op, length;
  uint64_t file, offset;
};

static char folder[PATH_MAX];
static struct control *control;
static int log_fd = -1;
static pthread_mutex_t lock = PTHREAD_RECURSIVE_MUTEX_INITIALIZER_NP;
static ino_t watched[4096]; /* which file it is, by file descriptor; 0: none of the folder's */
#define MOST_WATCHED ((int)(sizeof(watched) / sizeof(*watched)))

__attribute__((constructor)) static void begin(void)
{
  const char *at = getenv("FAULT_FOLDER");
  if (!at || !realpath(at, folder))
    return;
  const char *log = getenv("FAULT_LOG");
  if (log)
    log_fd = syscall(SYS_openat, AT_FDCWD, log, O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600);
  const char *numbers = getenv("FAULT_CONTROL");
  int fd = numbers ? (int)syscall(SYS_openat, AT_FDCWD, numbers, O_RDWR | O_CLOEXEC) : -1;
  if (fd < 0)
    return;
  void *map = mmap(NULL, sizeof(struct control), PROT_READ | PROT_WRITE, MAP_SHARED, fd, 0);
  if (map != MAP_FAILED)
    control = map;
}

static int is_shm(const char *path)
{
  size_t length = strlen(path);
  return length > 4 && !strcmp(path + length - 4, "-shm");
}

/* The path inside the folder, with "" for the folder itself; null for a path elsewhere. */
static const char *inside(const char *path, char *room)
{
  if (!folder[0] || !path)
    return NULL;
  if (path[0] != '/') {
    char cwd[PATH_MAX];
    if (!getcwd(cwd, sizeof(cwd)) || snprintf(room, PATH_MAX, "%s/%s", cwd, path) >= PATH_MAX)
      return NULL;
    path = room;
  }
  size_t length = strlen(folder);
  if (strncmp(path, folder, length) || (path[length] && path[length] != '/') || is_shm(path))
    return NULL;
  return path[length] ? path + length + 1 : "";
}

/* Node closes some files by a system call that passes by here, and a socket then has their number. */
static int is_watched(int fd)
{
  struct stat at;
  return fd >= 0 && fd < MOST_WATCHED && watched[fd] && !fstat(fd, &at) && at.st_ino == watched[fd];
}

static uint64_t file_of(int fd)
{
  struct stat at;
  return fstat(fd, &at) ? 0 : at.st_ino;
}

static void note(enum op op, uint64_t file, uint64_t offset, const void *bytes, size_t length)
{
  if (log_fd < 0)
    return;
  struct record head = {op, (uint32_t)length, file, offset};
  struct iovec parts[2] = {{&head, sizeof(head)}, {(void *)bytes, length}};
  syscall(SYS_writev, log_fd, parts, 2);
}

/* Something is about to change. @returns whether it is to fail, with errno set */
static int fails(int kinds)
{
  if (!control)
    return 0;
  if (kinds & ~(READS | OPENS)) {
    control->changes++;
    if (control->kill_in > 0 && --control->kill_in == 0)
      syscall(SYS_kill, getpid(), SIGKILL);
  }
  if (!(control->kinds & kinds))
    return 0;
  if (control->pass_first > 0) {
    control->pass_first--;
    return 0;
  }
  if (control->fail_for <= 0)
    return 0;
  control->fail_for--;
  control->failed++;
  errno = (int)control->error;
  return 1;
}

static int opened(int (*real)(int, const char *, int, ...), int at, const char *path, int flags, mode_t mode)
{
  char room[PATH_MAX];
  const char *name = at == AT_FDCWD || path[0] == '/' ? inside(path, room) : NULL;
  if (!name)
    return real(at, path, flags, mode);
  pthread_mutex_lock(&lock);
  struct stat before;
  int is_new = (flags & O_CREAT) && stat(path, &before) != 0;
  int writes = (flags & O_ACCMODE) != O_RDONLY;
  int fd = -1;
  if (!((writes && fails(OPENS)) || (is_new && fails(CREATES))))
    fd = real(at, path, flags, mode);
  if (fd >= 0 && fd < MOST_WATCHED) {
    watched[fd] = file_of(fd);
    note(is_new ? CREATE : OPENED, file_of(fd), 0, name, strlen(name));
    if (flags & O_TRUNC)
      note(TRUNCATE, file_of(fd), 0, NULL, 0);
  }
  pthread_mutex_unlock(&lock);
  return fd;
}

static int real_openat(int at, const char *path, int flags, ...)
{
  va_list rest;
  va_start(rest, flags);
  mode_t mode = va_arg(rest, mode_t);
  va_end(rest);
  REAL(openat);
  return real(at, path, flags, mode);
}

#define MODE_OF(flags) \
  mode_t mode = 0; \
  if ((flags) & (O_CREAT | __O_TMPFILE)) { \
    va_list rest; \
    va_start(rest, flags); \
    mode = va_arg(rest, mode_t); \
    va_end(rest); \
  }

int open(const char *path, int flags, ...)
{
  MODE_OF(flags)
  return opened(real_openat, AT_FDCWD, path, flags, mode);
}
int open64(const char *path, int flags, ...)
{
  MODE_OF(flags)
  return opened(real_openat, AT_FDCWD, path, flags | O_LARGEFILE, mode);
}
int openat(int at, const char *path, int flags, ...)
{
  MODE_OF(flags)
  return opened(real_openat, at, path, flags, mode);
}

int close(int fd)
{
  REAL(close);
  if (fd >= 0 && fd < MOST_WATCHED)
    watched[fd] = 0;
  return real(fd);
}

static ssize_t written(int fd, const void *bytes, size_t count, off_t offset)
{
  pthread_mutex_lock(&lock);
  struct stat at;
  int is_append = offset < 0;
  off_t start = is_append ? lseek(fd, 0, SEEK_CUR) : offset;
  int flags = fcntl(fd, F_GETFL);
  fstat(fd, &at);
  if (is_append && (flags & O_APPEND))
    start = at.st_size;
  int grows = start + (off_t)count > at.st_size;
  ssize_t done = -1;
  if (!fails(WRITES | (grows ? GROWS : 0)))
    done = is_append ? syscall(SYS_write, fd, bytes, count) : syscall(SYS_pwrite64, fd, bytes, count, offset);
  if (done > 0)
    note(WRITE, at.st_ino, (uint64_t)start, bytes, (size_t)done);
  pthread_mutex_unlock(&lock);
  return done;
}

ssize_t write(int fd, const void *bytes, size_t count)
{
  REAL(write);
  return is_watched(fd) ? written(fd, bytes, count, -1) : real(fd, bytes, count);
}
ssize_t pwrite(int fd, const void *bytes, size_t count, off_t offset)
{
  REAL(pwrite);
  return is_watched(fd) ? written(fd, bytes, count, offset) : real(fd, bytes, count, offset);
}
ssize_t pwrite64(int fd, const void *bytes, size_t count, off64_t offset)
{
  return pwrite(fd, bytes, count, offset);
}
ssize_t writev(int fd, const struct iovec *parts, int count)
{
  REAL(writev);
  if (!is_watched(fd))
    return real(fd, parts, count);
  ssize_t sum = 0;
  for (int n = 0; n < count; n++) {
    ssize_t done = written(fd, parts[n].iov_base, parts[n].iov_len, -1);
    if (done < 0)
      return sum > 0 ? sum : -1;
    sum += done;
  }
  return sum;
}

/* A copy from file to file is made of reads and writes, so that its bytes are seen. */
ssize_t sendfile(int to, int from, off_t *offset, size_t count)
{
  REAL(sendfile);
  if (!is_watched(to))
    return real(to, from, offset, count);
  char bytes[65536];
  size_t some = count < sizeof(bytes) ? count : sizeof(bytes);
  ssize_t got = offset ? pread(from, bytes, some, *offset) : read(from, bytes, some);
  if (got <= 0)
    return got;
  ssize_t done = written(to, bytes, (size_t)got, -1);
  if (done > 0 && offset)
    *offset += done;
  return done;
}
ssize_t sendfile64(int to, int from, off64_t *offset, size_t count)
{
  return sendfile(to, from, offset, count);
}
ssize_t copy_file_range(int from, off64_t *from_at, int to, off64_t *to_at, size_t count, unsigned int flags)
{
  REAL(copy_file_range);
  if (!is_watched(to))
    return real(from, from_at, to, to_at, count, flags);
  errno = EXDEV;
  return -1;
}

ssize_t read(int fd, void *bytes, size_t count)
{
  REAL(read);
  return is_watched(fd) && fails(READS) ? -1 : real(fd, bytes, count);
}
ssize_t pread(int fd, void *bytes, size_t count, off_t offset)
{
  REAL(pread);
  return is_watched(fd) && fails(READS) ? -1 : real(fd, bytes, count, offset);
}
ssize_t pread64(int fd, void *bytes, size_t count, off64_t offset)
{
  return pread(fd, bytes, count, offset);
}

int ftruncate(int fd, off_t length)
{
  REAL(ftruncate);
  if (!is_watched(fd))
    return real(fd, length);
  pthread_mutex_lock(&lock);
  int result = fails(WRITES) ? -1 : real(fd, length);
  if (result == 0)
    note(TRUNCATE, file_of(fd), (uint64_t)length, NULL, 0);
  pthread_mutex_unlock(&lock);
  return result;
}
int ftruncate64(int fd, off64_t length)
{
  return ftruncate(fd, length);
}

static int synced(int fd, int (*real)(int), enum op op)
{
  if (!is_watched(fd))
    return real(fd);
  pthread_mutex_lock(&lock);
  /* What must really reach the disk is decided when the power cut is made: nothing waits for this computer's. */
  int result = fails(SYNCS) ? -1 : 0;
  if (result == 0)
    note(op, file_of(fd), 0, NULL, 0);
  pthread_mutex_unlock(&lock);
  return result;
}
int fsync(int fd)
{
  REAL(fsync);
  return synced(fd, real, SYNC);
}
int fdatasync(int fd)
{
  REAL(fdatasync);
  return synced(fd, real, DATASYNC);
}

/* Two names in one record: the first, a zero, the second. */
static int renamed(enum op op, const char *from, const char *to, int (*real)(const char *, const char *))
{
  char from_room[PATH_MAX], to_room[PATH_MAX], both[2 * PATH_MAX];
  const char *from_name = inside(from, from_room), *to_name = inside(to, to_room);
  if (!from_name && !to_name)
    return real(from, to);
  pthread_mutex_lock(&lock);
  int result = fails(NAMES) ? -1 : real(from, to);
  if (result == 0) {
    int length = snprintf(both, sizeof(both), "%s%c%s", from_name ? from_name : "", 0, to_name ? to_name : "");
    note(op, 0, 0, both, (size_t)length);
  }
  pthread_mutex_unlock(&lock);
  return result;
}
int rename(const char *from, const char *to)
{
  REAL(rename);
  return renamed(RENAME, from, to, real);
}
int link(const char *from, const char *to)
{
  REAL(link);
  return renamed(LINK, from, to, real);
}

static int removed(const char *path, int (*real)(const char *))
{
  char room[PATH_MAX];
  const char *name = inside(path, room);
  if (!name)
    return real(path);
  pthread_mutex_lock(&lock);
  int result = fails(NAMES) ? -1 : real(path);
  if (result == 0)
    note(UNLINK, 0, 0, name, strlen(name));
  pthread_mutex_unlock(&lock);
  return result;
}
int unlink(const char *path)
{
  REAL(unlink);
  return removed(path, real);
}
int rmdir(const char *path)
{
  REAL(rmdir);
  return removed(path, real);
}
int remove(const char *path)
{
  REAL(remove);
  return removed(path, real);
}
int unlinkat(int at, const char *path, int flags)
{
  REAL(unlinkat);
  if (at == AT_FDCWD || path[0] == '/')
    return flags & AT_REMOVEDIR ? rmdir(path) : unlink(path);
  return real(at, path, flags);
}

int mkdir(const char *path, mode_t mode)
{
  REAL(mkdir);
  char room[PATH_MAX];
  const char *name = inside(path, room);
  if (!name)
    return real(path, mode);
  pthread_mutex_lock(&lock);
  struct stat before;
  int result = stat(path, &before) != 0 && fails(CREATES) ? -1 : real(path, mode);
  if (result == 0)
    note(MKDIR, 0, 0, name, strlen(name));
  pthread_mutex_unlock(&lock);
  return result;
}

/* A disk that cannot be written to says so when asked. */
int access(const char *path, int mode)
{
  REAL(access);
  char room[PATH_MAX];
  if ((mode & W_OK) && control && (control->kinds & OPENS) && control->fail_for > 0 && inside(path, room)) {
    errno = (int)control->error;
    return -1;
  }
  return real(path, mode);
}

int clock_gettime(clockid_t id, struct timespec *now)
{
  REAL(clock_gettime);
  int result = real(id, now);
  if (result == 0 && control && (id == CLOCK_REALTIME || id == CLOCK_REALTIME_COARSE))
    now->tv_sec += control->clock_ms / 1000;
  return result;
}
int gettimeofday(struct timeval *now, void *zone)
{
  REAL(gettimeofday);
  int result = real(now, zone);
  if (result == 0 && control)
    now->tv_sec += control->clock_ms / 1000;
  return result;
}
time_t time(time_t *room)
{
  struct timeval now;
  gettimeofday(&now, NULL);
  if (room)
    *room = now.tv_sec;
  return now.tv_sec;
}
