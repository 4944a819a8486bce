package ui

import (
	"fmt"
	"slices"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"capscye/worksheets"
)

// step is one of the six, in the order in which the hands work.
type step int

const (
	stepBody step = iota
	stepEase
	stepPattern
	stepSplit
	stepMatch
	stepTrace
	stepCount
)

var stepNames = [stepCount]string{"Body", "Ease", "Pattern", "Split", "Match", "Trace"}

// item is one row of a form: a heading, or a field.
type item struct {
	heading string
	key     worksheets.Key
}

func heading(s string) []item { return []item{{heading: s}} }

func ask(keys ...worksheets.Key) []item {
	items := make([]item, len(keys))
	for i, k := range keys {
		items[i] = item{key: k}
	}
	return items
}

// forms says what each step asks. A step without fields is a page.
var forms = [stepCount][]item{
	stepBody: slices.Concat(
		heading("Girths of the body"),
		ask(worksheets.Bicep, worksheets.BicepOther, worksheets.Bust, worksheets.HighBust, worksheets.Waist,
			worksheets.Hip, worksheets.Elbow, worksheets.Wrist, worksheets.MeasuredOn),
		heading("This sheet"),
		ask(worksheets.Title, worksheets.Wearer, worksheets.Unit, worksheets.Ruler, worksheets.Fabric, worksheets.Notes)),
	stepEase: slices.Concat(
		heading("Ease: what the garment is larger than the body"),
		ask(worksheets.EaseBicep, worksheets.EaseBust, worksheets.EaseWaist, worksheets.EaseHip, worksheets.EaseElbow,
			worksheets.EaseWrist)),
	stepPattern: slices.Concat(
		heading("Sleeve, laid flat"),
		ask(worksheets.SleeveWidth, worksheets.SleeveMeasured, worksheets.SleeveAllowance),
		heading("Bodice, laid flat"),
		ask(worksheets.BodiceFront, worksheets.BodiceBack, worksheets.BodiceMeasured, worksheets.BodiceAllowance,
			worksheets.Crossings, worksheets.TakeOffFront, worksheets.TakeOffBack, worksheets.FinishedBust),
		heading("For cap ease, and for a bodice that is already cut"),
		ask(worksheets.SleeveStyle, worksheets.CapFront, worksheets.CapBack, worksheets.ArmholeFront, worksheets.ArmholeBack),
		heading("For the turn of the sleeve: what the cap loses"),
		ask(worksheets.SleeveLength, worksheets.CapHeight, worksheets.UnderarmSeam, worksheets.HemWidth, worksheets.ElbowWidth),
		heading("For the turn of the bodice: what the armhole loses"),
		ask(worksheets.CornerOutFront, worksheets.CornerDownFront, worksheets.CornerOutBack, worksheets.CornerDownBack,
			worksheets.SideSeam),
		heading("For waist and hip, where the bodice tapers back"),
		ask(worksheets.WaistFront, worksheets.WaistBack, worksheets.HipFront, worksheets.HipBack)),
	stepSplit: slices.Concat(
		ask(worksheets.Slide, worksheets.PivotLimitSleeve, worksheets.PivotLimitBodice, worksheets.FrontShareSleeve,
			worksheets.FrontShareBust, worksheets.Follow, worksheets.Armhole)),
}

// filled tells whether a step has its answers, or its page something to say.
func filled(s step, r report) bool {
	given := func(k worksheets.Key) bool { return r.sheet.Text(k) != "" }
	switch s {
	case stepBody:
		return given(worksheets.Bicep) || given(worksheets.BicepOther) || given(worksheets.Bust)
	case stepEase: // a new sheet has the usual ease in it; that answers nothing yet
		return filled(stepBody, r) && (r.plan.Sleeve.Wanted().Known || r.plan.Bust.Wanted().Known)
	case stepPattern:
		return r.plan.Sleeve.Flat.Known || r.plan.Bust.Flat.Known
	}
	return r.plan.Sleeve.Asked() || r.plan.Bust.Asked()
}

// tape shows the steps as lengths of a tape measure, marked in single marks:
// doubled where they are answered, in capitals where the hands are.
//
//	|==1 Body===|==2 Ease===|==3 PATTERN|--4 Split--|--5 Match--|--6 Trace--|
func tape(at step, r report, st styles, width int) string {
	each := max((width-1)/int(stepCount)-1, 3)
	var b strings.Builder
	b.WriteByte('|')
	for s := range stepCount {
		mark := "-"
		if filled(s, r) {
			mark = "="
		}
		name := fmt.Sprintf("%d %s", s+1, stepNames[s])
		if s == at {
			name = fmt.Sprintf("%d %s", s+1, strings.ToUpper(stepNames[s]))
		}
		if short := len(stepNames[s]) - 3; len(name)+2 > each && short > 0 { // so that the marks are still seen
			name = name[:len(name)-short]
		}
		name = cut(name, each)
		left := (each - ansi.StringWidth(name)) / 2
		segment := strings.Repeat(mark, left) + name + strings.Repeat(mark, each-left-ansi.StringWidth(name))
		if s == at {
			segment = st.here.Render(segment)
		}
		b.WriteString(segment + "|")
	}
	return cut(b.String(), width)
}
