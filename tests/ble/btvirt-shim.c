/*
 * Loaded into btvirt (LD_PRELOAD) by emulated-radio.ts, for three reasons:
 * - btvirt opens its sockets at fixed paths in /tmp. Here they go into the folder named by BTVIRT_FOLDER, so that
 *   several runs on one machine do not take each other's controllers away.
 * - Where the kernel has no AF_ALG sockets, btvirt closes every client at once. Here those two calls succeed;
 *   encryption is then not usable, and nothing in these tests pairs.
 * - btvirt 5.66 tells both ends of a link the handle that the central's end has, also where the peripheral's end has
 *   another one, as for an adapter's second link. Here each end is told its own, and data goes on under the handle of the
 *   end that it goes to. Layouts: Core Specification, Vol 4 Part E 5.4.2, 7.7.5 and 7.7.65.1.
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/socket.h>
#include <sys/un.h>
#include <unistd.h>

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

/* One end of a link: the socket of its host (-1 once it is down), and the handle that btvirt itself has for it. */
struct end {
  int fd;
  uint16_t handle;
};
static struct link {
  struct end peripheral, central;
} links[256];
static size_t linked;
/* The peripheral's end of a link whose central is told next. */
static struct end half = {-1, 0};
/* Whose packet btvirt is at: it handles one at a time. */
static int sender = -1;

static const uint8_t acl_packet = 2, event_packet = 4, disconnected = 0x05, le_meta = 0x3e, connected = 0x01;
static const uint16_t first_handle = 42, handle_bits = 0x0fff;

static int is_end(const struct end *end, int fd, uint16_t handle)
{
  return end->fd == fd && end->handle == handle;
}

static int is_taken(int fd, uint16_t handle)
{
  for (size_t i = 0; i < linked; i++)
    if (is_end(&links[i].peripheral, fd, handle) || is_end(&links[i].central, fd, handle))
      return 1;
  return 0;
}

/* @param handle  of the end that is down; -1 for all of this socket */
static void take_down(int fd, int handle)
{
  for (size_t i = 0; i < linked; i++) {
    struct end *ends[] = {&links[i].peripheral, &links[i].central};
    for (int k = 0; k < 2; k++)
      if (ends[k]->fd == fd && (handle < 0 || ends[k]->handle == handle))
        ends[k]->fd = -1;
    if (links[i].peripheral.fd < 0 && links[i].central.fd < 0)
      links[i--] = links[--linked];
  }
}

static uint16_t get16(const uint8_t *bytes)
{
  return bytes[0] | bytes[1] << 8;
}

static void put16(uint8_t *bytes, uint16_t value)
{
  bytes[0] = value;
  bytes[1] = value >> 8;
}

static void connection_complete(int to, uint8_t *packet)
{
  uint8_t *handle = packet + 5;
  if (packet[7] == 1) {
    half = (struct end){to, first_handle};
    while (is_taken(to, half.handle))
      half.handle++;
    put16(handle, half.handle);
  } else if (half.fd >= 0) {
    if (linked == sizeof(links) / sizeof(links[0]))
      abort();
    links[linked++] = (struct link){half, {to, get16(handle)}};
    half.fd = -1;
  }
}

static void data_on_its_way(int to, uint8_t *packet)
{
  uint16_t head = get16(packet + 1), handle = head & handle_bits;
  for (size_t i = 0; i < linked; i++) {
    const struct end *peripheral = &links[i].peripheral, *central = &links[i].central;
    const struct end *other =
      is_end(peripheral, sender, handle) ? central : is_end(central, sender, handle) ? peripheral : NULL;
    if (other && other->fd == to) {
      put16(packet + 1, (head & ~handle_bits) | other->handle);
      return;
    }
  }
}

static void set_handles(int to, uint8_t *packet, size_t length)
{
  if (length >= 5 && packet[0] == acl_packet)
    data_on_its_way(to, packet);
  else if (length >= 8 && packet[0] == event_packet && packet[1] == le_meta && packet[3] == connected && packet[4] == 0)
    connection_complete(to, packet);
  else if (length >= 7 && packet[0] == event_packet && packet[1] == disconnected && packet[3] == 0)
    take_down(to, get16(packet + 4));
}

ssize_t recv(int fd, void *bytes, size_t size, int flags)
{
  static ssize_t (*real)(int, void *, size_t, int);
  if (!real)
    real = dlsym(RTLD_NEXT, "recv");
  sender = fd;
  return real(fd, bytes, size, flags);
}

ssize_t sendmsg(int fd, const struct msghdr *message, int flags)
{
  static ssize_t (*real)(int, const struct msghdr *, int);
  uint8_t packet[8192];
  size_t length = 0;
  if (!real)
    real = dlsym(RTLD_NEXT, "sendmsg");
  for (size_t i = 0; i < message->msg_iovlen; i++) {
    const struct iovec *part = &message->msg_iov[i];
    if (length + part->iov_len > sizeof(packet))
      return real(fd, message, flags);
    memcpy(packet + length, part->iov_base, part->iov_len);
    length += part->iov_len;
  }
  set_handles(fd, packet, length);
  struct iovec whole = {packet, length};
  struct msghdr changed = *message;
  changed.msg_iov = &whole;
  changed.msg_iovlen = 1;
  return real(fd, &changed, flags);
}

int close(int fd)
{
  static int (*real)(int);
  if (!real)
    real = dlsym(RTLD_NEXT, "close");
  take_down(fd, -1);
  return real(fd);
}
