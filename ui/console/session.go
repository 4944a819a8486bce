// Package console is one run of the program seen from outside: its streams, its day,
// the files and lines that it is given, its status, and how it fails.
//
// Lines are heard through a channel, so that a signal is heard while somebody waits.
// Many files are worked at on every processor ([InOrder]): results come in the order of
// the files, and no more than a few dozen are begun and not yet written, so memory does
// not grow with their number.
package console

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strconv"
	"strings"
	"syscall"
	"time"

	"github.com/charmbracelet/x/term"
	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"capscye/ui/typeset"
	"capscye/worksheets"
)

// Exit statuses.
const (
	ExitWell       = 0
	ExitUnfinished = 1   // a required answer is missing, a finding says stop, or something was left unsaved
	ExitUnread     = 2   // a file could not be read, or the call is wrong
	ExitFault      = 3   // the program ran into a fault of its own
	ExitSignal     = 128 // and the number of the signal that ended it, as shells have it
)

// StatusWords is an exit status and what it means.
type StatusWords struct{ Status, Says string }

// Statuses are all of them, for people to look up.
var Statuses = []StatusWords{
	{strconv.Itoa(ExitWell), "All is well."},
	{strconv.Itoa(ExitUnfinished), "A required answer is missing or cannot be read, a finding says stop, or something was left unsaved."},
	{strconv.Itoa(ExitUnread), "A file cannot be read, or the call is wrong."},
	{strconv.Itoa(ExitFault), "The program has a fault, and reports it."},
	{strconv.Itoa(ExitSignal) + " and more", "A signal ended the program: " + strconv.Itoa(ExitSignal) + " and its number."},
}

// Session is one run of the program.
type Session struct {
	In        io.Reader
	Out, Errs io.Writer
	Today     time.Time
	Version   string // of the program
	Status    int    // that it ends with
}

// Execute runs one command of a table, and is the exit status. Whatever goes wrong,
// it is said; a fault of the program is reported.
func (s *Session) Execute(args []string, table func(*Session) *cobra.Command) (status int) {
	defer func() {
		if r := recover(); r != nil {
			fmt.Fprint(s.Errs, NewFault(r).Report(s.Version, ""))
			status = ExitFault
		}
	}()
	root := table(s)
	root.SilenceUsage, root.SilenceErrors = true, true
	root.SetFlagErrorFunc(flagWords)
	root.SetIn(s.In)
	help := &heeded{Writer: s.Out} // which the library does not heed
	root.SetOut(help)
	root.SetErr(s.Errs)
	root.CompletionOptions.DisableDefaultCmd = true
	root.SetHelpCommand(helpCommand())
	root.SetArgs(append([]string{}, args...)) // nil would mean the arguments of the process
	err := root.Execute()
	if err == nil {
		err = help.err
	}
	switch {
	case errors.Is(err, syscall.EPIPE): // whoever read has gone away, and nobody is told
		return ExitSignal + int(syscall.SIGPIPE)
	case err != nil:
		fmt.Fprintf(s.Errs, "capscye: %s\n", typeset.Plain(err.Error()))
		return ExitUnread
	}
	return s.Status
}

// helpCommand is --help for who types help first. A worksheet of that name is opened as
// help.toml.
func helpCommand() *cobra.Command {
	return &cobra.Command{
		Use: "help [COMMAND]", Short: "Explain a command", Hidden: true,
		RunE: func(c *cobra.Command, args []string) error {
			of, rest, err := c.Root().Find(args)
			if err != nil || len(rest) > 0 {
				return fmt.Errorf("there is no command %q; capscye --help lists them", strings.Join(args, " "))
			}
			of.InitDefaultHelpFlag()
			return of.Help()
		},
	}
}

// heeded remembers why something was not written.
type heeded struct {
	io.Writer
	err error
}

func (h *heeded) Write(p []byte) (n int, err error) {
	n, err = h.Writer.Write(p)
	if err != nil && h.err == nil {
		h.err = fmt.Errorf("cannot write: %w", err)
	}
	return n, err
}

// flagWords says what is wrong with a flag.
func flagWords(c *cobra.Command, err error) error {
	var value *pflag.InvalidValueError
	var none *pflag.ValueRequiredError
	var other *pflag.NotExistError
	switch {
	case errors.As(err, &value) && value.GetFlag().Value.Type() == "bool":
		return fmt.Errorf("--%s takes no value. Write --%[1]s, or leave it out", value.GetFlag().Name)
	case errors.As(err, &value):
		return fmt.Errorf("--%s does not take %q; %s --help says what it takes", value.GetFlag().Name, value.GetValue(), c.CommandPath())
	case errors.As(err, &none):
		return fmt.Errorf("--%s needs a value; %s --help says which", none.GetFlag().Name, c.CommandPath())
	}
	if errors.As(err, &other) {
		name := "--" + other.GetSpecifiedName()
		if other.GetSpecifiedShortnames() != "" {
			name = "-" + other.GetSpecifiedName()
		}
		return fmt.Errorf("there is no %s here; %s --help lists what there is", name, c.CommandPath())
	}
	return err
}

// HasTerminal tells whether somebody sits at a terminal.
func (s *Session) HasTerminal() bool {
	in, okIn := s.In.(*os.File)
	out, okOut := s.Out.(*os.File)
	return okIn && okOut && term.IsTerminal(in.Fd()) && term.IsTerminal(out.Fd())
}

// Worse is an exit status to end with, unless there is a graver one.
func (s *Session) Worse(status int) { s.Status = max(s.Status, status) }

// Complain says to the error stream what went wrong.
func (s *Session) Complain(err error) {
	fmt.Fprintf(s.Errs, "capscye: %s\n", typeset.Plain(FileWords(err)))
}

// FileWords is an error about a file as a person would say it.
func FileWords(err error) string {
	var at *fs.PathError
	switch {
	case !errors.As(err, &at):
		return err.Error()
	case errors.Is(err, fs.ErrNotExist) && at.Op == "write":
		return at.Path + ": there is no such folder"
	case errors.Is(err, fs.ErrNotExist):
		return at.Path + ": there is no such file"
	case errors.Is(err, fs.ErrPermission):
		return at.Path + ": permission denied"
	}
	return err.Error()
}

// Reason is why a file could not be written, without its name: the system may mean one
// that was only on the way.
func Reason(err error) string {
	var system syscall.Errno
	var file *worksheets.FileError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "there is no such folder"
	case errors.As(err, &system):
		return system.Error()
	case errors.As(err, &file):
		return file.Reason
	}
	return FileWords(err)
}

// Write writes results.
func (s *Session) Write(text []byte) error {
	if _, err := s.Out.Write(text); err != nil {
		return fmt.Errorf("cannot write: %w", err)
	}
	return nil
}
