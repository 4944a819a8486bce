package ui

import (
	"fmt"
	"path/filepath"
	"strings"
	"time"

	"capscye/calc"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/worksheets"
)

// The drill on paper: the problems with blanks to fill in, and the answer key on
// pages of its own.

// drillMaker is written into every sheet of problems, so that one is known again.
const drillMaker = "capscye drill"

// writeDrill writes a lesson in the form that the ending of the name asks for.
// What is there and is no sheet of problems is not written over.
func writeDrill(name string, l *lesson, today time.Time) error {
	content, err := drillContent(name, l, today)
	switch {
	case err != nil:
		return err
	case !isOursOrFree(name, drillMaker):
		return fmt.Errorf("%s is there already, and is no sheet of problems; nothing was written over it", name)
	}
	return worksheets.WriteFile(name, content)
}

func drillContent(name string, l *lesson, today time.Time) ([]byte, error) {
	switch ending := strings.ToLower(filepath.Ext(name)); ending {
	case ".txt":
		return []byte(drillText(l)), nil
	case ".pdf":
		size := papers[usualPaper(l.problems[0].System)]
		s, err := newPDF(size)
		if err != nil {
			return nil, err
		}
		s.about(l.drillHead(), drillMaker, today)
		printDrill(&page{surface: s, paper: size}, l)
		return s.bytes()
	default:
		return nil, fmt.Errorf("a sheet of problems is written as .pdf or .txt, and not as %q", ending)
	}
}

// againWords say how the same problems are had again.
func (l *lesson) againWords() string {
	return fmt.Sprintf("The same problems again: %s --level %d --seed %d --count %d", drillMaker, l.level, l.seed, len(l.problems))
}

// blank is what is asked with a line to write on, in the unit of the problem.
func blank(p calc.Problem, q calc.Question) string {
	const room = 62
	words := askWords(q)
	return words + " " + strings.Repeat(".", max(room-len(words), 2)) + " ________ " + p.System.String()
}

// drillText is the paper in 80 columns; a form feed is where a page ends.
func drillText(l *lesson) string {
	var out typeset.Printout
	out.Line("%s", l.drillHead())
	out.Line("Name ______________________________   Day ______________")
	for i, p := range l.problems {
		out.Line("")
		for _, text := range l.problemLines(i, typeset.PrintWidth) {
			out.Line("%s", text)
		}
		for _, q := range p.Questions {
			out.Line("  %s", blank(p, q))
		}
	}
	wording.PrintCautions(&out)
	out.Line("%s", l.againWords())
	out.Line("\fAnswer key. %s", l.drillHead())
	for i, p := range l.problems {
		out.Line("")
		out.Line("Problem %d. %s", i+1, problemTitle(p))
		for _, q := range p.Questions {
			for _, line := range q.Lines {
				for _, text := range report.WorkingRows(wording.WorkingLine(line, drillScale(p)), typeset.PrintWidth) {
					out.Line("%s", text)
				}
			}
		}
	}
	return out.Text()
}

// printDrill is the same on a surface.
func printDrill(c *page, l *lesson) {
	width := c.paper.width - 2*margin
	say := func(f face, text string) {
		for _, part := range c.broken(text, drillSize, f, width) {
			c.say(drillSize, f, part)
		}
	}
	begin := func(title string) {
		c.newPage()
		c.y = margin
		c.title(title)
	}
	begin(l.drillHead())
	say(roman, "Name ______________________________   Day ______________")
	for i, p := range l.problems {
		c.keepTogether(3 + len(p.Questions))
		c.y += 3
		say(bolder, fmt.Sprintf("Problem %d of %d. %s", i+1, len(l.problems), problemTitle(p)))
		for _, words := range problemWords(p) {
			say(roman, words)
		}
		c.y++
		for _, q := range p.Questions {
			c.blank(askWords(q), p.System.String())
		}
	}
	c.y += 3
	for _, w := range wording.Cautions {
		say(roman, w)
	}
	say(roman, l.againWords())
	begin("Answer key. " + l.drillHead())
	for i, p := range l.problems {
		c.y += 3
		say(bolder, fmt.Sprintf("Problem %d. %s", i+1, problemTitle(p)))
		for _, q := range p.Questions {
			for _, line := range q.Lines {
				say(roman, wording.WorkingLine(line, drillScale(p)))
			}
		}
	}
}

// The size of the type of a sheet of problems, and the room for a line that
// somebody writes on, in millimetres.
const (
	drillSize  = 9.0
	writeRoom  = 7.0
	answerFrom = 130.0
)

// keepTogether begins another page where so many lines to write on would be torn
// apart, unless a whole page does not hold them.
func (c *page) keepTogether(lines int) {
	height := float64(lines) * writeRoom
	if whole := c.paper.height - 2*margin; height < whole && c.y+height > c.paper.height-margin {
		c.newPage()
		c.y = margin
	}
}

// blank is a question with a line to write on.
func (c *page) blank(words, unit string) {
	c.keepTogether(1)
	c.y += writeRoom
	c.text(margin+4, c.y, drillSize, roman, words)
	end := c.paper.width - margin - 10
	c.line(answerFrom, c.y+0.5, end, c.y+0.5, 0.2, false)
	c.text(end+2, c.y, drillSize, roman, unit)
}
