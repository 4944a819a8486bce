package try

import (
	"github.com/spf13/cobra"

	"capscye/ui/console"
)

func Command(s *console.Session) *cobra.Command {
	var asJSON bool
	try := &cobra.Command{
		Use:   "try FILE KEY=VALUE...",
		Short: "Print what changes would do, without touching the file",
		Long: `Print what would differ if answers of the sheet were others. Keys are those of the
file: ease.bicep=2 method.slide=even. A range, ease.bicep=1..3/0.5 (start, end, step),
prints a table of outcomes, a row each. "-" reads standard input.

Exit status as for show, for the changed sheet.`,
		Args: console.AtLeastOneChange,
		RunE: func(_ *cobra.Command, args []string) error { return try(s, args[0], args[1:], asJSON) },
	}
	try.Flags().BoolVar(&asJSON, "json", false, "print JSON: before, after and changed; an array of them for a range")
	try.ValidArgsFunction = console.FileThenKeys
	return try
}
