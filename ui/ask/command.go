package ask

import (
	"strings"

	"github.com/spf13/cobra"

	"capscye/ui/console"
	"capscye/ui/typeset"
)

// Command asks for a worksheet.
func Command(s *console.Session) *cobra.Command {
	return &cobra.Command{
		Use:   "ask [FILE]",
		Short: "Ask for the worksheet, a line at a time, without a screen",
		Long: `Ask every question of the worksheet, one line each, and end with the answer in
sentences: for screen readers, slow lines and pipes. Every answer is saved at once.
Without FILE a new worksheet is asked for, and at the end a name to keep it under.

` + strings.Join(typeset.Wrap(commandWords, typeset.PrintWidth), "\n") + `

Exit status as for show, and 1 too where something could not be saved.`,
		Args:              console.AtMostOneFile,
		ValidArgsFunction: console.SheetFiles(1),
		RunE:              func(_ *cobra.Command, args []string) error { return Run(s, args) },
	}
}
