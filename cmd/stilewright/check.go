package main

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strings"

	"github.com/spf13/cobra"

	"stilewright/model/check"
	"stilewright/model/hanging"
	"stilewright/model/length"
	"stilewright/model/movement"
	"stilewright/model/spec"
)

// checkVerb reports findings only.
func checkVerb() *cobra.Command {
	var machine, tables, rules bool
	cmd := &cobra.Command{
		Use:   "check MODEL",
		Short: "Report what is wrong or worth knowing in a model, and write nothing",
		Long: `Prints every finding in the order of the file, each with what it does: stops,
warning or note. With --tables also what is free over the whole slide, every
clearance in winter and in summer, what each may come out off by, and where
screws, guides and bumpers go and what they bear.`,
		Args: func(cmd *cobra.Command, args []string) error {
			if rules {
				return cobra.NoArgs(cmd, args)
			}
			return cobra.ExactArgs(1)(cmd, args)
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			if rules {
				return printRules(cmd.OutOrStdout())
			}
			o, findings, err := assembled(args[0], "")
			if err != nil {
				return err
			}
			findings = append(findings, o.asked...)
			spec.Sort(findings)
			if machine {
				err = checkedJSON(cmd.OutOrStdout(), o, findings)
			} else {
				err = checked(cmd, args[0], o, findings, tables)
			}
			if err == nil && stops(findings) {
				err = errFindings
			}
			return err
		},
	}
	cmd.Flags().BoolVar(&machine, "json", false, "as JSON, with the tables, for other programs")
	cmd.Flags().BoolVar(&rules, "rules", false, "print the rules a whole set is held to, with their sources, and check nothing")
	cmd.Flags().BoolVar(&tables, "tables", false, "print clearances, seasons and tolerances too")
	return cmd
}

// printRules prints the rules of the trade a whole set is held to.
func printRules(out io.Writer) error {
	for _, r := range check.Rules() {
		if _, err := fmt.Fprintf(out, "%s (%v): %s\n    %s\n", r.ID, r.Severity, r.Says, r.Source); err != nil {
			return err
		}
	}
	return nil
}

// checked prints the findings with their severity, and the tables when asked
// for and when nothing stops.
func checked(cmd *cobra.Command, path string, o order, findings []spec.Finding, tables bool) error {
	for _, f := range findings {
		fmt.Fprintln(cmd.ErrOrStderr(), strings.Replace(f.String(), f.Rule+": ", f.Severity.String()+": "+f.Rule+": ", 1))
	}
	if stops(findings) {
		return nil
	}
	out := cmd.OutOrStdout()
	if tables {
		printTables(out, o)
	}
	_, err := fmt.Fprintf(out, "%s: %d leaves resolve, %d lengths\n", path, len(o.set.Hung), len(o.set.Figures))
	return err
}

// printTables prints what is free, what the seasons do to it, and what it may
// come out off by.
func printTables(out io.Writer, o order) {
	style := length.Style{Unit: o.set.Units, Mark: true}
	fmt.Fprintln(out, "Free over the whole slide, least and most")
	for _, c := range o.report.Clearances {
		fmt.Fprintf(out, "  %-56s %10s %10s\n", c.Name, style.Format(c.Least), style.Format(c.Most))
	}
	fmt.Fprintln(out, "\nThrough the year: hung, winter, summer")
	fmt.Fprint(out, o.report.Seasons.Text(style))
	fmt.Fprintln(out, "\nWhat clearances may come out off by")
	for _, s := range o.report.Tolerances {
		fmt.Fprintln(out, "  "+s.Text(style))
	}
	fmt.Fprintln(out, "\nWhat it hangs on; no engineer's proof")
	for line := range strings.Lines(o.report.Hanging.Text(o.set.Units)) {
		fmt.Fprint(out, "  "+line)
	}
	fmt.Fprintln(out)
}

type checkedFile struct {
	Format     string         `json:"format"`
	Version    int            `json:"version"`
	Findings   []findingRow   `json:"findings"`
	Clearances []clearanceRow `json:"clearances,omitempty"`
	Seasons    []seasonRow    `json:"seasons,omitempty"`
	Tolerances []toleranceRow `json:"tolerances,omitempty"`
	Hanging    *hangingRow    `json:"hanging,omitempty"`
}

type hangingRow struct {
	TrackScrews  screwsRow  `json:"track_screws"`
	FasciaScrews *screwsRow `json:"fascia_screws,omitempty"`
	Hangers      [2]float64 `json:"hangers_n"`
	Joint        float64    `json:"top_joint_n"`
	Guides       []string   `json:"floor_guides_mm"`
	Bumpers      []string   `json:"bumpers_mm"` // middles of the hangers that meet them
}

