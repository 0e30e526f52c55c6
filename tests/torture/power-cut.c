/*
 * A power cut, modelled: what a file held when it was last synced is what is left of it. Loaded by LD_PRELOAD into
 * the server. Each fsync or fdatasync of a file under POWER_FROM copies it, as it is at this moment, to POWER_TO;
 * killing the process and going on from POWER_TO is then the same as cutting the power.
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <fcntl.h>
#include <limits.h>
#include <pthread.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static pthread_mutex_t one_at_a_time = PTHREAD_MUTEX_INITIALIZER;

static int copy(int file, const char *target) {
  char next[PATH_MAX + 8];
  static char block[1 << 20];
  ssize_t got;
  off_t at = 0;
  snprintf(next, sizeof next, "%s.next", target);
  int out = open(next, O_WRONLY | O_CREAT | O_TRUNC, 0600);
  if (out < 0) return -1;
  while ((got = pread(file, block, sizeof block, at)) > 0) {
    if (write(out, block, (size_t)got) != got) return -1;
    at += got;
  }
  close(out);
  return got < 0 ? -1 : rename(next, target);
}

static int synced(int file, int (*own)(int)) {
  const char *from = getenv("POWER_FROM"), *to = getenv("POWER_TO");
  char link[64], path[PATH_MAX], target[PATH_MAX * 2];
  struct stat about;
  snprintf(link, sizeof link, "/proc/self/fd/%d", file);
  ssize_t length = readlink(link, path, sizeof path - 1);
  if (!from || !to || length < 0 || fstat(file, &about) != 0 || !S_ISREG(about.st_mode)) return own(file);
  path[length] = 0;
  if (strncmp(path, from, strlen(from)) != 0) return own(file);
  snprintf(target, sizeof target, "%s%s", to, path + strlen(from));
  pthread_mutex_lock(&one_at_a_time);
  int done = copy(file, target);
  pthread_mutex_unlock(&one_at_a_time);
  return done;
}

int fsync(int file) { return synced(file, (int (*)(int))dlsym(RTLD_NEXT, "fsync")); }
int fdatasync(int file) { return synced(file, (int (*)(int))dlsym(RTLD_NEXT, "fdatasync")); }
