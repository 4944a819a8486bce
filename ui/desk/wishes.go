package desk

import (
	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/forms"
	"capscye/ui/parts"
	"capscye/worksheets"
)

// What a worksheet wants done that needs more than the worksheet. A new wish has to be
// granted by the root of the screen.

// ToSave wants it saved in its file; the person is asked for a name if it has none and,
// where Ask is set, what to do about a file that was changed elsewhere.
type ToSave struct {
	parts.Wanted
	Ask bool
}

// ToOwn asks whether somebody wants a worksheet of their own, in an example; First is what
// was typed, nil for nothing. Try is what only tries here, where that is not to type first.
type ToOwn struct {
	parts.Wanted
	First *TypedAnswer
	Try   parts.Wish
	Again *tea.KeyMsg // the key that took what was typed, to be pressed once it is an answer; nil for none
}

// ToPick wants a list of the sheets of the folder, to choose the one to take
// measurements from.
type ToPick struct {
	parts.Wanted
	Taking
}

// Taking is a wish to take a section of another sheet of the folder, for the sheet
// on the desk or for a new one at Path.
type Taking struct {
	Section worksheets.Section
	Path    string // of the new sheet; "" for the one on the desk
	From    string // the file to take it from, once it is chosen
}

// Wishes to leave it for a while.
type (
	ToList  struct{ parts.Wanted } // the sheets of the folder
	ToPrint struct{ parts.Wanted } // the card as a PDF beside the sheet
	ToNote  struct{ parts.Wanted } // to ask what a test garment showed
	ToDrill struct{ parts.Wanted } // the sums of the trade
)

// Wishes to see a page about it.
type (
	ToSeeKeys    struct{ parts.Wanted }
	ToSeeWorking struct{ parts.Wanted } // the arithmetic, from the figure at hand on
	ToSeeWords   struct{ parts.Wanted } // of the trade
	ToSeeTable   struct{ parts.Wanted } // the step at the table, as large as the screen
	ToSeeOffers  struct{ parts.Wanted } // what would make it work
	ToSeeSizes   struct{ parts.Wanted } // the sizes of the pattern
	ToSeeCopies  struct{ parts.Wanted } // the copies beside it
)

// TypedAnswer is what somebody typed as an answer.
type TypedAnswer struct {
	Key  worksheets.Key
	Text string
	Size string // the name of the size that it is of; "" for the one in hand
}

// Words name what was typed.
func (a TypedAnswer) Words() string {
	if a.Key == worksheets.PatternSize && a.Size != "" {
		return "another size"
	}
	return SizeWords(a.Size, forms.Fields[a.Key].Words)
}

// In puts the answer into a sheet.
func (a TypedAnswer) In(s *worksheets.Sheet) error {
	if a.Size == "" {
		return s.Set(a.Key, a.Text)
	}
	i := len(s.Sizes)
	*s = s.WithSize(i, worksheets.Size{}.With(worksheets.PatternSize, a.Size).With(a.Key, a.Text))
	return s.CheckSize(i, a.Key)
}
