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

// completion is what is offered for an argument, and what the shell may add.
type completion = func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective)

// SheetFiles offers the worksheets of a folder, and folders, as the first of so
// many arguments.
func SheetFiles(most int) completion {
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

// FileThenKeys offers a worksheet, and behind it the answers that can be changed.
func FileThenKeys(c *cobra.Command, args []string, typed string) ([]string, cobra.ShellCompDirective) {
	if len(args) == 0 {
		return SheetFiles(1)(c, args, typed)
	}
	var found []string
	for _, k := range worksheets.Keys() {
		if strings.HasPrefix(k.Path(), typed) {
			found = append(found, k.Path()+"=")
		}
	}
	return found, cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveNoSpace
}
