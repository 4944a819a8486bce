package ui

import (
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"capscye/calc"
	"capscye/ui/typeset"
)

// The drill on the command line: questions and answers line by line.

// drillOptions are the flags as they were typed.
type drillOptions struct{ seed, level, count, paper string }

func (s *session) drillCommand() *cobra.Command {
	var o drillOptions
	c := &cobra.Command{
		Use:   "drill",
		Short: "Ask the sums of the trade, with invented wearers",
		Long: `Ask the sums of the trade, step by step, with invented wearers and patterns. Levels:
1 flat widths, 2 the need of each side, 3 pivots, 4 slides and marks, 5 centimetres,
front and back unequal. A length may be written in any way, in any unit; ? or an
empty line shows the working, quit ends. A seed gives the same problems everywhere.

With --paper nothing is asked: problems and answer key are written to NAME, .pdf or
.txt, each on pages of its own.`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 0 {
				return fmt.Errorf("drill takes no file, and %q was named; a sheet of problems is written with --paper NAME", args[0])
			}
			return nil
		},
		RunE: func(*cobra.Command, []string) error { return s.drill(o) },
	}
	c.Flags().StringVar(&o.seed, "seed", "", "a whole number; drawn from the clock if not given")
	c.Flags().StringVar(&o.level, "level", strconv.Itoa(usualDrillLevel), "1 to 5")
	c.Flags().StringVar(&o.count, "count", strconv.Itoa(usualDrillCount), "how many problems")
	c.Flags().StringVar(&o.paper, "paper", "", "write problems and answer key to this file, .pdf or .txt")
	return c
}

// lesson is the lesson that the flags ask for.
func (o drillOptions) lesson(today time.Time) (*lesson, error) {
	seed := clockSeed(today)
	if o.seed != "" {
		n, err := strconv.ParseUint(o.seed, 10, 64)
		if err != nil {
			return nil, fmt.Errorf("--seed %q is no seed; a whole number from 0 to 18446744073709551615 is", o.seed)
		}
		seed = n
	}
	level, err := wholeFlag("level", o.level, calc.DrillLevels)
	if err != nil {
		return nil, err
	}
	count, err := wholeFlag("count", o.count, mostDrillCount)
	if err != nil {
		return nil, err
	}
	return newLesson(seed, level, count), nil
}

func wholeFlag(name, text string, most int) (int, error) {
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 || n > most {
		return 0, fmt.Errorf("--%s %q is not taken; a whole number from 1 to %d is", name, text, most)
	}
	return n, nil
}

// clockSeed is a seed short enough to be read out in a class.
func clockSeed(now time.Time) uint64 { return uint64(now.UnixNano()/1000) % 100_000 }

// drill writes the lesson on paper, or goes through it.
func (s *session) drill(o drillOptions) error {
	l, err := o.lesson(s.today)
	if err != nil {
		return err
	}
	if o.paper != "" {
		if err := writeDrill(o.paper, l, s.today); err != nil {
			return errors.New(fileWords(err))
		}
		fmt.Fprintf(s.out, "%s is written.\n", typeset.Plain(o.paper))
		return nil
	}
	return s.converse(l)
}

// drillHead names the drill so that it can be given again.
func (l *lesson) drillHead() string {
	return fmt.Sprintf("Drill, level %d, seed %d, %s", l.level, l.seed, problemCount(len(l.problems)))
}

func problemCount(n int) string {
	if n == 1 {
		return "1 problem"
	}
	return fmt.Sprintf("%d problems", n)
}

// converse asks until every step is done, somebody quits, or the input ends.
func (s *session) converse(l *lesson) error {
	heard := listen(s.in)
	defer heard.stop()
	say := func(texts ...string) error {
		_, err := io.WriteString(s.out, strings.Join(texts, "\n")+"\n")
		if err != nil {
			return fmt.Errorf("cannot write: %w", err)
		}
		return nil
	}
	if err := say(l.drillHead(), "Answer with a length; ? or an empty line shows the working, quit ends."); err != nil {
		return err
	}
	for told := -1; !l.ended(); {
		if l.at > told {
			told = l.at
			if err := say(append([]string{""}, l.problemLines(l.at, typeset.PrintWidth)...)...); err != nil {
				return err
			}
		}
		_, q := l.now()
		if err := say("- " + askWords(q) + "?"); err != nil {
			return err
		}
		h, ok := heard.next()
		if !ok || strings.EqualFold(strings.TrimSpace(h.text), "quit") {
			break
		}
		if h.tooLong {
			h.text = "that line" // no length, and said to be none
		}
		words, working := l.answer(h.text).lines(typeset.PrintWidth)
		if err := say(append(words, working...)...); err != nil {
			return err
		}
	}
	s.worse(heard.status)
	return say(append([]string{""}, l.scoreLines(typeset.PrintWidth)...)...)
}

// problemLines are a problem's number, title and what is known, for a width.
func (l *lesson) problemLines(i, width int) []string {
	p := l.problems[i]
	out := typeset.Wrap(fmt.Sprintf("Problem %d of %d. %s", i+1, len(l.problems), problemTitle(p)), width)
	for _, words := range problemWords(p) {
		out = append(out, typeset.Hanging("  ", words, width)...)
	}
	return out
}
