package ui

import (
	"cmp"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/worksheets"
)

// The commands that need no worksheet, or none yet, and what a shell offers for
// the arguments of all of them.

func (s *session) askCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "ask [FILE]",
		Short: "Ask for the worksheet, a line at a time, without a screen",
		Long: `Ask every question of the worksheet, one line each, and end with the answer in
sentences: for screen readers, slow lines and pipes. Every answer is saved at once.
Without FILE a new worksheet is asked for, and at the end a name to keep it under.

` + strings.Join(typeset.Wrap(commandWords, typeset.PrintWidth), "\n") + `

Exit status as for show, and 1 too where something could not be saved.`,
		Args:              atMostOneFile,
		ValidArgsFunction: sheetFiles(1),
		RunE:              func(_ *cobra.Command, args []string) error { return s.ask(args) },
	}
}

func (s *session) wordsCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "words [WORD]",
		Short: "Explain the words of the trade",
		Long: `Print each word of the trade with a sentence about it and where it is used here; with
WORD only that, or those that begin so.`,
		ValidArgsFunction: wordsOffered,
		RunE: func(_ *cobra.Command, args []string) error {
			text, err := wording.Explain(strings.Join(args, " "))
			if err == nil {
				_, err = io.WriteString(s.out, text)
			}
			return err
		},
	}
}

func (s *session) manCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "man",
		Short: "Print the page of the manual",
		Long: `Print the page of the manual, in roff: read it with capscye man | man -l -, or keep it
as capscye.1 in a folder of manual pages.`,
		Args: cobra.NoArgs,
		RunE: func(c *cobra.Command, _ []string) error {
			_, err := io.WriteString(s.out, manPage(c.Root()))
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

func (s *session) completionCommand() *cobra.Command {
	var names []string
	for _, sh := range shells {
		names = append(names, sh.name)
	}
	return &cobra.Command{
		Use:   "completion SHELL",
		Short: "Print what makes a shell complete the commands",
		Long: `Print a script that makes the SHELL complete commands, worksheets and keys: ` + typeset.OrList(names) + `.
For bash, with its package bash-completion: source <(capscye completion bash). For
zsh, behind compinit: the same with zsh. For fish: capscye completion fish | source.`,
		ValidArgs: names,
		RunE: func(c *cobra.Command, args []string) error {
			for _, sh := range shells {
				if len(args) == 1 && args[0] == sh.name {
					return sh.write(c.Root(), s.out)
				}
			}
			return fmt.Errorf("completion needs the name of one shell: %s", typeset.OrList(names))
		},
	}
}

// completion is what is offered for an argument, and what the shell may add.
type completion = func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective)

// sheetFiles offers the worksheets of a folder, and folders, as the first of so
// many arguments.
func sheetFiles(most int) completion {
	return func(_ *cobra.Command, args []string, typed string) ([]string, cobra.ShellCompDirective) {
		if len(args) >= most {
			return nil, cobra.ShellCompDirectiveNoFileComp
		}
		folder, begun := filepath.Split(typed)
		entries, err := os.ReadDir(cmp.Or(folder, "."))
		if err != nil { // such as ~, which is the shell's to read
			return nil, cobra.ShellCompDirectiveDefault
		}
		var found []string
		directive := cobra.ShellCompDirectiveNoFileComp
		for _, e := range entries {
			name := e.Name()
			hidden := strings.HasPrefix(name, ".") && !strings.HasPrefix(begun, ".")
			switch {
			case !strings.HasPrefix(name, begun) || hidden || strings.ContainsFunc(name, typeset.Unprintable):
			case e.IsDir():
				found = append(found, folder+name+"/")
				directive |= cobra.ShellCompDirectiveNoSpace
			case strings.EqualFold(filepath.Ext(name), ".toml"):
				found = append(found, folder+name)
			}
		}
		return found, directive
	}
}

// fileThenKeys offers a worksheet, and behind it the answers that can be changed.
func fileThenKeys(c *cobra.Command, args []string, typed string) ([]string, cobra.ShellCompDirective) {
	if len(args) == 0 {
		return sheetFiles(1)(c, args, typed)
	}
	var found []string
	for _, k := range worksheets.Keys() {
		if strings.HasPrefix(k.Path(), typed) {
			found = append(found, k.Path()+"=")
		}
	}
	return found, cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveNoSpace
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
