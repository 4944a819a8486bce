package roster

import (
	"fmt"
	"runtime"
	"slices"
	"strings"

	"capscye/calc"
	"capscye/ui/console"
	"capscye/ui/report"
)

// survey is what is known of a folder before its sheets are printed: how many there are of
// each state, and what most of them say, which tells nothing of a single one. A class is
// looked at whole. Of a larger folder a sample is, so that printing it reads each of its
// files but once.
type survey struct {
	whole  bool
	states map[report.State]int // of those that are printed
	shared map[string]bool      // findings, in their few words
}

// mostSurveyed is how many sheets are looked at beforehand.
const mostSurveyed = 256

// surveyOf looks at the sheets of a folder, or at a sample of them that lie evenly in it.
func surveyOf(s *console.Session, paths []string, least int64) survey {
	v := survey{whole: len(paths) <= mostSurveyed, states: map[report.State]int{}, shared: map[string]bool{}}
	sample := paths
	if !v.whole {
		sample = make([]string, mostSurveyed)
		for i := range sample {
			sample[i] = paths[i*len(paths)/mostSurveyed]
		}
	}
	type seen struct {
		row   Row
		ours  bool
		short []string
	}
	read, saying := 0, map[string]int{}
	// Nothing here can fail: what cannot be read is counted too.
	_ = console.InOrder(sample, runtime.GOMAXPROCS(0), func(path string) (one seen) {
		row, r, ours := RowOf(path, report.Reckoner{Today: s.Today, Brief: true})
		return seen{row, ours, shortOf(r)}
	}, func(_ int, one seen) error {
		if !one.ours {
			return nil
		}
		if one.row.gravity() >= least {
			v.states[one.row.verdict.State]++
		}
		if one.row.Failure == "" {
			read++
			for _, words := range one.short {
				saying[words]++
			}
		}
		return nil
	})
	for words, n := range saying {
		if read >= fewestShared && 2*n > read {
			v.shared[words] = true
		}
	}
	return v
}

// fewestShared is of how many sheets one can say most.
const fewestShared = 3

// shortOf are the findings of a sheet in a few words each, by urgency, no two alike. The
// verdict has the missing answers.
func shortOf(r report.Report) (words []string) {
	for _, f := range r.Findings {
		if short := f.Short(); !slices.Contains(words, short) && f.Code != calc.AnswerMissing {
			words = append(words, short)
		}
	}
	return words
}

// ordered are the findings of a sheet, those last that most of the folder share.
func (v survey) ordered(r report.Report) []string {
	words := shortOf(r)
	slices.SortStableFunc(words, func(a, b string) int { return rank(v.shared[a]) - rank(v.shared[b]) })
	return words
}

// alone are the findings of a sheet to be heard, without the notes that most of the folder
// share: those are said once.
func (v survey) alone(r report.Report) []string {
	words := shortOf(r)
	for _, f := range r.Findings {
		if short := f.Short(); f.Level == calc.Note && v.shared[short] {
			words = slices.DeleteFunc(words, func(w string) bool { return w == short })
		}
	}
	return words
}

func rank(shared bool) int {
	if shared {
		return 1
	}
	return 0
}

// tallied are the states in the order in which they want to be looked at, with the words
// for so many sheets.
var tallied = []struct {
	state report.State
	words string
}{
	{report.Unreadable, "unreadable"}, {report.Stopped, "not to be cut"}, {report.AnswersMissing, "with answers missing"}, {report.ToCheck, "to check"},
	{report.NotBegun, "not begun"}, {report.Ready, "ready"}, {report.Tracing, "being traced"}, {report.Traced, "done"},
	{report.Fits, "with nothing to alter"},
}

// tally counts the sheets that are printed, by their state.
func tally(states map[report.State]int) string {
	total := 0
	var parts []string
	for _, t := range tallied {
		if n := states[t.state]; n > 0 {
			total += n
			parts = append(parts, fmt.Sprintf("%d %s", n, t.words))
		}
	}
	switch total {
	case 0:
		return "No worksheets."
	case 1:
		return "1 worksheet: " + strings.Join(parts, ", ") + "."
	}
	return fmt.Sprintf("%d worksheets: %s.", total, strings.Join(parts, ", "))
}
