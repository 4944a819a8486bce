package try

import (
	"errors"
	"strings"

	"github.com/spf13/cobra"

	"capscye/ui/console"
	"capscye/worksheets"
)

// Command prints what changes would do.
func Command(s *console.Session) *cobra.Command {
	var o options
	try := &cobra.Command{
		Use:   "try FILE KEY=VALUE...",
		Short: "Show what would change if you changed some answers",
		Long: `Show what would change if you changed some answers. The file stays as it is. Keys are
those of the file: ease.bicep=2 method.slide=even. ease.bicep=+1/4 and -1/4 change a
length or a share by so much; ease.bicep==-1/4 is a negative ease.

A range prints a table with a row for each value, and below it what is new against the
row above: ease.bicep=1..3/0.5 (start, end, step), method.front_share_bust=40%..60%/5%, or the
words of a choice from one to another, method.follow="let out..hold". A range gives the
answers themselves: ease.bicep=-1..1/0.5 begins with a negative ease. "-" reads standard
input.

The exit status is that of the changed worksheet.`,
		Args: atLeastOneChange,
		RunE: func(_ *cobra.Command, args []string) error { return try(s, args[0], args[1:], o) },
	}
	console.Sentences(try, &o.sentences)
	try.Flags().BoolVar(&o.json, "json", false, "print JSON: before, after and changed; an array of them for a range")
	try.ValidArgsFunction = fileThenKeys
	return try
}

func atLeastOneChange(_ *cobra.Command, args []string) error {
	if len(args) < 2 {
		return errors.New("try needs a file and a change, such as ease.bicep=2")
	}
	return nil
}

// fileThenKeys offers a worksheet, and behind it the answers that can be changed.
func fileThenKeys(c *cobra.Command, args []string, typed string) ([]string, cobra.ShellCompDirective) {
	if len(args) == 0 {
		return console.SheetFiles(1)(c, args, typed)
	}
	var found []string
	for _, k := range worksheets.Keys() {
		if strings.HasPrefix(k.Path(), typed) {
			found = append(found, k.Path()+"=")
		}
	}
	return found, cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveNoSpace
}
