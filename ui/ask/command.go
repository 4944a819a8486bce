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
		Short: "Ask for the worksheet a line at a time, without a screen",
		Long: `Ask every question of the worksheet, one line each, and end with the result in
sentences: for screen readers, slow lines and pipes. Every answer is saved at once. A
choice is answered by its word, or by a beginning that no other has. Where an answer
looks like a slip it asks what you meant: yes takes that.

Without FILE it begins a new worksheet, and asks for a name at the end. Until then the
answers are in your state folder; if the program is killed, the next ask in this
folder offers them.

` + strings.Join(typeset.Wrap(commandWords, typeset.PrintWidth), "\n") + `

To answer with one of these words, put = before it: =back. The end of the input is
the same as quit.`,
		Args:              console.AtMostOneFile,
		ValidArgsFunction: console.SheetFiles(1),
		RunE:              func(_ *cobra.Command, args []string) error { return Run(s, args) },
	}
}
