package main

import (
	"fmt"
	"io"
	"slices"

	"github.com/spf13/cobra"

	"stilewright/model/door"
	"stilewright/model/explain"
	"stilewright/model/hanging"
	"stilewright/model/length"
	"stilewright/model/spec"
)

// explainVerb tells where sizes come from.
func explainVerb() *cobra.Command {
	var machine bool
	cmd := &cobra.Command{
		Use:   "explain MODEL [NAME]",
		Short: "Tell where a size comes from, back to what was measured",
		Long: `Lists every resolved length by group, with how it came about. With a NAME
("leaf.width") it tells that length back to what the model states: the formula
in words, the lengths it takes, and the reason and source of every default. The
first words of names ("leaf", "lite.1") stand for all that begin so.`,
		Args: cobra.RangeArgs(1, 2),
		RunE: func(cmd *cobra.Command, args []string) error {
			figures, units, err := settled(cmd.ErrOrStderr(), args[0])
			if err != nil {
				return err
			}
			book := explain.Of(figures, units)
			var roots []door.Figure
			if len(args) == 2 {
				if roots, err = book.Roots(args[1]); err != nil {
					return err
				}
			}
			text := book.List()
			if len(roots) > 0 {
				text = book.Tree(roots)
			}
			if !machine {
				_, err = cmd.OutOrStdout().Write([]byte(text))
				return err
			}
			data, err := book.JSON(roots)
			if err != nil {
				return err
			}
			_, err = cmd.OutOrStdout().Write(data)
			return err
		},
	}
	cmd.Flags().BoolVar(&machine, "json", false, "as JSON, for other programs")
	return cmd
}

// settled is the figures of a model, those of its hanging last; what stops it is
// printed, and nothing else.
func settled(to io.Writer, path string) ([]door.Figure, length.Unit, error) {
	model, findings, err := spec.ReadFile(path)
	if err != nil {
		return nil, 0, err
	}
	var set door.Set
	if !stops(findings) {
		set, findings = door.Resolve(model)
	}
	if !stops(findings) {
		var hung hanging.Hanging
		if hung, findings = hanging.Of(model, set); !stops(findings) {
			return slices.Concat(set.Figures, hung.Figures), set.Units, nil
		}
	}
	spec.Sort(findings)
	for _, f := range findings {
		if f.Severity == spec.Stops {
			fmt.Fprintln(to, f)
		}
	}
	return nil, 0, errFindings
}
