package packet

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
)

// A place is where a packet stands, and the two names beside it under which
// folders are prepared and put aside.
type place struct {
	shown       string // as the caller wrote it, cleaned
	dir, parent string // absolute
	// scrap is a folder being built or being removed; nothing in it is needed.
	// swap is a whole packet: the new one about to be swapped in, or the old
	// one swapped out and not yet searched for late edits.
	scrap, swapped string
	exchange       func(a, b string) error
}

// placeOf finds the place and makes its parent folders.
func placeOf(dir string) (place, error) {
	p := place{shown: filepath.Clean(dir)}
	if dir == "" {
		return place{}, errors.New("packet without a folder name; name a folder")
	}
	var err error
	if p.dir, err = filepath.Abs(dir); err != nil {
		return place{}, p.fail(err)
	}
	var base string
	p.parent, base = filepath.Dir(p.dir), filepath.Base(p.dir)
	switch here, err := os.Getwd(); {
	case p.parent == p.dir:
		return place{}, fmt.Errorf("packet %s: this is the root of the file system; name a folder in it", p.shown)
	case len(base) > longestPart:
		return place{}, fmt.Errorf("packet %.40s…: the folder's name is %d bytes long; at most %d are allowed", p.shown, len(base), longestPart)
	case err == nil && within(here, p.dir):
		return place{}, fmt.Errorf("packet %s: it is the folder you are working in, and it would be replaced under your feet; go one folder up, or name another", p.shown)
	}
	if err := os.MkdirAll(p.parent, 0o755); err != nil {
		return place{}, p.fail(err)
	}
	p.scrap = filepath.Join(p.parent, ".stilewright-scrap-"+base)
	p.swapped = filepath.Join(p.parent, ".stilewright-swap-"+base)
	return p, nil
}

// within tells whether path is dir or lies below it, links resolved.
func within(path, dir string) bool {
	want, err := os.Stat(dir)
	if err != nil {
		return false
	}
	for {
		if got, err := os.Stat(path); err == nil && os.SameFile(got, want) {
			return true
		}
		up := filepath.Dir(path)
		if up == path {
			return false
		}
		path = up
	}
}

// fail says in one sentence why the packet could not be written.
func (p place) fail(err error) error {
	why := "it could not be written"
	switch {
	case errors.Is(err, syscall.ENOSPC):
		why = "the disk is full"
	case errors.Is(err, syscall.EDQUOT):
		why = "your share of the disk is used up"
	case errors.Is(err, syscall.EROFS):
		why = "the disk can only be read"
	case errors.Is(err, fs.ErrPermission):
		why = "there is no permission to write there"
	case errors.Is(err, syscall.ENAMETOOLONG):
		why = "a name is too long for this disk"
	case errors.Is(err, syscall.ENOTDIR):
		why = "a part of its path is a file, not a folder"
	case errors.Is(err, errHeld):
		why = "another program run is writing beside it"
	}
	text := strings.ReplaceAll(err.Error(), "\n", "; ")
	return &failure{fmt.Sprintf("packet %s: %s; nothing was changed (%s)", p.shown, why, text), err}
}

// A failure carries a sentence and its cause.
type failure struct {
	sentence string
	cause    error
}

func (f *failure) Error() string { return f.sentence }
func (f *failure) Unwrap() error { return f.cause }
