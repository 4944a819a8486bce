package calc

import (
	"slices"

	"capscye/units"
)

// Doubt is why an answer is doubted, and what may have been meant.
type Doubt struct {
	Bound *Bound       // what it does not keep, nil for no doubt
	Slips []Slip       // what may have gone wrong in typing
	Guess units.Length // what may have been meant, where there is one slip
	Text  string       // the same as it would have been typed; "" where no text is known
	// Causes tells that a stop may follow from the answer. The stop has the doubt too,
	// without this.
	Causes bool
}

// doubts are the bounds that a sheet does not keep.
type doubts struct {
	in     *Input
	broken []int // of Bounds
}

// touches tells by which answers it is decided whether a bound is kept: those that it
// names, and what is taken off them where they are held against each other.
var touches = func() (by [AnswerCount][]bool) {
	for a := range by {
		by[a] = make([]bool, len(Bounds))
	}
	for i, b := range Bounds {
		by[b.Of][i] = true
		if b.Beside == NoAnswer {
			continue
		}
		by[b.Beside][i] = true
		for _, a := range []Answer{b.Of, b.Beside} {
			for _, off := range takenOff(a) {
				by[off][i] = true
			}
		}
	}
	return by
}()

// touching are the bounds that touches tells of, by their places in [Bounds].
var touching = func() (by [AnswerCount][]int) {
	for a := range by {
		for i, is := range touches[a] {
			if is {
				by[a] = append(by[a], i)
			}
		}
	}
	return by
}()

// takenOff are the answers that come off a width before it is held against another.
func takenOff(a Answer) []Answer {
	switch a {
	case SleeveWidth, HemWidth, ElbowWidth:
		return []Answer{SleeveAllowance}
	case BodiceFrontWidth:
		return []Answer{BodiceAllowance, TakeOffFront}
	case BodiceBackWidth:
		return []Answer{BodiceAllowance, TakeOffBack}
	case WaistFront, WaistBack, HipFront, HipBack:
		return []Answer{BodiceAllowance}
	}
	return nil
}

// judgeAnswers doubts what the bounds do not allow. Where one slip in one answer
// would explain it, that is the guess: the slip that explains the most, and of those
// the likeliest.
func (c *computation) judgeAnswers() {
	d := doubts{in: &c.in}
	h := hold(&c.in)
	for i := range Bounds {
		if !Bounds[i].kept(&h) {
			d.broken = append(d.broken, i)
		}
	}
	for len(d.broken) > 0 {
		a, explained, meant := d.likeliest()
		if doubted, most := d.mostDoubted(); 2*explained < most {
			a, meant = doubted, reading{}
		}
		partner := NoAnswer
		if meant.slip.TakesPartner() {
			partner = PartnerOf(a)
		}
		c.find(d.finding(a, meant))
		d.settle(a, partner)
	}
}

// finding is the doubt about an answer, for the gravest of the bounds that it breaks:
// one of its own before one beside another.
func (d *doubts) finding(a Answer, meant reading) Finding {
	var why *Bound
	for _, i := range d.broken {
		b := &Bounds[i]
		if touches[a][i] && (why == nil || b.Beside == NoAnswer && why.Beside != NoAnswer || b.has(a) && !why.has(a)) {
			why = b
		}
	}
	f := Finding{Code: why.Code, Level: Warn, About: OfSheet, Answer: a, Amount: d.in.answer(a).Length, Doubt: Doubt{Bound: why}}
	if why.Beside != NoAnswer {
		f.Other = d.in.answer(why.other(a)).Length
	}
	if meant.slip != NoSlip {
		f.Slips, f.Guess, f.Doubt.Text = []Slip{meant.slip}, meant.length, meant.text
	}
	if meant.slip == Exchanged && (a == Bicep || a == Bust) {
		f.Code = ArmForBust
	}
	return f
}

// settle leaves out the bounds of what has been said.
func (d *doubts) settle(a, partner Answer) {
	var left []int
	for _, i := range d.broken {
		if !touches[a][i] && (partner == NoAnswer || !touches[partner][i]) {
			left = append(left, i)
		}
	}
	d.broken = left
}

