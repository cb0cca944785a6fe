package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/render/packet"
	"stilewright/render/pdf"
	"stilewright/render/tile"
)

// A printing is what the command line says of the printer.
type printing struct {
	paper, roll, margin  string
	measuredX, measuredY string
	factorX, factorY     float64 // of the print that was measured
	out                  string
	replace              bool
}

// templatesVerb writes the full-size templates alone.
func templatesVerb() *cobra.Command {
	var p printing
	cmd := &cobra.Command{
		Use:   "templates MODEL",
		Short: "Write full-size templates to print, tape together and lay on the wood",
		Long: `Reads a model file and writes its full-size templates into a folder:
templates.pdf, cut into pages of the paper, and each template as SVG and DXF.

Print at 100 %, then measure the two squares on the first page. If the 100 mm
square does not measure 100 mm, say what it measures, across and up, with
--measured-x and --measured-y, and print again. If the pages you measured were
corrected already, give their factors, which the first page names, too.

Nothing is written when the model has findings that stop; the exit code is
then 2.`,
		Args: cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			o, err := ordered(cmd.ErrOrStderr(), args[0], "")
			if err != nil {
				return err
			}
			files, err := p.files(o)
			if err != nil {
				return err
			}
			if err := packet.Write(p.out, files, packet.Options{Replace: p.replace}); err != nil {
				return err
			}
			fmt.Fprintf(cmd.OutOrStdout(), "%s: %d files\n", p.out, len(files)+1)
			return nil
		},
	}
	f := cmd.Flags()
	f.StringVarP(&p.out, "out", "o", "templates", "folder to write")
	f.BoolVar(&p.replace, "replace", false, "overwrite files that were changed by hand")
	f.StringVar(&p.paper, "paper", "", "paper: A4, A3, A2, A1, A0, letter, tabloid, ansi-c, arch-d …; without it A4 or letter")
	f.StringVar(&p.roll, "roll", "", "width of a roll of paper instead, such as 24 in or 610 mm")
	f.StringVar(&p.margin, "margin", "", "what the printer leaves white on every side; without it 10 mm")
	f.StringVar(&p.measuredX, "measured-x", "", "what the 100 mm square of a test print measures across, in millimetres or with its unit")
	f.StringVar(&p.measuredY, "measured-y", "", "what it measures up the page")
	f.Float64Var(&p.factorX, "factor-x", 1, "correction across of the pages that were measured")
	f.Float64Var(&p.factorY, "factor-y", 1, "correction up the page of the pages that were measured")
	return cmd
}

// files are the templates as the command line wants them printed.
func (p printing) files(o order) ([]packet.File, error) {
	set := o.set
	paper, err := p.on(set)
	if err != nil {
		return nil, err
	}
	options := tile.Options{}
	if options.Margin, err = size("--margin", p.margin, set.Units); err != nil {
		return nil, err
	}
	if p.margin != "" && options.Margin <= 0 {
		return nil, fmt.Errorf("--margin is %s mm; it must be above 0", options.Margin.Decimal())
	}
	if options.Correction, err = p.correction(); err != nil {
		return nil, err
	}
	return packet.Templates(set, "", paper, options, o.report.Hanging.Track.At...)
}

// on is the paper or roll.
func (p printing) on(set door.Set) (tile.Paper, error) {
	switch {
	case p.paper != "" && p.roll != "":
		return tile.Paper{}, fmt.Errorf("--paper %s and --roll %s are both given: leave one of them out", p.paper, p.roll)
	case p.roll != "":
		width, err := size("--roll", p.roll, set.Units)
		return tile.Roll(width), err
	case p.paper != "":
		return tile.Named(p.paper)
	}
	return packet.OfficePaper(set), nil
}

// correction is what a test print asks for.
func (p printing) correction() (pdf.Correction, error) {
	before := pdf.Correction{X: p.factorX, Y: p.factorY}
	if err := before.Check(); err != nil {
		return pdf.Correction{}, fmt.Errorf("--factor-x, --factor-y: %w", err)
	}
	const side = 100 * length.Millimetre
	measured := [2]length.Length{side, side}
	for i, text := range []string{p.measuredX, p.measuredY} {
		if text == "" {
			continue
		}
		read, err := size([]string{"--measured-x", "--measured-y"}[i], text, length.Millimetres)
		if err != nil {
			return pdf.Correction{}, err
		}
		measured[i] = read
	}
	c, err := before.Measured(side, measured[0], measured[1])
	if err != nil {
		return pdf.Correction{}, fmt.Errorf("--measured-x, --measured-y: %w", err)
	}
	return c, nil
}

// size reads a length of the command line; an empty one is 0.
func size(flag, text string, bare length.Unit) (length.Length, error) {
	if text == "" {
		return 0, nil
	}
	l, err := length.Parse(text, bare)
	if err != nil {
		return 0, fmt.Errorf("%s: %w", flag, err)
	}
	return l, nil
}
