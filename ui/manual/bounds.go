package manual

import (
	"fmt"
	"strings"

	"capscye/calc"
	"capscye/ui/forms"
	"capscye/units"
)

// wearingWords say for which worksheets a bound holds.
var wearingWords = map[calc.Wearing]string{
	calc.GrownUp: "grown-ups: ", calc.LongSleeve: "long sleeve: ", calc.ShortSleeve: "short sleeve: ", calc.SetInSleeve: "set-in sleeve: ",
	calc.WovenCloth: "woven: ", calc.KnitCloth: "knit: ",
}

// doubts tells every bound that an answer is held against.
func doubts() section {
	s := section{name: "DOUBTS"}
	s.say(doubtProse)
	told := map[calc.Answer]bool{}
	for _, of := range calc.Bounds {
		if told[of.Of] {
			continue
		}
		told[of.Of] = true
		var texts []string
		for _, b := range calc.Bounds {
			if b.Of == of.Of {
				texts = append(texts, boundWords(b))
			}
		}
		s.entry(forms.KeyOf[of.Of].Path(), strings.Join(texts, " "))
	}
	for _, r := range []units.Ruler{units.EighthInch, units.OneMillimetre} {
		check, stop := calc.SlideBounds(r)
		sc := units.Scale{System: r.System(), Ruler: r}
		s.entry("slide, ruler in "+r.System().String(), fmt.Sprintf("over %s a side is a check, over %s a stop (%s).", sc.Format(check), sc.Format(stop), calc.Ours))
	}
	return s
}

func boundWords(b calc.Bound) string {
	between := fmt.Sprintf("%d to %d %% of %s", b.Low, b.High, forms.KeyOf[b.Beside].Path())
	if b.Beside == calc.NoAnswer {
		sc := units.Scale{System: units.Centimetres}
		between = strings.TrimPrefix(sc.Number(b.Low), units.OffMark) + " to " + strings.TrimPrefix(sc.Format(b.High), units.OffMark)
	}
	return wearingWords[b.For] + between + " (" + b.Source + ")."
}
