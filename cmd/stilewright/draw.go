package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"sync"

	"github.com/spf13/cobra"

	"stilewright/model/check"
	"stilewright/model/door"
	"stilewright/model/spec"
	"stilewright/model/takeoff"
	"stilewright/render/packet"
	"stilewright/render/shop"
	"stilewright/render/tile"
)

// drawVerb writes a packet.
func drawVerb() *cobra.Command {
	var d drawing
	cmd := &cobra.Command{
		Use:   "draw MODEL",
		Short: "Write the drawings of a model into a folder",
		Long: `Reads a model file and writes its packet into a folder: the sheets as SVG and
DXF, sheets.pdf with all of them, set.step with the solids, resolved.json with
every resolved length, cnc/ with the files a CNC router or a laser is sent,
guide.html and guide.pdf with the building order, lists/ with cut list, layouts,
shopping list and labels, templates/ with full-size templates, and manifest.json.

Nothing is written when the model has findings that stop; the exit code is
then 2. A file in the folder that was changed by hand is not overwritten
unless --replace is given; then its copy is kept beside it as NAME.edited-1.

With --only, --sheet or --format a part of the packet is written, into a folder
of its own.`,
		Args: cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			d.to, d.findings = cmd.OutOrStdout(), cmd.ErrOrStderr()
			return d.draw(args[0])
		},
	}
	f := cmd.Flags()
	f.StringVarP(&d.out, "out", "o", "packet", "folder to write")
	f.StringVar(&d.prices, "prices", "", "price file: CSV with item, unit, pack, price")
	f.BoolVar(&d.replace, "replace", false, "overwrite files that were changed by hand")
	f.StringSliceVar(&d.only, "only", nil, "portions to write: "+strings.Join(portionNames(), ", "))
	f.StringSliceVar(&d.sheets.Only, "sheet", nil, "sheets to write, by name or number: 02-leaf-front, leaf-front or 2")
	f.StringSliceVar(&d.sheets.Formats, "format", nil, "formats of the sheets: "+strings.Join(packet.SheetFormats(), ", "))
	f.StringVar(&d.sheets.Scale, "scale", "", "scale of the set, the leaf and the panels: 1:20, or 3/4\" = 1'-0\"")
	f.BoolVarP(&d.quiet, "quiet", "q", false, "print only what stops")
	return cmd
}

// A drawing is one run of draw.
type drawing struct {
	out, prices    string
	replace, quiet bool
	only           []string
	sheets         packet.SheetOrder
	to, findings   io.Writer
}

// draw reads the model and writes what is asked for.
func (d *drawing) draw(path string) error {
	chosen, err := d.chosen()
	if err != nil {
		return err
	}
	o, err := d.order(path)
	if err != nil {
		return err
	}
	files, err := d.made(o, chosen)
	if err != nil {
		return err
	}
	if len(chosen) < len(portions()) || len(d.sheets.Only)+len(d.sheets.Formats) > 0 {
		var names []string
		for _, f := range files {
			names = append(names, f.Name)
		}
		if others := packet.Others(d.out, names); len(others) > 0 {
			return fmt.Errorf("%s holds a packet with %d other files, %s first, which a part would drop: name another folder with -o", d.out, len(others), others[0])
		}
	}
	if err := packet.Write(d.out, files, packet.Options{Replace: d.replace}); err != nil {
		return err
	}
	if !d.quiet {
		fmt.Fprintf(d.to, "%s: %d files\n", d.out, len(files)+1)
	}
	return nil
}

// order reads and plans the model; a quiet run prints only findings that stop.
func (d *drawing) order(path string) (order, error) {
	if !d.quiet {
		return ordered(d.findings, path, d.prices)
	}
	var said bytes.Buffer
	o, err := ordered(&said, path, d.prices)
	if err != nil {
		_, _ = d.findings.Write(said.Bytes())
	}
	return o, err
}

// chosen are the portions asked for: those named, or the sheets when only
// sheets or their formats are, or all.
func (d *drawing) chosen() ([]portion, error) {
	only := d.only
	if len(only) == 0 && len(d.sheets.Only)+len(d.sheets.Formats) > 0 {
		only = []string{"sheets"}
	}
	if len(only) == 0 {
		return portions(), nil
	}
	var chosen []portion
	for _, p := range portions() {
		if slices.Contains(only, p.name) {
			chosen = append(chosen, p)
		}
	}
	for _, name := range only {
		if !slices.Contains(portionNames(), name) {
			return nil, fmt.Errorf("--only %s: the portions of a packet are %s", name, strings.Join(portionNames(), ", "))
		}
	}
	return chosen, nil
}

// A portion is a part of the packet that can be asked for alone.
type portion struct {
	name string
	make func(d *drawing, o order) ([]packet.File, error)
}

