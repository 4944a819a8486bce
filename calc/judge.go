package calc

import (
	"slices"

	"capscye/units"
)

// piece is the sleeve or the bodice, as the judging of the plan sees it.
type piece struct {
	of          Subject
	girth       Girth
	front, back SidePlan
	copies      units.Length // how often each side occurs around the body
	kept        bool         // already cut
}

// judge adds what the finished plan tells to the findings of its making.
func (c *computation) judge() {
	in, p := c.in, &c.plan
	keep := in.Method.Armhole == KeepArmhole
	sleeve, bodice := p.pieceOf(in, OfSleeve), p.pieceOf(in, OfBust)
	if !p.Sleeve.Body.Known && !p.Bust.Body.Known && !in.Unread {
		c.find(Finding{Code: NothingAsked, About: OfSheet, Answer: AnyGirth})
	}
	if in.Bicep.Known && in.BicepOther.Known && in.Bicep != in.BicepOther {
		c.find(Finding{Code: ArmsDiffer, About: OfSleeve, Amount: (in.Bicep.Length - in.BicepOther.Length).Abs()})
	}
	c.judgeMeasured()
	c.judgeBody()
	c.judgeSize()
	if p.Open {
		c.blame()
		c.sortFindings()
		return
	}
	c.judgeLength(sleeve)
	c.judgeMeans(sleeve)
	c.judgeMeans(bodice)
	if longer := sleeve.front.Slide + sleeve.back.Slide; keep && longer != 0 {
		c.find(Finding{Code: CapTakesSlide, Level: Warn, About: OfSleeve, Amount: longer, Ways: []Way{TryTheSeam}})
	}
	c.judgeSlide()
	c.judgeLimit(sleeve, in.Method.LimitSleeve)
	c.judgeLimit(bodice, in.Method.LimitBodice)
	c.judgeFit(sleeve)
	c.judgeFit(bodice)
	c.judgeOutline(OfSleeve, p.Sleeve, SleeveFront)
	c.judgeOutline(OfBust, p.Bust, BodiceFront)
	c.blame()
	c.sortFindings()
}

// judgeMeasured says how the widths of the bodice are taken, where that was not told of
// it, and where it was told otherwise than of the sleeve: two papers of one pattern are
// seldom measured in two ways. A printed bust needs neither.
func (c *computation) judgeMeasured() {
	s, b := c.in.Sleeve, c.in.Bodice
	if b.FinishedBust.Known || !b.Front.Known && !b.Back.Known || b.Measured == NotTold {
		return
	}
	if b.LikeSleeve {
		c.find(Finding{Code: BodiceAsSleeve, About: OfBust})
	}
	apart := s.Measured != b.Measured
	if !apart && b.seamsCrossed() && s.Allowance.Known && b.Allowance.Known {
		apart = s.Allowance != b.Allowance
	}
	if apart && s.Measured != NotTold && s.Width.Known {
		c.find(Finding{Code: MeasuredDifferently, Level: Warn, About: OfSheet, Amount: s.Allowance.Or(0), Other: b.Allowance.Or(0)})
	}
}

// TooFar tells a slide that no hand would make; such a plan is not handed out as a job.
func (p Plan) TooFar() bool {
	return slices.ContainsFunc(p.Findings, func(f Finding) bool { return f.Code == SlideFar && f.Level == Stop })
}

// sortFindings puts the most urgent first.
func (c *computation) sortFindings() {
	slices.SortStableFunc(c.plan.Findings, func(a, b Finding) int { return ByUrgency(a.Rank(), b.Rank()) })
}

// judgeMeans says by what means a need is met, or that there is none.
func (c *computation) judgeMeans(p piece) {
	if !p.girth.Asked() || p.kept {
		return
	}
	if p.girth.Need.Length < 0 {
		c.find(Finding{Code: ComesIn, About: p.of, Amount: -p.girth.Need.Length})
	}
	pivots := p.front.Pivot != 0 || p.back.Pivot != 0
	slides := p.front.Slide != 0 || p.back.Slide != 0
	f := Finding{About: p.of, Amount: p.front.Slide + p.back.Slide}
	switch {
	case pivots && slides:
		f.Code = PivotAndSlide
	case pivots:
		f.Code = PivotOnly
	case slides:
		f.Code = SlideOnly
	default:
		f.Code = FitsAlready
	}
	if f.Code != FitsAlready || p.girth.Need.Length == 0 {
		c.find(f)
	}
}

// judgeLength says that a sleeve is altered as a short one because nobody said what it is.
func (c *computation) judgeLength(sleeve piece) {
	if c.in.Sleeve.LengthAssumed && (sleeve.front.Altered() || sleeve.back.Altered()) {
		c.find(Finding{Code: LengthAssumed, About: OfSleeve})
	}
}

