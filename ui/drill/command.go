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
	"capscye/ui/forms"
	"capscye/ui/typeset"
)

// The drill on the command line: questions and answers line by line.

// options are the flags as they were typed.
type options struct {
	seed, level, count, paper string
	replace, sentences        bool
}

// Command asks the sums of the trade, or writes them on paper.
func Command(s *console.Session) *cobra.Command {
	var o options
	c := &cobra.Command{
		Use:   "drill",
		Short: "Practise the arithmetic on invented wearers",
		Long: `Practise the arithmetic, step by step, on invented wearers and patterns. Levels: 1 flat
widths, 2 the need of each side, 3 pivots, 4 slides and marks, 5 centimetres, front
and back unequal, 6 pieces that come in, an even slide, an armhole that is kept.

Write a length in any way, in any unit. An exact answer is right, and so is a pocket
calculator's decimal less than half a ruler mark off. If a wrong answer comes from a
usual slip, the drill says which. ? shows the working and counts as shown; again repeats the
problem and what is done; quit ends with the score. An empty line and a text that is no
length count for nothing.

A seed gives a whole class the same problems, on every machine and from this version
on. With --paper nothing is asked: the problems, with numbered blanks, and a key by the
same numbers are written to a .pdf or .txt file. Only the key names the seed. A file that
is no drill sheet, or one that somebody changed, is left alone, and one of another drill
too, unless --replace is given.`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 0 {
				return fmt.Errorf("drill takes no file, not %q; --paper NAME writes one", args[0])
			}
			return nil
		},
		RunE: func(*cobra.Command, []string) error { return begin(s, o) },
	}
	c.Flags().StringVar(&o.seed, "seed", "", "a whole number; drawn from the clock if not given")
	c.Flags().StringVar(&o.level, "level", strconv.Itoa(UsualLevel), "1 to "+strconv.Itoa(Levels))
	c.Flags().StringVar(&o.count, "count", "", "how many problems, 1 to "+strconv.Itoa(mostCount)+"; as many as fit a lesson if not given")
	c.Flags().StringVar(&o.paper, "paper", "", "write problems and answer key to this file, .pdf or .txt")
	c.Flags().BoolVar(&o.replace, "replace", false, "with --paper: replace the paper of another drill")
	console.Sentences(c, &o.sentences)
	return c
}

// lesson is the lesson that the flags ask for.
func (o options) lesson(today time.Time) (*Lesson, error) {
	seed := ClockSeed(today)
	if o.seed != "" {
		n, err := strconv.ParseUint(o.seed, 10, 64)
		if err != nil {
			return nil, fmt.Errorf("--seed takes a whole number, 0 or more, not %q", o.seed)
		}
		seed = n
	}
	level, err := wholeFlag("level", o.level, Levels)
	if err != nil {
		return nil, err
	}
	count := UsualCount(level)
	if o.count != "" {
		if count, err = wholeFlag("count", o.count, mostCount); err != nil {
			return nil, err
		}
	}
	return NewLesson(seed, level, count), nil
}

func wholeFlag(name, text string, most int) (int, error) {
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 || n > most {
		return 0, fmt.Errorf("--%s takes 1 to %d, not %q", name, most, text)
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
	if o.replace && o.paper == "" {
		return errors.New("--replace goes with --paper; add --paper NAME")
	}
	if o.paper != "" {
		if err := write(o.paper, l, s.Today, o.replace); err != nil {
			return errors.New(console.FileWords(err))
		}
		fmt.Fprintf(s.Out, "Saved %s.\n", typeset.Plain(o.paper))
		return nil
	}
	return converse(s, l, faceFor(o.sentences))
}

// head names the drill, without what would tell a class where the answers are.
func (l *Lesson) head() string {
	return fmt.Sprintf("Drill, level %d, %s", l.Level, problemCount(len(l.problems)))
}

func problemCount(n int) string {
	if n == 1 {
		return "1 problem"
	}
	return fmt.Sprintf("%d problems", n)
}

// converse asks until every step is done, somebody quits, or the input ends.
func converse(s *console.Session, l *Lesson, f face) error {
	heard := console.Listen(s.In)
	defer heard.Stop()
	say := func(texts ...string) error {
		if len(texts) == 0 {
			return nil
		}
		_, err := io.WriteString(s.Out, strings.Join(texts, "\n")+"\n")
		if err != nil {
			return fmt.Errorf("cannot write: %w", err)
		}
		return nil
	}
	if err := say(f.opening(l)...); err != nil {
		return err
	}
	for told := -1; !l.Ended(); l.GoOn() {
		if l.At > told {
			told = l.At
			if err := say(f.problem(l)...); err != nil {
				return err
			}
		}
		p, q := l.Now()
		if err := say(f.question(AskWords(q, p))...); err != nil {
			return err
		}
		h, ok := heard.Next()
		word := strings.ToLower(strings.TrimSpace(h.Text))
		if !ok || word == "quit" {
			break
		}
		if word == "again" {
			if err := say(f.again(l)...); err != nil {
				return err
			}
			continue
		}
		if h.TooLong || len([]rune(h.Text)) > forms.LongestAnswer {
			words := fmt.Sprintf("Too long: at most %d characters. This does not count as an answer.", forms.LongestAnswer)
			if err := say(f.reply(Reply{Words: words})...); err != nil {
				return err
			}
			continue
		}
		if err := say(f.reply(l.Answer(h.Text))...); err != nil {
			return err
		}
	}
	s.Worse(heard.Status)
	return say(f.score(l)...)
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
