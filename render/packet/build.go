package packet

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
)

// build writes a whole packet into a new folder at dir and puts it on the
// disk. mode are the permissions of the folder it will replace, 0 if none.
func build(dir string, mode fs.FileMode, files []File, m manifest, keep []kept) error {
	if err := os.Mkdir(dir, 0o755); err != nil {
		return err
	}
	for _, k := range keep {
		to, err := roomFor(dir, k.as)
		if err != nil {
			return err
		}
		if err := carry(k.item, to); err != nil {
			return err
		}
	}
	for _, f := range append([]File{{manifestName, m.encode()}}, files...) {
		to, err := roomFor(dir, f.Name)
		if err != nil {
			return err
		}
		if err := writeFile(to, f.Data); err != nil {
			return err
		}
	}
	if mode != 0 {
		if err := os.Chmod(dir, mode); err != nil {
			return err
		}
	}
	return filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || !d.IsDir() {
			return err
		}
		return syncDir(path)
	})
}

// roomFor is the place of a packet's file on the disk, its folder made.
func roomFor(dir, name string) (string, error) {
	to := filepath.Join(dir, filepath.FromSlash(name))
	return to, os.MkdirAll(filepath.Dir(to), 0o755)
}

// writeFile writes a new file through to the disk.
func writeFile(path string, data []byte) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	return errors.Join(err, f.Sync(), f.Close())
}

// carry copies an item through to the disk, with its permissions and date.
func carry(it item, to string) error {
	switch {
	case it.mode.IsDir():
		return os.MkdirAll(to, 0o755)
	case it.mode&fs.ModeSymlink != 0:
		target, err := os.Readlink(it.path)
		if err != nil {
			return err
		}
		return os.Symlink(target, to)
	}
	from, err := os.Open(it.path)
	if err != nil {
		return err
	}
	defer from.Close()
	info, err := from.Stat()
	if err != nil {
		return err
	}
	f, err := os.OpenFile(to, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return err
	}
	_, err = io.Copy(f, from)
	if err := errors.Join(err, f.Chmod(info.Mode().Perm()), f.Sync(), f.Close()); err != nil {
		return err
	}
	return os.Chtimes(to, info.ModTime(), info.ModTime())
}

// syncDir puts a folder's entries on the disk, where the system can.
func syncDir(dir string) error {
	d, err := os.Open(dir)
	if err != nil {
		return err
	}
	err = d.Sync()
	if errors.Is(err, syscall.EINVAL) || errors.Is(err, errors.ErrUnsupported) || errors.Is(err, fs.ErrPermission) {
		err = nil // some file systems cannot put a folder through
	}
	return errors.Join(err, d.Close())
}
