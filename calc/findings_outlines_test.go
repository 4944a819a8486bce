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
// ours.
func saySharpBend(s *slowSheet, p slowPiece) {
	if bend := max(p.seams[0].bend(), p.seams[1].bend()); bend > 15 {
		s.say(calc.Finding{Code: calc.SharpBend, Level: calc.Note, About: p.of, Degrees: bend})
	}
}

// onRuler is a length as the ruler shows it.
func onRuler(s *slowSheet, l units.Length) units.Length { return exactly(l).toMark(s.Ruler).length() }

// Front and back are sewn together below the underarm: where they grow unlike, they have
// to be trued. A reading: by what the ruler shows.
func sayGrowthsDiffer(s *slowSheet, p slowPiece) {
	front, ok := p.seams[0].growth()
	back, both := p.seams[1].growth()
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

// A long sleeve tapers back to its hem, a bodice to its waist; what lies there keeps its
// width, and the elbow gains a part. A level that comes out smaller than girth + ease binds.
func sayBindsBelow(s *slowSheet) {
	if s.plan.Open {
		return
	}
	if s.Sleeve.Long {
		s.level(calc.OfSleeve, calc.AtWrist, s.Wrist, s.WristEase, paperSleeve(s.Sleeve, s.Sleeve.HemWidth), 0)
		gain, ok := s.elbowGain()
		if width := paperSleeve(s.Sleeve, s.Sleeve.ElbowWidth); ok {
			s.level(calc.OfSleeve, calc.AtElbow, s.Elbow, s.ElbowEase, width, gain)
		}
	}
	s.level(calc.OfBust, calc.AtWaist, s.Waist, s.WaistEase, s.bodiceWidth(s.Bodice.WaistFront, s.Bodice.WaistBack), 0)
	s.level(calc.OfBust, calc.AtHip, s.Hip, s.HipEase, s.bodiceWidth(s.Bodice.HipFront, s.Bodice.HipBack), 0)
}

func (s *slowSheet) bodiceWidth(front, back units.Reading) exact {
	none := units.Reading{}
	return oraclePiece(s.Bodice, front, none).plus(oraclePiece(s.Bodice, back, none)).times(exactly(2))
}

func (s *slowSheet) level(of calc.Subject, at calc.Place, girth, ease units.Reading, width exact, gain float64) {
	wanted := exactReading(girth).plus(exactReading(ease))
	if !wanted.known() || !width.known() {
		return
	}
	lacks := wanted.minus(width).length() - toCounts(gain)
	if sides := s.sharing(of); lacks > 0 {
		s.say(calc.Finding{Code: calc.BindsBelow, Level: calc.Warn, About: of, At: at, Amount: lacks, Other: exactly(lacks).over(exactly(sides)).rounded().length()})
	}
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

// elbowGain is how much farther out both sides lie at the elbow: that is where the old
// sleeve is as wide as it was measured there, or half way down.
func (s *slowSheet) elbowGain() (gain float64, ok bool) {
	part := 0.5
	flat, hem, elbow := paperSleeve(s.Sleeve, s.Sleeve.Width), paperSleeve(s.Sleeve, s.Sleeve.HemWidth), paperSleeve(s.Sleeve, s.Sleeve.ElbowWidth)
	if flat.known() && hem.known() && elbow.known() && hem.less(elbow) && elbow.less(flat) {
		part, _ = flat.minus(elbow).over(flat.minus(hem)).r.Float64()
	}
	for _, seam := range s.pieces[0].seams {
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
			return 0, false
		}
		gain += out
	}
	return gain, true
}
