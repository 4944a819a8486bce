package ui

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"time"

	"github.com/charmbracelet/x/term"
	"github.com/spf13/cobra"

	"capscye/ui/typeset"
)

// Exit statuses.
const (
	exitWell       = 0
	exitUnfinished = 1 // a required answer is missing, a finding says stop, or something was left unsaved
	exitUnread     = 2 // a file could not be read, or the call is wrong
	exitFault      = 3 // the program ran into a fault of its own
)

// session is one run of the program.
type session struct {
	in        io.Reader
	out, errs io.Writer
	today     time.Time
	version   string // of the program
	status    int    // that it ends with
}

// execute runs one command of a table, and is the exit status. Whatever goes wrong,
// it is said; a fault of the program is reported.
func (s *session) execute(args []string, table func(*session) *cobra.Command) (status int) {
	defer func() {
		if r := recover(); r != nil {
			fmt.Fprint(s.errs, newFault(r).report(s.version, ""))
			status = exitFault
		}
	}()
	root := table(s)
	root.SilenceUsage, root.SilenceErrors = true, true
	root.SetIn(s.in)
	root.SetOut(s.out)
	root.SetErr(s.errs)
	root.CompletionOptions.DisableDefaultCmd = true
	root.SetHelpCommand(&cobra.Command{Hidden: true})
	root.SetArgs(append([]string{}, args...)) // nil would mean the arguments of the process
	if err := root.Execute(); err != nil {
		fmt.Fprintf(s.errs, "capscye: %s\n", typeset.Plain(err.Error()))
		return exitUnread
	}
	return s.status
}

// hasTerminal tells whether somebody sits at a terminal.
func (s *session) hasTerminal() bool {
	in, okIn := s.in.(*os.File)
	out, okOut := s.out.(*os.File)
	return okIn && okOut && term.IsTerminal(in.Fd()) && term.IsTerminal(out.Fd())
}

func (s *session) worse(status int) { s.status = max(s.status, status) }

func (s *session) complain(err error) {
	fmt.Fprintf(s.errs, "capscye: %s\n", typeset.Plain(fileWords(err)))
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
