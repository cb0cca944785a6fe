package spec

import "strings"

// positions maps a key's path to where its value stands in the file. The root
// has the path Whole; an item of a list has its number from 1 behind the
// list's path: "hanging.tracks[2]".
type positions map[string]position

type position struct{ line, column int }

// Find makes a finding about the value at path ("panel.rabbet.depth",
// "hanging.tracks[2]"), placed where that value stands in the file, or else
// its nearest parent that does. A Spec that was not read gives findings
// without a place.
func (s Spec) Find(path, rule string, severity Severity, sentence string) Finding {
	at := s.where.nearest(path)
	return Finding{
		File: s.file, Line: at.line, Column: at.column,
		Path: path, Rule: rule, Severity: severity, Sentence: sentence,
	}
}

// nearest is the place of path or of its nearest parent that has one.
func (p positions) nearest(path string) position {
	for {
		if at, stands := p[path]; stands {
			return at
		}
		end := strings.LastIndexAny(path, ".[")
		if end <= 0 {
			return p[Whole]
		}
		path = path[:end]
	}
}
