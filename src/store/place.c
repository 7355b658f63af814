/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "place.h"

#include <errno.h>
#include <fcntl.h>
#include <gio/gunixmounts.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <linux/magic.h>
#include <sys/vfs.h>
#include <unistd.h>

#include "store-error.h"

/* Not in linux/magic.h before 6.x: statfs(2). */
#define MAGIC_CIFS 0xff534d42u
#define MAGIC_SMB2 0xfe534d42u
#define MAGIC_9P 0x01021997u
#define MAGIC_CEPH 0x00c36400u
#define MAGIC_FUSE 0x65735546u

static gboolean
is_network_in_user_space (const char *type)
{
  static const char *const names[]
      = { "fuse.sshfs",      "fuse.rclone", "fuse.glusterfs", "fuse.davfs", "fuse.curlftpfs",
          "fuse.gvfsd-fuse", "fuse.s3fs",   "fuse.ceph",      NULL };
  return type != NULL && g_strv_contains (names, type);
}

gboolean
unsoot_place_is_network (guint64 magic, const char *type)
{
  switch (magic)
    {
    case NFS_SUPER_MAGIC:
    case SMB_SUPER_MAGIC:
    case MAGIC_CIFS:
    case MAGIC_SMB2:
    case MAGIC_9P:
    case MAGIC_CEPH:
    case CODA_SUPER_MAGIC:
    case AFS_SUPER_MAGIC:
    case AFS_FS_MAGIC:
      return TRUE;
    case MAGIC_FUSE:
      return is_network_in_user_space (type);
    default:
      return FALSE;
    }
}

/* The nearest folder above @path that is there. */
static char *
existing_folder (const char *path)
{
  char *folder = g_path_get_dirname (path);
  while (!g_file_test (folder, G_FILE_TEST_IS_DIR) && g_strcmp0 (folder, "/") != 0)
    {
      char *above = g_path_get_dirname (folder);
      g_free (folder);
      folder = above;
    }
  return folder;
}

gboolean
unsoot_place_check (const char *path, GError **error)
{
  g_autofree char *folder = existing_folder (path);
  struct statfs about;
  if (statfs (folder, &about) != 0)
    return TRUE;

  GUnixMountEntry *mount = g_unix_mount_for (folder, NULL);
  const char *type = mount != NULL ? g_unix_mount_get_fs_type (mount) : NULL;
  gboolean network = unsoot_place_is_network ((guint64) about.f_type & G_MAXUINT32, type);
  g_clear_pointer (&mount, g_unix_mount_free);
  if (network)
    g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_ALLOWED,
                 _ ("“%s” is on a network drive, where the shop’s book could be damaged. "
                    "Choose a folder on this computer’s own disk."),
                 path);
  return !network;
}

static gboolean
fail (GError **error, const char *path)
{
  int number = errno;
  UnsootStoreError code = UNSOOT_STORE_ERROR_FAILED;
  if (number == ENOSPC || number == EDQUOT)
    code = UNSOOT_STORE_ERROR_NO_SPACE;
  else if (number == EACCES || number == EPERM || number == EROFS)
    code = UNSOOT_STORE_ERROR_READ_ONLY;
  /* Translators: a file's path, then what the system said */
  g_set_error (error, UNSOOT_STORE_ERROR, (int) code, _ ("“%s” can’t be written: %s."), path,
               g_strerror (number));
  return FALSE;
}

gboolean
unsoot_place_create (const char *path, GError **error)
{
  g_autofree char *folder = g_path_get_dirname (path);
  if (g_mkdir_with_parents (folder, 0700) != 0)
    return fail (error, folder);
  int file = open (path, O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, 0600);
  if (file < 0)
    return fail (error, path);
  close (file);
  return TRUE;
}

static gboolean
sync_one (const char *path, int flags, GError **error)
{
  int file = open (path, flags | O_CLOEXEC);
  if (file < 0)
    return fail (error, path);
  gboolean synced = fsync (file) == 0 || fail (error, path);
  close (file);
  return synced;
}

gboolean
unsoot_place_sync (const char *path, GError **error)
{
  g_autofree char *folder = g_path_get_dirname (path);
  return sync_one (path, O_RDWR, error) && sync_one (folder, O_RDONLY | O_DIRECTORY, error);
}

char *
unsoot_place_usual (void)
{
  return g_build_filename (g_get_user_data_dir (), "unsoot", "shop.unsoot", NULL);
}
