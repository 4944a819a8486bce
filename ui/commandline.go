package ui

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"capscye/ui/console"
	"capscye/ui/manual"
	"capscye/ui/typeset"
	"capscye/ui/wording"
)

func wordsCommand(s *console.Session) *cobra.Command {
	return &cobra.Command{
		Use:   "words [WORD]",
		Short: "Explain the sewing words used here",
		Long: `Explain the sewing words used here, all or those that begin with WORD, and say where
they are used.`,
		ValidArgsFunction: wordsOffered,
		RunE: func(_ *cobra.Command, args []string) error {
			text, err := wording.Explain(strings.Join(args, " "))
			if err == nil {
				_, err = io.WriteString(s.Out, text)
			}
			return err
		},
	}
}

func manCommand(s *console.Session) *cobra.Command {
	return &cobra.Command{
		Use:   "man",
		Short: "Print the page of the manual",
		Long: `Print the page of the manual, in roff. Read it with capscye man | man -l -, or put it
as capscye.1 into a folder of manual pages.`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 0 {
				return fmt.Errorf("man prints its one page and takes no name, not %q", args[0])
			}
			return nil
		},
		RunE: func(c *cobra.Command, _ []string) error {
			_, err := io.WriteString(s.Out, manual.Page(c.Root(), s.Version))
			return err
		},
	}
}

// shells are those that can be told how to complete, each by what writes it.
var shells = []struct {
	name  string
	write func(*cobra.Command, io.Writer) error
}{
	{"bash", func(c *cobra.Command, out io.Writer) error { return c.GenBashCompletionV2(out, true) }},
	{"zsh", (*cobra.Command).GenZshCompletion},
	{"fish", func(c *cobra.Command, out io.Writer) error { return c.GenFishCompletion(out, true) }},
}

func completionCommand(s *console.Session) *cobra.Command {
	var names []string
	for _, sh := range shells {
		names = append(names, sh.name)
	}
	return &cobra.Command{
		Use:   "completion SHELL",
		Short: "Print what makes a shell complete the commands",
		Long: `Print a script that makes a shell complete commands, worksheets
and keys. SHELL is ` + typeset.OrList(names) + `.

For bash, with its package bash-completion: source <(capscye completion bash).

For zsh, behind compinit: the same with zsh.

For fish: capscye completion fish | source.`,
		ValidArgs: names,
		RunE: func(c *cobra.Command, args []string) error {
			for _, sh := range shells {
				if len(args) == 1 && args[0] == sh.name {
					return sh.write(c.Root(), s.Out)
				}
			}
			return fmt.Errorf("completion needs the name of one shell: %s", typeset.OrList(names))
		},
	}
}

// wordsOffered offers the words of the trade; one of several is typed as it is.
func wordsOffered(_ *cobra.Command, args []string, typed string) ([]string, cobra.ShellCompDirective) {
	var found []string
	for _, w := range wording.Glossary {
		if len(args) == 0 && strings.HasPrefix(w.Word, strings.ToLower(typed)) {
			found = append(found, w.Word)
		}
	}
	return found, cobra.ShellCompDirectiveNoFileComp
}
