package packet

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// files reads "a/b.svg=content" as files, in the order given.
func files(notation ...string) []File {
	var list []File
	for _, n := range notation {
		name, content, _ := strings.Cut(n, "=")
		list = append(list, File{name, []byte(content)})
	}
	return list
}

// tree writes down what a folder holds in the notation of files, links as
// "name->target", empty folders as "name/"; the manifest is left out.
func tree(t *testing.T, dir string) []string {
	t.Helper()
	items, err := itemsIn(dir)
	require.NoError(t, err)
	lines := []string{}
	for _, it := range items {
		switch {
		case it.mode.IsDir():
			lines = append(lines, it.name+"/")
		case it.mode&fs.ModeSymlink != 0:
			lines = append(lines, it.name+"->"+strings.TrimPrefix(it.hash, "link "))
		default:
			text, err := os.ReadFile(it.path)
			require.NoError(t, err)
			lines = append(lines, it.name+"="+string(text))
		}
	}
	return lines
}

// put saves a file by hand.
func put(t *testing.T, text string, path ...string) {
	t.Helper()
	to := filepath.Join(path...)
	require.NoError(t, os.MkdirAll(filepath.Dir(to), 0o755))
	require.NoError(t, os.WriteFile(to, []byte(text), 0o644))
}

// alone checks that nothing but the packet is left in its parent.
func alone(t *testing.T, dir string) {
	t.Helper()
	inside, err := os.ReadDir(filepath.Dir(dir))
	require.NoError(t, err)
	require.Len(t, inside, 1, "left over beside the packet: %v", inside)
}

func manifestText(t *testing.T, dir string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(dir, manifestName))
	require.NoError(t, err)
	return string(text)
}

func TestManifestAsDocumented(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out", "attic")
	require.NoError(t, Write(dir, files("sheets/2-leaf.svg=abc", "index.html="), Options{}))
	// SHA-256 of "abc" and of nothing: NIST FIPS 180-2 appendix B.1 (from
	// memory) and the NIST short-message test vectors (from memory).
	require.Equal(t, `{
"about": "Files written by stilewright, with size in bytes and SHA-256 of the content. Do not edit: it tells files edited by hand from files as written.",
"format": 1,
"files": [
{"name": "index.html", "size": 0, "sha256": "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"},
{"name": "sheets/2-leaf.svg", "size": 3, "sha256": "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"}
]
}
`, manifestText(t, dir))
	require.Equal(t, []string{"index.html=", "sheets/2-leaf.svg=abc"}, tree(t, dir))
	alone(t, dir)
}

func TestEmptyPacket(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "p")
	require.NoError(t, Write(dir, nil, Options{}))
	require.NoError(t, Write(dir, files("a=1"), Options{}))
	require.NoError(t, Write(dir, nil, Options{}))
	require.Empty(t, tree(t, dir))
}

// Same files, whatever their order and the folder's name: same bytes. A
// second run leaves a packet alone; one with a date of its own stays ours.
func TestSameBytesTwice(t *testing.T) {
	root := t.TempDir()
	a, b := filepath.Join(root, "a"), filepath.Join(root, "b")
	require.NoError(t, Write(a, files("x=1", "d/y=2", "z=3"), Options{}))
	require.NoError(t, Write(b, files("z=3", "x=1", "d/y=2"), Options{}))
	require.Equal(t, manifestText(t, a), manifestText(t, b))
	require.Equal(t, tree(t, a), tree(t, b))

	before, err := os.Stat(a)
	require.NoError(t, err)
	day := time.Date(2001, 2, 3, 4, 5, 6, 0, time.UTC)
	require.NoError(t, os.Chtimes(filepath.Join(a, "x"), day, day))
	require.NoError(t, Write(a, files("x=1", "d/y=2", "z=3"), Options{}))
	after, err := os.Stat(a)
	require.NoError(t, err)
	require.True(t, os.SameFile(before, after), "an unchanged packet was written anew")

	require.NoError(t, Write(a, files("x=2", "d/y=2"), Options{}), "a date is not an edit")
	require.Equal(t, []string{"d/y=2", "x=2"}, tree(t, a))
}

func TestVerifyNamesEveryDifference(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "p")
	require.NoError(t, Write(dir, files("a=1", "b=2", "c/d=3"), Options{}))
	said, err := Verify(dir)
	require.NoError(t, err)
	require.Empty(t, said)

	put(t, "other", dir, "a")
	require.NoError(t, os.Remove(filepath.Join(dir, "c", "d")))
	put(t, "mine", dir, "notes.txt")
	said, err = Verify(dir)
	require.NoError(t, err)
	require.Equal(t, []string{"a: edited by hand", "c/d: missing", "notes.txt: not written by stilewright"}, said)

	_, err = Verify(filepath.Join(dir, "no such"))
	require.ErrorIs(t, err, fs.ErrNotExist)
	_, err = Verify(filepath.Dir(dir))
	require.ErrorIs(t, err, errForeign)
}

