package calc_test

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"capscye/calc"
	"capscye/units"
)

// What is to be doubted of the answers, and what may have been meant: by trying every
// slip in every answer. The bounds are a table, ours for the most part, and taken from
// it (bounds_test.go holds it against data); what follows from them is worked out anew.

func slowDoubts() []func(*slowSheet) { return []func(*slowSheet){sayDoubts, saySlideFar} }

// where is where the answers stand that are held against a bound.
var where = map[calc.Answer]func(*calc.Input) *units.Reading{
	calc.Bicep: func(in *calc.Input) *units.Reading { return &in.Bicep }, calc.BicepOther: func(in *calc.Input) *units.Reading { return &in.BicepOther },
	calc.Bust: func(in *calc.Input) *units.Reading { return &in.Bust }, calc.HighBust: func(in *calc.Input) *units.Reading { return &in.HighBust },
	calc.Waist: func(in *calc.Input) *units.Reading { return &in.Waist }, calc.Hip: func(in *calc.Input) *units.Reading { return &in.Hip },
	calc.Elbow: func(in *calc.Input) *units.Reading { return &in.Elbow }, calc.Wrist: func(in *calc.Input) *units.Reading { return &in.Wrist },
	calc.BicepEase: func(in *calc.Input) *units.Reading { return &in.BicepEase }, calc.BustEase: func(in *calc.Input) *units.Reading { return &in.BustEase },
	calc.WaistEase: func(in *calc.Input) *units.Reading { return &in.WaistEase }, calc.HipEase: func(in *calc.Input) *units.Reading { return &in.HipEase },
	calc.ElbowEase: func(in *calc.Input) *units.Reading { return &in.ElbowEase }, calc.WristEase: func(in *calc.Input) *units.Reading { return &in.WristEase },
	calc.SleeveWidth: func(in *calc.Input) *units.Reading { return &in.Sleeve.Width }, calc.SleeveAllowance: func(in *calc.Input) *units.Reading { return &in.Sleeve.Allowance },
	calc.CapHeight: func(in *calc.Input) *units.Reading { return &in.Sleeve.CapHeight }, calc.CapFront: func(in *calc.Input) *units.Reading { return &in.Sleeve.CapFront },
	calc.CapBack: func(in *calc.Input) *units.Reading { return &in.Sleeve.CapBack }, calc.UnderarmSeam: func(in *calc.Input) *units.Reading { return &in.Sleeve.UnderarmSeam },
	calc.HemWidth: func(in *calc.Input) *units.Reading { return &in.Sleeve.HemWidth }, calc.ElbowWidth: func(in *calc.Input) *units.Reading { return &in.Sleeve.ElbowWidth },
	calc.BodiceFrontWidth: func(in *calc.Input) *units.Reading { return &in.Bodice.Front }, calc.BodiceBackWidth: func(in *calc.Input) *units.Reading { return &in.Bodice.Back },
	calc.BodiceAllowance: func(in *calc.Input) *units.Reading { return &in.Bodice.Allowance },
	calc.TakeOffFront:    func(in *calc.Input) *units.Reading { return &in.Bodice.TakeOffFront }, calc.TakeOffBack: func(in *calc.Input) *units.Reading { return &in.Bodice.TakeOffBack },
	calc.FinishedBust: func(in *calc.Input) *units.Reading { return &in.Bodice.FinishedBust },
	calc.ArmholeFront: func(in *calc.Input) *units.Reading { return &in.Bodice.ArmholeFront }, calc.ArmholeBack: func(in *calc.Input) *units.Reading { return &in.Bodice.ArmholeBack },
	calc.CornerOutFront: func(in *calc.Input) *units.Reading { return &in.Bodice.CornerOutFront }, calc.CornerOutBack: func(in *calc.Input) *units.Reading { return &in.Bodice.CornerOutBack },
	calc.CornerDownFront: func(in *calc.Input) *units.Reading { return &in.Bodice.CornerDownFront }, calc.CornerDownBack: func(in *calc.Input) *units.Reading { return &in.Bodice.CornerDownBack },
	calc.BustDown: func(in *calc.Input) *units.Reading { return &in.Bodice.BustDown }, calc.SideSeam: func(in *calc.Input) *units.Reading { return &in.Bodice.SideSeam },
	calc.WaistFront: func(in *calc.Input) *units.Reading { return &in.Bodice.WaistFront }, calc.WaistBack: func(in *calc.Input) *units.Reading { return &in.Bodice.WaistBack },
	calc.HipFront: func(in *calc.Input) *units.Reading { return &in.Bodice.HipFront }, calc.HipBack: func(in *calc.Input) *units.Reading { return &in.Bodice.HipBack },
}

