package sizes

import (
	"strings"

	"github.com/spf13/cobra"

	"capscye/ui/console"
	"capscye/ui/show"
	"capscye/ui/typeset"
	"capscye/ui/wording"
)

// Command prints what every size of the pattern costs.
func Command(s *console.Session) *cobra.Command {
	var form struct{ json, sentences bool }
	sizes := &cobra.Command{
		Use:   "sizes FILE",
		Short: "Compare the sizes of the pattern",
		Long: `Compare the sizes of the pattern that were measured: what each needs, what to mark, what
it costs, and which one the high bust says. "-" reads standard input.

The exit status is that of the size in hand.`,
		Args:              console.ExactlyOneFile,
		ValidArgsFunction: console.SheetFiles(1),
		RunE: func(_ *cobra.Command, args []string) error {
			r, err := show.Reckoned(s, args[0])
			if err != nil {
				s.Worse(console.ExitUnread)
				s.Complain(err)
				return nil
			}
			all := Of(r)
			switch {
			case form.json:
				out, err := encoded(all)
				if err != nil {
					return err
				}
				return s.Write(out)
			case form.sentences:
				said := sentences(all)
				return s.Write([]byte(said.Text()))
			}
			return s.Write([]byte(text(all)))
		},
	}
	sizes.Flags().BoolVar(&form.json, "json", false, "print JSON: an array with an object for each size, the one in hand first")
	console.Sentences(sizes, &form.sentences)
	return sizes
}

// sizeJSON is a size as other programs read it.
type sizeJSON struct {
	Size   string `json:"size"`
	InHand bool   `json:"in_hand"`
	show.Sheet
}

func encoded(all []Size) ([]byte, error) {
	list := make([]sizeJSON, len(all))
	for i, z := range all {
		list[i] = sizeJSON{z.Name, z.InHand, show.SheetOf(z.Report, false)}
	}
	return show.Encode(list)
}

// JSONKeys are the keys of a size, besides those of show --json.
func JSONKeys() []show.JSONKey {
	return show.JSONKeys(struct {
		Size   string `json:"size"`
		InHand bool   `json:"in_hand"`
	}{}, map[string]string{
		"size":    "What the pattern calls the size; empty where the size in hand has no name.",
		"in_hand": "true for the size that [sleeve] and [bodice] of the file are of. Every other key is as in show --json.",
	})
}

// The columns of the printed sizes.
const (
	labelWidth = 24
	cellWidth  = 14 // at least
	nameWidth  = 20 // at most, of a size before what is said of it
)

// text is the comparison as plain text of 80 columns; more sizes than fit side by side go
// below each other.
func text(all []Size) string {
	var out typeset.Printout
	first := all[0].Report
	out.Hanging("", first.Name()+", in "+wording.UnitWords(first.Scale.System))
	out.Line("Marks are pivot + slide on each side, %s.", markWords(all))
	costs := append(Rows(all), States(all))
	rows, cell := append(Heads(all), costs...), CellWidth(costs, cellWidth)
	abreast := max(1, (typeset.PrintWidth-labelWidth)/cell)
	for from := 0; from < len(all); from += abreast {
		to := min(from+abreast, len(all))
		out.Line("")
		for _, row := range rows {
			line := typeset.Pad(row.Label, labelWidth)
			for _, c := range row.Cells[from:to] {
				line += typeset.PadLeft(typeset.Cut(c, cell-1), cell)
			}
			out.Line("%s", strings.TrimRight(line, " "))
		}
	}
	out.Line("")
	for _, z := range all {
		out.Hanging("  "+typeset.Cut(z.Title(), nameWidth)+"  ", z.Gravest())
	}
	out.Line("")
	for _, words := range Comparison(all) {
		out.Hanging("", words)
	}
	wording.PrintCautions(&out)
	return out.Text()
}

// markWords say in which unit marks are.
func markWords(all []Size) string {
	return "on the ruler in " + wording.UnitWords(all[0].Report.Scale.Ruler.System())
}
