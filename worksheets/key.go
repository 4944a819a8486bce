package worksheets

import (
	"fmt"
	"strings"

	"capscye/units"
)

// Key is one answer of the worksheet.
type Key uint8

// The answers, in the order of the file.
const (
	Title Key = iota
	Wearer
	Unit
	Ruler
	Fabric
	Notes
	BodyFrom
	PatternFrom

	MeasuredOn
	Bicep
	BicepOther
	Bust
	HighBust
	Waist
	Hip
	Elbow
	Wrist

	EaseBicep
	EaseBust
	EaseWaist
	EaseHip
	EaseElbow
	EaseWrist

	PatternSize
	ChartBust
	ChartHighBust

	SleeveLength
	SleeveStyle
	SleeveMeasured
	SleeveAllowance
	SleeveWidth
	CapHeight
	CapFront
	CapBack
	UnderarmSeam
	HemWidth
	ElbowWidth

	BodiceMeasured
	BodiceAllowance
	BodiceFront
	BodiceBack
	Crossings
	TakeOffFront
	TakeOffBack
	DartFront
	DartBack
	FinishedBust
	ArmholeFront
	ArmholeBack
	CornerOutFront
	CornerDownFront
	CornerOutBack
	CornerDownBack
	BustDown
	SideSeam
	WaistFront
	WaistBack
	HipFront
	HipBack

	PivotLimitSleeve
	PivotLimitBodice
	FrontShareSleeve
	FrontShareBust
	Slide
	Follow
	Armhole
	TaperFrom

	keyCount
)

// Kind is what may be written as an answer.
type Kind uint8

// The kinds of answers. Any may be left empty in a file; [Key.Usual] and [Key.From] say what
// stands for it then.
const (
	Text   Kind = iota // anything
	Date               // a day, 2026-10-03
	Choice             // one of the options; the first where nothing is written, unless the key is open
	Scale              // the finest mark of a ruler
	Girth              // a length above zero
	Amount             // a length not below zero
	Signed             // a length either way
	Part               // a share from 0 to 1
	Slid               // "least", "even" or a length either way
	Count              // a small whole number
)

// What is read as a day and as a count.
const (
	wantDay   = "a date such as 2026-10-03"
	mostCount = 4
)

var wantCount = fmt.Sprintf("a whole number from 0 to %d", mostCount)

// Takes is what may be written as an answer of the kind; for a choice "", for that
// depends on the key.
func (k Kind) Takes() string {
	return [...]string{
		Text: "any text", Date: wantDay, Choice: "", Scale: units.WantRuler, Girth: "a length above 0", Amount: "a length, 0 or more",
		Signed: "a length, which may be negative", Part: units.WantShare, Slid: "least, even, or a length, which may be negative", Count: wantCount,
	}[k]
}

// spec is what is known of a key beforehand.
type spec struct {
	path    string // table.name
	kind    Kind
	options []string
	open    bool   // a choice that nothing stands for where it is empty
	asked   bool   // the usual answer is not written into a new file: somebody has to say
	usual   string // what stands for an empty answer; "" where that means not measured
	from    Key    // whose answer stands for an empty one; Title is nobody's
	comment string // behind the key in a new file
}

