package packet

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

const (
	manifestName   = "manifest.json"
	manifestFormat = 1
	manifestAbout  = "Files written by stilewright, with size in bytes and SHA-256 of the content. Do not edit: it tells files edited by hand from files as written."
)

// A manifest is what Write wrote into a packet.
type manifest struct {
	About  string  `json:"about"`
	Format int     `json:"format"`
	Files  []entry `json:"files"`
}

type entry struct {
	Name   string `json:"name"`
	Size   int64  `json:"size"`
	SHA256 string `json:"sha256"`
}

// manifestOf lists the files by name.
func manifestOf(files []File) manifest {
	m := manifest{About: manifestAbout, Format: manifestFormat, Files: make([]entry, 0, len(files))}
	for _, f := range files {
		m.Files = append(m.Files, entry{f.Name, int64(len(f.Data)), hashOf(f.Data)})
	}
	slices.SortFunc(m.Files, func(a, b entry) int { return strings.Compare(a.Name, b.Name) })
	return m
}

func hashOf(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}

// encode writes the manifest with one file a line, so that two of them can be
// compared by eye.
func (m manifest) encode() []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "{\n\"about\": %s,\n\"format\": %d,\n\"files\": [", quote(m.About), m.Format)
	for i, e := range m.Files {
		if i > 0 {
			b.WriteByte(',')
		}
		fmt.Fprintf(&b, "\n{\"name\": %s, \"size\": %d, \"sha256\": %s}", quote(e.Name), e.Size, quote(e.SHA256))
	}
	b.WriteString("\n]\n}\n")
	return b.Bytes()
}

// quote writes text as a JSON string.
func quote(text string) []byte {
	out, err := json.Marshal(text)
	if err != nil {
		panic(err) // a string always has a JSON form
	}
	return out
}

// errForeign says that a folder was not written by this package.
var errForeign = errors.New("it holds no " + manifestName + " of ours")

// readManifest reads the manifest of the packet in dir. A folder without one
// gives errForeign. One that is not exactly as encode writes it was changed by
// someone else, and nothing it says about the files can be trusted.
func readManifest(dir string) (manifest, error) {
	path := filepath.Join(dir, manifestName)
	info, err := os.Lstat(path)
	if errors.Is(err, fs.ErrNotExist) || err == nil && !info.Mode().IsRegular() {
		return manifest{}, errForeign
	}
	if err != nil {
		return manifest{}, err
	}
	text, err := os.ReadFile(path)
	if err != nil {
		return manifest{}, err
	}
	var m manifest
	if err := json.Unmarshal(text, &m); err != nil {
		return manifest{}, fmt.Errorf("its %s cannot be read (%v)", manifestName, err)
	}
	if m.Format != manifestFormat {
		return manifest{}, fmt.Errorf("its %s is of format %d; this program knows format %d", manifestName, m.Format, manifestFormat)
	}
	if !bytes.Equal(m.encode(), text) {
		return manifest{}, fmt.Errorf("its %s was changed by hand, so edited files can no longer be told from others", manifestName)
	}
	return m, nil
}
