package calc_test

import (
	"slices"
	"strings"
	"testing"

	"capscye/calc"
)

// What a person should hear first among findings of one level, in words: common
// practice at the table, no source. What is not there cannot be doubted, what is
// doubted need not be possible, and only what is possible can be reached or fit.
var heardFirst = []string{
	"value-unreadable answer-missing nothing-asked",
	"arm-for-bust girth-unusual answer-doubted sizes-fall ease-unusual measured-differently bodice-as-sleeve length-assumed body-changed-since pattern-changed-since measured-long-ago childs-nightwear",
	"width-impossible cap-impossible armhole-impossible lean-impossible bust-line-impossible",
	"out-of-reach slide-far cannot-reach start-larger size-by-high-bust",
	"tighter-than-body too-far-in extra-ease follows-unasked short-at-line binds-below cap-ease-low cap-ease-high cap-takes-slide pivots-back limit-wide",
	"slide-moved comes-in pivot-and-slide pivot-only slide-only fits-already growths-differ sharp-bend narrower-at-corners",
	"arms-differ bust-line-assumed outline-unknown unknown-key not-written",
}

// heardWith is the group that a code is heard with.
func heardWith(c calc.Code) int {
	return slices.IndexFunc(heardFirst, func(group string) bool { return slices.Contains(strings.Fields(group), string(c)) })
}

func slowlyByUrgency(a, b calc.Finding) int {
	heardAt := func(f calc.Finding) calc.Level { // a doubt with the stops that may follow from it
		if f.Causes {
			return calc.Stop
		}
		return f.Level
	}
	if heardAt(a) != heardAt(b) {
		return int(heardAt(b)) - int(heardAt(a))
	}
	return heardWith(a.Code) - heardWith(b.Code)
}

func TestEveryCodeHasItsPlace(t *testing.T) {
	// those that the sums of one sheet do not make: of several sizes, and of the file
	others := []calc.Code{calc.SizesFall, calc.ValueUnreadable, calc.UnknownKey, calc.NotWritten, calc.BodyChanged, calc.PatternChanged}
	all := slices.Concat(everyCode, others)
	for _, c := range all {
		if calc.Urgency(c) == 0 || heardWith(c) < 0 {
			t.Errorf("%s has place %d, and is heard with group %d", c, calc.Urgency(c), heardWith(c))
		}
		for _, other := range all {
			if heardWith(c) < heardWith(other) && calc.Urgency(c) >= calc.Urgency(other) {
				t.Errorf("%s is not said before %s", c, other)
			}
		}
	}
	if calc.Urgency("no-such-code") != 0 {
		t.Error("a code that is none has a place")
	}
}
