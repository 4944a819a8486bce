package ask

import (
	"fmt"
	"slices"
	"strings"

	"capscye/ui/forms"
	"capscye/worksheets"
)

// questions are the fields of every step, in the order of the forms, but for those that are
// enough for a plan, which come first, with what belongs to them. Behind the pattern stands the one for another
// size of it.
var questions, groups = func() (all []questionOf, heads []groupOf) {
	measured := slices.Index(forms.Enough, worksheets.SleeveMeasured)
	first := slices.Insert(slices.Clone(forms.Enough), measured+1, worksheets.SleeveAllowance)
	heads = []groupOf{{step: noStep, heading: "First: what is enough for a plan", count: len(first)}}
	for _, k := range first {
		all = append(all, questionOf{k, 0})
	}
	for s := range forms.StepCount {
		for i, it := range forms.Items[s] {
			if it.Heading != "" || i == 0 {
				heads = append(heads, groupOf{step: s, heading: it.Heading, from: len(all)})
			}
			if it.Heading == "" && !slices.Contains(forms.Enough, it.Key) {
				all = append(all, questionOf{it.Key, len(heads) - 1})
				heads[len(heads)-1].count++
			}
		}
		if s == forms.Pattern {
			heads = append(heads, groupOf{step: s, heading: "Other sizes", from: len(all), count: 1})
			all = append(all, questionOf{otherSize, len(heads) - 1})
		}
	}
	return all, heads
}()

// noStep is the step of the questions that come first.
const noStep forms.Step = -1

type questionOf struct {
	key   worksheets.Key
	group int
}

// groupOf is what stands under one heading, and can be skipped at once.
type groupOf struct {
	step        forms.Step
	heading     string
	from, count int
}

// passes tells that a question is passed by: nothing would follow from its answer, or it
// has its place elsewhere. The allowance is asked once: among the first
// where it comes off, else in its place, for the steps tell of it all the same.
func (a *asking) passes(q questionOf) bool {
	comesOff := a.doc.Sheet.Choice(worksheets.SleeveMeasured) == "edge"
	return a.skips(q.key) || q.key == worksheets.SleeveAllowance && comesOff != (q.group == 0)
}

// skips tells a question whose answer nothing follows from, as the others are answered.
// One that has an answer of its own is asked all the same.
func (a *asking) skips(k worksheets.Key) bool {
	s := &a.doc.Sheet
	text := s.Text(k)
	if girth, is := easeOf[k]; is && !s.Reading(girth).Known {
		begun := forms.Begin(s.Unit())
		return text == "" || text == begun.Text(k)
	}
	return (text == "" || text == k.Usual()) && forms.WorthOf(s, k) == forms.Idle
}

// easeOf are the girths that an ease is added to. The bicep is asked just before its ease,
// which is among the first.
var easeOf = map[worksheets.Key]worksheets.Key{
	worksheets.EaseBust: worksheets.Bust, worksheets.EaseWaist: worksheets.Waist, worksheets.EaseHip: worksheets.Hip,
	worksheets.EaseElbow: worksheets.Elbow, worksheets.EaseWrist: worksheets.Wrist,
}

// questionsWords count the questions under a heading, and those that amounts wait for.
// Which of the first are needed is known only as they are answered.
func (a *asking) questionsWords(g groupOf) string {
	list := questions[g.from : g.from+g.count]
	words, needed := "1 question", 0
	if n := a.asked(list); n != 1 {
		words = fmt.Sprintf("%d questions", n)
	}
	for _, q := range list {
		if !a.passes(q) && forms.WorthOf(&a.doc.Sheet, q.key) == forms.Needed {
			needed++
		}
	}
	one := words == "1 question"
	switch {
	case g.step == noStep || strings.HasPrefix(g.heading, "Optional"):
		return words
	case needed == 0 && one:
		return words + ", optional"
	case needed == 0:
		return words + ", all optional"
	}
	if one {
		return words + ", needed"
	}
	return fmt.Sprintf("%s, %d needed", words, needed)
}

// asked is how many of the questions are.
func (a *asking) asked(list []questionOf) (count int) {
	for _, q := range list {
		if !a.passes(q) {
			count++
		}
	}
	return count
}
