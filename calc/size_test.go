package calc_test

import (
	"slices"
	"testing"

	"capscye/calc"
	"capscye/units"
)

// astm are bust and upper chest of four sizes: ASTM D5585-11e1, table 1, in inches.
var astm = []struct {
	size, bust, upperChest string
}{
	{"8", "36 1/4", "35 7/8"}, {"12", "38 3/4", "38"}, {"16", "42 1/8", "40 5/8"}, {"20", "46", "43 7/8"},
}

func astmCharts(highBust bool) (charts []calc.Charted) {
	for _, s := range astm {
		c := calc.Charted{Bust: known(s.bust)}
		if highBust {
			c.HighBust = known(s.upperChest)
		}
		charts = append(charts, c)
	}
	return charts
}

// Who has the body of a published size is told that size. Of these only size 20 has a
// bust that is fuller by 2 in (2 1/8), and is told it by the high bust.
func TestABodyOfAPublishedSizeIsToldThatSize(t *testing.T) {
	charts := astmCharts(true)
	for i, s := range astm {
		c := calc.ChooseSize(known(s.bust), known(s.upperChest), charts)
		want := calc.Bust
		if s.size == "20" {
			want = calc.HighBust
		}
		if !slices.Equal(c.Nearest, []int{i}) || c.By != want || c.Against != want {
			t.Errorf("size %s: %+v", s.size, c)
		}
	}
}

// A fuller bust takes the smaller size, by the high bust (Texas Agricultural Extension
// Service, E-372), and so does one in a chart that has no high bust, whose bust the high
// bust is then held against (common practice).
func TestTheFullerBustTakesTheSmallerSize(t *testing.T) {
	for _, c := range []struct {
		bust, highBust string
		charted        bool
		want           []int
		by, against    calc.Answer
	}{
		{"44", "38", true, []int{1}, calc.HighBust, calc.HighBust},
		{"44", "38", false, []int{1}, calc.HighBust, calc.Bust},
		{"41", "39", true, []int{1}, calc.HighBust, calc.HighBust}, // just 2 in
		{"41", "39 1/64", true, []int{2}, calc.Bust, calc.Bust},    // just under
		{"44 1/16", "43", true, []int{2, 3}, calc.Bust, calc.Bust}, // half way between 16 and 20
		{"60", "50", true, []int{3}, calc.HighBust, calc.HighBust}, // larger than any
		{"20", "19", true, []int{0}, calc.Bust, calc.Bust},         // smaller than any
		{"36 1/4", "37", true, []int{0}, calc.Bust, calc.Bust},     // a high bust that is the larger
	} {
		got := calc.ChooseSize(known(c.bust), known(c.highBust), astmCharts(c.charted))
		if !slices.Equal(got.Nearest, c.want) || got.By != c.by || got.Against != c.against {
			t.Errorf("bust %s, high bust %s, charted %v: %+v", c.bust, c.highBust, c.charted, got)
		}
	}
	var none units.Reading
	for _, c := range [][2]units.Reading{{none, known("38")}, {known("40"), none}, {none, none}} {
		if got := calc.ChooseSize(c[0], c[1], astmCharts(true)); got.Nearest != nil || got.By != calc.NoAnswer {
			t.Errorf("%+v", got)
		}
	}
	if got := calc.ChooseSize(known("40"), known("38"), make([]calc.Charted, 3)); got.Nearest != nil || got.By != calc.HighBust {
		t.Errorf("no chart: %+v", got)
	}
	some := []calc.Charted{{Bust: known("38")}, {Bust: known("42"), HighBust: known("40")}}
	if got := calc.ChooseSize(known("41"), known("38"), some); !slices.Equal(got.Nearest, []int{0}) || got.Against != calc.Bust {
		t.Errorf("one column for all: %+v", got)
	}
	some = []calc.Charted{{Bust: known("46"), HighBust: known("43 1/2")}, {Bust: known("44")}, {Bust: known("42")}}
	if got := calc.ChooseSize(known("46"), known("41 1/2"), some); !slices.Equal(got.Nearest, []int{2}) || got.Against != calc.Bust {
		t.Errorf("two sizes lack the high bust: %+v", got)
	}
	some = []calc.Charted{{Bust: known("46"), HighBust: known("43 1/2")}, {HighBust: known("42")}, {}}
	if got := calc.ChooseSize(known("46"), known("41 1/2"), some); !slices.Equal(got.Nearest, []int{1}) || got.Against != calc.HighBust {
		t.Errorf("one size has no chart: %+v", got)
	}
}

// Patterns graded by the published steps, with one ease, need less by just a step from
// size to size: 2 1/2, 3 3/8 and 3 7/8 in at the bust.
func TestNeedsFallByThePublishedSteps(t *testing.T) {
	steps := []string{"2 1/2", "3 3/8", "3 7/8"}
	var before units.Reading
	for i, s := range astm {
		in := calc.Input{Ruler: units.EighthInch, Bust: known("44"), BustEase: known("3"),
			Bodice: calc.BodiceInput{FinishedBust: units.Known(known(s.bust).Length + 3*units.Inch)}}
		need := calc.Compute(in).Bust.Need
		if i > 0 && before.Length-need.Length != known(steps[i-1]).Length {
			t.Errorf("from size %s to %s the need falls by %v, want %s", astm[i-1].size, s.size, before.Length-need.Length, steps[i-1])
		}
		before = need
	}
}

