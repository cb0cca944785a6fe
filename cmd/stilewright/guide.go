package main

import (
	"bytes"
	"fmt"

	"github.com/spf13/cobra"

	"stilewright/model/hanging"
	"stilewright/render/guide"
	"stilewright/render/packet"
	"stilewright/render/pdf"
)

// guideVerb writes the building order alone.
func guideVerb() *cobra.Command {
	var d drawing
	cmd := &cobra.Command{
		Use:   "guide MODEL",
		Short: "Write in which order the doors are built, with this job's numbers",
		Long: `Writes the building order of a model into a folder: guide.html, one page that
needs nothing else, and guide.pdf, to print. The steps are those this set takes,
with its numbers, the settings of each machine, cautions and pictures.`,
		Args: cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			d.to, d.findings, d.only = cmd.OutOrStdout(), cmd.ErrOrStderr(), []string{"guide"}
			return d.draw(args[0])
		},
	}
	f := cmd.Flags()
	f.StringVarP(&d.out, "out", "o", "guide", "folder to write")
	f.BoolVar(&d.replace, "replace", false, "overwrite files that were changed by hand")
	f.BoolVarP(&d.quiet, "quiet", "q", false, "print only what stops")
	return cmd
}

// guide is the building order.
func (d *drawing) guide(o order) ([]packet.File, error) {
	hung, findings := hanging.Of(o.model, o.set)
	if stops(findings) {
		for _, f := range findings {
			fmt.Fprintln(d.findings, f)
		}
		return nil, errFindings
	}
	g, err := guide.Of(o.model, o.set, hung)
	if err != nil {
		return nil, err
	}
	var page, print bytes.Buffer
	if err := guide.WriteHTML(&page, g); err != nil {
		return nil, fmt.Errorf("guide.html: %w", err)
	}
	sheets, err := guide.Sheets(g)
	if err != nil {
		return nil, fmt.Errorf("guide.pdf: %w", err)
	}
	if err := pdf.Write(&print, sheets, pdf.Options{Title: o.set.Job + ", building order", Author: o.set.By, Date: o.set.Drawn}); err != nil {
		return nil, fmt.Errorf("guide.pdf: %w", err)
	}
	return []packet.File{{Name: "guide.html", Data: page.Bytes()}, {Name: "guide.pdf", Data: print.Bytes()}}, nil
}
