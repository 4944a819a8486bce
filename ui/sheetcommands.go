package ui

import (
	"errors"
	"fmt"
	"math"

	"github.com/spf13/cobra"

	"capscye/ui/typeset"
)

// The commands that read a worksheet and print or write.

func (s *session) showCommand() *cobra.Command {
	var o showOptions
	show := &cobra.Command{
		Use:   "show FILE...",
		Short: "Print the computed sheet",
		Long: `Print the computed sheet of each FILE as text, or as JSON in millimetres. "-" reads
standard input.

Exit status: 0 all well; 1 a required answer is missing or a finding says stop;
2 a file could not be read.`,
		Args: atLeastOneFile,
		RunE: func(_ *cobra.Command, args []string) error { return s.show(args, o) },
	}
	show.Flags().BoolVar(&o.json, "json", false, "print JSON: an object for one file, an array for several")
	show.Flags().BoolVar(&o.working, "working", false, "print every line of the arithmetic too")
	show.ValidArgsFunction = sheetFiles(math.MaxInt)
	return show
}

func (s *session) traceCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "trace FILE",
		Short: "Print the steps at the table",
		Long: `Print what to do at the table, piece by piece, with the amounts to mark. "-" reads
standard input. Exit status as for show.`,
		Args:              exactlyOneFile,
		ValidArgsFunction: sheetFiles(1),
		RunE:              func(_ *cobra.Command, args []string) error { return s.show(args, showOptions{trace: true}) },
	}
}

func (s *session) cardCommand() *cobra.Command {
	var name, on string
	card := &cobra.Command{
		Use:   "card FILE -o NAME",
		Short: "Write the sheet as a card for the wall, with a marking gauge",
		Long: `Write everything that the work needs on one page, and a marking gauge that is true to
scale on another. The ending of NAME says how: .pdf, .svg or .txt. "-" reads
standard input. Exit status as for show.`,
		Args: exactlyOneFile,
		RunE: func(_ *cobra.Command, args []string) error { return s.card(args[0], name, on) },
	}
	card.Flags().StringVarP(&name, "output", "o", "", "the file to write: .pdf, .svg or .txt")
	card.Flags().StringVar(&on, "paper", "", "a4 or letter; the usual one of the sheet's unit if not given")
	card.ValidArgsFunction = sheetFiles(1)
	_ = card.RegisterFlagCompletionFunc("paper", cobra.FixedCompletions([]string{"a4", "letter"}, cobra.ShellCompDirectiveNoFileComp))
	return card
}

func (s *session) tryCommand() *cobra.Command {
	var asJSON bool
	try := &cobra.Command{
		Use:   "try FILE KEY=VALUE...",
		Short: "Print what changes would do, without touching the file",
		Long: `Print what would differ if answers of the sheet were others. Keys are those of the
file: ease.bicep=2 method.slide=even. A range, ease.bicep=1..3/0.5 (start, end, step),
prints a table of outcomes, a row each. "-" reads standard input.

Exit status as for show, for the changed sheet.`,
		Args: atLeastOneChange,
		RunE: func(_ *cobra.Command, args []string) error { return s.try(args[0], args[1:], asJSON) },
	}
	try.Flags().BoolVar(&asJSON, "json", false, "print JSON: before, after and changed; an array of them for a range")
	try.ValidArgsFunction = fileThenKeys
	return try
}

// card writes the card of one sheet.
func (s *session) card(file, name, on string) error {
	if name == "" {
		return errors.New("card needs a name to write to, such as -o blouse.pdf")
	}
	r, err := s.reckoned(file, false)
	if err != nil {
		s.worse(exitUnread)
		s.complain(err)
		return nil
	}
	names, lost, err := writeCard(name, on, r, s.today)
	if err != nil {
		return errors.New(fileWords(err))
	}
	if lost != "" {
		s.complain(errors.New(lost))
	}
	for _, n := range names {
		fmt.Fprintf(s.out, "%s is written.\n", typeset.Plain(n))
	}
	return nil
}
