package paper

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"capscye/ui/console"
	"capscye/ui/show"
	"capscye/ui/typeset"
)

// Command writes the card of a worksheet.
func Command(s *console.Session) *cobra.Command {
	var name, on string
	card := &cobra.Command{
		Use:   "card FILE -o NAME",
		Short: "Write the sheet as a card for the wall, with a marking gauge",
		Long: `Write everything that the work needs on one page, and a marking gauge that is true to
scale on another. The ending of NAME says how: .pdf, .svg or .txt. "-" reads
standard input. Exit status as for show.`,
		Args: console.ExactlyOneFile,
		RunE: func(_ *cobra.Command, args []string) error { return write(s, args[0], name, on) },
	}
	card.Flags().StringVarP(&name, "output", "o", "", "the file to write: .pdf, .svg or .txt")
	card.Flags().StringVar(&on, "paper", "", "a4 or letter; the usual one of the sheet's unit if not given")
	card.ValidArgsFunction = console.SheetFiles(1)
	_ = card.RegisterFlagCompletionFunc("paper", cobra.FixedCompletions([]string{"a4", "letter"}, cobra.ShellCompDirectiveNoFileComp))
	return card
}

// write writes the card of one sheet.
func write(s *console.Session, file, name, on string) error {
	if name == "" {
		return errors.New("card needs a name to write to, such as -o blouse.pdf")
	}
	r, err := show.Reckoned(s, file, false)
	if err != nil {
		s.Worse(console.ExitUnread)
		s.Complain(err)
		return nil
	}
	names, lost, err := Write(name, on, r, s.Today)
	if err != nil {
		return errors.New(console.FileWords(err))
	}
	if lost != "" {
		s.Complain(errors.New(lost))
	}
	for _, n := range names {
		fmt.Fprintf(s.Out, "%s is written.\n", typeset.Plain(n))
	}
	return nil
}
