package console

import (
	"cmp"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"capscye/ui/typeset"
	"capscye/worksheets"
)

// Completion is what is offered for an argument, and what the shell may add.
type Completion = func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective)

// SheetFiles offers the worksheets of a folder, and folders, as the first of so
// many arguments.
func SheetFiles(most int) Completion {
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
			case worksheets.HasEnding(name):
				found = append(found, folder+name)
			}
		}
		return found, directive
	}
}
