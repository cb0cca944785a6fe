package golden

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

const (
	module       = "stilewright"
	longestFunc  = 80  // lines, from func to its closing brace
	longestFile  = 400 // lines; tests may be longer
	tableHeading = "| package | knows | may import |"
)

// topLevel is all the top level of the repository may hold, besides names
// that begin with a dot; out and bin are where a person builds and draws, and
// are never committed.
var topLevel = []string{
	"model", "render", "cmd", "samples", "golden",
	"go.mod", "go.sum", "README.md", "DEVELOPERS.md", "LICENSE",
	"out", "bin",
}

// subjectless are package names that say nothing of what the package knows.
var subjectless = []string{"util", "utils", "common", "helpers", "helper", "types", "misc"}

// A listed package is what go list tells of it.
type listed struct {
	ImportPath string
	Imports    []string
}

// packageTable reads the package table of DEVELOPERS.md: what each package
// may import, by the package's path inside the project. The entry "anything"
// stands as it is; "–" is an empty list.
func packageTable(text string) (map[string][]string, error) {
	_, rest, found := strings.Cut(text, tableHeading+"\n")
	if !found {
		return nil, fmt.Errorf("DEVELOPERS.md has no table headed %q", tableHeading)
	}
	may := map[string][]string{}
	for i, line := range strings.Split(rest, "\n") {
		if i == 0 {
			continue // the rule under the heading
		}
		if !strings.HasPrefix(line, "|") {
			break
		}
		cells := strings.Split(strings.Trim(line, "|"), "|")
		if len(cells) != 3 {
			return nil, fmt.Errorf("row %q has %d cells, want 3", line, len(cells))
		}
		name := strings.Trim(strings.TrimSpace(cells[0]), "`")
		if _, twice := may[name]; twice {
			return nil, fmt.Errorf("package %s has two rows", name)
		}
		may[name] = []string{}
		for path := range strings.SplitSeq(cells[2], ",") {
			if path = strings.Trim(strings.TrimSpace(path), "`"); path != "–" {
				may[name] = append(may[name], path)
			}
		}
	}
	return may, nil
}

// importFaults holds packages against the table, both ways.
func importFaults(may map[string][]string, packages []listed) (faults []string) {
	exists := map[string]bool{}
	for _, p := range packages {
		name := strings.TrimPrefix(p.ImportPath, module+"/")
		exists[name] = true
		allowed, row := may[name]
		if !row {
			faults = append(faults, name+" has no row in the package table")
			continue
		}
		for _, path := range p.Imports {
			if !importAllowed(allowed, path) {
				faults = append(faults, name+" imports "+path+", which its row does not allow")
			}
		}
	}
	for name, allowed := range may {
		if !exists[name] {
			faults = append(faults, "the table's row "+name+" is no package")
		}
		for _, path := range allowed {
			if _, row := may[path]; !row && path != "anything" && standard(path) {
				faults = append(faults, "the row of "+name+" allows "+path+", which has no row")
			}
		}
	}
	slices.Sort(faults)
	return faults
}

// importAllowed tells whether a row covers an import: the standard library
// always, a project package by its path, an outside one by its module.
func importAllowed(allowed []string, path string) bool {
	inside, ours := strings.CutPrefix(path, module+"/")
	if !ours && standard(path) || slices.Contains(allowed, "anything") {
		return true
	}
	return slices.ContainsFunc(allowed, func(a string) bool {
		return a == inside || !ours && strings.HasPrefix(path, a+"/")
	})
}

// standard tells whether an import path has no host in it.
func standard(path string) bool {
	first, _, _ := strings.Cut(path, "/")
	return !strings.Contains(first, ".")
}

func goList(t *testing.T) (packages []listed) {
	t.Helper()
	list := exec.Command("go", "list", "-json=ImportPath,Imports", "./...")
	list.Dir = ".."
	var complaint bytes.Buffer
	list.Stderr = &complaint
	out, err := list.Output()
	require.NoError(t, err, complaint.String())
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var p listed
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			return packages
		} else {
			require.NoError(t, err)
		}
		packages = append(packages, p)
	}
}

func TestImportsFollowTheTable(t *testing.T) {
	text, err := os.ReadFile("../DEVELOPERS.md")
	require.NoError(t, err)
	may, err := packageTable(string(text))
	require.NoError(t, err)
	packages := goList(t)
	require.NotEmpty(t, packages)
	for _, fault := range importFaults(may, packages) {
		t.Error(fault)
	}
}

