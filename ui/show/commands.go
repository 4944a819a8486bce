package show

import (
	"errors"
	"math"

	"github.com/spf13/cobra"

	"capscye/ui/console"
)

// Command prints computed sheets.
func Command(s *console.Session) *cobra.Command {
	var o Options
	show := &cobra.Command{
		Use:   "show FILE...",
		Short: "Print the computed worksheet",
		Long: `Print each worksheet with all that follows from it, as text or as JSON. "-" reads
standard input.`,
		Args: atLeastOneFile,
		RunE: func(_ *cobra.Command, args []string) error { return Print(s, args, o) },
	}
	console.Sentences(show, &o.sentences)
	show.Flags().BoolVar(&o.json, "json", false, "print JSON: an object for one file, an array for several")
	show.Flags().BoolVar(&o.working, "working", false, "print every line of the arithmetic too")
	show.ValidArgsFunction = console.SheetFiles(math.MaxInt)
	return show
}

// TraceCommand prints the steps at the table.
func TraceCommand(s *console.Session) *cobra.Command {
	o := Options{trace: true}
	tracing := &cobra.Command{
		Use:   "trace FILE",
		Short: "Print the steps at the table",
		Long: `Print what to do at the table, piece by piece, with the amounts to mark. "-" reads
standard input.`,
		Args:              console.ExactlyOneFile,
		ValidArgsFunction: console.SheetFiles(1),
		RunE:              func(_ *cobra.Command, args []string) error { return Print(s, args, o) },
	}
	console.Sentences(tracing, &o.sentences)
	tracing.Flags().BoolVar(&o.json, "json", false, "print JSON: an array of the steps, their marks in millimetres")
	return tracing
}

func atLeastOneFile(_ *cobra.Command, args []string) error {
	if len(args) == 0 {
		return errors.New(`show needs a file, or "-" for standard input`)
	}
	return nil
}
