package desk

import (
	"fmt"
	"strings"

	"capscye/calc"
	"capscye/ui/forms"
	"capscye/ui/parts"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
	"capscye/worksheets"
)

// reachOfSlide is the span that the slide can be pushed over: both halves'
// bands together. ok is false where there is nothing to push.
func reachOfSlide(r report.Report) (low, high units.Length, ok bool) {
	for _, b := range r.Plan.Bands {
		if b.Empty() {
			continue
		}
		if !ok {
			low, high, ok = b.Low, b.High, true
		}
		low, high = min(low, b.Low), max(high, b.High)
	}
	return low, high, ok && low < high
}

// pushSlide moves the slide to the next ruler mark along its band; the ends of
// the band count as marks.
func (d *Desk) pushSlide(by int) parts.Wish {
	low, high, ok := reachOfSlide(d.Rep)
	if !ok || d.Rep.Plan.Open {
		d.Message = "There is no other slide that works."
		return nil
	}
	now := d.Rep.Plan.Sides[calc.SleeveFront].Slide
	if chosen := d.Sheet().Reading(worksheets.Slide); chosen.Known {
		now = chosen.Length
	}
	now = min(max(now, low), high)
	next := min(max(nextMark(now, d.Sheet().Ruler(), by), low), high)
	if next == now {
		d.Message = "That is as far as the slide can go."
		return nil
	}
	return d.push(worksheets.Slide, forms.Exactly(next, d.Sheet().Scale()))
}

// bandLine draws a half's band as a length of tape with the slide on it:
//
//	front   1/4 |#-----e------------------| 1 1/4 in   # slide 1/4 in
//
// l marks the least slide and e the even one.
func bandLine(r report.Report, h calc.Half, width int) string {
	band, slide := r.Plan.Bands[h], r.Plan.Sides[h.Sleeve()].Slide
	name := typeset.Pad(typeset.Capitalised(wording.SubjectWords[h.Subject()]), 6)
	if r.Plan.Open || band.Empty() {
		return typeset.Cut(name+" slide "+r.BandWords(h), width)
	}
	low := fmt.Sprintf("%8s", r.Scale.Number(band.Low))
	high := typeset.Pad(r.Scale.Format(band.High), 11)
	now := typeset.Pad("# "+r.Scale.Format(slide), 13)
	track := []byte(strings.Repeat("-", max(width-len(name)-len(low)-len(high)-len(now)-6, 5)))
	track[position(r.Plan.EvenSlide(h), band, len(track))] = 'e'
	track[position(r.Plan.LeastSlide(h), band, len(track))] = 'l'
	track[position(slide, band, len(track))] = '#'
	return typeset.Cut(fmt.Sprintf("%s %s |%s| %s %s", name, low, track, high, now), width)
}

// bandRows are the bands of both halves.
func bandRows(r report.Report, width int) []string {
	var rows []string
	for _, h := range calc.Halves() {
		rows = append(rows, bandLine(r, h, width))
	}
	return rows
}

// position is the cell of a length on its band.
func position(l units.Length, b calc.Band, cells int) int {
	if b.High == b.Low {
		return 0
	}
	return int((l - b.Low) * units.Length(cells-1) / (b.High - b.Low))
}
