package packet

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestNamesRefused(t *testing.T) {
	long := strings.Repeat("x", 201)
	for _, row := range []struct{ names, want string }{
		{"", "without a name"},
		{"/etc/x", `packet file "/etc/x": the name is absolute`},
		{"../x", `packet file "../x": the name steps out of its folder with ".."`},
		{"a/../../x", `steps out of its folder with ".."`},
		{"./x", `steps out of its folder with "."`},
		{"a//x", "empty part"},
		{"a/", "empty part"},
		{`a\x`, `the character '\\'`},
		{"C:x", `the character ':'`},
		{"Tür.svg", `the character 'ü'`},
		{"a\nb", `the character '\n'`},
		{"a.", "ends with a dot"},
		{" a", "begins or ends with a blank"},
		{"sheets/con.svg", `"con.svg" is the name of a device`},
		{long, "is 201 bytes long; at most 200"},
		{strings.Repeat("x/", 500) + "x", "its name is 1001 bytes long; at most 1000"},
		{"a a", `"a" is listed twice`},
		{"a.svg A.svg", `"a.svg" and "A.svg" differ only by case`},
		{"d/a D/b", `"d" and "D" differ only by case`},
		{"a a/b", `"a" would be both a file and a folder`},
		{"a/b a", `"a" would be both a file and a folder`},
		{"manifest.json", "kept for the manifest"},
		{"Manifest.json", "kept for the manifest"},
		{"manifest.json/a", "both a file and a folder"},
	} {
		list := []File{}
		names := strings.Split(row.names, " ")
		if strings.HasPrefix(row.names, " ") {
			names = []string{row.names}
		}
		for _, n := range names {
			list = append(list, File{Name: n})
		}
		dir := filepath.Join(t.TempDir(), "p")
		require.ErrorContains(t, Write(dir, list, Options{}), row.want, "%.40q", row.names)
		require.NoDirExists(t, dir)
	}
}

func TestNamesAllowed(t *testing.T) {
	longest := strings.Repeat("x", 200)
	dir := filepath.Join(t.TempDir(), "p")
	require.NoError(t, Write(dir, files("a b (2).svg=", ".hidden=", "d/e/f=", "d/g=", "...x=", "console.txt=", "sub/manifest.json=", longest+"="), Options{}))
	said, err := Verify(dir)
	require.NoError(t, err)
	require.Empty(t, said)
}

// Each target is refused in one sentence and left as it was.
func TestTargetsRefused(t *testing.T) {
	root := t.TempDir()
	put(t, "x", root, "file")
	put(t, "x", root, "others", "thesis.txt")
	put(t, "x", root, "unread", "a")
	put(t, "{", root, "unread", manifestName)
	put(t, strings.Replace(string(manifestOf(nil).encode()), `"format": 1`, `"format": 2`, 1), root, "later", manifestName)
	require.NoError(t, Write(filepath.Join(root, "forged"), files("a=1"), Options{}))
	put(t, manifestText(t, filepath.Join(root, "forged"))+" ", root, "forged", manifestName)
	require.NoError(t, Write(filepath.Join(root, "ours"), files("a=1"), Options{}))
	require.NoError(t, os.Symlink("ours", filepath.Join(root, "link")))
	require.NoError(t, Write(filepath.Join(root, "pipe"), files("a=1"), Options{}))
	require.NoError(t, syscall.Mkfifo(filepath.Join(root, "pipe", "fifo"), 0o644))
	before := tree2(t, root)
	for _, row := range []struct{ dir, want string }{
		{"file", "it is a file; name a folder"},
		{"file/p", "a part of its path is a file, not a folder"},
		{"others", "the folder holds 1 entry but it holds no manifest.json of ours; name a new folder, or move what it holds elsewhere"},
		{"unread", "its manifest.json cannot be read"},
		{"later", "its manifest.json is of format 2; this program knows format 1; move the folder elsewhere"},
		{"forged", "its manifest.json was changed by hand"},
		{"link", "it is a symbolic link; name the folder it points to"},
		{"pipe", "fifo is neither a file nor a folder"},
		{strings.Repeat("n", 201), "201 bytes long; at most 200"},
	} {
		err := Write(filepath.Join(root, row.dir), files("a=2"), Options{Replace: true})
		require.ErrorContains(t, err, row.want)
		require.NotContains(t, err.Error(), "\n")
	}
	require.ErrorContains(t, Write("/", nil, Options{}), "root of the file system")
	require.ErrorContains(t, Write("", nil, Options{}), "without a folder name")
	require.Equal(t, before, tree2(t, root))
}

// tree2 lists paths and modes, pipes included.
func tree2(t *testing.T, root string) (lines []string) {
	t.Helper()
	require.NoError(t, filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		lines = append(lines, fmt.Sprint(path, d.Type()))
		return err
	}))
	return lines
}

func TestWorkingFolderRefused(t *testing.T) {
	root := t.TempDir()
	dir := filepath.Join(root, "p")
	require.NoError(t, Write(dir, files("d/a=1"), Options{}))
	t.Chdir(filepath.Join(dir, "d"))
	for _, name := range []string{"..", dir} {
		require.ErrorContains(t, Write(name, files("a=2"), Options{}), "the folder you are working in")
	}
	t.Chdir(root)
	require.NoError(t, Write("p", files("a=2"), Options{}))
	require.Equal(t, []string{"a=2"}, tree(t, dir))
}

// An empty folder of anybody is taken; late files in it are saved.
func TestEmptyFolderTaken(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "p")
	require.NoError(t, os.Mkdir(dir, 0o755))
	require.NoError(t, write(dir, files("a=1"), Options{}, func(a, b string) error {
		put(t, "late", b, "a")
		return exchange(a, b)
	}))
	require.Equal(t, []string{"a=1", "a.edited-1=late"}, tree(t, dir))
	alone(t, dir)
}

func TestSentences(t *testing.T) {
	p := place{shown: "out"}
	for errno, want := range map[syscall.Errno]string{
		syscall.ENOSPC:       "the disk is full",
		syscall.EDQUOT:       "your share of the disk is used up",
		syscall.EROFS:        "the disk can only be read",
		syscall.EACCES:       "there is no permission to write there",
		syscall.EPERM:        "there is no permission to write there",
		syscall.ENAMETOOLONG: "a name is too long for this disk",
		syscall.EIO:          "it could not be written",
	} {
		err := p.fail(&fs.PathError{Op: "write", Path: "x", Err: errno})
		require.EqualError(t, err, "packet out: "+want+"; nothing was changed (write x: "+errno.Error()+")")
		require.True(t, errors.Is(err, errno))
	}
}
