package guide

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"html/template"
	"io"

	"stilewright/model/length"
	"stilewright/render/sheet"
	"stilewright/render/svg"
)

// WriteHTML writes a guide as one page that needs no other file and no network:
// pictures and styles are in it, and its policy allows nothing else. It reads in
// light and dark, prints without cutting a step in two, and is well-formed XML.
// The same guide gives the same bytes.
func WriteHTML(w io.Writer, g Guide) error {
	page := htmlPage{Guide: g, Style: template.CSS(style), Sizes: unitWords(g.Units)}
	pictures := map[string]htmlPicture{}
	for _, p := range g.Pictures {
		shown, err := embedded(p)
		if err != nil {
			return fmt.Errorf("picture %s: %w", p.Name, err)
		}
		pictures[p.Name] = shown
	}
	for i, c := range g.Chapters {
		chapter := htmlChapter{Title: c.Title, Number: i + 1}
		for k, s := range c.Steps {
			step := htmlStep{Step: s, Number: number(i, k), Picture: pictures[s.Picture]}
			if len(s.Table) > 0 {
				step.Head, step.Rows = s.Table[0], s.Table[1:]
			}
			chapter.Steps = append(chapter.Steps, step)
		}
		page.Chapters = append(page.Chapters, chapter)
	}
	t, err := template.New("guide").Parse(pageText)
	if err != nil {
		return err
	}
	return t.Execute(w, page)
}

// unitWords are the units of a guide.
func unitWords(u length.Unit) string {
	if u == length.Inches {
		return "inches"
	}
	return "millimetres"
}

// What the page's text takes.
type (
	htmlPage struct {
		Guide
		Style    template.CSS
		Sizes    string
		Chapters []htmlChapter
	}
	htmlChapter struct {
		Title  string
		Number int
		Steps  []htmlStep
	}
	htmlStep struct {
		Step
		Number  string
		Head    []string
		Rows    [][]string
		Picture htmlPicture
	}
	htmlPicture struct {
		Source template.URL
		Title  string
		Wide   string // millimetres
	}
)

// embedded is a picture as an address that holds it.
func embedded(s sheet.Sheet) (htmlPicture, error) {
	s = cropped(s)
	var out bytes.Buffer
	if err := svg.Write(&out, s); err != nil {
		return htmlPicture{}, err
	}
	return htmlPicture{Source: template.URL("data:image/svg+xml;base64," + base64.StdEncoding.EncodeToString(out.Bytes())), Title: s.Title, Wide: fmt.Sprintf("%.1f", s.Width.MM())}, nil
}

const style = `
:root{color-scheme:light dark;--ink:#1b1e22;--paper:#fff;--pale:#5a626b;--line:#c4cad1;--warn:#8a3b00;--warnbed:#fdf3e7}
@media(prefers-color-scheme:dark){:root{--ink:#e6e8eb;--paper:#16191d;--pale:#a5adb7;--line:#3f464f;--warn:#ffb37a;--warnbed:#2a2119}}
*{box-sizing:border-box}
body{margin:0 auto;max-width:62rem;padding:1.5rem;background:var(--paper);color:var(--ink);font:1rem/1.5 system-ui,sans-serif}
h1{font-size:1.7rem;margin:0}h2{font-size:1.3rem;margin:2.2rem 0 .6rem;border-bottom:2px solid var(--line)}h3{font-size:1.05rem;margin:0 0 .4rem}
.by{color:var(--pale);margin:.2rem 0 1rem}
nav ol{columns:2;padding-left:1.4rem}a{color:inherit}
section.step{border-bottom:1px solid var(--line);padding:.9rem 0;overflow:hidden}
.no{display:inline-block;min-width:2.6rem;color:var(--pale)}
.box{display:inline-block;width:.85em;height:.85em;border:1.5px solid var(--ink);margin-right:.6rem}
figure{float:right;clear:right;margin:0 0 .5rem 1.2rem;max-width:55%}
figure img{display:block;max-width:100%;height:auto;background:#fff;padding:2mm;border:1px solid var(--line)}
figcaption{font-size:.82rem;color:var(--pale)}
p{margin:.4rem 0}
.caution{border-left:4px solid var(--warn);background:var(--warnbed);padding:.25rem .7rem;clear:none;overflow:hidden}
.tables{overflow-x:auto;clear:none}
table{border-collapse:collapse;margin:.5rem 0;font-variant-numeric:tabular-nums}
th,td{text-align:left;padding:.15rem .9rem .15rem 0;border-bottom:1px solid var(--line);vertical-align:top}th{font-size:.8rem;color:var(--pale)}
.sizes{font-size:.85rem;color:var(--pale)}.sizes code{color:var(--ink);font-size:.95em}
@media(max-width:45rem){figure{float:none;max-width:100%;margin:0 0 .5rem}nav ol{columns:1}}
@page{margin:14mm}
@media print{:root{color-scheme:light;--ink:#000;--paper:#fff;--pale:#333;--line:#999;--warn:#000;--warnbed:#fff}body{max-width:none;padding:0;font-size:10pt}nav{display:none}section.step{break-inside:avoid}h2{break-after:avoid}}
`

const pageText = `<!DOCTYPE html>
<html lang="en" xmlns="http://www.w3.org/1999/xhtml">
<head>
<meta charset="utf-8"/>
<meta name="viewport" content="width=device-width, initial-scale=1"/>
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src data:; style-src 'unsafe-inline'"/>
<title>{{.Job}} · Building order</title>
<style>{{.Style}}</style>
</head>
<body>
<header>
<h1>{{.Job}}: building order</h1>
<p class="by">Sizes in {{.Sizes}}{{with .Drawn}} · {{.}}{{end}}{{with .Revision}} · revision {{.}}{{end}}{{with .By}} · {{.}}{{end}}</p>
{{range .About}}<p>{{.}}</p>
{{end}}</header>
<nav aria-label="Chapters"><ol>
{{range .Chapters}}<li><a href="#chapter-{{.Number}}">{{.Title}}</a></li>
{{end}}</ol></nav>
<main>
{{range .Chapters}}<h2 id="chapter-{{.Number}}">{{.Number}} {{.Title}}</h2>
{{range .Steps}}<section class="step" id="step-{{.Number}}">
{{with .Picture}}{{if .Source}}<figure><img src="{{.Source}}" alt="{{.Title}}" style="width:{{.Wide}}mm"/><figcaption>{{.Title}}</figcaption></figure>
{{end}}{{end}}<h3><span class="box"></span><span class="no">{{.Number}}</span>{{.Title}}</h3>
{{range .Lines}}<p>{{.}}</p>
{{end}}{{if .Rows}}<div class="tables"><table><thead><tr>{{range .Head}}<th scope="col">{{.}}</th>{{end}}</tr></thead><tbody>
{{range .Rows}}<tr>{{range .}}<td>{{.}}</td>{{end}}</tr>
{{end}}</tbody></table></div>
{{end}}{{range .Cautions}}<p class="caution">{{.}}</p>
{{end}}{{if .Figures}}<p class="sizes">Sizes by name: {{range $i, $f := .Figures}}{{if $i}}; {{end}}<code>{{$f.Name}}</code> {{$f.Value}}{{end}}</p>
{{end}}</section>
{{end}}{{end}}</main>
</body>
</html>
`
