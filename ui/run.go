package ui

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"runtime"
	"time"

	"github.com/charmbracelet/x/term"
	"github.com/spf13/cobra"
)

// Version is what --version answers. A build can set it with -ldflags -X.
var Version = "0.1.0"

// Exit statuses.
const (
	exitWell       = 0
	exitUnfinished = 1 // a required answer is missing, a finding says stop, or something was left unsaved
	exitUnread     = 2 // a file could not be read, or the call is wrong
	exitFault      = 3 // the program ran into a fault of its own
)

// Run is the program: arguments without its name, the three streams, and the
// exit status. Messages for people go to errs, results to out.
func Run(args []string, in io.Reader, out, errs io.Writer) int {
	return runOn(time.Now(), args, in, out, errs)
}

// runOn is [Run] on a day, which decides whether measurements are old.
func runOn(today time.Time, args []string, in io.Reader, out, errs io.Writer) (status int) {
	s := &session{in: in, out: out, errs: errs, today: today}
	defer func() {
		if r := recover(); r != nil {
			fmt.Fprint(errs, newFault(r).report(""))
			status = exitFault
		}
	}()
	root := s.commands()
	root.SetArgs(append([]string{}, args...)) // nil would mean the arguments of the process
	if err := root.Execute(); err != nil {
		fmt.Fprintf(errs, "capscye: %s\n", plain(err.Error()))
		return exitUnread
	}
	return s.status
}

// session is one run of the program.
type session struct {
	in        io.Reader
	out, errs io.Writer
	today     time.Time
	status    int
}

// commands is the table of commands, which help and completion are made from.
func (s *session) commands() *cobra.Command {
	var version bool
	root := &cobra.Command{
		Use:   "capscye [FILE]",
		Short: "A fitting worksheet for widening sleeves and bodices",
		Long: `A fitting worksheet: from body, ease and a pattern measured flat to what each
seam edge of sleeve and bodice pivots and slides, so that they still sew together.

Without FILE it opens the worksheets of this folder, or the built-in example where
there are none. With FILE it opens that worksheet, and offers to begin it if there
is none; on a terminal that cannot be drawn on it asks, as ask does. Without a
terminal it prints the computed sheet instead.`,
		Args: func(c *cobra.Command, args []string) error {
			if version {
				return nil
			}
			return atMostOneFile(c, args)
		},
		SilenceUsage:  true,
		SilenceErrors: true,
		RunE: func(_ *cobra.Command, args []string) error {
			switch stdin := len(args) == 1 && args[0] == "-"; {
			case version:
				_, err := fmt.Fprintf(s.out, "capscye %s\n", Version)
				return err
			case s.hasTerminal() && !stdin && !isDumb():
				return s.open(args)
			case s.hasTerminal() && !stdin && len(args) == 1:
				return s.ask(args)
			}
			return s.show(args, showOptions{})
		},
	}
	root.SetIn(s.in)
	root.SetOut(s.out)
	root.SetErr(s.errs)
	root.Flags().BoolVarP(&version, "version", "v", false, "version for capscye") // cobra's own needs a template; see TestNoTemplatesAreLinked
	root.CompletionOptions.DisableDefaultCmd = true
	root.SetHelpCommand(&cobra.Command{Hidden: true})

	root.ValidArgsFunction = sheetFiles(1)
	root.AddCommand(s.showCommand(), s.traceCommand(), s.cardCommand(), s.tryCommand(), s.rosterCommand(), s.drillCommand(),
		s.askCommand(), s.wordsCommand(), s.manCommand(), s.completionCommand())
	return root
}

func atMostOneFile(_ *cobra.Command, args []string) error {
	if len(args) > 1 {
		return fmt.Errorf("one worksheet is opened at a time, and %d were named; show prints several", len(args))
	}
	return nil
}

func atLeastOneFile(_ *cobra.Command, args []string) error {
	if len(args) == 0 {
		return errors.New(`show needs a file, or "-" for standard input`)
	}
	return nil
}

func atLeastOneChange(_ *cobra.Command, args []string) error {
	if len(args) < 2 {
		return errors.New("try needs a file and a change, such as ease.bicep=2")
	}
	return nil
}

func exactlyOneFile(_ *cobra.Command, args []string) error {
	if len(args) != 1 {
		return errors.New(`one file is needed, or "-" for standard input`)
	}
	return nil
}

// hasTerminal tells whether somebody sits at a terminal.
func (s *session) hasTerminal() bool {
	in, okIn := s.in.(*os.File)
	out, okOut := s.out.(*os.File)
	return okIn && okOut && term.IsTerminal(in.Fd()) && term.IsTerminal(out.Fd())
}

// isDumb tells that the terminal cannot be drawn on, or does not say what it is. On
// Windows none says so.
func isDumb() bool {
	kind := os.Getenv("TERM")
	return kind == "dumb" || kind == "" && runtime.GOOS != "windows"
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
		fmt.Fprintf(s.out, "%s is written.\n", plain(n))
	}
	return nil
}

func (s *session) worse(status int) { s.status = max(s.status, status) }

func (s *session) complain(err error) {
	fmt.Fprintf(s.errs, "capscye: %s\n", plain(fileWords(err)))
}

// fileWords is an error about a file as a person would say it.
func fileWords(err error) string {
	var at *fs.PathError
	switch {
	case !errors.As(err, &at):
		return err.Error()
	case errors.Is(err, fs.ErrNotExist) && at.Op == "write":
		return at.Path + ": there is no such folder"
	case errors.Is(err, fs.ErrNotExist):
		return at.Path + ": there is no such file"
	case errors.Is(err, fs.ErrPermission):
		return at.Path + ": this may not be read or written here"
	}
	return err.Error()
}
