package drill

import (
	"bytes"
	"fmt"
	"path/filepath"
	"strings"
	"time"

	"capscye/calc/drill"
	"capscye/ui/paper"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/ui/wording"
)

// The drill on paper: the problems with blanks to fill in, and the answer key on
// pages of its own.

// maker makes sheets of problems.
var maker = paper.Maker{Name: "capscye drill", Makes: "a drill sheet"}

// command is how the same problems are had again. Two drills are the same where it is.
func (l *Lesson) command() string {
	return fmt.Sprintf("%s --level %d --seed %d --count %d", maker.Name, l.Level, l.Seed, len(l.problems))
}

// write writes a lesson in the form that the ending of the name asks for.
// What is there and is no sheet of problems is not written over; neither is that of
// another drill, unless replace is given.
func write(name string, l *Lesson, today time.Time, replace bool) error {
	content, err := content(name, l, today)
	if err != nil {
		return err
	}
	before, err := maker.MayReplace(name)
	if err == nil && before != nil && !replace && !l.printedIn(before) {
		err = fmt.Errorf("%s is another drill; name another file, or add --replace", name)
	}
	if err == nil {
		_, err = maker.Write(paper.File{Name: name, Content: content})
	}
	return err
}

// printedIn tells that a sheet of problems is of this drill.
func (l *Lesson) printedIn(content []byte) bool {
	is := l.command() + "."
	return bytes.Contains(content, []byte(is)) || bytes.Contains(content, paper.InPDF(is))
}

func content(name string, l *Lesson, today time.Time) ([]byte, error) {
	switch ending := strings.ToLower(filepath.Ext(name)); ending {
	case ".txt":
		return maker.Signed([]byte(text(l) + "\n" + maker.Line())), nil
	case ".pdf":
		size := paper.Sizes[paper.UsualSize(l.problems[0].System)]
		s, err := paper.NewPDF(size)
		if err != nil {
			return nil, err
		}
		s.About(l.head(), l.command()+".", maker, today)
		print(&paper.Page{Surface: s, Size: size}, l)
		out, err := s.Bytes()
		return maker.Signed(out), err
	default:
		return nil, fmt.Errorf("--paper takes a name that ends in .pdf or .txt, not %q", ending)
	}
}

// againWords say how the same problems are had again. They stand on the key alone: with
// the seed the problems would bring their answers.
func (l *Lesson) againWords() string { return "The same problems again: " + l.command() + "." }

// blank is what is asked with a line to write on, in the unit of the problem. Blanks
// are numbered through, and the key goes by the numbers.
func blank(n int, p drill.Problem, q drill.Question) []string {
	const room = 62
	lines := typeset.Hanging(fmt.Sprintf("%3d. ", n), AskWords(q, p), room)
	last := len(lines) - 1
	lines[last] += " " + strings.Repeat(".", max(room-len(lines[last]), 2)) + " ________ " + p.System.String()
	return lines
}

// keyed are the lines of the working behind a question; the one that answers it has its
// number.
func keyed(n int, p drill.Problem, q drill.Question) []string {
	lines := workingLines(p, q)
	last := len(lines) - 1
	lines[last] = fmt.Sprintf("%d. %s", n, lines[last])
	return lines
}

// text is the paper in 80 columns; a form feed is where a page ends.
func text(l *Lesson) string {
	var out typeset.Printout
	out.Line("%s", l.head())
	out.Line("Name ______________________________   Day ______________")
	n := 0
	for i, p := range l.problems {
		out.Line("")
		for _, text := range l.ProblemLines(i, typeset.PrintWidth) {
			out.Line("%s", text)
		}
		for _, q := range p.Questions {
			n++
			for _, text := range blank(n, p, q) {
				out.Line("%s", text)
			}
		}
	}
	wording.PrintCautions(&out)
	out.Line("\fAnswer key. %s", l.head())
	out.Line("%s", l.againWords())
	n = 0
	for i, p := range l.problems {
		out.Line("")
		out.Line("Problem %d. %s", i+1, problemTitle(p))
		for _, q := range p.Questions {
			n++
			if why := whyWords(p, q); why != "" {
				for _, text := range typeset.Hanging("  ", why, typeset.PrintWidth) {
					out.Line("%s", text)
				}
			}
			for _, line := range keyed(n, p, q) {
				for _, text := range report.WorkingRows(line, typeset.PrintWidth) {
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
		c.Begin()
		c.Title(title)
	}
	begin(l.head())
	say(paper.Roman, "Name ______________________________   Day ______________")
	n := 0
	for i, p := range l.problems {
		keepTogether(c, 3+len(p.Questions))
		c.Y += 3
		say(paper.Bolder, fmt.Sprintf("Problem %d of %d. %s", i+1, len(l.problems), problemTitle(p)))
		for _, words := range problemWords(p) {
			say(paper.Roman, words)
		}
		c.Y++
		for _, q := range p.Questions {
			n++
			answerLine(c, fmt.Sprintf("%d. %s", n, AskWords(q, p)), p.System.String())
		}
	}
	c.Y += 3
	for _, w := range wording.Cautions {
		say(paper.Roman, w)
	}
	begin("Answer key. " + l.head())
	say(paper.Roman, l.againWords())
	n = 0
	for i, p := range l.problems {
		c.Y += 3
		say(paper.Bolder, fmt.Sprintf("Problem %d. %s", i+1, problemTitle(p)))
		for _, q := range p.Questions {
			n++
			if why := whyWords(p, q); why != "" {
				say(paper.Roman, why)
			}
			for _, line := range keyed(n, p, q) {
				say(paper.Roman, line)
			}
		}
	}
}

// The size of the type of a sheet of problems, and the room for a line that
// somebody writes on, in millimetres.
const (
	size       = 9.0
	writeRoom  = 9.0 // two lines of type, and a hand's writing
	lineRoom   = 4.0
	answerFrom = 130.0
)

// keepTogether begins another page where so many lines to write on would be torn
// apart, unless a whole page does not hold them.
func keepTogether(c *paper.Page, lines int) {
	height := float64(lines) * writeRoom
	if height < c.Size.Height-2*paper.Margin {
		c.Keep(height)
	}
}

// answerLine is a question with a line to write on.
func answerLine(c *paper.Page, words, unit string) {
	keepTogether(c, 1)
	c.Y += writeRoom
	parts := c.Broken(words, size, paper.Roman, answerFrom-paper.Margin-8)
	for i, part := range parts {
		c.Text(paper.Margin+4, c.Y-float64(len(parts)-1-i)*lineRoom, size, paper.Roman, part)
	}
	end := c.Size.Width - paper.Margin - 10
	c.Line(answerFrom, c.Y+0.5, end, c.Y+0.5, 0.2, false)
	c.Text(end+2, c.Y, size, paper.Roman, unit)
}
