package packet

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// A File is one file of a packet.
type File struct {
	// Name is a slash path inside the packet, printable ASCII, such as
	// "sheets/2-leaf.svg". No two names may differ by case alone, since some
	// file systems cannot hold both.
	Name string
	Data []byte
}

// Options tell Write what it may do. The zero Options are the careful ones.
type Options struct {
	// Replace writes new files over ones edited by hand. The edited copies
	// stay beside them as NAME.edited-N.
	Replace bool
}

// An EditedError says that a packet holds files that writing would overwrite
// or drop although this package did not write them so.
type EditedError struct {
	Dir   string
	Names []string // slash paths inside the packet, in byte order, each with what is the matter
}

// Error names every file and says what to do.
func (e *EditedError) Error() string {
	return fmt.Sprintf("packet %s: %s by hand and would be overwritten: %s; move your copies elsewhere, or draw with --replace, which keeps each beside the new file as NAME.edited-1",
		e.Dir, count(len(e.Names), "file was changed", "files were changed"), strings.Join(e.Names, ", "))
}

// Write makes dir a packet of the files and their manifest. Missing parents of
// dir are made. The order of files does not matter; an existing packet that
// already is what would be written is left untouched.
//
// An error leaves dir as it was, except where its text says that the new
// packet stands. An *EditedError asks for Options.Replace; every other error
// is one sentence that says what is in the way.
func Write(dir string, files []File, o Options) error {
	return write(dir, files, o, exchange)
}

// write is Write with the way two folders are exchanged in one step.
func write(dir string, files []File, o Options, exchange func(a, b string) error) error {
	if err := checkNames(files); err != nil {
		return err
	}
	p, err := placeOf(dir)
	if err != nil {
		return err
	}
	p.exchange = exchange
	release, err := hold(p.parent)
	if err != nil {
		return p.fail(err)
	}
	defer release()
	if err := p.recover(); err != nil {
		return p.fail(err)
	}
	old, err := p.standing()
	if err != nil {
		return err
	}
	next := manifestOf(files)
	if old.is(next) {
		return nil
	}
	keep, changed := old.keep(next)
	if len(changed) > 0 && !o.Replace {
		return &EditedError{Dir: p.shown, Names: changed}
	}
	if err := build(p.scrap, old.mode, files, next, keep); err != nil {
		return p.fail(errors.Join(err, os.RemoveAll(p.scrap)))
	}
	if err := p.swap(old.exists); err != nil {
		return p.fail(err)
	}
	if err := errors.Join(syncDir(p.parent), p.clear()); err != nil {
		return fmt.Errorf("packet %s: the new packet stands, but the old one beside it could not be cleared away: %w", p.shown, err)
	}
	return nil
}

// Verify tells how dir differs from its manifest: one sentence each for files
// edited by hand, missing, or not written by Write, in byte order of their
// names. None means that dir is exactly what was written. The error is for a
// folder that cannot be judged: absent, unreadable, or without our manifest.
func Verify(dir string) ([]string, error) {
	dir = filepath.Clean(dir)
	s, err := stateOf(dir)
	if err != nil {
		return nil, fmt.Errorf("packet %s: %w", dir, err)
	}
	return s.differences(), nil
}

// standing is the packet that stands at the place, or the zero state if there
// is none. A folder that is not ours is refused.
func (p place) standing() (state, error) {
	info, err := os.Lstat(p.dir)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return state{}, nil
	case err != nil:
		return state{}, p.fail(err)
	case info.Mode()&fs.ModeSymlink != 0:
		return state{}, fmt.Errorf("packet %s: it is a symbolic link; name the folder it points to", p.shown)
	case !info.IsDir():
		return state{}, fmt.Errorf("packet %s: it is a file; name a folder", p.shown)
	}
	inside, err := os.ReadDir(p.dir)
	if err != nil {
		return state{}, p.fail(err)
	}
	if len(inside) == 0 {
		return state{exists: true, mode: info.Mode().Perm()}, nil
	}
	s, err := stateOf(p.dir)
	switch {
	case errors.Is(err, errForeign):
		return state{}, fmt.Errorf("packet %s: the folder holds %s but %w; name a new folder, or move what it holds elsewhere",
			p.shown, count(len(inside), "entry", "entries"), err)
	case err != nil:
		return state{}, fmt.Errorf("packet %s: %w; move the folder elsewhere and draw again", p.shown, err)
	}
	s.exists, s.mode = true, info.Mode().Perm()
	return s, nil
}

// count writes "1 file" or "3 files".
func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprint(n, " ", many)
}