var specs = [keyCount]spec{
	Title:  {path: "about.title"},
	Wearer: {path: "about.wearer"},
	Unit:   {path: "about.unit", kind: Choice, options: []string{"in", "cm"}, comment: "what a bare number means: in or cm"},
	Ruler:  {path: "about.ruler", kind: Scale, comment: "finest mark of the ruler in use: 1/2 .. 1/64 in, 5 mm, 1 mm"},
	Fabric: {path: "about.fabric", kind: Choice, options: []string{"woven", "knit"}, comment: "woven or knit"},
	Notes:  {path: "about.notes"},

	BodyFrom:    {path: "about.body_from", comment: "the worksheet of this folder that the body was taken from"},
	PatternFrom: {path: "about.pattern_from", comment: "... and the pattern"},

	MeasuredOn: {path: "body.measured_on", kind: Date},
	Bicep:      {path: "body.bicep", kind: Girth},
	BicepOther: {path: "body.bicep_other", kind: Girth, comment: "the other arm; the larger one counts"},
	Bust:       {path: "body.bust", kind: Girth},
	HighBust:   {path: "body.high_bust", kind: Girth},
	Waist:      {path: "body.waist", kind: Girth},
	Hip:        {path: "body.hip", kind: Girth},
	Elbow:      {path: "body.elbow", kind: Girth},
	Wrist:      {path: "body.wrist", kind: Girth},

	EaseBicep: {path: "ease.bicep", kind: Signed},
	EaseBust:  {path: "ease.bust", kind: Signed},
	EaseWaist: {path: "ease.waist", kind: Signed},
	EaseHip:   {path: "ease.hip", kind: Signed},
	EaseElbow: {path: "ease.elbow", kind: Signed},
	EaseWrist: {path: "ease.wrist", kind: Signed},

	PatternSize:   {path: "pattern.size", comment: "the size in hand, that [sleeve] and [bodice] are of; any other is a [[size]]"},
	ChartBust:     {path: "pattern.chart_bust", kind: Girth, comment: "the bust of this size in the pattern's own chart"},
	ChartHighBust: {path: "pattern.chart_high_bust", kind: Girth},

	SleeveLength:    {path: "sleeve.length", kind: Choice, asked: true, options: []string{"short", "long"}, comment: "short (straight side) or long (tapers to the hem)"},
	SleeveStyle:     {path: "sleeve.style", kind: Choice, options: []string{"set-in", "shirt", "gathered"}, comment: "set-in, shirt or gathered"},
	SleeveMeasured:  {path: "sleeve.measured", kind: Choice, open: true, options: []string{"seam", "edge"}, comment: "seam (from seam line to seam line) or edge (from cut edge to cut edge)"},
	SleeveAllowance: {path: "sleeve.allowance", kind: Amount, comment: "seam allowance, taken off here for edge"},
	SleeveWidth:     {path: "sleeve.width", kind: Girth, comment: "at the bicep line"},
	CapHeight:       {path: "sleeve.cap_height", kind: Girth},
	CapFront:        {path: "sleeve.cap_front", kind: Girth, comment: "half-cap seam, underarm to shoulder dot"},
	CapBack:         {path: "sleeve.cap_back", kind: Girth},
	UnderarmSeam:    {path: "sleeve.underarm_seam", kind: Girth},
	HemWidth:        {path: "sleeve.hem_width", kind: Girth},
	ElbowWidth:      {path: "sleeve.elbow_width", kind: Girth},

	BodiceMeasured:  {path: "bodice.measured", kind: Choice, open: true, from: SleeveMeasured, options: []string{"seam", "edge"}, comment: "seam or edge, if not as the sleeve"},
	BodiceAllowance: {path: "bodice.allowance", kind: Amount, from: SleeveAllowance, comment: "if not as the sleeve"},
	BodiceFront:     {path: "bodice.front", kind: Girth, comment: "centre (or fold) to side, at bust level"},
	BodiceBack:      {path: "bodice.back", kind: Girth},
	Crossings:       {path: "bodice.crossings", kind: Count, usual: "1", comment: "seamed edges that the tape crossed on each piece, for edge"},
	TakeOffFront:    {path: "bodice.take_off_front", kind: Amount, comment: "dart, tuck, pleat or overlap under the tape"},
	TakeOffBack:     {path: "bodice.take_off_back", kind: Amount},
	DartFront:       {path: "bodice.dart_front", kind: Choice, options: []string{"any", "none", "side", "waist", "shoulder", "armhole"}, comment: "where the dart starts that was taken off: side, waist, shoulder or armhole; none; any if you do not say"},
	DartBack:        {path: "bodice.dart_back", kind: Choice, options: []string{"any", "none", "side", "waist", "shoulder", "armhole"}},
	FinishedBust:    {path: "bodice.finished_bust", kind: Girth, comment: "printed on the pattern; used instead of front and back"},
	ArmholeFront:    {path: "bodice.armhole_front", kind: Girth},
	ArmholeBack:     {path: "bodice.armhole_back", kind: Girth},
	CornerOutFront:  {path: "bodice.corner_out_front", kind: Signed, comment: "underarm corner: how far outside the shoulder pin"},
	CornerDownFront: {path: "bodice.corner_down_front", kind: Girth, comment: "... and how far below it"},
	CornerOutBack:   {path: "bodice.corner_out_back", kind: Signed},
	CornerDownBack:  {path: "bodice.corner_down_back", kind: Girth},
	BustDown:        {path: "bodice.bust_down", kind: Amount, comment: "the bust line below the underarm corner, along the side seam"},
	SideSeam:        {path: "bodice.side_seam", kind: Girth},
	WaistFront:      {path: "bodice.waist_front", kind: Girth},
	WaistBack:       {path: "bodice.waist_back", kind: Girth},
	HipFront:        {path: "bodice.hip_front", kind: Girth, comment: "for a bodice that reaches the hip"},
	HipBack:         {path: "bodice.hip_back", kind: Girth},

	PivotLimitSleeve: {path: "method.pivot_limit_sleeve", kind: Amount, usual: "1 in"},
	PivotLimitBodice: {path: "method.pivot_limit_bodice", kind: Amount, usual: "1 in"},
	FrontShareSleeve: {path: "method.front_share_sleeve", kind: Part, usual: "1/2"},
	FrontShareBust:   {path: "method.front_share_bust", kind: Part, usual: "1/2"},
	Slide:            {path: "method.slide", kind: Slid, usual: "least", comment: "least, even or a length"},
	Follow:           {path: "method.follow", kind: Choice, options: []string{"let out", "hold"}, comment: "let out (it is widened to match) or hold (it keeps its width)"},
	Armhole:          {path: "method.armhole", kind: Choice, options: []string{"alter", "keep"}, comment: "alter or keep (bodice already cut)"},
	TaperFrom:        {path: "method.taper_from", kind: Choice, options: []string{"line", "corner"}, comment: "line (full width at the line of the girth) or corner (quicker, narrower there)"},
}

