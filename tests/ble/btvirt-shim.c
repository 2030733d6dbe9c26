/*
 * Loaded into btvirt (LD_PRELOAD) by emulated-radio.ts, for two reasons:
 * - btvirt opens its sockets at fixed paths in /tmp. Here they go into the folder named by BTVIRT_FOLDER, so that
 *   several runs on one machine do not take each other's controllers away.
 * - Where the kernel has no AF_ALG sockets, btvirt closes every client at once. Here those two calls succeed;
 *   encryption is then not usable, and nothing in these tests pairs.
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/socket.h>
#include <sys/un.h>

#ifndef AF_ALG
#define AF_ALG 38
#endif

static const char fixed[] = "/tmp/bt-server-";

static const char *moved(const char *path, char *room, size_t size)
{
  const char *folder = getenv("BTVIRT_FOLDER");
  if (!folder || strncmp(path, fixed, strlen(fixed)))
    return path;
  snprintf(room, size, "%s/%s", folder, path + strlen("/tmp/"));
  return room;
}

int unlink(const char *path)
{
  static int (*real)(const char *);
  char room[sizeof(((struct sockaddr_un *)0)->sun_path)];
  if (!real)
    real = dlsym(RTLD_NEXT, "unlink");
  return real(moved(path, room, sizeof(room)));
}

int socket(int domain, int type, int protocol)
{
  static int (*real)(int, int, int);
  if (!real)
    real = dlsym(RTLD_NEXT, "socket");
  int result = real(domain, type, protocol);
  if (result < 0 && domain == AF_ALG && errno == EAFNOSUPPORT)
    return real(AF_UNIX, type, protocol);
  return result;
}

int bind(int fd, const struct sockaddr *address, socklen_t length)
{
  static int (*real)(int, const struct sockaddr *, socklen_t);
  if (!real)
    real = dlsym(RTLD_NEXT, "bind");
  if (address->sa_family == AF_UNIX) {
    struct sockaddr_un to = *(const struct sockaddr_un *)address;
    char room[sizeof(to.sun_path)];
    const char *path = moved(to.sun_path, room, sizeof(room));
    if (path == room) {
      strcpy(to.sun_path, room);
      return real(fd, (struct sockaddr *)&to, sizeof(to));
    }
  }
  int result = real(fd, address, length);
  if (result < 0 && address->sa_family == AF_ALG)
    return 0;
  return result;
}