// Each row: a packet, what is done to it by hand, the next packet, and what
// stands at the end. "!" before a name in said: Write refuses without
// Replace, naming it.
func TestNothingByHandIsLost(t *testing.T) {
	for name, row := range map[string]struct {
		first, hand, next []string
		said              string
		want              []string
	}{
		"a deleted file is written again": {
			files1("a=1"), []string{"-a"}, files1("a=1"), "", []string{"a=1"}},
		"an extra file is carried over": {
			files1("a=1"), []string{"my/notes=n"}, files1("a=2"), "", []string{"a=2", "my/notes=n"}},
		"an extra empty folder is carried over, one of ours is not": {
			files1("a=1", "old/b=2"), []string{"mine/", "-old/b"}, files1("a=2"), "", []string{"a=2", "mine/"}},
		"a link is carried over as a link": {
			files1("a=1"), []string{"l->a"}, files1("a=2"), "", []string{"a=2", "l->a"}},
		"an unedited file that is no longer drawn goes": {
			files1("a=1", "b=2"), nil, files1("a=1"), "", []string{"a=1"}},
		"an edited file": {
			files1("s/a.dxf=1"), []string{"s/a.dxf=hand"}, files1("s/a.dxf=2"), "s/a.dxf",
			[]string{"s/a.dxf=2", "s/a.dxf.edited-1=hand"}},
		"an edited file next to earlier edits": {
			files1("a=1"), []string{"a=hand", "a.edited-1=x", "A.Edited-2=y"}, files1("a=2"), "a",
			[]string{"A.Edited-2=y", "a=2", "a.edited-1=x", "a.edited-3=hand"}},
		"an edited file that is no longer drawn": {
			files1("a=1", "b=1"), []string{"b=hand"}, files1("a=1"), "b", []string{"a=1", "b.edited-1=hand"}},
		"an edit that is what is drawn next": {
			files1("a=1"), []string{"a=2"}, files1("a=2"), "", []string{"a=2"}},
		"a drawn file replaced by a link": {
			files1("a=1"), []string{"-a", "a->elsewhere"}, files1("a=1"), "a", []string{"a=1", "a.edited-1->elsewhere"}},
		"a drawn file replaced by a folder": {
			files1("a=1"), []string{"-a", "a/x=mine"}, files1("a=1"),
			"a/x (not written by stilewright, in the way of a new file)", []string{"a=1", "a.edited-1/x=mine"}},
		"an extra file where a new one goes": {
			files1("a=1"), []string{"b=mine"}, files1("b=2"),
			"b (not written by stilewright, in the way of a new file)", []string{"b=2", "b.edited-1=mine"}},
		"an extra file that differs by case from a new one": {
			files1("a=1"), []string{"B=mine"}, files1("b=2"),
			"B (not written by stilewright, in the way of a new file)", []string{"B.edited-1=mine", "b=2"}},
		"an extra file where a new folder goes": {
			files1("a=1"), []string{"d=mine"}, files1("d/b=2"),
			"d (not written by stilewright, in the way of a new file)", []string{"d.edited-1=mine", "d/b=2"}},
		"two extra files under one name": {
			files1("a=1"), []string{"d/x=1", "d/y=2"}, files1("d=2"),
			"d/x (not written by stilewright, in the way of a new file), d/y (not written by stilewright, in the way of a new file)",
			[]string{"d=2", "d.edited-1/x=1", "d.edited-1/y=2"}},
		"all edits are named": {
			files1("a=1", "b=1", "c=1"), []string{"a=x", "c=y"}, files1("a=2"), "a, c",
			[]string{"a=2", "a.edited-1=x", "c.edited-1=y"}},
	} {
		t.Run(name, func(t *testing.T) {
			dir := filepath.Join(t.TempDir(), "p")
			require.NoError(t, Write(dir, files(row.first...), Options{}))
			byHand(t, dir, row.hand)
			before := tree(t, dir)
			err := Write(dir, files(row.next...), Options{})
			if row.said == "" {
				require.NoError(t, err)
			} else {
				var edited *EditedError
				require.ErrorAs(t, err, &edited)
				require.Equal(t, row.said, strings.Join(edited.Names, ", "))
				require.ErrorContains(t, err, row.said+"; move your copies elsewhere, or draw with --replace")
				require.Equal(t, before, tree(t, dir), "refused, but changed")
				alone(t, dir)
				require.NoError(t, Write(dir, files(row.next...), Options{Replace: true}))
			}
			require.Equal(t, row.want, tree(t, dir))
			alone(t, dir)
			require.NoError(t, Write(dir, files(row.next...), Options{}), "a second run finds nothing edited")
			require.Equal(t, row.want, tree(t, dir))
		})
	}
}

func files1(notation ...string) []string { return notation }