// What nobody asked for, the farthest pivot and the height that a cap loses are read off a
// plan: by hand, with numbers of ours.
func TestWhatASizeCostsByHand(t *testing.T) {
	const in = units.Inch
	known := units.Known
	for _, c := range []struct {
		girth calc.Girth
		want  units.Reading
	}{
		{calc.Girth{Body: known(40 * in), Ease: known(3 * in), Flat: known(41 * in), Drawn: known(43 * in)}, known(0)},
		{calc.Girth{Body: known(40 * in), Ease: known(3 * in), Flat: known(41 * in), Drawn: known(44 * in)}, known(in)}, // it follows
		{calc.Girth{Body: known(40 * in), Ease: known(3 * in), Flat: known(41 * in), Drawn: known(42 * in)}, known(0)},  // it is short
		{calc.Girth{Flat: known(41 * in), Drawn: known(42 * in)}, known(in)},                                            // nobody asked
		{calc.Girth{Body: known(40 * in), Flat: known(41 * in), Drawn: known(42 * in)}, units.Reading{}},
		{calc.Girth{Flat: known(41 * in)}, units.Reading{}},
	} {
		if got := c.girth.Unasked(); got != c.want {
			t.Errorf("%+v: %v, want %v", c.girth, got, c.want)
		}
	}
	p := calc.Plan{}
	p.Sides[calc.SleeveBack].PivotMark, p.Sides[calc.BodiceFront].PivotMark = in/2, -in
	if got := p.MostPivot(); got != known(in) {
		t.Errorf("the largest pivot is %v", got)
	}
	p.Sides[calc.BodiceBack].SlideMark = -in / 4
	if got := p.MostSlide(); got != known(in/4) {
		t.Errorf("the largest slide is %v", got)
	}
	if p.CapLost().Known {
		t.Error("a cap that nobody measured loses height")
	}
	if p.Open = true; p.MostPivot().Known || p.MostSlide().Known {
		t.Error("an open plan pivots")
	}
	p.Turns[calc.SleeveFront], p.Turns[calc.SleeveBack] = calc.Turn{Known: true, HeightAfter: 120}, calc.Turn{Known: true, HeightAfter: 110}
	p.Edges[calc.SleeveFront].H, p.Edges[calc.SleeveBack].H = 130, 130
	if got := p.CapLost(); !got.Known || got.MM != 20 {
		t.Errorf("the cap loses %v", got)
	}
}

// Sizes rise by the chart, by their numbers or by their letters; else nothing tells.
func TestSizesRise(t *testing.T) {
	none := make([]calc.Charted, 3)
	for _, c := range []struct {
		names  []string
		charts []calc.Charted
		want   []int
	}{
		{[]string{"20", "8", "16"}, none, []int{1, 2, 0}},
		{[]string{"L", "xs", "M"}, none, []int{1, 2, 0}},
		{[]string{"XXXL", "XXS", "XXL"}, none, []int{1, 2, 0}},
		{[]string{"XL", "S", "L"}, none, []int{1, 2, 0}},
		{[]string{"c", "a", "b"}, []calc.Charted{{Bust: known("46")}, {Bust: known("36 1/4")}, {Bust: known("42 1/8")}}, []int{1, 2, 0}},
		{[]string{"8", "20", "16"}, []calc.Charted{{Bust: known("46")}, {Bust: known("36 1/4")}, {Bust: known("42 1/8")}}, []int{1, 2, 0}}, // the chart says so
		{[]string{"20", "8", "16"}, astmCharts(true)[:3], []int{0, 1, 2}},
		{[]string{"20", "M", "16"}, none, nil},
		{[]string{"20", "", "16"}, none, nil},
		{[]string{"20"}, none[:1], nil},
	} {
		got, ok := calc.Rising(c.names, c.charts)
		if ok != (c.want != nil) || ok && !slices.Equal(got, c.want) {
			t.Errorf("%q rise %v, %v, want %v", c.names, got, ok, c.want)
		}
	}
}

// The published sizes rise throughout; a width that falls is found beside its neighbour of
// those that were measured.
func TestWidthsFall(t *testing.T) {
	var busts []units.Reading
	for _, s := range astm {
		busts = append(busts, known(s.bust))
	}
	if got := calc.Falls([]int{0, 1, 2, 3}, busts); got != nil {
		t.Errorf("the published sizes fall: %v", got)
	}
	order := []int{3, 1, 0, 2}
	widths := []units.Reading{known("12"), {}, known("13"), known("12 1/2")}
	if got := calc.Falls(order, widths); !slices.Equal(got, [][2]int{{3, 0}}) {
		t.Errorf("%v", got)
	}
	widths[0] = known("12 1/2") // the same in two sizes, as on many patterns
	if got := calc.Falls(order, widths); got != nil {
		t.Errorf("%v", got)
	}
}
