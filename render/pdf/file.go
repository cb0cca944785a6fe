package pdf

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf16"
)

// A file is a PDF's objects, numbered from 1 in the order they are added.
type file struct{ objects [][]byte }

// add adds an object and returns its number.
func (f *file) add(body string) int {
	f.objects = append(f.objects, []byte(body))
	return len(f.objects)
}

// reserve keeps a number for an object that set gives its body.
func (f *file) reserve() int { return f.add("") }

func (f *file) set(n int, body string) { f.objects[n-1] = []byte(body) }

// stream adds a stream with entries for its dictionary besides the length.
func (f *file) stream(entries string, data []byte) int {
	if entries != "" {
		entries += " "
	}
	return f.add(fmt.Sprintf("<< %s/Length %d >>\nstream\n%s\nendstream", entries, len(data), data))
}

// reference is how an object of the file is named in another.
func reference(n int) string { return strconv.Itoa(n) + " 0 R" }

// references lists objects.
func references(numbers []int) string {
	names := make([]string, len(numbers))
	for i, n := range numbers {
		names[i] = reference(n)
	}
	return strings.Join(names, " ")
}

// assemble is the whole file, with the numbers of its catalog and its
// information. Its ID is a hash of all before it.
func (f *file) assemble(catalog, info int) []byte {
	var b bytes.Buffer
	b.WriteString("%PDF-1.7\n%\xe2\xe3\xcf\xd3\n") // four bytes above 127: not to be sent as text
	places := make([]int, len(f.objects))
	for i, body := range f.objects {
		places[i] = b.Len()
		fmt.Fprintf(&b, "%d 0 obj\n%s\nendobj\n", i+1, body)
	}
	id := fmt.Sprintf("%X", sha256.Sum256(b.Bytes()))[:32]
	start := b.Len()
	fmt.Fprintf(&b, "xref\n0 %d\n0000000000 65535 f \n", len(places)+1)
	for _, place := range places {
		fmt.Fprintf(&b, "%010d 00000 n \n", place)
	}
	fmt.Fprintf(&b, "trailer\n<< /Size %d /Root %s /Info %s /ID [<%s> <%s>] >>\nstartxref\n%d\n%%%%EOF\n",
		len(places)+1, reference(catalog), reference(info), id, id, start)
	return b.Bytes()
}

// quoted is words for a person as a PDF string: ASCII as it is, anything else
// in UTF-16. Control characters become spaces, as do bytes that are no text.
func quoted(words string) string {
	words = strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || r == unicode.ReplacementChar {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(words, " "))
	if strings.IndexFunc(words, func(r rune) bool { return r > unicode.MaxASCII }) < 0 {
		return "(" + strings.NewReplacer(`\`, `\\`, "(", `\(`, ")", `\)`).Replace(words) + ")"
	}
	var b strings.Builder
	b.WriteString("<FEFF")
	for _, unit := range utf16.Encode([]rune(words)) {
		fmt.Fprintf(&b, "%04X", unit)
	}
	return b.String() + ">"
}