func TestImportRuleBites(t *testing.T) {
	rows := func(lines ...string) string {
		return "text\n" + tableHeading + "\n|---|---|---|\n" + strings.Join(lines, "\n") + "\n\n| no | row | here |\n"
	}
	may, err := packageTable(rows("| `a` | x | – |", "| b | x | `a`, ext.org/yaml |", "| cmd/c | x | anything |"))
	require.NoError(t, err)
	require.Equal(t, map[string][]string{"a": {}, "b": {"a", "ext.org/yaml"}, "cmd/c": {"anything"}}, may)
	a, b := listed{module + "/a", []string{"fmt"}}, listed{module + "/b", []string{module + "/a", "ext.org/yaml/v3"}}
	c := listed{module + "/cmd/c", []string{module + "/b", "ext.org/other"}}
	require.Empty(t, importFaults(may, []listed{a, b, c}))

	for want, packages := range map[string][]listed{
		"d has no row in the package table":                            {a, b, c, {module + "/d", nil}},
		"the table's row b is no package":                              {a, c},
		"a imports stilewright/b, which its row does not allow":        {{module + "/a", []string{module + "/b"}}, b, c},
		"a imports ext.org/yaml, which its row does not allow":         {{module + "/a", []string{"ext.org/yaml"}}, b, c},
		"b imports ext.org/yamlfork, which its row does not allow":     {a, {module + "/b", []string{"ext.org/yamlfork"}}, c},
		"b imports stilewright/a/deeper, which its row does not allow": {a, {module + "/b", []string{module + "/a/deeper"}}, c},
		"b imports stilewright/cmd/c, which its row does not allow":    {a, {module + "/b", []string{module + "/cmd/c"}}, c},
		"stilewright has no row in the package table":                  {a, b, c, {module, nil}},
	} {
		require.Equal(t, []string{want}, importFaults(may, packages))
	}
	may["a"] = []string{"no/row"}
	require.Equal(t, []string{"the row of a allows no/row, which has no row"}, importFaults(may, []listed{a, b, c}))
	for _, bad := range []string{"no table", rows("| a | b |"), rows("| a | x | – |", "| a | x | – |")} {
		_, err := packageTable(bad)
		require.Error(t, err)
	}
}

// topLevelFaults names what does not belong at the top of the repository.
func topLevelFaults(names []string) (faults []string) {
	for _, name := range names {
		if !strings.HasPrefix(name, ".") && !slices.Contains(topLevel, name) {
			faults = append(faults, name+" does not belong at the top of the repository")
		}
	}
	return faults
}

func TestTopLevel(t *testing.T) {
	entries, err := os.ReadDir("..")
	require.NoError(t, err)
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	require.Contains(t, names, "model")
	for _, fault := range topLevelFaults(names) {
		t.Error(fault)
	}
	require.Equal(t, []string{"docs does not belong at the top of the repository", "Makefile does not belong at the top of the repository"},
		topLevelFaults([]string{"docs", "model", ".git", "Makefile"}))
}

// sourceFaults holds one Go file against the rules of its text: no init, a
// package named for what it knows, functions and files of a size one can
// read, and a doc comment on whatever others can use.
func sourceFaults(name string, text []byte) ([]string, error) {
	set := token.NewFileSet()
	file, err := parser.ParseFile(set, name, text, parser.ParseComments|parser.SkipObjectResolution)
	if err != nil {
		return nil, err
	}
	var faults []string
	fault := func(at token.Pos, format string, args ...any) {
		faults = append(faults, fmt.Sprintf("%s:%d: ", name, set.Position(at).Line)+fmt.Sprintf(format, args...))
	}
	if slices.Contains(subjectless, strings.TrimSuffix(file.Name.Name, "_test")) {
		fault(file.Package, "package name %s says nothing of its subject", file.Name.Name)
	}
	test := strings.HasSuffix(name, "_test.go")
	if lines := bytes.Count(text, []byte("\n")); !test && lines > longestFile {
		fault(file.Package, "the file has %d lines, at most %d are allowed", lines, longestFile)
	}
	for _, decl := range file.Decls {
		f, isFunc := decl.(*ast.FuncDecl)
		if isFunc && f.Recv == nil && f.Name.Name == "init" {
			fault(f.Pos(), "init runs behind the reader's back; call it by name")
		}
		if lines := set.Position(decl.End()).Line - set.Position(decl.Pos()).Line + 1; isFunc && !test && lines > longestFunc {
			fault(f.Pos(), "func %s has %d lines, at most %d are allowed", f.Name.Name, lines, longestFunc)
		}
		if !test {
			for _, id := range undocumented(decl) {
				fault(id.Pos(), "exported %s has no doc comment", id.Name)
			}
		}
	}
	return faults, nil
}

// undocumented finds the exported names of a declaration without a comment of
// their own or, in a group of constants or variables, of the group.
func undocumented(decl ast.Decl) (names []*ast.Ident) {
	add := func(comments []*ast.CommentGroup, ids ...*ast.Ident) {
		for _, c := range comments {
			if strings.TrimSpace(c.Text()) != "" {
				return
			}
		}
		for _, id := range ids {
			if id.IsExported() {
				names = append(names, id)
			}
		}
	}
	switch d := decl.(type) {
	case *ast.FuncDecl:
		if d.Recv == nil || receiver(d.Recv.List[0].Type).IsExported() {
			add([]*ast.CommentGroup{d.Doc}, d.Name)
		}
	case *ast.GenDecl:
		for _, spec := range d.Specs {
			switch s := spec.(type) {
			case *ast.TypeSpec:
				own := []*ast.CommentGroup{s.Doc}
				if !d.Lparen.IsValid() {
					own = append(own, d.Doc)
				}
				add(own, s.Name)
			case *ast.ValueSpec:
				add([]*ast.CommentGroup{d.Doc, s.Doc, s.Comment}, s.Names...)
			}
		}
	}
	return names
}

