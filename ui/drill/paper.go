package drill

import (
	"fmt"
	"path/filepath"
	"strings"
	"time"

	"capscye/calc/drill"
	"capscye/ui/paper"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/worksheets/disk"
)

// The drill on paper: the problems with blanks to fill in, and the answer key on
// pages of its own.

// maker is written into every sheet of problems, so that one is known again.
const maker = "capscye drill"

// write writes a lesson in the form that the ending of the name asks for.
// What is there and is no sheet of problems is not written over.
func write(name string, l *Lesson, today time.Time) error {
	content, err := content(name, l, today)
	switch {
	case err != nil:
		return err
	case !paper.IsOursOrFree(name, maker):
		return fmt.Errorf("%s is there already, and is no sheet of problems; nothing was written over it", name)
	}
	return disk.Replace(name, content, 0o666)
}

func content(name string, l *Lesson, today time.Time) ([]byte, error) {
	switch ending := strings.ToLower(filepath.Ext(name)); ending {
	case ".txt":
		return []byte(text(l)), nil
	case ".pdf":
		size := paper.Sizes[paper.UsualSize(l.problems[0].System)]
		s, err := paper.NewPDF(size)
		if err != nil {
			return nil, err
		}
		s.About(l.head(), maker, today)
		print(&paper.Page{Surface: s, Size: size}, l)
		return s.Bytes()
	default:
		return nil, fmt.Errorf("a sheet of problems is written as .pdf or .txt, and not as %q", ending)
	}
}

// againWords say how the same problems are had again.
func (l *Lesson) againWords() string {
	return fmt.Sprintf("The same problems again: %s --level %d --seed %d --count %d", maker, l.Level, l.Seed, len(l.problems))
}

// blank is what is asked with a line to write on, in the unit of the problem.
func blank(p drill.Problem, q drill.Question) string {
	const room = 62
	words := AskWords(q)
	return words + " " + strings.Repeat(".", max(room-len(words), 2)) + " ________ " + p.System.String()
}

// text is the paper in 80 columns; a form feed is where a page ends.
func text(l *Lesson) string {
	var out typeset.Printout
	out.Line("%s", l.head())
	out.Line("Name ______________________________   Day ______________")
	for i, p := range l.problems {
		out.Line("")
		for _, text := range l.ProblemLines(i, typeset.PrintWidth) {
			out.Line("%s", text)
		}
		for _, q := range p.Questions {
			out.Line("  %s", blank(p, q))
		}
	}
	wording.PrintCautions(&out)
	out.Line("%s", l.againWords())
	out.Line("\fAnswer key. %s", l.head())
	for i, p := range l.problems {
		out.Line("")
		out.Line("Problem %d. %s", i+1, problemTitle(p))
		for _, q := range p.Questions {
			for _, line := range q.Lines {
				for _, text := range report.WorkingRows(wording.WorkingLine(line, Scale(p)), typeset.PrintWidth) {
					out.Line("%s", text)
				}
			}
		}
	}
	return out.Text()
}

// print is the same on a surface.
func print(c *paper.Page, l *Lesson) {
	width := c.Size.Width - 2*paper.Margin
	say := func(f paper.Face, text string) {
		for _, part := range c.Broken(text, size, f, width) {
			c.Say(size, f, part)
		}
	}
	begin := func(title string) {
		c.NewPage()
		c.Y = paper.Margin
		c.Title(title)
	}
	begin(l.head())
	say(paper.Roman, "Name ______________________________   Day ______________")
	for i, p := range l.problems {
		keepTogether(c, 3+len(p.Questions))
		c.Y += 3
		say(paper.Bolder, fmt.Sprintf("Problem %d of %d. %s", i+1, len(l.problems), problemTitle(p)))
		for _, words := range problemWords(p) {
			say(paper.Roman, words)
		}
		c.Y++
		for _, q := range p.Questions {
			answerLine(c, AskWords(q), p.System.String())
		}
	}
	c.Y += 3
	for _, w := range wording.Cautions {
		say(paper.Roman, w)
	}
	say(paper.Roman, l.againWords())
	begin("Answer key. " + l.head())
	for i, p := range l.problems {
		c.Y += 3
		say(paper.Bolder, fmt.Sprintf("Problem %d. %s", i+1, problemTitle(p)))
		for _, q := range p.Questions {
			for _, line := range q.Lines {
				say(paper.Roman, wording.WorkingLine(line, Scale(p)))
			}
		}
	}
}

// The size of the type of a sheet of problems, and the room for a line that
// somebody writes on, in millimetres.
const (
	size       = 9.0
	writeRoom  = 7.0
	answerFrom = 130.0
)

// keepTogether begins another page where so many lines to write on would be torn
// apart, unless a whole page does not hold them.
func keepTogether(c *paper.Page, lines int) {
	height := float64(lines) * writeRoom
	if whole := c.Size.Height - 2*paper.Margin; height < whole && c.Y+height > c.Size.Height-paper.Margin {
		c.NewPage()
		c.Y = paper.Margin
	}
}

// answerLine is a question with a line to write on.
func answerLine(c *paper.Page, words, unit string) {
	keepTogether(c, 1)
	c.Y += writeRoom
	c.Text(paper.Margin+4, c.Y, size, paper.Roman, words)
	end := c.Size.Width - paper.Margin - 10
	c.Line(answerFrom, c.Y+0.5, end, c.Y+0.5, 0.2, false)
	c.Text(end+2, c.Y, size, paper.Roman, unit)
}
