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
		Short: "Write the worksheet as a card for the wall, with a marking gauge",
		Long: `Write the worksheet on pages to hang up. The first has the amounts to mark, as large as
it takes, what comes out, and what to check; behind it are the pieces, all at one scale,
the steps with boxes to tick, and the arithmetic. The last pages are true to scale: a
marking gauge with the amounts of this worksheet to cut out, squares to check the
printer with, and templates to lay on the new underarm corners. Print at 100 %.

The ending of NAME says how: .pdf, .svg (a file for each page) or .txt. In a .pdf a letter
that the type does not have is printed as ?, and named. "-" reads standard input. What has
the name already is replaced only if it is a card that nobody changed; so is a page of an
.svg, and only by the same page of the same card. Pages that it has no longer are removed.`,
		Args: console.ExactlyOneFile,
		RunE: func(_ *cobra.Command, args []string) error { return write(s, args[0], name, on) },
	}
	card.Flags().StringVarP(&name, "output", "o", "", "the file to write: .pdf, .svg or .txt")
	card.Flags().StringVar(&on, "paper", "", "a4 or letter; if not given, the usual one for the unit")
	card.ValidArgsFunction = console.SheetFiles(1)
	_ = card.RegisterFlagCompletionFunc("paper", cobra.FixedCompletions([]string{"a4", "letter"}, cobra.ShellCompDirectiveNoFileComp))
	return card
}

// write writes the card of one sheet.
func write(s *console.Session, file, name, on string) error {
	if name == "" {
		return errors.New("card needs a name to write to, such as -o blouse.pdf")
	}
	r, err := show.Reckoned(s, file)
	if err != nil {
		s.Worse(console.ExitUnread)
		s.Complain(err)
		return nil
	}
	w, err := Write(name, on, r, s.Today)
	if w.Lost != "" && err == nil {
		s.Complain(errors.New(w.Lost))
	}
	for _, n := range w.Saved {
		fmt.Fprintf(s.Out, "Saved %s.\n", typeset.Plain(n))
	}
	for _, n := range w.Gone {
		fmt.Fprintf(s.Out, "Removed %s: this card has %d pages now.\n", typeset.Plain(n), len(w.Saved))
	}
	for _, old := range w.Old {
		s.Complain(old)
	}
	if err != nil {
		return errors.New(console.FileWords(err))
	}
	return nil
}
