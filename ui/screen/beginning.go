package screen

import (
	"fmt"
	"path/filepath"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/console"
	"capscye/ui/desk"
	"capscye/ui/forms"
	"capscye/ui/parts"
	"capscye/ui/typeset"
	"capscye/units"
	"capscye/worksheets"
)

// How a worksheet is begun: its name, its unit, its title; and where a folder has none,
// the first screen.

// start is the first screen where there is no worksheet yet: three lines, with the hands
// on one of them.
type start struct {
	styles  parts.Styles
	at      int
	message string
}

// starts are its lines. Who has read nothing presses Enter.
var starts = []struct {
	key, words string
	wish       parts.Wish
}{
	{"b", "Begin your own worksheet", toName{}},
	{"l", "Look at a worked example", toBring{source: example(worksheets.Examples()[0])}},
	{"o", "Open a worksheet from another folder", toOpen{}},
}

func (s *start) Key(msg tea.KeyMsg) parts.Wish { return parts.Named(msg, s.press) }

func (s *start) press(name string) parts.Wish {
	s.message = ""
	switch name {
	case "up", "shift+tab":
		s.at = max(0, s.at-1)
	case "down", "tab":
		s.at = min(len(starts)-1, s.at+1)
	case "enter":
		return starts[s.at].wish
	default:
		var keys []string
		for _, a := range starts {
			keys = append(keys, a.key)
		}
		s.message = parts.PressOneOf(keys)
	}
	for _, a := range starts {
		if a.key == name {
			return a.wish
		}
	}
	return nil
}

func (s *start) Complain(text string) { s.message = text }

func (s *start) Render(width, height int) string {
	out := append(typeset.Wrap("Work out how to widen a sleeve and a bodice so that they still sew together. There is no worksheet in this folder yet.", width), "")
	for i, a := range starts {
		line := "  " + s.styles.Key.Render(a.key) + "  " + a.words
		if i == s.at {
			line = s.styles.Here.Render(typeset.Cut("> "+a.key+"  "+a.words, width))
		}
		out = append(out, line)
	}
	out = append(append(out, ""), parts.Bold(typeset.Wrap(s.message, width), s.styles)...)
	return typeset.Block(append(out, "enter begins  up/down choose  ^c end"), width, height)
}

// newSheet is a worksheet that is to be begun.
type newSheet struct {
	path   string
	unit   units.System // none where it takes something: then it has the unit of that
	title  string
	first  *desk.TypedAnswer // what was typed into an example before, nil for nothing
	taking *desk.Taking      // nil for nothing
}

func (n newSheet) open(before *worksheets.Recovery) tea.Cmd { return beginFile(n, before) }

// takingFrom is what the worksheet says in the beginning where it takes something.
func (n newSheet) takingFrom(from worksheets.Sheet) worksheets.Sheet {
	s := forms.Begin(from.Unit())
	s.Take(n.taking.Section, from, n.taking.From)
	return s
}

// sheet is what it says where it takes nothing. What was typed is read in the unit that
// was chosen since; where it cannot be read so, it is left out.
func (n newSheet) sheet() worksheets.Sheet {
	s := forms.Begin(n.unit)
	answers := []desk.TypedAnswer{{Key: worksheets.Title, Text: n.title}}
	if n.first != nil {
		answers = append(answers, *n.first)
	}
	for _, a := range answers {
		with := s
		if a.In(&with) == nil {
			s = with
		}
	}
	return s
}

// Wishes on the way to a new worksheet, and to one elsewhere.
type (
	// toName wants a name for a new worksheet; first is what was typed already, and
	// others tells that the folder has worksheets to take from.
	toName struct {
		parts.Wanted
		first  *desk.TypedAnswer
		others bool
	}

	// toUnit wants the unit of a new worksheet.
	toUnit struct {
		parts.Wanted
		sheet  newSheet
		others bool
	}

	// toTitle wants the title of a new worksheet.
	toTitle struct {
		parts.Wanted
		sheet newSheet
	}

	// toOpen wants the path of a worksheet that is not in the list.
	toOpen struct{ parts.Wanted }
)

func (w toName) grant(m *root) tea.Cmd {
	if m.desk != nil && m.desk.HasTried() { // before anything is typed for it
		m.complain(copiesFirst)
		return nil
	}
	m.front = parts.NewNaming("What is your worksheet called? Its file gets the name.", "", m.styles,
		func(path string) parts.Wish {
			return toUnit{sheet: newSheet{path: path, first: w.first}, others: w.others}
		})
	return nil
}

func (w toUnit) grant(m *root) tea.Cmd {
	m.front = m.askUnit(w.sheet, typeset.Plain(w.sheet.path)+": inches or centimetres?", w.others)
	return nil
}

func (w toTitle) grant(m *root) tea.Cmd {
	file := typeset.Plain(filepath.Base(w.sheet.path))
	n := parts.NewNaming("Title, such as Choir blouse? Without one the worksheet goes by "+file+".", "", m.styles, nil)
	n.Accept = "enter begins the worksheet  esc back"
	n.Take = func(text string) parts.Wish {
		titled := w.sheet
		titled.title = text
		return toBring{source: titled}
	}
	m.front = n
	return nil
}

func (toOpen) grant(m *root) tea.Cmd {
	n := parts.NewNaming("Which worksheet? Type its path, such as ../sewing/blouse.toml.", "", m.styles, nil)
	n.Accept = "enter opens it  esc back"
	n.Take = func(text string) parts.Wish {
		if text == "" {
			return parts.ToGoBack{}
		}
		return toBring{source: file(text)}
	}
	m.front = n
	return nil
}

// askBegin offers to begin a worksheet that does not exist yet. Where an earlier run could
// not save its answers, because the file or its folder was gone, it says that they are here.
func (m *root) askBegin(path string) parts.Part {
	return m.askUnit(newSheet{path: path}, fmt.Sprintf("%s does not exist yet. Begin it?", typeset.Plain(path))+keptWords(path), hasWorksheets(m.today))
}

// keptWords say that beginning a worksheet brings answers of an earlier run back, "" where
// there are none.
func keptWords(path string) string {
	place := worksheets.OpenRecovery(path)
	defer place.Close()
	left, ok := place.Left()
	if !ok || len(left.Versions) == 0 {
		return ""
	}
	return " Unsaved work of " + console.DayAndTime(left.At) + " is kept for it: begin it, and that opens as a copy."
}

// askUnit asks for the unit of a new worksheet, or what it takes from another one.
func (m *root) askUnit(n newSheet, text string, others bool) parts.Part {
	in := func(u units.System) parts.Wish {
		n := n
		n.unit = u
		return toTitle{sheet: n}
	}
	with := func(s worksheets.Section) parts.Wish {
		return desk.ToPick{Taking: desk.Taking{Section: s, Path: n.path}}
	}
	q := parts.NewQuestion(text, m.styles).
		Or("i", "begin it in inches", in(units.Inches)).
		Or("c", "begin it in centimetres", in(units.Centimetres))
	if others {
		q.Or("b", "begin it with the body of another worksheet here", with(worksheets.BodySection)).
			Or("p", "begin it with the pattern of another worksheet here", with(worksheets.PatternSection))
	}
	return q.Or("esc", "no, show the worksheets of this folder", desk.ToList{})
}