// Keys lists every key in the order of the file.
func Keys() []Key {
	keys := make([]Key, keyCount)
	for i := range keys {
		keys[i] = Key(i)
	}
	return keys
}

// KeyNamed is the key with that path in the file, "body.bicep".
func KeyNamed(path string) (Key, bool) {
	k, ok := byPath[path]
	return k, ok
}

var byPath = func() map[string]Key {
	m := make(map[string]Key, keyCount)
	for _, k := range Keys() {
		m[k.Path()] = k
	}
	return m
}()

// Path is where the key stands in the file, "body.bicep".
func (k Key) Path() string { return specs[k].path }

// String is [Key.Path].
func (k Key) String() string { return k.Path() }

// Kind is what may be written.
func (k Key) Kind() Kind { return specs[k].kind }

// Options are the words that a choice takes, the usual one first.
func (k Key) Options() []string { return specs[k].options }

// Usual is what stands for an empty answer, "" where that means not known, or where
// another answer stands for it.
func (k Key) Usual() string {
	if k.Kind() == Choice && !specs[k].open {
		return k.Options()[0]
	}
	return specs[k].usual
}

// Open tells that nothing stands for an empty answer of a choice: there is no usual one.
func (k Key) Open() bool { return specs[k].open }

// From is the key whose answer stands for an empty one of this, where there is such.
func (k Key) From() (from Key, ok bool) { return specs[k].from, specs[k].from != Title }

// begun is what a new file says of an empty answer.
func (k Key) begun() string {
	if specs[k].asked {
		return ""
	}
	return k.Usual()
}

// Comment is what stands behind the key in a new file, "" where nothing does.
func (k Key) Comment() string { return specs[k].comment }

// IsLength tells whether a number is a length, which takes the sheet's unit
// where it names none.
func (k Key) IsLength() bool {
	switch k.Kind() {
	case Scale, Girth, Amount, Signed, Slid:
		return true
	}
	return false
}

// table is the part of the path before the point, name what is behind it.
func (k Key) table() string { table, _, _ := strings.Cut(k.Path(), "."); return table }
func (k Key) name() string  { _, name, _ := strings.Cut(k.Path(), "."); return name }

// ValueError says why an answer cannot be taken.
type ValueError struct {
	Input  string
	Reason string // as a verb of the input: "is not a choice"
	Want   string // what to do, as a sentence
}

// Error is what is wrong, in few words, and an example of what is right:
//
//	"silk" is not a choice. Choose woven or knit
func (e *ValueError) Error() string {
	switch {
	case e.Reason == notQuoted && (e.Input == aTable || e.Input == aList):
		return fmt.Sprintf("%s is not text. %s", e.Input, e.Want)
	case e.Reason == notQuoted:
		return fmt.Sprintf("%s %s. %s", e.Reason, Printable(shorten(e.Input)), e.Want)
	}
	return fmt.Sprintf("%q %s. %s", shorten(e.Input), e.Reason, e.Want)
}