// portions are all of them, in the order they are told.
func portions() []portion {
	return []portion{
		{"sheets", func(d *drawing, o order) ([]packet.File, error) { return packet.Sheets(o.set, d.sheets) }},
		{"record", func(_ *drawing, o order) ([]packet.File, error) { return packet.Record(o.set) }},
		{"cnc", func(_ *drawing, o order) ([]packet.File, error) { return packet.Shop(o.set, o.shop) }},
		{"guide", (*drawing).guide},
		{"lists", (*drawing).lists},
		{"templates", func(_ *drawing, o order) ([]packet.File, error) {
			return packet.Templates(o.set, packet.TemplatesFolder, packet.OfficePaper(o.set), tile.Options{}, o.report.Hanging.Track.At...)
		}},
		{"solids", (*drawing).solids},
	}
}

// portionNames are the words of --only.
func portionNames() []string {
	var names []string
	for _, p := range portions() {
		names = append(names, p.name)
	}
	return names
}

// lists are cut list, layouts, shopping list and labels.
func (d *drawing) lists(o order) ([]packet.File, error) {
	if err := said(d.findings, o.asked); err != nil {
		return nil, err
	}
	return packet.Lists(o.taken, packet.ListsFolder)
}

// solids is the set as solids; a set that cannot be bounded is left out and said.
func (d *drawing) solids(o order) ([]packet.File, error) {
	solids, err := packet.Solids(o.set)
	if err != nil {
		fmt.Fprintf(d.findings, "left out %v\n", err)
		return nil, nil
	}
	return []packet.File{solids}, nil
}

// made makes the portions side by side and tells on a terminal how far it is.
func (d *drawing) made(o order, chosen []portion) ([]packet.File, error) {
	files, errs := make([][]packet.File, len(chosen)), make([]error, len(chosen))
	line := progressOn(d.findings, len(chosen), d.quiet)
	d.findings = line
	var done sync.WaitGroup
	for i, p := range chosen {
		done.Go(func() {
			files[i], errs[i] = p.make(d, o)
			line.ready(p.name)
		})
	}
	done.Wait()
	line.clear()
	for _, err := range errs {
		if errors.Is(err, errFindings) {
			return nil, err
		}
	}
	return slices.Concat(files...), errors.Join(errs...)
}

// schemaVerb prints the JSON Schema of model files.
func schemaVerb() *cobra.Command {
	return &cobra.Command{
		Use:   "schema",
		Short: "Print the JSON Schema of model files",
		Args:  cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			_, err := cmd.OutOrStdout().Write(spec.Schema())
			return err
		},
	}
}

// An order is a model, resolved, held to the rules of the trade, taken off, and
// planned for the shop.
type order struct {
	model  spec.Spec
	set    door.Set
	report check.Report
	shop   shop.Job
	taken  takeoff.Takeoff
	asked  []spec.Finding // of taken
}

// ordered reads, resolves, checks and plans a model and prints the findings that
// stop or warn in the order they stand in the file. The error is errFindings
// when one of them stops.
func ordered(to io.Writer, path, prices string) (order, error) {
	o, findings, err := assembled(path, prices)
	if err != nil {
		return order{}, err
	}
	spec.Sort(findings)
	for _, f := range findings {
		if f.Severity != spec.Note {
			fmt.Fprintln(to, f)
		}
	}
	if stops(findings) {
		return order{}, errFindings
	}
	return o, nil
}

// assembled reads, resolves, checks, takes off at the prices of a file ("" for
// none) and plans a model, each step when nothing before it stops. Findings of
// the takeoff stay in the order: they stop its lists, not its drawings.
func assembled(path, prices string) (order, []spec.Finding, error) {
	model, findings, err := spec.ReadFile(path)
	if err != nil {
		return order{}, nil, err
	}
	o := order{model: model}
	for _, step := range []func() []spec.Finding{
		func() (more []spec.Finding) { o.set, more = door.Resolve(model); return more },
		func() []spec.Finding { return meetings(o) },
		func() []spec.Finding { o.report = check.Of(model, o.set); return o.report.Findings },
		func() []spec.Finding { o.taken, o.asked, err = takeOff(prices, o); return nil },
		func() (more []spec.Finding) { o.shop, more = shop.Plan(o.set, model, o.taken); return more },
	} {
		if stops(findings) {
			break
		}
		findings = append(findings, step()...)
	}
	return o, findings, err
}

// meetings are the findings of what meets in a set, placed in the model's file.
func meetings(o order) []spec.Finding {
	found := check.All(o.set)
	for i, f := range found {
		found[i] = o.model.Find(f.Path, f.Rule, f.Severity, f.Sentence)
	}
	return found
}

// stops tells whether one of the findings stops the run.
func stops(findings []spec.Finding) bool {
	return slices.ContainsFunc(findings, func(f spec.Finding) bool { return f.Severity == spec.Stops })
}
