package svg

import (
	"fmt"
	"strings"

	"stilewright/render/lettering"
	"stilewright/render/sheet"
)

// Names of weights, line types and tones in classes, by their values.
var (
	weightNames = [...]string{"narrow", "wide", "frame"}
	lineNames   = [...]string{"continuous", "hidden", "centre", "phantom"}
	toneNames   = [...]string{"ink", "tint", "paper"}
)

// strokeClass and toneClass are the class attributes of strokes and fills.
var (
	strokeClass = strokeClasses()
	toneClass   = [...]string{`class="tone-ink"`, `class="tone-tint"`, `class="tone-paper"`}
)

func strokeClasses() (all [len(weightNames)][len(lineNames)]string) {
	for w, weight := range weightNames {
		for l, line := range lineNames {
			class := "weight-" + weight
			if sheet.LineType(l) != sheet.Continuous {
				class += " line-" + line
			}
			all[w][l] = `class="` + class + `"`
		}
	}
	return all
}

// styles is the file's one style sheet. w and h are the paper in millimetres.
func styles(id, w, h string) string {
	var b strings.Builder
	rule := func(format string, values ...any) { fmt.Fprintf(&b, format+"\n", values...) }
	rule("@page{size:%smm %smm;margin:0}", w, h)
	rule("@media print{#%s{display:block;width:%smm;height:%smm}}", id, w, h)
	for i, name := range weightNames {
		rule(".weight-%s{fill:none;stroke:#000;stroke-width:%s}", name, decimal(sheet.Weight(i).Width()))
	}
	for i, name := range lineNames {
		var dashes []string
		for _, d := range sheet.LineType(i).Dashes() {
			dashes = append(dashes, decimal(d))
		}
		if dashes != nil {
			rule(".line-%s{stroke-dasharray:%s}", name, strings.Join(dashes, " "))
		}
	}
	for i, name := range toneNames {
		rule(".tone-%s{fill:%s;fill-rule:evenodd;stroke:none}", name, [...]string{"#000", "#e6ecf0", "#fff"}[i])
	}
	rule("#%s text{font-family:'%s','Arial Narrow','Liberation Sans Narrow',sans-serif;fill:#000;white-space:pre}", id, lettering.Family)
	return strings.TrimSuffix(b.String(), "\n")
}
