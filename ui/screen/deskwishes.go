package screen

import (
	"capscye/ui/forms"
	"capscye/worksheets"
)

// What a worksheet wants done that needs more than the worksheet.

// toSave wants it saved in its file; the person is asked for a name if it has none and,
// where ask is set, what to do about a file that was changed elsewhere.
type toSave struct {
	wanted
	ask bool
}

// toOwn asks whether somebody wants a worksheet of their own, in an example; first is what
// was typed, nil for nothing. try is what only tries here, where that is not to type first.
type toOwn struct {
	wanted
	first *typedAnswer
	try   wish
}

// toPick wants a list of the sheets of the folder, to choose the one to take
// measurements from.
type toPick struct {
	wanted
	t taking
}

// taking is a wish to take a section of another sheet of the folder, for the sheet
// on the desk or for a new one at path.
type taking struct {
	section worksheets.Section
	path    string // of the new sheet; "" for the one on the desk
	from    string // the file to take it from, once it is chosen
}

type (
	toList  struct{ wanted } // the sheets of the folder
	toPrint struct{ wanted } // the card as a PDF beside the sheet
	toNote  struct{ wanted } // to ask what a test garment showed
	toDrill struct{ wanted } // the sums of the trade
)

// Wishes to see a page about it.
type (
	toSeeKeys    struct{ wanted }
	toSeeWorking struct{ wanted } // the arithmetic, from the figure at hand on
	toSeeWords   struct{ wanted } // of the trade
	toSeeTable   struct{ wanted } // the step at the table, as large as the screen
	toSeeOffers  struct{ wanted } // what would make it work
	toSeeSizes   struct{ wanted } // the sizes of the pattern
	toSeeCopies  struct{ wanted } // the copies beside it
)

// typedAnswer is what somebody typed as an answer.
type typedAnswer struct {
	key  worksheets.Key
	text string
	size string // the name of the size that it is of; "" for the one in hand
}

// words name what was typed.
func (a typedAnswer) words() string {
	if a.key == worksheets.PatternSize && a.size != "" {
		return "another size"
	}
	return sizeWords(a.size, forms.Fields[a.key].Words)
}

// in puts the answer into a sheet.
func (a typedAnswer) in(s *worksheets.Sheet) error {
	if a.size == "" {
		return s.Set(a.key, a.text)
	}
	i := len(s.Sizes)
	*s = s.WithSize(i, worksheets.Size{}.With(worksheets.PatternSize, a.size).With(a.key, a.text))
	return s.CheckSize(i, a.key)
}
