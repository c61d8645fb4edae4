/* Makes calls on the yard's files fail, for tests: loaded before the C library (LD_PRELOAD), it counts the calls of one kind on files whose name holds
   OFFCUTS_FAULT_FILE and lets that number OFFCUTS_FAULT_AT and all after it, or it alone where OFFCUTS_FAULT_ONCE is set, go wrong. Each call that went
   wrong, or was slow, is a line at the end of the file OFFCUTS_FAULT_LOG. */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/types.h>
#include <unistd.h>

static int seen;

static void note(const char *kind) {
  const char *log = getenv("OFFCUTS_FAULT_LOG");
  int fd = log ? open(log, O_WRONLY | O_CREAT | O_APPEND, 0600) : -1;
  if (fd < 0) return;
  char line[64];
  int length = snprintf(line, sizeof line, "%s\n", kind);
  if (write(fd, line, length) != length) _exit(99);
  close(fd);
}

static int meant(const char *kind, int fd) {
  const char *wanted = getenv("OFFCUTS_FAULT"), *name = getenv("OFFCUTS_FAULT_FILE"), *at = getenv("OFFCUTS_FAULT_AT");
  if (!wanted || !name || !at || strcmp(wanted, kind)) return 0;
  char link[64], path[4096];
  snprintf(link, sizeof link, "/proc/self/fd/%d", fd);
  ssize_t length = readlink(link, path, sizeof path - 1);
  if (length < 0) return 0;
  path[length] = 0;
  if (!strstr(path, name)) return 0;
  if (!strcmp(kind, "slow")) { note(kind); usleep(3000); return 0; }
  int number = __sync_add_and_fetch(&seen, 1);
  int wrong = getenv("OFFCUTS_FAULT_ONCE") ? number == atoi(at) : number >= atoi(at);
  if (wrong) note(kind);
  return wrong;
}

#define REAL(type, name, ...) \
  static type (*real)(__VA_ARGS__); \
  if (!real) real = (type(*)(__VA_ARGS__))dlsym(RTLD_NEXT, name)

static ssize_t failed(int error) { errno = error; return -1; }

#define READER(name, offset_type) \
  ssize_t name(int fd, void *to, size_t count, offset_type at) { \
    REAL(ssize_t, #name, int, void *, size_t, offset_type); \
    meant("slow", fd); \
    if (meant("read-error", fd)) return failed(EIO); \
    if (meant("read-short", fd)) return real(fd, to, count / 2, at); \
    return real(fd, to, count, at); \
  }

#define WRITER(name, offset_type) \
  ssize_t name(int fd, const void *from, size_t count, offset_type at) { \
    REAL(ssize_t, #name, int, const void *, size_t, offset_type); \
    meant("slow", fd); \
    if (meant("write-error", fd)) return failed(EIO); \
    if (meant("write-full", fd)) return failed(ENOSPC); \
    if (meant("write-torn", fd)) { real(fd, from, count / 2, at); return failed(EIO); } \
    return real(fd, from, count, at); \
  }

READER(pread, off_t)
READER(pread64, off64_t)
WRITER(pwrite, off_t)
WRITER(pwrite64, off64_t)

int fsync(int fd) {
  REAL(int, "fsync", int);
  meant("slow", fd);
  return meant("flush-error", fd) ? (int)failed(EIO) : real(fd);
}

int fdatasync(int fd) {
  REAL(int, "fdatasync", int);
  meant("slow", fd);
  return meant("flush-error", fd) ? (int)failed(EIO) : real(fd);
}

/* A folder of the network whose server gives no locks. */
int fcntl64(int fd, int command, ...) {
  REAL(int, "fcntl64", int, int, void *);
  va_list rest;
  va_start(rest, command);
  void *argument = va_arg(rest, void *);
  va_end(rest);
  if ((command == F_SETLK || command == F_SETLKW) && meant("locks-refused", fd)) return (int)failed(ENOLCK);
  return real(fd, command, argument);
}

int fcntl(int fd, int command, ...) {
  REAL(int, "fcntl", int, int, void *);
  va_list rest;
  va_start(rest, command);
  void *argument = va_arg(rest, void *);
  va_end(rest);
  if ((command == F_SETLK || command == F_SETLKW) && meant("locks-refused", fd)) return (int)failed(ENOLCK);
  return real(fd, command, argument);
}

int unlink(const char *path) {
  REAL(int, "unlink", const char *);
  const char *wanted = getenv("OFFCUTS_FAULT"), *name = getenv("OFFCUTS_FAULT_FILE");
  if (wanted && name && !strcmp(wanted, "remove-error") && strstr(path, name) && strstr(path, "-journal")) {
    note(wanted);
    return (int)failed(EIO);
  }
  return real(path);
}