// likeliest is the answer and what was meant by it that explains the most of what is
// broken, as far as one slip can; 0 explained where nothing does.
func (d *doubts) likeliest() (best Answer, explained int, meant reading) {
	for a := Bicep; a < AnswerCount; a++ {
		if !d.named(a) {
			continue
		}
		try := func(r reading, partner Answer) {
			n := d.count(a, partner)
			if n < explained {
				return
			}
			fit, ok := d.fit(a, partner, r)
			r.cost += fit
			cheaper := r.cost < meant.cost || r.cost == meant.cost && a == best && r.slip < meant.slip
			if ok && (n > explained || cheaper) {
				best, explained, meant = a, n, r
			}
		}
		p := PartnerOf(a)
		if (p == Bust || p == Bicep) && *d.in.answer(p) == *d.in.answer(a) { // one was typed twice: nothing tells the other
			continue
		}
		for _, r := range d.in.readings(a) {
			try(r, NoAnswer)
		}
		if p != NoAnswer && (d.in.answer(p).Known || p == Bust || p == Bicep) {
			try(reading{slip: Exchanged, length: d.in.answer(p).Length, cost: costs[Exchanged]}, p)
		}
		if isHalf(a) && d.in.answer(p).Known {
			try(reading{slip: BothWhole, length: d.in.answer(a).Length.Half(), cost: costs[BothWhole]}, p)
		}
	}
	return best, explained, meant
}

// named tells that something broken names an answer.
func (d *doubts) named(a Answer) bool {
	for _, i := range d.broken {
		if Bounds[i].has(a) {
			return true
		}
	}
	return false
}

// mostDoubted is the answer that most of what is broken is about; a bound of its own
// counts for two.
func (d *doubts) mostDoubted() (a Answer, most int) {
	for other := Bicep; other < AnswerCount; other++ {
		if !d.named(other) {
			continue
		}
		n := d.count(other, NoAnswer)
		for _, i := range d.broken {
			if Bounds[i].Of == other && Bounds[i].Beside == NoAnswer {
				n++
			}
		}
		if n > most {
			a, most = other, n
		}
	}
	return a, most
}

// count is how many of the broken bounds have a part in an answer or its partner.
func (d *doubts) count(a, partner Answer) (n int) {
	for _, i := range d.broken {
		if touches[a][i] || partner != NoAnswer && touches[partner][i] {
			n++
		}
	}
	return n
}

// fit is how far another reading of an answer is from the middle of its bounds, in
// hundredths of the way to their ends, where that is the farthest; ok where it keeps
// them all. A bound beside an answer that does not keep its own tells nothing.
func (d *doubts) fit(a, partner Answer, r reading) (farthest int, ok bool) {
	in := *d.in
	one, other := in.answer(a), in.answer(partner)
	switch r.slip {
	case Exchanged:
		*one, *other = *other, *one
	case BothWhole:
		other.Length = other.Length.Half()
		fallthrough
	default:
		one.Length = r.length
	}
	h := hold(&in)
	tells := func(other Answer) bool { return other == NoAnswer || other == a || other == partner || !d.alone(other) }
	touched := touching[a]
	if partner != NoAnswer {
		touched = slices.Concat(touched, touching[partner]) // those of both twice, which is no farther
	}
	for _, i := range touched {
		b := &Bounds[i]
		if b.Beside != NoAnswer && !(tells(b.Of) && tells(b.Beside)) {
			continue
		}
		off := b.off(&h)
		if off > 100 {
			return 0, false
		}
		farthest = max(farthest, off)
	}
	return farthest, true
}

// alone tells that an answer breaks a bound of its own.
func (d *doubts) alone(a Answer) bool {
	for _, i := range d.broken {
		if Bounds[i].Of == a && Bounds[i].Beside == NoAnswer {
			return true
		}
	}
	return false
}

// has tells whether the bound speaks of an answer.
func (b *Bound) has(a Answer) bool { return b.Of == a || b.Beside == a }

// other is the answer beside one of the two; none where the bound is of one alone.
func (b *Bound) other(a Answer) Answer {
	if b.Beside == a {
		return b.Of
	}
	return b.Beside
}

// kept tells that a sheet keeps the bound, or lacks what would tell.
func (b *Bound) kept(h *held) bool {
	value, low, high, ok := b.value(h)
	return !ok || low <= value && value <= high
}

// off is how far a sheet is from the middle of the bound, in hundredths of the way to
// its ends; above 100 it does not keep it.
func (b *Bound) off(h *held) int {
	value, low, high, ok := b.value(h)
	switch {
	case !ok || low == high && value == low:
		return 0
	case value < low || value > high:
		return 101
	}
	return int(100 * (2*value - low - high).Abs() / (high - low))
}

// value is what is held against the bound, and its two ends there; not ok where the
// bound does not hold or something lacks.
func (b *Bound) value(h *held) (value, low, high units.Length, ok bool) {
	if !h.of[b.For] {
		return 0, 0, 0, false
	}
	if b.Beside == NoAnswer {
		r := &h.typed[b.Of]
		return r.Length, b.Low, b.High, r.Known
	}
	of, beside := &h.net[b.Of], &h.net[b.Beside]
	return 100 * of.Length, b.Low * beside.Length, b.High * beside.Length, of.Known && beside.Known && beside.Length > 0
}
