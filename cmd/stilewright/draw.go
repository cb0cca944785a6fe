package main

import (
	"cmp"
	"fmt"
	"io"
	"slices"

	"github.com/spf13/cobra"

	"stilewright/model/door"
	"stilewright/model/spec"
	"stilewright/render/packet"
	"stilewright/render/shop"
)

// drawVerb writes a packet.
func drawVerb() *cobra.Command {
	var out, prices string
	var replace bool
	cmd := &cobra.Command{
		Use:   "draw MODEL",
		Short: "Write the drawings of a model into a folder",
		Long: `Reads a model file and writes its packet into a folder: the sheets as SVG and
DXF, sheets.pdf with all of them, set.step with the solids, resolved.json with
every resolved length, cnc/ with the files a CNC router or a laser is sent,
lists/ with cut list, layouts, shopping list and labels, and manifest.json.

Nothing is written when the model has findings that stop; the exit code is
then 2. A file in the folder that was changed by hand is not overwritten
unless --replace is given; then its copy is kept beside it as NAME.edited-1.`,
		Args: cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			o, err := ordered(cmd.ErrOrStderr(), args[0])
			if err != nil {
				return err
			}
			set := o.set
			files, err := packet.Of(set)
			if err != nil {
				return err
			}
			cuttings, err := packet.Shop(set, o.shop)
			if err != nil {
				return err
			}
			files = append(files, cuttings...)
			taken, err := takenOff(cmd.ErrOrStderr(), prices, o)
			if err != nil {
				return err
			}
			lists, err := packet.Lists(taken, packet.ListsFolder)
			if err != nil {
				return err
			}
			files = append(files, lists...)
			if solids, err := packet.Solids(set); err != nil {
				fmt.Fprintf(cmd.ErrOrStderr(), "%s: left out %v\n", args[0], err)
			} else {
				files = append(files, solids)
			}
			if err := packet.Write(out, files, packet.Options{Replace: replace}); err != nil {
				return err
			}
			fmt.Fprintf(cmd.OutOrStdout(), "%s: %d files\n", out, len(files)+1)
			return nil
		},
	}
	cmd.Flags().StringVarP(&out, "out", "o", "packet", "folder to write")
	cmd.Flags().StringVar(&prices, "prices", "", "price file: CSV with item, unit, pack, price")
	cmd.Flags().BoolVar(&replace, "replace", false, "overwrite files that were changed by hand")
	return cmd
}

// checkVerb reports findings only.
func checkVerb() *cobra.Command {
	return &cobra.Command{
		Use:   "check MODEL",
		Short: "Report what is wrong or worth knowing in a model, and write nothing",
		Args:  cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			o, err := ordered(cmd.ErrOrStderr(), args[0])
			if err != nil {
				return err
			}
			if _, err := takenOff(cmd.ErrOrStderr(), "", o); err != nil {
				return err
			}
			set := o.set
			fmt.Fprintf(cmd.OutOrStdout(), "%s: %d leaves resolve, %d lengths\n", args[0], len(set.Hung), len(set.Figures))
			return nil
		},
	}
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

// An order is a model, resolved, and planned for the shop.
type order struct {
	model spec.Spec
	set   door.Set
	shop  shop.Job
}

// ordered reads, resolves and plans a model and prints its findings in the
// order they stand in the file. The error is errFindings when one of them stops.
func ordered(to io.Writer, path string) (order, error) {
	model, findings, err := spec.ReadFile(path)
	if err != nil {
		return order{}, err
	}
	o := order{model: model}
	if !stops(findings) {
		var more []spec.Finding
		o.set, more = door.Resolve(model)
		findings = append(findings, more...)
	}
	if !stops(findings) {
		var more []spec.Finding
		o.shop, more = shop.Plan(o.set, model)
		findings = append(findings, more...)
	}
	slices.SortStableFunc(findings, func(a, b spec.Finding) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	for _, f := range findings {
		fmt.Fprintln(to, f)
	}
	if stops(findings) {
		return order{}, errFindings
	}
	return o, nil
}

// stops tells whether one of the findings stops the run.
func stops(findings []spec.Finding) bool {
	return slices.ContainsFunc(findings, func(f spec.Finding) bool { return f.Severity == spec.Stops })
}
