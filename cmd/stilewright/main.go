// Command stilewright turns a measured opening and one short model file into
// drawings of framed sliding doors.
package main

import (
	"errors"
	"fmt"
	"os"

	"github.com/spf13/cobra"
)

// Exit codes: 0 done, 1 could not be done, 2 the model has findings that stop.
const (
	exitFailed   = 1
	exitFindings = 2
)

// errFindings tells main that the findings have been printed.
var errFindings = errors.New("the model has findings that stop")

func main() {
	err := root().Execute()
	switch {
	case err == nil:
	case errors.Is(err, errFindings):
		os.Exit(exitFindings)
	default:
		fmt.Fprintf(os.Stderr, "stilewright: %v\n", err)
		os.Exit(exitFailed)
	}
}

// root is the command with all its verbs.
func root() *cobra.Command {
	cmd := &cobra.Command{
		Use:           "stilewright",
		Short:         "Draw framed sliding doors from a measured opening and one short model file",
		SilenceErrors: true,
		SilenceUsage:  true,
	}
	cmd.AddCommand(drawVerb(), templatesVerb(), guideVerb(), checkVerb(), explainVerb(), takeoffVerb(), schemaVerb())
	return cmd
}