// pairs are the answers that stand beside each other on the form and can be typed into
// each other's fields; arm and bust besides.
var pairs = [][2]calc.Answer{
	{calc.Bicep, calc.Bust}, {calc.BodiceFrontWidth, calc.BodiceBackWidth}, {calc.CapFront, calc.CapBack}, {calc.ArmholeFront, calc.ArmholeBack},
	{calc.TakeOffFront, calc.TakeOffBack}, {calc.CornerOutFront, calc.CornerOutBack}, {calc.CornerDownFront, calc.CornerDownBack},
	{calc.WaistFront, calc.WaistBack}, {calc.HipFront, calc.HipBack},
}

// halves are asked from the middle to the side.
var halves = []calc.Answer{calc.BodiceFrontWidth, calc.BodiceBackWidth, calc.WaistFront, calc.WaistBack, calc.HipFront, calc.HipBack}

func pairedWith(a calc.Answer) calc.Answer {
	if a == calc.BicepOther { // a bust typed one field too soon
		return calc.Bust
	}
	for _, p := range pairs {
		if i := slices.Index(p[:], a); i >= 0 {
			return p[1-i]
		}
	}
	return calc.NoAnswer
}

// offBy are what comes off a width before it is compared: method.
var offBy = func() (off [calc.AnswerCount][]calc.Answer) {
	for _, a := range []calc.Answer{calc.SleeveWidth, calc.HemWidth, calc.ElbowWidth} {
		off[a] = []calc.Answer{calc.SleeveAllowance}
	}
	for _, a := range []calc.Answer{calc.WaistFront, calc.WaistBack, calc.HipFront, calc.HipBack} {
		off[a] = []calc.Answer{calc.BodiceAllowance}
	}
	off[calc.BodiceFrontWidth] = []calc.Answer{calc.BodiceAllowance, calc.TakeOffFront}
	off[calc.BodiceBackWidth] = []calc.Answer{calc.BodiceAllowance, calc.TakeOffBack}
	return off
}()

// compared is an answer as it is held against another one.
func compared(in *calc.Input, a calc.Answer) (n int64, known bool) {
	r := *where[a](in)
	left := exactReading(r)
	switch {
	case slices.Contains(offBy[a], calc.SleeveAllowance):
		left = paperSleeve(in.Sleeve, r)
	case a == calc.BodiceFrontWidth:
		left = oraclePiece(in.Bodice, r, in.Bodice.TakeOffFront)
	case a == calc.BodiceBackWidth:
		left = oraclePiece(in.Bodice, r, in.Bodice.TakeOffBack)
	case len(offBy[a]) > 0:
		left = oraclePiece(in.Bodice, r, units.Reading{})
	}
	if !left.known() {
		return 0, false
	}
	return int64(left.length()), true
}

// slowChild is as in findings_people_test.go: whose girths are held against children's.
func slowChild(in *calc.Input) bool {
	s := slowSheet{Input: *in}
	s.plan.Sleeve.Body = oracleLarger(exactReading(in.Bicep), exactReading(in.BicepOther)).reading()
	return s.plan.Sleeve.Body.Known && s.childlike()
}

