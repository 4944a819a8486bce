package drill

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"capscye/ui/internal/props"
)

// Why something slides is said as a teacher says it, before the sums, and on the key too.
func TestDrillSaysWhyItSlides(t *testing.T) {
	for args, want := range map[string]string{
		"--level 3 --seed 7": "Each sleeve side needs 7/8 and each bodice side needs 3/16.\nBoth are within the limit of 1, so nothing slides.\nThe working.\nSleeve side need less the limit",
		"--level 4 --seed 7": "Each sleeve side needs 1 3/16 and may pivot 1, which leaves 3/16.\nEach bodice side needs 7/16 and may pivot 1, which is enough.\n" +
			"They are sewn together, so both slide 3/16.\nThe working.\nSleeve side need less the limit",
	} {
		props.Says(t, drillSays(t, args+" --count 1 --sentences", slices.Repeat([]string{"?"}, 30)...), "What is the least slide", want)
	}
	l := NewLesson(7, 3, 1)
	_, key, _ := strings.Cut(text(l), "Answer key.")
	props.Says(t, key, "  Each sleeve side needs 7/8 and each bodice side needs 3/16.", "so nothing slides.\n  sleeve side need less the limit\n", ". slide\n")
}

// The working and the list of what is done speak as the questions do: of each side where
// front and back are alike, of the bodice where it is cut, and of no limit below nothing.
func TestTheWorkingSpeaksAsTheQuestionsDo(t *testing.T) {
	never := regexp.MustCompile(`bust (need|flat|finished)|pivot limit of a \w+ side \(|need and limit|beyond the limit`)
	apart := regexp.MustCompile(`(sleeve|bodice) (front|back) (need|pivot|total|slide)|(front|back) slide|works[^=]*, (front|back)`)
	seen := 0
	for level := 1; level <= Levels; level++ {
		for seed := range uint64(20) {
			l := NewLesson(seed, level, 3)
			for ; !l.Ended(); l.GoOn() {
				p, q := l.Now()
				for _, line := range append(workingLines(p, q), whyWords(p, q), l.DoneWords()) {
					seen++
					if never.MatchString(line) || level != 5 && apart.MatchString(line) {
						t.Fatalf("level %d, seed %d: %s", level, seed, line)
					}
				}
				l.Answer("?")
			}
		}
	}
	if seen < 5000 {
		t.Errorf("only %d lines", seen)
	}
	props.Says(t, drillSays(t, "--level 3 --seed 7 --count 1", append(slices.Repeat([]string{"?"}, 11), "again")...),
		"flat width around the whole body\n      = 2 x front width", "sleeve finished\n      = sleeve flat width 16 1/4 + 2 x sleeve side total 7/8 = 18 in", "sleeve side need 7/8; bodice side need 3/16; slide 0;")
}