// receiver is the name of a method's type.
func receiver(e ast.Expr) *ast.Ident {
	switch x := e.(type) {
	case *ast.StarExpr:
		return receiver(x.X)
	case *ast.ParenExpr:
		return receiver(x.X)
	case *ast.IndexExpr:
		return receiver(x.X)
	case *ast.IndexListExpr:
		return receiver(x.X)
	}
	return e.(*ast.Ident)
}

func TestSourcesKeepTheRules(t *testing.T) {
	seen, documented := 0, map[string]bool{}
	for _, top := range []string{"model", "render", "cmd", "golden"} {
		require.NoError(t, filepath.WalkDir(filepath.Join("..", top), func(path string, d fs.DirEntry, err error) error {
			if err != nil {
				return err
			}
			if d.IsDir() && d.Name() == "testdata" {
				return fs.SkipDir
			}
			if d.IsDir() || filepath.Ext(path) != ".go" {
				return nil
			}
			text, err := os.ReadFile(path)
			if err != nil {
				return err
			}
			name := strings.TrimPrefix(filepath.ToSlash(path), "../")
			faults, err := sourceFaults(name, text)
			for _, fault := range faults {
				t.Error(fault)
			}
			seen++
			if folder := filepath.Dir(name); !strings.HasSuffix(name, "_test.go") {
				documented[folder] = documented[folder] || packageComment(text)
			}
			return err
		}))
	}
	require.Greater(t, seen, 20, "too few files read: is the test in the right folder?")
	for folder, has := range documented {
		if !has {
			t.Errorf("%s: no file says in a package comment what the package knows", folder)
		}
	}
}

// packageComment tells whether a file carries one.
func packageComment(text []byte) bool {
	file, err := parser.ParseFile(token.NewFileSet(), "", text, parser.ParseComments|parser.PackageClauseOnly)
	return err == nil && file.Doc.Text() != ""
}

func TestSourceRulesBite(t *testing.T) {
	long := func(n int) string { return strings.Repeat("\t_ = 0\n", n) }
	for _, row := range []struct{ name, text, want string }{
		{"a.go", "package util", "a.go:1: package name util says nothing of its subject"},
		{"a_test.go", "package helpers_test", "a_test.go:1: package name helpers_test says nothing of its subject"},
		{"a.go", "package a\nfunc init() {}", "a.go:2: init runs behind the reader's back; call it by name"},
		{"a_test.go", "package a\nfunc init() {}", "a_test.go:2: init runs behind the reader's back; call it by name"},
		{"a.go", "package a\n\nfunc f() {\n" + long(79) + "}\n", "a.go:3: func f has 81 lines, at most 80 are allowed"},
		{"a.go", "package a\n" + strings.Repeat("\n", 400), "a.go:1: the file has 401 lines, at most 400 are allowed"},
		{"a.go", "package a\nfunc F() {}", "a.go:2: exported F has no doc comment"},
		{"a.go", "package a\n//go:noinline\nfunc F() {}", "a.go:3: exported F has no doc comment"},
		{"a.go", "package a\nfunc (t *T[X]) F() {}", "a.go:2: exported F has no doc comment"},
		{"a.go", "package a\ntype T int", "a.go:2: exported T has no doc comment"},
		{"a.go", "package a\n// Group.\ntype (\n\tT int\n)", "a.go:4: exported T has no doc comment"},
		{"a.go", "package a\nvar V = 0", "a.go:2: exported V has no doc comment"},
		{"a.go", "package a\nconst (\n\tC = 0 // c\n\tD = 1\n)", "a.go:4: exported D has no doc comment"},

		{"a.go", "package a\n\nfunc f() {\n" + long(78) + "}\n", ""},
		{"a_test.go", "package a\n\nfunc f() {\n" + long(500) + "}\n", ""},
		{"a.go", "package a\nfunc (T) init() {}\nfunc (t t) F() {}", ""},
		{"a.go", "package a\n// T is.\ntype T int\n// F does.\nfunc F() {}\n// All.\nconst (\n\tC = 0\n\tD = 1\n)", ""},
	} {
		faults, err := sourceFaults(row.name, []byte(row.text))
		require.NoError(t, err)
		require.Equal(t, row.want, strings.Join(faults, "\n"), row.text)
	}
	_, err := sourceFaults("a.go", []byte("package"))
	require.Error(t, err)
	require.True(t, packageComment([]byte("// Package a knows.\npackage a")))
	require.False(t, packageComment([]byte("// Not it.\n\npackage a")))
}