// place is where a sheet lies in a bound: -1 and 1 are its ends.
func place(in *calc.Input, b calc.Bound, child bool) (at float64, broken bool) {
	holds := true
	switch b.For {
	case calc.GrownUp:
		holds = !child
	case calc.LongSleeve, calc.ShortSleeve:
		holds = in.Sleeve.Long == (b.For == calc.LongSleeve)
	case calc.SetInSleeve:
		holds = in.Sleeve.Style == calc.SetIn
	case calc.WovenCloth, calc.KnitCloth:
		holds = (in.Fabric == calc.Woven) == (b.For == calc.WovenCloth)
	}
	r := *where[b.Of](in)
	value, low, high := int64(r.Length), int64(b.Low), int64(b.High)
	if b.Beside != calc.NoAnswer {
		of, one := compared(in, b.Of)
		beside, other := compared(in, b.Beside)
		r.Known = one && other && beside > 0
		value, low, high = 100*of, int64(b.Low)*beside, int64(b.High)*beside
	}
	if !holds || !r.Known {
		return 0, false
	}
	if value < low || value > high {
		return 0, true
	}
	if high == low {
		return 0, false
	}
	return float64(2*value-low-high) / float64(high-low), false
}

// decided tells that an answer has a part in a bound: it is named, or comes off what is
// named and compared.
func decided(a calc.Answer, b calc.Bound) bool {
	if a == calc.NoAnswer {
		return false
	}
	return a == b.Of || a == b.Beside || b.Beside != calc.NoAnswer && (slices.Contains(offBy[b.Of], a) || slices.Contains(offBy[b.Beside], a))
}

// boundsOf are the bounds that an answer has a part in; no answer has none.
var boundsOf = func() (list [calc.AnswerCount][]calc.Bound) {
	for a := range calc.AnswerCount {
		list[a] = slices.DeleteFunc(slices.Clone(calc.Bounds), func(b calc.Bound) bool { return !decided(a, b) })
	}
	return list
}()

func named(a calc.Answer, b calc.Bound) bool { return a == b.Of || a == b.Beside }

// slowMeant is one way to read an answer.
type slowMeant struct {
	slip   calc.Slip
	length units.Length
	text   string
	cost   int
}

// everyReading tries every slip of which the typed text can come.
func everyReading(in *calc.Input, a calc.Answer) (list []slowMeant) {
	now := where[a](in).Length
	add := func(slip calc.Slip, l units.Length, text string, cost int) {
		if l != now {
			list = append(list, slowMeant{slip, l, text, cost})
		}
	}
	text := ""
	if in.Typed != nil {
		text = strings.TrimSpace(in.Typed.Texts[a])
		if l, err := units.Parse(text, in.Typed.Unit); err != nil || l != now {
			text = ""
		}
	}
	whole := []calc.Answer{calc.Bicep, calc.BicepOther, calc.Bust, calc.HighBust, calc.Waist, calc.Hip, calc.Elbow, calc.Wrist,
		calc.SleeveWidth, calc.HemWidth, calc.ElbowWidth, calc.FinishedBust}
	if slices.Contains(halves, a) {
		add(calc.WholeForHalf, (now+now%2)/2, "", 0)
	}
	if slices.Contains(whole, a) {
		add(calc.HalfAGirth, 2*now, "", 30)
	}
	if text == "" {
		add(calc.CentimetresAsInches, now*100/254, "", 0)
		add(calc.InchesAsCentimetres, now*254/100, "", 0)
		return list
	}
	reread := func(slip calc.Slip, text string, cost int) {
		if m := slowFraction.FindStringSubmatch(text); m != nil && !slices.Contains([]string{"1", "2", "4", "8", "16", "32", "64"}, m[1]) {
			return // no ruler has it
		}
		if l, err := units.Parse(text, in.Typed.Unit); err == nil {
			add(slip, l, text, cost)
		}
	}
	inches := in.Typed.Unit == units.Inches
	if !(len(text) > 1 && text[0] == '0' && isDigit(text[1])) {
		if inches && !strings.ContainsAny(text, "/⁄∕¼½¾⅛⅜⅝⅞⅓⅔") {
			reread(calc.CentimetresAsInches, text+" cm", 0)
		} else if !inches {
			reread(calc.InchesAsCentimetres, text+" in", 0)
		}
	}
	if inches {
		reread(calc.Millimetres, text+" mm", 20)
	}
	point, cost := ".", 35
	for _, other := range in.Typed.Texts {
		if i := strings.IndexAny(other, ".,"); i >= 0 {
			point, cost = other[i:i+1], 0
			break
		}
	}
	for i := len(text); i >= 0; i-- {
		// A point between two digits, and no other sign of a part; of the first number only.
		digits := strings.TrimLeft(text, "-−+ ")
		first := len(text) - len(digits)
		if i > first && i < len(text) && !strings.ContainsAny(text, ".,/⁄∕") && strings.Trim(text[first:i+1], "0123456789") == "" {
			reread(calc.PointLost, text[:i]+point+text[i:], cost)
		}
	}
	for i := 1; i < len(text); i++ { // a whole number that runs into a fraction below one, of a tape
		m := slowParted.FindStringSubmatch(text[:i] + " " + text[i:])
		if m == nil || !isDigit(text[i-1]) || len(m[1]) > 2 {
			continue
		}
		above, _ := strconv.Atoi(m[2])
		if below, _ := strconv.Atoi(m[3]); above < below && slices.Contains([]int{2, 3, 4, 8, 16, 32, 64}, below) {
			reread(calc.SpaceLost, text[:i]+" "+text[i:], 0)
		}
	}
	for i := range text {
		shorter := text[:i] + text[i+1:]
		for j := range shorter {
			if isDigit(shorter[j]) && shorter[:j+1]+shorter[j:] == text && (i == 0 || text[i-1] != text[i]) {
				reread(calc.DigitTwice, shorter, 10)
				break
			}
		}
	}
	for i := 0; i+1 < len(text); i++ {
		if one, two := text[i], text[i+1]; isDigit(one) && isDigit(two) && one != two && !(two == '0' && (i == 0 || !isDigit(text[i-1]))) {
			reread(calc.DigitsSwapped, text[:i]+string(two)+string(one)+text[i+2:], 40)
		}
	}
	return list
}

