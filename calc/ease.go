package calc

import "capscye/units"

// Place is a level of the body at which a garment needs ease.
type Place uint8

// The places that the worksheet asks about.
const (
	AtBicep Place = iota
	AtBust
	AtWaist
	AtHip
	AtElbow
	AtWrist
)

// Ease is the answer that asks for ease there.
func (p Place) Ease() Answer {
	return [...]Answer{AtBicep: BicepEase, AtBust: BustEase, AtWaist: WaistEase, AtHip: HipEase, AtElbow: ElbowEase, AtWrist: WristEase}[p]
}

// EaseRange is what one source gives.
type EaseRange struct {
	Low, High units.Length
	Source    string
	Sourced   bool // false: common practice, no source
}

// eighths are eighths of an inch, in which the sources write.
func eighths(n units.Length) units.Length { return n * units.Inch / 8 }

// UsualEase lists what is said of wearing ease at a place, sourced values
// first. Sources differ; the person decides.
func UsualEase(at Place, fabric Fabric) []EaseRange {
	if fabric == Knit {
		return easeOfKnits
	}
	return easeOfWovens[at]
}

// What is said of each kind of cloth; of a woven one by the place.
var easeOfKnits = []EaseRange{
	{0, 0, "Robinson, ch. 16: little or none", true},
	{eighths(-8), eighths(-4), "four-way stretch: common practice", false},
}

var easeOfWovens = [...][]EaseRange{
	AtBicep: {
		{eighths(16), eighths(16), "Armstrong, 2nd ed., p. 68, at second hand", true},
		{eighths(16), eighths(16), "common practice", false},
	},
	AtBust: {
		{eighths(24), eighths(32), "NMSU Guide C-228, table 1", true},
		{eighths(12), eighths(16), "Robinson, ch. 16, bodice", true},
		{eighths(16), eighths(32), "McCunn, with sleeves", true},
	},
	AtWaist: {{eighths(6), eighths(8), "Robinson, ch. 16, dress", true}},
	AtHip:   {{eighths(16), eighths(22), "Robinson, ch. 16", true}},
	AtElbow: {{eighths(8), eighths(8), "Ingalls, sleeve draft", true}},
	AtWrist: {{eighths(8), eighths(8), "Ingalls, sleeve draft", true}},
}

// EaseSpan is the least and the most that any of the sources gives.
func EaseSpan(at Place, fabric Fabric) (low, high units.Length) {
	sources := UsualEase(at, fabric)
	low, high = sources[0].Low, sources[0].High
	for _, r := range sources[1:] {
		low, high = min(low, r.Low), max(high, r.High)
	}
	return low, high
}

// MiddleEase is the middle of what the sourced values span, on 1/8 in: what a
// new worksheet starts with.
func MiddleEase(at Place, fabric Fabric) units.Length {
	var low, high units.Length
	for i, r := range UsualEase(at, fabric) {
		switch {
		case !r.Sourced:
		case i == 0:
			low, high = r.Low, r.High
		default:
			low, high = min(low, r.Low), max(high, r.High)
		}
	}
	return (low + high).Half().Round(eighths(1))
}