// Altered tells that there is something to mark.
func (s SidePlan) Altered() bool { return s.PivotMark != 0 || s.SlideMark != 0 }

// judgeSlide speaks of a slide that no hand would make.
func (c *computation) judgeSlide() {
	var slide units.Length
	for _, s := range c.plan.Sides {
		if s.Slide.Abs() > slide.Abs() {
			slide = s.Slide
		}
	}
	check, stop := SlideBounds(c.in.Ruler)
	if slide.Abs() <= check {
		return
	}
	f := Finding{Code: SlideFar, Level: Warn, About: OfSheet, Amount: slide, Other: check}
	if slide.Abs() > stop {
		f.Level, f.Other = Stop, stop
	}
	if c.in.Method.Armhole == AlterArmhole {
		f.Ways = []Way{OtherSize}
	}
	c.find(f)
}

// judgeLimit speaks of a limit beyond the usual only where a side uses it.
func (c *computation) judgeLimit(p piece, limit units.Length) {
	if used := max(p.front.Pivot.Abs(), p.back.Pivot.Abs()); used > UsualLimit {
		c.find(Finding{Code: LimitWide, Level: Warn, About: p.of, Amount: limit, Other: UsualLimit, Ways: []Way{NarrowerLimit}})
	}
}

// judgeFit compares what comes out with what was asked.
func (c *computation) judgeFit(p piece) {
	c.judgeMissed(p)
	var extra, short, back units.Length
	for _, s := range []SidePlan{p.front, p.back} {
		if !s.Need.Known {
			continue
		}
		beyond := s.Total + s.LeftOver - s.Need.Length
		extra += p.copies * max(beyond, 0)
		short += p.copies * max(-beyond, 0)
	}
	for _, s := range []SidePlan{p.front, p.back} {
		if need := s.Need.Or(0); need >= 0 && s.Pivot < 0 || need <= 0 && s.Pivot > 0 {
			back = max(back, s.Pivot.Abs())
		}
	}
	hold := c.in.Method.Follow == Hold
	if extra > 0 {
		c.find(Finding{Code: ExtraEase, Level: Warn, About: p.of, Amount: extra, Ways: c.waysOfExtra(p)})
	}
	if short > 0 {
		c.find(Finding{Code: TooFarIn, Level: Warn, About: p.of, Amount: short, Ways: []Way{HoldIt, MoreEaseThere, OtherSize}})
	}
	missed := p.front.LeftOver != 0 || p.back.LeftOver != 0
	if gain := p.copies * (p.front.Total + p.back.Total); !p.girth.Body.Known && gain != 0 && !missed {
		f := Finding{Code: FollowsUnasked, Level: Warn, About: p.of, Amount: gain, Other: p.front.Slide + p.back.Slide, Ways: []Way{MeasureTheGirth}}
		if !hold {
			f.Ways = append(f.Ways, HoldIt)
		}
		c.find(f)
	}
	if back > 0 && (p.girth.Body.Known || !missed) {
		c.find(Finding{Code: PivotsBack, Level: Warn, About: p.of, Amount: back, Ways: []Way{LetItOut}})
	}
	if after := p.girth.EaseAfter; c.in.Fabric == Woven && after.Known && after.Length < 0 {
		c.find(Finding{Code: TighterThanBody, Level: Warn, About: p.of, Amount: -after.Length, Ways: waysOfTight(p)})
	}
}

// judgeMissed reports what pivot and slide cannot reach: once for the piece
// where front and back miss alike, else side by side.
func (c *computation) judgeMissed(p piece) {
	f, b := p.front.LeftOver, p.back.LeftOver
	front, back := SleeveFront.Subject(), SleeveBack.Subject()
	if p.of == OfBust {
		front, back = BodiceFront.Subject(), BodiceBack.Subject()
	}
	if f == b {
		c.missed(p, p.of, p.copies*(f+b), f, Front, Back)
		return
	}
	c.missed(p, front, f, f, Front)
	c.missed(p, back, b, b, Back)
}

// missed is one finding of that kind; side is what one side misses. A bodice
// that is already cut and wider than asked is no reason to stop.
func (c *computation) missed(p piece, about Subject, amount, side units.Length, halves ...Half) {
	switch {
	case amount == 0:
	case p.kept && amount < 0:
		c.find(Finding{Code: ExtraEase, About: about, Amount: -amount})
	default:
		c.find(Finding{Code: CannotReach, Level: Stop, About: about, Amount: amount, Ways: c.waysOut(p, side, halves)})
	}
}
