package packet

import (
	"fmt"
	"strings"
)

// A kept item goes from the old packet into the new one.
type kept struct {
	item
	as string // its name in the new packet
}

// keep plans what of an old packet goes into the new one, and tells which
// files the new one could not be written over without being told to: edited
// ones, and ones of others that lie where a new file goes. Nothing is lost: a
// file whose content the new packet holds under the same name needs no copy.
func (s state) keep(next manifest) (keep []kept, changed []string) {
	t := newTaken(next, s.items)
	content := next.hashes()
	s.unwritten(func(it item, edited bool) {
		if it.mode.IsRegular() && content[it.name] == it.hash {
			return
		}
		as, moved := t.nameFor(it, edited)
		if it.mode.IsDir() && (moved || t.folder[fold(it.name)] != "") {
			return // an empty folder in the way holds nothing to lose
		}
		if edited {
			changed = append(changed, it.name)
		} else if moved {
			changed = append(changed, it.name+" (not written by stilewright, in the way of a new file)")
		}
		keep = append(keep, kept{it, as})
	})
	return keep, changed
}

// taken tells which names a packet has no room for. Its keys are folded.
type taken struct {
	file   map[string]bool
	folder map[string]string // as spelled
	any    map[string]bool   // these and every name of the old packet
	moved  map[string]string // names given so far, by old name
}

func newTaken(next manifest, old []item) taken {
	t := taken{map[string]bool{fold(manifestName): true}, map[string]string{}, map[string]bool{fold(manifestName): true}, map[string]string{}}
	for _, e := range next.Files {
		for path := range prefixes(e.Name) {
			if t.any[fold(path)] = true; path == e.Name {
				t.file[fold(path)] = true
			} else {
				t.folder[fold(path)] = path
			}
		}
	}
	for _, it := range old {
		for path := range prefixes(it.name) {
			t.any[fold(path)] = true
		}
	}
	return t
}

// nameFor is the name an item keeps in the new packet: its own where it is
// free, otherwise with .edited-N after the part that is in the way. An edited
// item never keeps its own name.
func (t taken) nameFor(it item, edited bool) (as string, moved bool) {
	for path := range prefixes(it.name) {
		key, whole := fold(path), path == it.name
		spelled, folder := t.folder[key]
		inTheWay := t.file[key] ||
			folder && spelled != path || // differs by case alone
			folder && whole && !it.mode.IsDir() ||
			whole && edited
		if !inTheWay {
			continue
		}
		if t.moved[path] == "" {
			t.moved[path] = t.free(path)
		}
		return t.moved[path] + strings.TrimPrefix(it.name, path), true
	}
	return it.name, false
}

// free finds the least N for which name.edited-N is free, and takes it.
func (t taken) free(name string) string {
	for n := 1; ; n++ {
		as := fmt.Sprintf("%s.edited-%d", name, n)
		if !t.any[fold(as)] {
			t.any[fold(as)] = true
			return as
		}
	}
}

// strays are the items of a superseded packet whose content neither its own
// manifest vouches for nor the packet that took its place holds anywhere:
// what somebody saved into it while it was being replaced.
func (s state) strays(now state) []kept {
	held := map[string]bool{}
	for _, it := range now.items {
		held[it.hash] = true
	}
	t := newTaken(now.manifest, now.items)
	var keep []kept
	s.unwritten(func(it item, _ bool) {
		if it.mode.IsDir() || held[it.hash] {
			return
		}
		as, _ := t.nameFor(it, true)
		keep = append(keep, kept{it, as})
	})
	return keep
}
