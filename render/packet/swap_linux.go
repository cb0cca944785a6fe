package packet

import (
	"errors"
	"os"
	"time"

	"golang.org/x/sys/unix"
)

// exchange swaps two folders in one step (renameat2(2), RENAME_EXCHANGE).
// errNoExchange means that this kernel or file system cannot.
func exchange(a, b string) error {
	err := unix.Renameat2(unix.AT_FDCWD, a, unix.AT_FDCWD, b, unix.RENAME_EXCHANGE)
	switch {
	case errors.Is(err, unix.ENOSYS), errors.Is(err, unix.EINVAL), errors.Is(err, unix.EOPNOTSUPP):
		return errNoExchange
	case err != nil:
		return &os.LinkError{Op: "exchange", Old: a, New: b, Err: err}
	}
	return nil
}

// hold keeps other runs from writing in the folder until release is called.
// The system lets go when a run dies. A file system without locks goes without.
func hold(dir string) (release func(), err error) {
	d, err := os.Open(dir)
	if err != nil {
		return nil, err
	}
	for range 300 {
		err = unix.Flock(int(d.Fd()), unix.LOCK_EX|unix.LOCK_NB)
		if !errors.Is(err, unix.EWOULDBLOCK) && !errors.Is(err, unix.EINTR) {
			return func() { d.Close() }, nil
		}
		time.Sleep(100 * time.Millisecond)
	}
	return nil, errors.Join(errHeld, d.Close())
}
