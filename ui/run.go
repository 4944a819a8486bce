// Package ui is the table of commands.
package ui

import (
	"fmt"
	"io"
	"os"
	"runtime"
	"time"

	"github.com/spf13/cobra"

	"capscye/ui/ask"
	"capscye/ui/console"
	"capscye/ui/drill"
	"capscye/ui/manual"
	"capscye/ui/paper"
	"capscye/ui/roster"
	"capscye/ui/screen"
	"capscye/ui/show"
	"capscye/ui/sizes"
	"capscye/ui/try"
)

// Version is what --version answers. A build can set it with -ldflags -X.
var Version = "0.1.0"

// Run is the program: arguments without its name, the three streams, and the
// exit status. Messages for people go to errs, results to out.
func Run(args []string, in io.Reader, out, errs io.Writer) int {
	return runOn(time.Now(), args, in, out, errs)
}

// runOn is [Run] on a day, which decides whether measurements are old.
func runOn(today time.Time, args []string, in io.Reader, out, errs io.Writer) int {
	s := &console.Session{In: in, Out: out, Errs: errs, Today: today, Version: Version}
	return s.Execute(args, commands)
}

// commands is the table of commands, which help and completion are made from.
func commands(s *console.Session) *cobra.Command {
	var version bool
	root := &cobra.Command{
		Use:   "capscye [FILE]",
		Short: "A fitting worksheet for widening sleeves and bodices",
		Long: `A fitting worksheet. From body, ease and a pattern measured flat it works out how
far to pivot and slide each edge of sleeve and bodice, so that they still sew
together.

Without FILE it opens the worksheets of this folder; where there are none it offers
to begin one, to look at an example, or to open one elsewhere. With FILE it opens that worksheet, and
offers to begin it if there is none. On a terminal without a screen, capscye FILE
works like ask, and capscye alone prints an example. Without a terminal it prints
what show prints.`,
		Args: func(c *cobra.Command, args []string) error {
			if version {
				return nil
			}
			return console.AtMostOneFile(c, args)
		},
		RunE: func(_ *cobra.Command, args []string) error {
			switch stdin := len(args) == 1 && args[0] == "-"; {
			case version:
				_, err := fmt.Fprintf(s.Out, "capscye %s\n", s.Version)
				return err
			case s.HasTerminal() && !stdin && !isDumb():
				return screen.Open(s, args)
			case s.HasTerminal() && !stdin && len(args) == 1:
				return ask.Run(s, args)
			}
			return show.Print(s, args, show.Options{})
		},
	}
	root.Flags().BoolVarP(&version, "version", "v", false, "version for capscye") // cobra's own needs a template; see TestNoTemplatesAreLinked
	root.ValidArgsFunction = console.SheetFiles(1)
	root.AddCommand(show.Command(s), show.TraceCommand(s), sizes.Command(s), paper.Command(s), try.Command(s), roster.Command(s), drill.Command(s),
		ask.Command(s), wordsCommand(s), manCommand(s), completionCommand(s))
	usage := root.HelpFunc()
	root.SetHelpFunc(func(c *cobra.Command, args []string) {
		manual.Fit(c)
		usage(c, args)
		fmt.Fprint(c.OutOrStdout(), manual.Help(c))
	})
	return root
}

// isDumb tells that the terminal cannot be drawn on, or does not say what it is. On
// Windows none says so.
func isDumb() bool {
	kind := os.Getenv("TERM")
	return kind == "dumb" || kind == "" && runtime.GOOS != "windows"
}