var (
	slowFraction = regexp.MustCompile(`/([0-9]+)`)
	slowParted   = regexp.MustCompile(`^[-−+]?([1-9][0-9]*) ([1-9][0-9]*)/([0-9]+)$`)
)

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

// sayDoubts doubts answer after answer: each time the one slip that mends the most, and
// of those the cheapest by what it costs and how far its answer is from the middle of
// its bounds; where no slip mends at least half as much as speaks against an answer,
// that answer without a guess.
func sayDoubts(s *slowSheet) {
	var broken []calc.Bound
	child := slowChild(&s.Input)
	for _, b := range calc.Bounds {
		if _, is := place(&s.Input, b, child); is {
			broken = append(broken, b)
		}
	}
	for len(broken) > 0 {
		about := func(a, partner calc.Answer) (n int) {
			for _, b := range broken {
				if decided(a, b) || decided(partner, b) {
					n++
				}
			}
			return n
		}
		own := func(a calc.Answer) (n int) {
			for _, b := range broken {
				if b.Of == a && b.Beside == calc.NoAnswer {
					n++
				}
			}
			return n
		}
		var answer, with, worst calc.Answer
		var meant slowMeant
		mends, against := 0, 0
		for a := calc.Bicep; a < calc.AnswerCount; a++ {
			if !slices.ContainsFunc(broken, func(b calc.Bound) bool { return named(a, b) }) {
				continue
			}
			if n := about(a, calc.NoAnswer) + own(a); n > against {
				worst, against = a, n
			}
			partner, armBust := pairedWith(a), a == calc.Bicep || a == calc.BicepOther || a == calc.Bust
			if armBust && *where[partner](&s.Input) == *where[a](&s.Input) {
				continue
			}
			tries := everyReading(&s.Input, a)
			if partner != calc.NoAnswer && (armBust || where[partner](&s.Input).Known) {
				tries = append(tries, slowMeant{calc.Exchanged, where[partner](&s.Input).Length, "", 5})
			}
			if slices.Contains(halves, a) && where[partner](&s.Input).Known {
				l := where[a](&s.Input).Length
				tries = append(tries, slowMeant{calc.BothWhole, (l + l%2) / 2, "", 0})
			}
			for _, m := range tries {
				in, other := s.Input, calc.NoAnswer
				where[a](&in).Length = m.length
				if m.slip == calc.Exchanged {
					other = partner
					*where[a](&in), *where[partner](&in) = *where[partner](&s.Input), *where[a](&s.Input)
				}
				if m.slip == calc.BothWhole {
					other = partner
					l := where[partner](&s.Input).Length
					where[partner](&in).Length = (l + l%2) / 2
				}
				far, good, child := 0, true, slowChild(&in)
				suspect := func(x calc.Answer) bool { return x != a && x != other && x != calc.NoAnswer && own(x) > 0 }
				for _, b := range slices.Concat(boundsOf[a], boundsOf[other]) {
					if b.Beside != calc.NoAnswer && (suspect(b.Of) || suspect(b.Beside)) {
						continue
					}
					at, is := place(&in, b, child)
					good = good && !is
					far = max(far, int(100*max(at, -at)+1e-9))
				}
				if n := about(a, other); good && (n > mends || n == mends && (m.cost+far < meant.cost || m.cost+far == meant.cost && a == answer && m.slip < meant.slip)) {
					answer, with, mends, meant = a, other, n, m
					meant.cost += far
				}
			}
		}
		if 2*mends < against {
			answer, with, meant = worst, calc.NoAnswer, slowMeant{}
		}
		s.sayDoubt(broken, answer, meant)
		broken = slices.DeleteFunc(broken, func(b calc.Bound) bool { return decided(answer, b) || decided(with, b) })
	}
}

