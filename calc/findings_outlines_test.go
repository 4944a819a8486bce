package calc_test

import (
	"math"
	"slices"

	"capscye/calc"
	"capscye/units"
)

// What is to be said of the outline below the underarm, once the pieces are planned.

func slowOutlines() []func(*slowSheet) {
	return []func(*slowSheet){
		each(sayShortAtLine), each(sayOutlineUnknown), each(saySharpBend), each(sayGrowthsDiffer), each(sayOutOfReach),
		each(sayBustLine), sayNarrowerAtCorners, sayBindsBelow,
	}
}

func (p slowPiece) moves() bool { return p.turns() || p.slid() }

func toCounts(mm float64) units.Length {
	return units.Length(math.Round(mm * float64(units.Millimetre)))
}

// Tapered from its corners, the piece measures less at the line of its girth than its
// sides pivot and slide, or more where it comes in: worth a word from 0.1 mm, a check from
// a ruler mark around the body.
func sayShortAtLine(s *slowSheet, p slowPiece) {
	gain, ok := p.atLine()
	short := p.copies * (p.gains() - gain)
	if !ok || short.Abs() < units.Millimetre/10 {
		return
	}
	level := calc.Note
	if short.Abs() >= s.Ruler.Mark() {
		level = calc.Warn
	}
	s.say(calc.Finding{Code: calc.ShortAtLine, Level: level, About: p.of, Amount: short})
}

// What a piece that is tapered from its corners measures at the line cannot be told
// before corner, seam and lean can: named is all that is missing for that, of the sides
// that cannot be told. Where everything is there and cannot be, that is said instead
// (lean-impossible, out-of-reach).
func sayOutlineUnknown(s *slowSheet, p slowPiece) {
	var missing []calc.Answer
	lacks := func(a calc.Answer, r units.Reading) {
		if !r.Known && !slices.Contains(missing, a) {
			missing = append(missing, a)
		}
	}
	b := s.Bodice
	for h, seam := range p.seams {
		if _, ok := seam.atLine(); ok {
			continue
		}
		switch p.subjects[h] {
		case calc.OfSleeveFront, calc.OfSleeveBack:
			lacks(calc.CapHeight, s.Sleeve.CapHeight)
			lacks(calc.UnderarmSeam, longAtAll(s.Sleeve.UnderarmSeam))
			lacks(calc.HemWidth, s.Sleeve.HemWidth)
		case calc.OfBodiceFront:
			lacks(calc.CornerOutFront, b.CornerOutFront)
			lacks(calc.CornerDownFront, b.CornerDownFront)
			lacks(calc.BodiceFrontWidth, b.Front)
			lacks(calc.WaistFront, b.WaistFront)
		case calc.OfBodiceBack:
			lacks(calc.CornerOutBack, b.CornerOutBack)
			lacks(calc.CornerDownBack, b.CornerDownBack)
			lacks(calc.BodiceBackWidth, b.Back)
			lacks(calc.WaistBack, b.WaistBack)
		}
		if p.of == calc.OfSleeve {
			lacks(calc.SleeveWidth, s.Sleeve.Width)
			lacks(calc.SleeveMeasured, units.Reading{Known: s.Sleeve.Measured != calc.NotTold})
			lacks(calc.SleeveAllowance, units.Reading{Known: s.Sleeve.Measured != calc.EdgeToEdge || s.Sleeve.Allowance.Known})
		} else {
			lacks(calc.SideSeam, longAtAll(b.SideSeam))
			lacks(calc.BodiceMeasured, units.Reading{Known: b.Measured != calc.NotTold})
			lacks(calc.BodiceAllowance, units.Reading{Known: b.Measured != calc.EdgeToEdge || b.Crossings == 0 || b.Allowance.Known})
		}
	}
	if len(missing) > 0 {
		s.say(calc.Finding{Code: calc.OutlineUnknown, Level: calc.Note, About: p.of, Missing: missing})
	}
}

// longAtAll is a seam; one of no length tells as little as none.
func longAtAll(r units.Reading) units.Reading {
	r.Known = r.Known && r.Length > 0
	return r
}

// A bodice that is altered needs its bust line: without one it is taken at the underarm,
// and one that lies below the side seam is none.
func sayBustLine(s *slowSheet, p slowPiece) {
	if p.of != calc.OfBust || !p.moves() {
		return
	}
	if !s.Bodice.BustDown.Known {
		s.say(calc.Finding{Code: calc.BustLineAssumed, Level: calc.Note, About: calc.OfBust})
	}
	if bustLineImpossible(s.Input) {
		s.say(calc.Finding{Code: calc.BustLineImpossible, Level: calc.Warn, About: calc.OfBust,
			Amount: s.Bodice.BustDown.Length, Other: s.Bodice.SideSeam.Length})
	}
}

