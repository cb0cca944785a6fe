package main

import (
	"fmt"
	"io"
	"os"

	"github.com/spf13/cobra"

	"stilewright/model/spec"
	"stilewright/model/takeoff"
	"stilewright/render/list"
	"stilewright/render/packet"
)

// takeoffVerb writes what one or several models take.
func takeoffVerb() *cobra.Command {
	var out, prices string
	var replace bool
	cmd := &cobra.Command{
		Use:   "takeoff MODEL...",
		Short: "Write what models take: cut list, layouts, shopping list, labels",
		Long: `Reads model files and writes what they take, pooled into one stock, into a
folder: cut list, how boards, sheets and film are cut, the shopping list, and
labels; as PDF, CSV and one workbook, the layouts as SVG and DXF too.

prices.csv in that folder names every item. Copy it elsewhere, fill in prices
(and how many come in a pack), and give it with --prices: the cheapest layout
is then sought instead of the shortest.`,
		Args: cobra.MinimumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			var orders []order
			for _, path := range args {
				o, err := ordered(cmd.ErrOrStderr(), path, "")
				if err != nil {
					return err
				}
				orders = append(orders, o)
			}
			taken, err := takenOff(cmd.ErrOrStderr(), prices, orders...)
			if err != nil {
				return err
			}
			files, err := packet.Lists(taken, "")
			if err != nil {
				return err
			}
			if err := packet.Write(out, files, packet.Options{Replace: replace}); err != nil {
				return err
			}
			return sayTaken(cmd.OutOrStdout(), taken, out, len(files)+1)
		},
	}
	cmd.Flags().StringVarP(&out, "out", "o", "takeoff", "folder to write")
	cmd.Flags().StringVar(&prices, "prices", "", "price file: CSV with item, unit, pack, price")
	cmd.Flags().BoolVar(&replace, "replace", false, "overwrite files that were changed by hand")
	return cmd
}

// takenOff takes the orders off at the prices of a file, "" for none, and prints
// the findings of both. The error is errFindings when one of them stops.
func takenOff(to io.Writer, file string, orders ...order) (takeoff.Takeoff, error) {
	taken, findings, err := takeOff(file, orders...)
	if err != nil {
		return takeoff.Takeoff{}, err
	}
	return taken, said(to, findings)
}

// said prints findings in the order of the file. The error is errFindings when
// one of them stops.
func said(to io.Writer, findings []spec.Finding) error {
	spec.Sort(findings)
	for _, f := range findings {
		fmt.Fprintln(to, f)
	}
	if stops(findings) {
		return errFindings
	}
	return nil
}

// takeOff takes the orders off at the prices of a file, "" for none.
func takeOff(file string, orders ...order) (takeoff.Takeoff, []spec.Finding, error) {
	var prices takeoff.Prices
	var findings []spec.Finding
	if file != "" {
		text, err := os.ReadFile(file)
		if err != nil {
			return takeoff.Takeoff{}, nil, err
		}
		prices, findings = takeoff.ReadPrices(file, text)
	}
	var jobs []takeoff.Job
	for _, o := range orders {
		jobs = append(jobs, takeoff.Job{Model: o.model, Set: o.set})
	}
	taken, more := takeoff.Of(jobs, prices)
	return taken, append(findings, more...), nil
}

// sayTaken prints how the stock is used, and what it comes to.
func sayTaken(to io.Writer, t takeoff.Takeoff, out string, files int) error {
	proofs, shopping := list.Proofs(t), list.Shopping(t)
	for n := range proofs.Rows {
		fmt.Fprintf(to, "%s: %s", proofs.Figure(n, 0), proofs.Figure(n, 2))
		if bound := proofs.Figure(n, 3); bound != "" {
			fmt.Fprintf(to, "; %s", bound)
		}
		fmt.Fprintln(to)
	}
	last := len(shopping.Rows) - 1
	const cost, weighs, said = 8, 9, 10 // columns of the shopping list
	if amount := shopping.Figure(last, cost); amount != "" {
		fmt.Fprintf(to, "cost: %s %s\n", amount, t.Sum.Coin)
	}
	fmt.Fprintf(to, "to carry: %s %s; %s\n", shopping.Figure(last, weighs), list.MassUnit(t), shopping.Figure(last, said))
	_, err := fmt.Fprintf(to, "%s: %d files\n", out, files)
	return err
}