// sayDoubt names the first of the bounds that speak against an answer: one of its own
// before one that names it, and that before one that it comes off.
func (s *slowSheet) sayDoubt(broken []calc.Bound, a calc.Answer, meant slowMeant) {
	against := slices.DeleteFunc(slices.Clone(broken), func(b calc.Bound) bool { return !decided(a, b) })
	slices.SortStableFunc(against, func(x, y calc.Bound) int {
		grade := func(b calc.Bound) int {
			switch {
			case b.Beside == calc.NoAnswer:
				return 0
			case named(a, b):
				return 1
			}
			return 2
		}
		return grade(x) - grade(y)
	})
	b := against[0]
	f := calc.Finding{Code: b.Code, Level: calc.Warn, About: calc.OfSheet, Answer: a, Amount: where[a](&s.Input).Length, Doubt: calc.Doubt{Bound: &b}}
	switch {
	case b.Beside == calc.NoAnswer:
	case b.Beside == a:
		f.Other = where[b.Of](&s.Input).Length
	default:
		f.Other = where[b.Beside](&s.Input).Length
	}
	if meant.slip != calc.NoSlip {
		f.Slips, f.Guess, f.Doubt.Text = []calc.Slip{meant.slip}, meant.length, meant.text
	}
	if meant.slip == calc.Exchanged && slices.Contains(pairs[0][:], a) {
		f.Code = calc.ArmForBust
	}
	s.say(f)
}

// A slide over 2 in a side is checked, over 4 in it stops; 5 and 10 cm on a metric
// ruler. Ours.
func saySlideFar(s *slowSheet) {
	if s.plan.Open {
		return
	}
	check, stop := 2*units.Inch, 4*units.Inch
	if s.Ruler.System() == units.Centimetres {
		check, stop = 50*units.Millimetre, 100*units.Millimetre
	}
	var far units.Length
	for _, side := range s.plan.Sides {
		if side.Slide.Abs() > far.Abs() {
			far = side.Slide
		}
	}
	if far.Abs() <= check {
		return
	}
	f := calc.Finding{Code: calc.SlideFar, Level: calc.Warn, About: calc.OfSheet, Amount: far, Other: check}
	if far.Abs() > stop {
		f.Level, f.Other = calc.Stop, stop
	}
	s.say(f)
}