type screwsRow struct {
	At     []string `json:"at_mm"`
	Gauge  int      `json:"gauge"`
	Length string   `json:"length_mm"`
	Held   string   `json:"held_mm"`
	Most   float64  `json:"most_n"`
	Holds  float64  `json:"nds_n"`
	Source string   `json:"source"`
}

func screwsRowOf(s hanging.Screws) screwsRow {
	return screwsRow{decimals(s.At), s.Screw.Gauge, s.Length.Decimal(), s.Held.Decimal(), tenth(s.Most), tenth(s.Holds), s.Source}
}

// tenth is a force in whole tenths, so that the last bits of a sum do not reach
// the output.
func tenth(newtons float64) float64 { return math.Round(newtons*10) / 10 }

func decimals(at []length.Length) []string {
	all := []string{}
	for _, x := range at {
		all = append(all, x.Decimal())
	}
	return all
}

func hangingRowOf(h hanging.Hanging) *hangingRow {
	row := &hangingRow{TrackScrews: screwsRowOf(h.Track), Hangers: [2]float64{tenth(h.Load.Hanger[0]), tenth(h.Load.Hanger[1])}, Joint: tenth(h.Rail.Joint)}
	if h.Fascia != nil {
		fascia := screwsRowOf(*h.Fascia)
		row.FasciaScrews = &fascia
	}
	var guides, bumpers []length.Length
	for _, g := range h.Guides {
		guides = append(guides, g.X)
	}
	for _, b := range h.Bumpers {
		bumpers = append(bumpers, b.Hanger)
	}
	row.Guides, row.Bumpers = decimals(guides), decimals(bumpers)
	return row
}

type findingRow struct {
	File     string `json:"file"`
	Line     int    `json:"line"`
	Column   int    `json:"column"`
	Path     string `json:"path"`
	Rule     string `json:"rule"`
	Severity string `json:"severity"`
	Sentence string `json:"sentence"`
	Source   string `json:"source,omitempty"`
}

type clearanceRow struct {
	Name  string `json:"name"`
	Least string `json:"least_mm"`
	Most  string `json:"most_mm"`
}

type seasonRow struct {
	Name   string `json:"name"`
	Hung   string `json:"hung_mm"`
	Winter string `json:"winter_mm"`
	Summer string `json:"summer_mm"`
	How    string `json:"how"`
}

type toleranceRow struct {
	Name     string    `json:"name"`
	Nominal  string    `json:"nominal_mm"`
	Likely   string    `json:"likely_mm"`
	Worst    string    `json:"worst_mm"`
	Dominant string    `json:"dominant"`
	Parts    []partRow `json:"parts"`
}

type partRow struct {
	Name    string `json:"name"`
	Off     string `json:"off_mm"`
	Reaches string `json:"reaches_mm"`
	Source  string `json:"source"`
}

// checkedJSON writes findings and tables as one object.
func checkedJSON(out io.Writer, o order, findings []spec.Finding) error {
	file := checkedFile{Format: "stilewright checked model", Version: 1, Findings: []findingRow{}}
	for _, f := range findings {
		file.Findings = append(file.Findings, findingRow{f.File, f.Line, f.Column, f.Path, f.Rule, f.Severity.String(), f.Sentence, check.SourceOf(f.Rule)})
	}
	for _, c := range o.report.Clearances {
		file.Clearances = append(file.Clearances, clearanceRow{c.Name, c.Least.Decimal(), c.Most.Decimal()})
	}
	for _, r := range o.report.Seasons.Rows {
		at := r.At
		file.Seasons = append(file.Seasons, seasonRow{r.Name, at[movement.Hung].Decimal(), at[movement.Winter].Decimal(), at[movement.Summer].Decimal(), r.How})
	}
	for _, s := range o.report.Tolerances {
		row := toleranceRow{Name: s.Name, Nominal: s.Nominal.Decimal(), Likely: s.Likely().Decimal(), Worst: s.Worst().Decimal(), Dominant: s.Dominant().Name}
		for _, p := range s.Parts {
			row.Parts = append(row.Parts, partRow{p.Name, p.Off.Decimal(), p.Reaches().Decimal(), p.Source})
		}
		file.Tolerances = append(file.Tolerances, row)
	}
	if len(o.report.Hanging.Track.At) > 0 {
		file.Hanging = hangingRowOf(o.report.Hanging)
	}
	data, err := json.MarshalIndent(file, "", "  ")
	if err != nil {
		return err
	}
	_, err = out.Write(append(data, '\n'))
	return err
}
