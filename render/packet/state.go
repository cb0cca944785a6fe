package packet

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// An item is what a walk through a packet meets: a file, a symbolic link, or
// a folder with nothing in it.
type item struct {
	name string // slash path inside the packet
	path string // where it lies on the disk
	mode fs.FileMode
	hash string // of the content; of a link, "link " and its target; of an empty folder, ""
}

// A state is a packet folder as it stands. The zero state is no folder.
type state struct {
	exists   bool
	mode     fs.FileMode // permissions of the folder; 0 if there is none
	manifest manifest
	items    []item // in byte order of their names, without the manifest
}

// stateOf reads a packet. It fails on what readManifest fails on.
func stateOf(dir string) (state, error) {
	if _, err := os.Stat(dir); err != nil {
		return state{}, err
	}
	m, err := readManifest(dir)
	if err != nil {
		return state{}, err
	}
	items, err := itemsIn(dir)
	return state{manifest: m, items: items}, err
}

// itemsIn lists what a folder holds, but for its manifest. It fails on what
// can neither be read nor carried over, such as a socket.
func itemsIn(dir string) ([]item, error) {
	var items []item
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(dir, path)
		if err != nil {
			return err
		}
		it := item{name: filepath.ToSlash(rel), path: path, mode: d.Type()}
		switch {
		case it.name == "." || it.name == manifestName:
			return nil
		case d.IsDir():
			inside, err := os.ReadDir(path)
			if err != nil || len(inside) > 0 {
				return err
			}
		case it.mode.IsRegular():
			if it.hash, err = hashFile(path); err != nil {
				return err
			}
		case it.mode&fs.ModeSymlink != 0:
			target, err := os.Readlink(path)
			if err != nil {
				return err
			}
			it.hash = "link " + target
		default:
			return fmt.Errorf("%s is neither a file nor a folder and cannot be carried over; move it elsewhere", it.name)
		}
		items = append(items, it)
		return nil
	})
	slices.SortFunc(items, func(a, b item) int { return strings.Compare(a.name, b.name) })
	return items, err
}

func hashFile(path string) (string, error) {
	f, err := os.Open(path)
	if err != nil {
		return "", err
	}
	defer f.Close()
	h := sha256.New()
	if _, err := io.Copy(h, f); err != nil {
		return "", err
	}
	return hex.EncodeToString(h.Sum(nil)), nil
}

// hashes is the content of a manifest by name.
func (m manifest) hashes() map[string]string {
	byName := make(map[string]string, len(m.Files))
	for _, e := range m.Files {
		byName[e.Name] = e.SHA256
	}
	return byName
}

// folders is every folder the manifest's files lie in.
func (m manifest) folders() map[string]bool {
	in := map[string]bool{}
	for _, e := range m.Files {
		for path := range prefixes(e.Name) {
			if path != e.Name {
				in[path] = true
			}
		}
	}
	return in
}

// is tells whether every file of next already stands as it would be written,
// and no other file we wrote does.
func (s state) is(next manifest) bool {
	if !s.exists || !slices.Equal(s.manifest.Files, next.Files) {
		return false
	}
	left := next.hashes()
	for _, it := range s.items {
		want, ours := left[it.name]
		if ours && (want != it.hash || !it.mode.IsRegular()) {
			return false
		}
		delete(left, it.name)
	}
	return len(left) == 0
}

// unwritten is what the manifest does not vouch for: edited tells whether it
// names the item, but with other content. An empty folder that used to hold
// files we wrote is ours.
func (s state) unwritten(visit func(it item, edited bool)) {
	written, folders := s.manifest.hashes(), s.manifest.folders()
	for _, it := range s.items {
		hash, ours := written[it.name]
		switch {
		case ours && hash == it.hash && it.mode.IsRegular():
		case !ours && it.mode.IsDir() && folders[it.name]:
		default:
			visit(it, ours)
		}
	}
}

// differences are Verify's sentences.
func (s state) differences() []string {
	said := map[string]string{}
	s.unwritten(func(it item, edited bool) {
		if edited {
			said[it.name] = it.name + ": edited by hand"
		} else {
			said[it.name] = it.name + ": not written by stilewright"
		}
	})
	there := map[string]bool{}
	for _, it := range s.items {
		there[it.name] = true
	}
	for _, e := range s.manifest.Files {
		if !there[e.Name] {
			said[e.Name] = e.Name + ": missing"
		}
	}
	names := make([]string, 0, len(said))
	for name := range said {
		names = append(names, name)
	}
	slices.Sort(names)
	lines := make([]string, len(names))
	for i, name := range names {
		lines[i] = said[name]
	}
	return lines
}
