package drill

import (
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"capscye/ui/console"
	"capscye/ui/typeset"
)

// The drill on the command line: questions and answers line by line.

// options are the flags as they were typed.
type options struct{ seed, level, count, paper string }

// Command asks the sums of the trade, or writes them on paper.
func Command(s *console.Session) *cobra.Command {
	var o options
	c := &cobra.Command{
		Use:   "drill",
		Short: "Practise the arithmetic on invented wearers",
		Long: `Practise the arithmetic, step by step, on invented wearers and patterns. Levels: 1 flat
widths, 2 the need of each side, 3 pivots, 4 slides and marks, 5 centimetres, front
and back unequal.

A length can be written in any way, in any unit, and is right if it is exact. A wrong
answer that a usual slip gives is told so. ? or an empty line shows the working and
counts as shown; quit ends, with the score. A text that is no length counts for
nothing.

A seed gives a whole class the same problems, on every machine and in every version.
With --paper nothing is asked: problems and answer key are written to a file, .pdf or
.txt, each on pages of its own. A file there that is no drill sheet is left alone.`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 0 {
				return fmt.Errorf("drill takes no file, and %q was named; a sheet of problems is written with --paper NAME", args[0])
			}
			return nil
		},
		RunE: func(*cobra.Command, []string) error { return begin(s, o) },
	}
	c.Flags().StringVar(&o.seed, "seed", "", "a whole number; drawn from the clock if not given")
	c.Flags().StringVar(&o.level, "level", strconv.Itoa(UsualLevel), "1 to 5")
	c.Flags().StringVar(&o.count, "count", strconv.Itoa(UsualCount), "how many problems")
	c.Flags().StringVar(&o.paper, "paper", "", "write problems and answer key to this file, .pdf or .txt")
	return c
}

// lesson is the lesson that the flags ask for.
func (o options) lesson(today time.Time) (*Lesson, error) {
	seed := ClockSeed(today)
	if o.seed != "" {
		n, err := strconv.ParseUint(o.seed, 10, 64)
		if err != nil {
			return nil, fmt.Errorf("--seed %q is no seed; a whole number from 0 to 18446744073709551615 is", o.seed)
		}
		seed = n
	}
	level, err := wholeFlag("level", o.level, Levels)
	if err != nil {
		return nil, err
	}
	count, err := wholeFlag("count", o.count, mostCount)
	if err != nil {
		return nil, err
	}
	return NewLesson(seed, level, count), nil
}

func wholeFlag(name, text string, most int) (int, error) {
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 || n > most {
		return 0, fmt.Errorf("--%s %q is not taken; a whole number from 1 to %d is", name, text, most)
	}
	return n, nil
}

// ClockSeed is a seed short enough to be read out in a class.
func ClockSeed(now time.Time) uint64 { return uint64(now.UnixNano()/1000) % 100_000 }

// begin writes the lesson on paper, or goes through it.
func begin(s *console.Session, o options) error {
	l, err := o.lesson(s.Today)
	if err != nil {
		return err
	}
	if o.paper != "" {
		if err := write(o.paper, l, s.Today); err != nil {
			return errors.New(console.FileWords(err))
		}
		fmt.Fprintf(s.Out, "%s is written.\n", typeset.Plain(o.paper))
		return nil
	}
	return converse(s, l)
}

// head names the drill so that it can be given again.
func (l *Lesson) head() string {
	return fmt.Sprintf("Drill, level %d, seed %d, %s", l.Level, l.Seed, problemCount(len(l.problems)))
}

func problemCount(n int) string {
	if n == 1 {
		return "1 problem"
	}
	return fmt.Sprintf("%d problems", n)
}

// converse asks until every step is done, somebody quits, or the input ends.
func converse(s *console.Session, l *Lesson) error {
	heard := console.Listen(s.In)
	defer heard.Stop()
	say := func(texts ...string) error {
		_, err := io.WriteString(s.Out, strings.Join(texts, "\n")+"\n")
		if err != nil {
			return fmt.Errorf("cannot write: %w", err)
		}
		return nil
	}
	if err := say(l.head(), "Answer with a length; ? or an empty line shows the working, quit ends."); err != nil {
		return err
	}
	for told := -1; !l.Ended(); {
		if l.At > told {
			told = l.At
			if err := say(append([]string{""}, l.ProblemLines(l.At, typeset.PrintWidth)...)...); err != nil {
				return err
			}
		}
		_, q := l.Now()
		if err := say("- " + AskWords(q) + "?"); err != nil {
			return err
		}
		h, ok := heard.Next()
		if !ok || strings.EqualFold(strings.TrimSpace(h.Text), "quit") {
			break
		}
		if h.TooLong {
			h.Text = "that line" // no length, and said to be none
		}
		words, working := l.Answer(h.Text).Lines(typeset.PrintWidth)
		if err := say(append(words, working...)...); err != nil {
			return err
		}
	}
	s.Worse(heard.Status)
	return say(append([]string{""}, l.ScoreLines(typeset.PrintWidth)...)...)
}

// ProblemLines are a problem's number, title and what is known, for a width.
func (l *Lesson) ProblemLines(i, width int) []string {
	p := l.problems[i]
	out := typeset.Wrap(fmt.Sprintf("Problem %d of %d. %s", i+1, len(l.problems), problemTitle(p)), width)
	for _, words := range problemWords(p) {
		out = append(out, typeset.Hanging("  ", words, width)...)
	}
	return out
}