// A sleeve whose corners turned upward lies narrower there than at its bicep line: said
// where that rounds to a mark of the ruler.
func sayNarrowerAtCorners(s *slowSheet) {
	p := s.pieces[0]
	front, back := p.seams[0], p.seams[1]
	if s.plan.Open || !p.moves() || !front.measured || !back.measured || !front.reached || !back.reached {
		return
	}
	across := front.lies.x + back.lies.x
	less := mm(p.girth.Flat.Length+p.gains()) - across
	if onRuler(s, toCounts(less)) > 0 {
		s.say(calc.Finding{Code: calc.NarrowerAtCorners, Level: calc.Note, About: p.of, Amount: toCounts(across),
			Other: toCounts(front.lies.y - front.corner.y), Third: toCounts(back.lies.y - back.corner.y)})
	}
}

// A new seam that bends by more than 15 degrees wants care in smoothing; the bound is
// ours. Where it goes out to a point that fits, it is that seam which is smoothed.
func saySharpBend(s *slowSheet, p slowPiece) {
	bend := 0.0
	for h, drawn := range p.ofIts(s.drawn()) {
		seam := p.seams[h]
		if drawn.fits {
			seam = drawn
		}
		bend = max(bend, seam.bend())
	}
	if bend > 15 && p.moves() {
		s.say(calc.Finding{Code: calc.SharpBend, Level: calc.Note, About: p.of, Degrees: bend})
	}
}

// ofIts are the two of a piece.
func (p slowPiece) ofIts(seams [4]slowSeam) []slowSeam {
	if p.of == calc.OfBust {
		return seams[2:]
	}
	return seams[:2]
}

// onRuler is a length as the ruler shows it.
func onRuler(s *slowSheet, l units.Length) units.Length { return exactly(l).toMark(s.Ruler).length() }

// Front and back are sewn together below the underarm: where they grow unlike on the
// paper, by the marks and out to the points that fit, they have to be trued. A reading: by
// what the ruler shows.
func sayGrowthsDiffer(s *slowSheet, p slowPiece) {
	drawn := p.ofIts(s.drawn())
	front, ok := drawn[0].growth()
	back, both := drawn[1].growth()
	if differ := toCounts(math.Abs(front - back)); ok && both && onRuler(s, differ) > 0 {
		s.say(calc.Finding{Code: calc.GrowthsDiffer, Level: calc.Note, About: p.of, Amount: differ})
	}
}

// No turn brings the corner so far in; or the corner slides in to where no curve of the
// length that is left reaches.
func sayOutOfReach(s *slowSheet, p slowPiece) {
	b := s.Bodice
	curves := map[calc.Subject]units.Reading{
		calc.OfSleeveFront: s.Sleeve.CapFront, calc.OfSleeveBack: s.Sleeve.CapBack, calc.OfBodiceFront: b.ArmholeFront, calc.OfBodiceBack: b.ArmholeBack,
	}
	for h, seam := range p.seams {
		if !seam.measured {
			continue
		}
		curve := curves[p.subjects[h]]
		beyond := func(seam slowSeam) bool {
			return seam.slide < 0 && curve.Known && (spot{}).to(seam.lies) > mm(curve.Length)+seam.slide
		}
		marked := s.marked[p.subjects[h]-calc.OfSleeveFront]
		switch {
		case seam.reached && marked.reached && !beyond(seam) && !beyond(marked):
			continue
		case seam.reached && seam.slide < 0:
			s.say(calc.Finding{Code: calc.OutOfReach, Level: calc.Stop, About: p.of, Other: -p.sides[h].Slide})
		default:
			s.say(calc.Finding{Code: calc.OutOfReach, Level: calc.Stop, About: p.of, Amount: p.sides[h].Pivot})
		}
		return
	}
}

// slowLevel is a level below the underarm, and what it lacks around.
type slowLevel struct {
	of            calc.Subject
	at            calc.Place
	lacks, marked units.Length
	gains         [2]float64 // of the sides, by the marks
	down          float64    // what part of the way down the old seam
}

// binds tells that it lacks something, by the exact amounts or by the marks.
func (l slowLevel) binds() bool { return l.lacks > 0 || l.marked > 0 }

// A long sleeve tapers back to its hem, a bodice to its waist; what lies there keeps its
// width, and the elbow gains a part. A level that comes out smaller than girth + ease, on
// the table or by the sums, binds.
func sayBindsBelow(s *slowSheet) {
	for _, l := range s.levels() {
		amount := l.lacks
		if amount <= 0 {
			amount = l.marked
		}
		if l.binds() {
			s.say(calc.Finding{Code: calc.BindsBelow, Level: calc.Warn, About: l.of, At: l.at, Amount: amount,
				Other: exactly(amount).over(exactly(s.sharing(l.of))).rounded().length()})
		}
	}
}

