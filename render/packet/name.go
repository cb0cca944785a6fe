package packet

import (
	"fmt"
	"slices"
	"strings"
)

// Longest names, in bytes. File systems in common use allow 255 bytes for one
// part of a name (ext4, NTFS and APFS documentation, from memory); ours stay
// below that so that ".edited-N" and the names of the folders under work fit.
const (
	longestPart = 200
	longestName = 1000
)

// forbidden are the characters some file system of a shop refuses in a name
// (public file-naming rules of the common desktop systems, from memory).
const forbidden = `\:*?"<>|`

// devices are names that one desktop system keeps for devices, whatever their
// extension (from memory).
var devices = []string{
	"con", "prn", "aux", "nul",
	"com1", "com2", "com3", "com4", "com5", "com6", "com7", "com8", "com9",
	"lpt1", "lpt2", "lpt3", "lpt4", "lpt5", "lpt6", "lpt7", "lpt8", "lpt9",
}

// checkNames refuses a list of files that cannot stand side by side in a
// folder on every system a packet may be sent to.
func checkNames(files []File) error {
	spelled := map[string]string{fold(manifestName): manifestName} // folded file name or folder: as written
	isFile := map[string]bool{fold(manifestName): true}
	for _, f := range files {
		if err := checkName(f.Name); err != nil {
			return err
		}
		for path := range prefixes(f.Name) {
			key := fold(path)
			before, seen := spelled[key]
			switch last := path == f.Name; {
			case !seen:
				spelled[key], isFile[key] = path, last
			case before == manifestName && last:
				return fmt.Errorf("packet file %q: the name is kept for the manifest; choose another", f.Name)
			case before != path:
				return fmt.Errorf("packet file %q: %q and %q differ only by case, which many file systems cannot tell apart; rename one", f.Name, before, path)
			case last && isFile[key]:
				return fmt.Errorf("packet file %q is listed twice; each name may stand once", f.Name)
			case last || isFile[key]:
				return fmt.Errorf("packet file %q: %q would be both a file and a folder; rename one", f.Name, path)
			}
		}
	}
	return nil
}

// checkName refuses a name that is not a plain slash path below the packet.
func checkName(name string) error {
	switch {
	case name == "":
		return fmt.Errorf("packet file without a name; every file needs one")
	case len(name) > longestName:
		return fmt.Errorf("packet file %.40q…: its name is %d bytes long; at most %d are allowed", name, len(name), longestName)
	case name[0] == '/':
		return fmt.Errorf("packet file %q: the name is absolute; names stand below the packet folder, without a leading slash", name)
	}
	for part := range strings.SplitSeq(name, "/") {
		if err := checkPart(part); err != nil {
			return fmt.Errorf("packet file %.80q: %w", name, err)
		}
	}
	return nil
}

func checkPart(part string) error {
	switch {
	case part == "":
		return fmt.Errorf("the name has an empty part; write single slashes and none at the end")
	case part == "." || part == "..":
		return fmt.Errorf("the name steps out of its folder with %q; name the file where it is", part)
	case len(part) > longestPart:
		return fmt.Errorf("a part of the name is %d bytes long; at most %d are allowed", len(part), longestPart)
	case strings.HasSuffix(part, ".") || strings.TrimSpace(part) != part:
		return fmt.Errorf("the part %q begins or ends with a blank or ends with a dot; take it off", part)
	}
	for _, r := range part {
		if r < ' ' || r > '~' || strings.ContainsRune(forbidden, r) {
			return fmt.Errorf("the name has the character %q; allowed are printable ASCII characters other than %s", r, forbidden)
		}
	}
	stem, _, _ := strings.Cut(part, ".")
	if slices.Contains(devices, fold(stem)) {
		return fmt.Errorf("%q is the name of a device on some systems; choose another", part)
	}
	return nil
}

// fold makes names that differ only by case the same.
func fold(name string) string { return strings.ToLower(name) }

// prefixes yields "a", "a/b" and "a/b/c" for "a/b/c".
func prefixes(name string) func(yield func(string) bool) {
	return func(yield func(string) bool) {
		for i := range len(name) {
			if name[i] == '/' && !yield(name[:i]) {
				return
			}
		}
		yield(name)
	}
}
