package worksheets

import (
	"slices"
	"time"
)

// Document is a worksheet with the file it was read from.
type Document struct {
	Sheet Sheet // to be changed freely
	// ReadOnly says why the file must not be overwritten; "" where it may.
	ReadOnly string
	// Origins are the sheets of its folder that sections of this one were taken
	// from, as they were when it was loaded.
	Origins []Origin

	name     string
	source   []byte    // the file as it was last read or written; nil for none
	read     Sheet     // the sheet that source says
	found    found     // of source, and kept
	mistyped []Problem // values that are not even text, and so not in the sheet
	unknown  []Problem
	kept     map[string]keptSize // of sizes that saves have taken out, by their names
	ours     bool                // it has a table or the version of a worksheet
	written  time.Time           // when the file was, as it was loaded
}

// found is what was worked out of the source, so that it need not be again; nil for what
// nobody asked for yet.
type found struct {
	places  *layout   // see [Document.layout]
	rest    *rest     // what it says besides our answers; see restOf
	encoded *encoding // what a sheet was last encoded to
}

// New is a document for a sheet that has no file yet. What was left to the
// usual is written out, as it will stand in the file.
func New(s Sheet) *Document {
	for _, k := range Keys() {
		if s.answers[k] == "" {
			s.answers[k] = k.begun()
		}
	}
	return &Document{Sheet: s, read: s}
}

// Path is the file that the document is saved to, "" for none yet.
func (d *Document) Path() string { return d.name }

// SetPath makes a document that has no file save to a new one.
func (d *Document) SetPath(path string) {
	d.name, d.source, d.found = path, nil, found{}
}

// GoOnIn makes a document save to another file from now on, written as the one it
// was read from is. That one stays as it is.
func (d *Document) GoOnIn(path string) { d.name, d.found.encoded = path, nil }

// Saved tells whether the file says what the sheet says, as far as is known.
func (d *Document) Saved() bool { return d.source != nil && d.Sheet.Equal(d.read) }

// Changed tells whether the sheet was changed since it was read.
func (d *Document) Changed() bool { return !d.Sheet.Equal(d.read) }

// Ours tells that the file has a table or the version of a worksheet, and is not
// other people's TOML.
func (d *Document) Ours() bool { return d.ours }

// Written is when the file was last written, as [Load] found it; the zero time for a
// document that was not loaded, or was saved since.
func (d *Document) Written() time.Time { return d.written }

// Problems lists every value that cannot be read now, in the order of the file.
func (d *Document) Problems() []Problem {
	var problems []Problem
	for _, p := range d.mistyped {
		if k, ok := KeyNamed(p.Path); !ok || d.Sheet.answers[k] == d.read.answers[k] {
			problems = append(problems, p)
		}
	}
	for _, k := range Keys() {
		if err := d.Sheet.Check(k); err != nil {
			problems = append(problems, Problem{d.name, d.line(k.Path()), k.Path(), err})
		}
	}
	problems = append(problems, d.sizeProblems()...)
	slices.SortStableFunc(problems, func(a, b Problem) int { return a.Line - b.Line })
	return problems
}

// Unknown lists the keys of the file that nothing here uses. They are kept.
func (d *Document) Unknown() []Problem { return d.unknown }

// layout tells where things stand in the source. Most readings never ask.
func (d *Document) layout() *layout {
	if d.found.places == nil {
		d.found.places = locate(d.source)
	}
	return d.found.places
}

func (d *Document) line(path string) int { return d.layout().line(path) }