func (s *slowSheet) levels() (list []slowLevel) {
	if s.plan.Open {
		return nil
	}
	add := func(of calc.Subject, at calc.Place, girth, ease units.Reading, width exact, gains, marked [2]float64, down float64) {
		wanted := exactReading(girth).plus(exactReading(ease))
		if !wanted.known() || !width.known() {
			return
		}
		lacks := wanted.minus(width).length()
		list = append(list, slowLevel{of, at, lacks - toCounts(gains[0]+gains[1]), lacks - toCounts(marked[0]+marked[1]), marked, down})
	}
	none := [2]float64{}
	if s.Sleeve.Long {
		add(calc.OfSleeve, calc.AtWrist, s.Wrist, s.WristEase, paperSleeve(s.Sleeve, s.Sleeve.HemWidth), none, none, 1)
		down := s.elbowDown()
		gains, ok := elbowGains(s.seams[:2], down)
		if marked, _ := elbowGains(s.marked[:2], down); ok {
			add(calc.OfSleeve, calc.AtElbow, s.Elbow, s.ElbowEase, paperSleeve(s.Sleeve, s.Sleeve.ElbowWidth), gains, marked, down)
		}
	}
	add(calc.OfBust, calc.AtWaist, s.Waist, s.WaistEase, s.bodiceWidth(s.Bodice.WaistFront, s.Bodice.WaistBack), none, none, 1)
	add(calc.OfBust, calc.AtHip, s.Hip, s.HipEase, s.bodiceWidth(s.Bodice.HipFront, s.Bodice.HipBack), none, none, 2)
	return list
}

func (s *slowSheet) bodiceWidth(front, back units.Reading) exact {
	none := units.Reading{}
	return oraclePiece(s.Bodice, front, none).plus(oraclePiece(s.Bodice, back, none)).times(exactly(2))
}

// drawn is every seam as it is drawn: by the marks, and where a level binds, out to the
// next mark of the ruler at which it does not.
func (s *slowSheet) drawn() [4]slowSeam {
	seams := s.marked
	for _, l := range s.levels() {
		first := 0
		if l.of == calc.OfBust {
			first = 2
		}
		for h := range 2 {
			if side := s.plan.Sides[first+h]; !l.binds() || side.PivotMark == 0 && side.SlideMark == 0 {
				continue
			}
			sides := s.sharing(l.of)
			needed := toCounts(l.gains[h])*sides + max(l.marked, 0)
			out := (needed / sides).Round(s.Ruler.Mark()) - 2*s.Ruler.Mark()
			for ; out*sides < needed; out += s.Ruler.Mark() {
			}
			seam := &seams[first+h]
			seam.fits = true
			switch l.at {
			case calc.AtElbow:
				seam.fitDown, seam.fitOut = l.down, mm(out)
			case calc.AtWrist, calc.AtWaist:
				seam.endOut = mm(out)
			} // the hip lies below what was measured of the seam
		}
	}
	return seams
}

// sharing is how many sides around the body share what a level lacks: those whose seam
// is drawn anew, for nobody draws the others; all of them where none is.
func (s *slowSheet) sharing(of calc.Subject) (sides units.Length) {
	p := s.pieceOf(calc.Finding{About: of})
	for _, side := range p.sides {
		if side.PivotMark != 0 || side.SlideMark != 0 || !p.marked() {
			sides++
		}
	}
	if of == calc.OfBust {
		sides *= 2 // left and right
	}
	return sides
}

// elbowDown is the part of the way down the seam at which the old sleeve is as wide as it was
// measured at the elbow, or half of it.
func (s *slowSheet) elbowDown() (part float64) {
	part = 0.5
	flat, hem, elbow := paperSleeve(s.Sleeve, s.Sleeve.Width), paperSleeve(s.Sleeve, s.Sleeve.HemWidth), paperSleeve(s.Sleeve, s.Sleeve.ElbowWidth)
	if flat.known() && hem.known() && elbow.known() && hem.less(elbow) && elbow.less(flat) {
		part = flat.minus(elbow).over(flat.minus(hem)).float()
	}
	return part
}

// elbowGains are how much farther out the sides lie at the elbow.
func elbowGains(seams []slowSeam, part float64) (gains [2]float64, ok bool) {
	for h, seam := range seams {
		out, known := seam.out(part * seam.below)
		_, atLine := seam.atLine()
		switch {
		case !seam.moves():
			out, known = 0, true
		case !atLine: // what is not known at the bicep line is not known further down
			known = false
		case !known: // straight from the last mark to the hem; a reading where it comes in
			out, known = seam.total()*(1-part), true
		}
		if !known {
			return gains, false
		}
		gains[h] = out
	}
	return gains, true
}