// byHand does what the notation says: "-name" deletes, "name/" makes a
// folder, "name->target" a link, "name=content" a file.
func byHand(t *testing.T, dir string, notation []string) {
	t.Helper()
	for _, n := range notation {
		gone, remove := strings.CutPrefix(n, "-")
		link, target, isLink := strings.Cut(n, "->")
		name, content, _ := strings.Cut(n, "=")
		switch {
		case remove:
			require.NoError(t, os.Remove(filepath.Join(dir, gone)))
		case isLink:
			require.NoError(t, os.Symlink(target, filepath.Join(dir, link)))
		case strings.HasSuffix(n, "/"):
			require.NoError(t, os.MkdirAll(filepath.Join(dir, n), 0o755))
		default:
			put(t, content, dir, name)
		}
	}
}

func TestCarriedFilesKeepModeAndDate(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "p")
	require.NoError(t, Write(dir, files("a=1"), Options{}))
	own := filepath.Join(dir, "own.sh")
	put(t, "x", own)
	day := time.Date(2001, 2, 3, 4, 5, 6, 0, time.UTC)
	require.NoError(t, os.Chmod(own, 0o750))
	require.NoError(t, os.Chtimes(own, day, day))
	require.NoError(t, os.Chmod(dir, 0o700))

	require.NoError(t, Write(dir, files("a=2"), Options{}))
	info, err := os.Stat(own)
	require.NoError(t, err)
	require.Equal(t, fs.FileMode(0o750), info.Mode().Perm())
	require.True(t, day.Equal(info.ModTime()))
	info, err = os.Stat(dir)
	require.NoError(t, err)
	require.Equal(t, fs.FileMode(0o700), info.Mode().Perm(), "a folder closed to others was opened")
}

// errStop stands for a machine that stops at a given step.
var errStop = errors.New("stopped")

// stopped runs write and lets it stop dead inside exchange.
func stopped(t *testing.T, dir string, f []File, exchange func(a, b string) error) {
	t.Helper()
	defer func() { require.Equal(t, errStop, recover()) }()
	_ = write(dir, f, Options{}, exchange)
	t.Fatal("it did not stop")
}

func TestLateEditsAreSaved(t *testing.T) {
	late := func(a, b string) error {
		put(t, "late", b, "a")
		put(t, "new", b, "d", "own")
		return exchange(a, b)
	}
	want := []string{"a=2", "a.edited-1=late", "d/own.edited-1=new", "own=n"}
	start := func(t *testing.T) string {
		dir := filepath.Join(t.TempDir(), "p")
		require.NoError(t, Write(dir, files("a=1"), Options{}))
		put(t, "n", dir, "own")
		return dir
	}
	t.Run("in a run to the end", func(t *testing.T) {
		dir := start(t)
		require.NoError(t, write(dir, files("a=2"), Options{}, late))
		require.Equal(t, want, tree(t, dir))
		alone(t, dir)
	})
	t.Run("stopped after the swap", func(t *testing.T) {
		dir := start(t)
		stopped(t, dir, files("a=2"), func(a, b string) error {
			require.NoError(t, late(a, b))
			panic(errStop)
		})
		require.Equal(t, []string{"a=2", "own=n"}, tree(t, dir))
		require.NoError(t, Write(dir, files("a=2"), Options{}))
		require.Equal(t, want, tree(t, dir))
		alone(t, dir)
	})
	t.Run("stopped before the swap", func(t *testing.T) {
		dir := start(t)
		stopped(t, dir, files("a=2"), func(a, b string) error { panic(errStop) })
		require.Equal(t, []string{"a=1", "own=n"}, tree(t, dir))
		require.NoError(t, Write(dir, files("a=3"), Options{}))
		require.Equal(t, []string{"a=3", "own=n"}, tree(t, dir))
		alone(t, dir)
	})
	t.Run("stopped between two renames", func(t *testing.T) {
		dir := start(t)
		p, err := placeOf(dir)
		require.NoError(t, err)
		require.NoError(t, os.Rename(dir, p.swapped))
		put(t, "half", p.scrap, "a")
		require.NoError(t, Write(dir, files("a=2"), Options{}))
		require.Equal(t, []string{"a=2", "own=n"}, tree(t, dir))
		alone(t, dir)
	})
}

func TestWithoutExchange(t *testing.T) {
	cannot := func(_, _ string) error { return errNoExchange }
	dir := filepath.Join(t.TempDir(), "p")
	require.NoError(t, write(dir, files("a=1"), Options{}, cannot))
	put(t, "n", dir, "own")
	require.NoError(t, write(dir, files("a=2"), Options{}, cannot))
	require.Equal(t, []string{"a=2", "own=n"}, tree(t, dir))
	alone(t, dir)
}

func TestFailedExchangeChangesNothing(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "p")
	require.NoError(t, Write(dir, files("a=1"), Options{}))
	err := write(dir, files("a=2"), Options{}, func(_, _ string) error { return errors.New("busy") })
	require.ErrorContains(t, err, "nothing was changed (busy)")
	require.Equal(t, []string{"a=1"}, tree(t, dir))
	alone(t, dir)
}
