// Package forms says what the worksheet asks: steps, fields, labels, hints, choices.
package forms

import (
	"slices"

	"capscye/worksheets"
)

// Step is one of the six, in the order in which the hands work.
type Step int

// The steps, and how many there are.
const (
	Body Step = iota
	Ease
	Pattern
	Split
	Match
	Trace
	StepCount
)

// StepNames are what the steps are called.
var StepNames = [StepCount]string{"Body", "Ease", "Pattern", "Split", "Match", "Trace"}

// Item is one row of a form: a heading, or a field.
type Item struct {
	Heading string
	Key     worksheets.Key
}

func heading(s string) []Item { return []Item{{Heading: s}} }

func ask(keys ...worksheets.Key) []Item {
	items := make([]Item, len(keys))
	for i, k := range keys {
		items[i] = Item{Key: k}
	}
	return items
}

// Items says what each step asks. A step without fields is a page.
var Items = [StepCount][]Item{
	Body: slices.Concat(
		heading("Girths of the body"),
		ask(worksheets.Bicep, worksheets.BicepOther, worksheets.Bust, worksheets.HighBust, worksheets.Waist,
			worksheets.Hip, worksheets.Elbow, worksheets.Wrist, worksheets.MeasuredOn),
		heading("This worksheet"),
		ask(worksheets.Title, worksheets.Wearer, worksheets.Unit, worksheets.Ruler, worksheets.Fabric, worksheets.Notes)),
	Ease: slices.Concat(
		heading("Ease: how much larger the garment is than the body"),
		ask(worksheets.EaseBicep, worksheets.EaseBust, worksheets.EaseWaist, worksheets.EaseHip, worksheets.EaseElbow,
			worksheets.EaseWrist)),
	Pattern: slices.Concat(
		heading("The pattern, laid flat"),
		ask(worksheets.SleeveLength, worksheets.SleeveMeasured, worksheets.SleeveAllowance, worksheets.SleeveWidth),
		heading("Bodice, laid flat"),
		ask(worksheets.BodiceFront, worksheets.BodiceBack, worksheets.BodiceMeasured, worksheets.BodiceAllowance,
			worksheets.Crossings, worksheets.TakeOffFront, worksheets.DartFront, worksheets.TakeOffBack, worksheets.DartBack, worksheets.FinishedBust),
		heading("Optional: for the cap ease, and if the bodice is already cut"),
		ask(worksheets.SleeveStyle, worksheets.CapFront, worksheets.CapBack, worksheets.ArmholeFront, worksheets.ArmholeBack),
		heading("Optional: to see how much cap height is lost"),
		ask(worksheets.CapHeight, worksheets.UnderarmSeam, worksheets.HemWidth, worksheets.ElbowWidth),
		heading("Optional: to see how much armhole depth is lost"),
		ask(worksheets.CornerOutFront, worksheets.CornerDownFront, worksheets.CornerOutBack, worksheets.CornerDownBack,
			worksheets.BustDown, worksheets.SideSeam),
		heading("Optional: to see whether waist and hip bind"),
		ask(worksheets.WaistFront, worksheets.WaistBack, worksheets.HipFront, worksheets.HipBack)),
	Split: slices.Concat(
		ask(worksheets.Slide, worksheets.PivotLimitSleeve, worksheets.PivotLimitBodice, worksheets.FrontShareSleeve,
			worksheets.FrontShareBust, worksheets.TaperFrom, worksheets.Follow, worksheets.Armhole)),
}

// Enough are the answers that are enough for a plan: of a sleeve alone, between seam lines.
var Enough = []worksheets.Key{worksheets.Bicep, worksheets.EaseBicep, worksheets.SleeveLength, worksheets.SleeveMeasured, worksheets.SleeveWidth}

// Asks tells whether the step asks for an answer.
func (s Step) Asks(k worksheets.Key) bool { return slices.Contains(Items[s], Item{Key: k}) }
