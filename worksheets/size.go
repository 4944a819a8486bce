package worksheets

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"capscye/units"
)

// What there may be of sizes, and of their names.
const (
	MostSizes   = 20        // besides the one in hand
	LongestSize = 40        // characters of a name
	Unnamed     = "unnamed" // what one is called that has no name
)

// Size is another size of the pattern, measured as far as it was: the answers that
// differ by size ([SizeKeys]). It is a value.
//
// What a size lacks is not known of it, and never taken from another size: a guessed
// cap height is a wrong one. What the pattern is throughout (how it was measured, its
// allowances, style and length, where its darts start) is not repeated.
type Size struct{ answers [keyCount]string }

// SizeKeys are the answers that differ by size, in the order of the file, the name first.
func SizeKeys() []Key { return slices.Clone(sizeKeys) }

var sizeKeys = slices.DeleteFunc(PatternSection.Keys(), func(k Key) bool {
	switch k {
	case SleeveLength, SleeveStyle, SleeveMeasured, SleeveAllowance, BodiceMeasured, BodiceAllowance, Crossings, DartFront, DartBack:
		return true
	}
	return false
})

// IsOfSize tells whether the answer differs by size.
func (k Key) IsOfSize() bool { return slices.Contains(sizeKeys, k) }

// inSize is where the key stands within a [[size]]: the table in it, "" for none, and the name.
func (k Key) inSize() (table, name string) {
	switch k {
	case PatternSize:
		return "", "name"
	case ChartBust, ChartHighBust:
		return "", k.name()
	}
	return k.table(), k.name()
}

// pathInSize is the same as one path: "name", "sleeve.width".
func (k Key) pathInSize() string {
	table, name := k.inSize()
	return strings.TrimPrefix(table+"."+name, ".")
}

// keyInSize is the key with that path within a [[size]].
func keyInSize(path string) (Key, bool) {
	i := slices.IndexFunc(sizeKeys, func(k Key) bool { return k.pathInSize() == path })
	if i < 0 {
		return 0, false
	}
	return sizeKeys[i], true
}

// Name is what the size is called, "" where it has no name yet.
func (z Size) Name() string { return z.answers[PatternSize] }

// Text is the answer as it was typed, "" where it was not measured.
func (z Size) Text(k Key) string { return z.answers[k] }

// With is the size with another answer, without the space around it. An answer that
// does not differ by size changes nothing.
func (z Size) With(k Key, text string) Size {
	if k.IsOfSize() {
		z.answers[k] = tidy(text)
	}
	return z
}

// SizeInHand is what [sleeve] and [bodice] have of the size in hand.
func (s Sheet) SizeInHand() (z Size) {
	for _, k := range sizeKeys {
		z.answers[k] = s.answers[k]
	}
	return z
}

// SizeNamed is the place of the size with that name in [Sheet.Sizes].
func (s Sheet) SizeNamed(name string) (i int, ok bool) {
	i = slices.IndexFunc(s.Sizes, func(z Size) bool { return name != "" && z.Name() == name })
	return i, i >= 0
}

// SizeAlone is the sheet as if the i-th size were the only one that was measured.
func (s Sheet) SizeAlone(i int) Sheet {
	chosen := s.Sizes[i]
	s.setInHand(chosen)
	s.Sizes, s.Drafts = nil, Drafts{}
	s.Done = renamedTicks(s.Done, func(size string) (string, bool) { return "", size == "" || size != chosen.Name() })
	return s
}

// TakeInHand is the sheet with the i-th size in hand. The size that was in hand takes
// its place, so that taking it in hand again gives the first sheet; but where nothing
// was measured of it there is none to put there, and where it had no name it is called
// so ([Unnamed]).
func (s Sheet) TakeInHand(i int) Sheet {
	was, chosen := s.SizeInHand(), s.Sizes[i]
	s.setInHand(chosen)
	s.Sizes = slices.Clone(s.Sizes)
	if was == (Size{}) {
		s.Sizes = slices.Delete(s.Sizes, i, i+1)
	} else {
		if was.Name() == "" {
			was.answers[PatternSize] = s.freeName()
		}
		s.Sizes[i] = was
	}
	s.rename(func(size string) (string, bool) {
		switch size {
		case "":
			return was.Name(), was == (Size{})
		case chosen.Name():
			return "", false
		}
		return size, false
	})
	return s
}

// rename moves what goes by the name of a size along with what the sizes are called now;
// the one in hand is "".
func (s *Sheet) rename(now func(size string) (name string, gone bool)) {
	s.Drafts, s.Done = s.Drafts.renamed(now), renamedTicks(s.Done, now)
}

func (s *Sheet) setInHand(z Size) {
	for _, k := range sizeKeys {
		s.answers[k] = z.answers[k]
	}
}

// freeName is a name that no size has.
func (s Sheet) freeName() string {
	name := Unnamed
	for n := 2; s.nameTaken(name, -2); n++ {
		name = fmt.Sprintf("%s %d", Unnamed, n)
	}
	return name
}

// nameTaken tells that a size other than the i-th has the name; the one in hand is the -1st.
func (s *Sheet) nameTaken(name string, i int) bool {
	for n, z := range s.Sizes {
		if n != i && z.answers[PatternSize] == name {
			return true
		}
	}
	return i != -1 && s.answers[PatternSize] == name
}

// WithSize is the sheet with the i-th size changed, or with one more where i is how
// many there are.
func (s Sheet) WithSize(i int, z Size) Sheet {
	s.Sizes = slices.Clone(s.Sizes)
	if i == len(s.Sizes) {
		s.Sizes = append(s.Sizes, z)
		return s
	}
	if before := s.Sizes[i].Name(); before != z.Name() && before != "" {
		s.rename(func(size string) (string, bool) {
			if size == before {
				return z.Name(), z.Name() == ""
			}
			return size, false
		})
	}
	s.Sizes[i] = z
	return s
}

// WithoutSize is the sheet without the i-th size.
func (s Sheet) WithoutSize(i int) Sheet {
	gone := s.Sizes[i].Name()
	s.Sizes = slices.Delete(slices.Clone(s.Sizes), i, i+1)
	s.rename(func(size string) (string, bool) { return size, size != "" && size == gone })
	return s
}

// CheckSize says why an answer of the i-th size cannot be read, if it cannot.
func (s *Sheet) CheckSize(i int, k Key) error {
	z := &s.Sizes[i]
	if k != PatternSize {
		one := Sheet{answers: z.answers, meant: s.meant}
		one.answers[Unit] = s.answers[Unit]
		return one.Check(k)
	}
	if z.Name() == "" {
		return errors.New(`the size has no name; give it one, such as name = "16"`)
	}
	return s.checkName(z.Name(), i)
}

// checkName refuses a name that is too long, or that another size has.
func (s *Sheet) checkName(name string, i int) error {
	switch {
	case utf8.RuneCountInString(name) > LongestSize:
		return &ValueError{name, fmt.Sprintf("has more than %d characters", LongestSize), "Name it like 16"}
	case s.nameTaken(name, i):
		return &ValueError{name, "is the name of another size already", "Give it a name of its own"}
	}
	return nil
}

// unitNamed is the size with its bare numbers in a unit that is named.
func (z Size) unitNamed(sys units.System) Size {
	for _, k := range sizeKeys {
		if k.IsLength() {
			z.answers[k] = WithUnit(z.answers[k], sys)
		}
	}
	return z
}

// sizesIn are sizes that were meant in a unit, with it named.
func sizesIn(sizes []Size, sys units.System) []Size {
	named := slices.Clone(sizes)
	for i, z := range named {
		named[i] = z.unitNamed(sys)
	}
	return named
}

// sizeProblems lists what cannot be read of the sizes.
func (d *Document) sizeProblems() (list []Problem) {
	add := func(i int, path string, err error) {
		line := 0
		if i < len(d.read.Sizes) {
			line = cmp.Or(d.line(nth("size", i)+"."+path), d.line(nth("size", i)))
		}
		list = append(list, Problem{d.name, line, sizePath(d.Sheet.Sizes[i].Name(), i) + ": " + path, err})
	}
	for i := range d.Sheet.Sizes {
		if i >= MostSizes {
			out := "this one is left out"
			if len(d.Sheet.Sizes) > MostSizes+1 {
				out = "all from this one on are left out"
			}
			add(i, "name", fmt.Errorf("a worksheet has at most %d other sizes; %s", MostSizes, out))
			break
		}
		alone := d.Sheet.SizeAlone(i)
		for _, k := range sizeKeys {
			err := alone.Check(k)
			if k == PatternSize { // which the others have a say in
				if err = d.Sheet.CheckSize(i, k); d.Sheet.Sizes[i].Name() == "" && d.nameMistyped(i) { // which was said
					err = nil
				}
			}
			if err != nil {
				add(i, k.pathInSize(), err)
			}
		}
	}
	return list
}

// nameMistyped tells that the name of the i-th size of the file is not even text.
func (d *Document) nameMistyped(i int) bool {
	return slices.ContainsFunc(d.mistyped, func(p Problem) bool { return p.Path == sizePath("", i)+": name" })
}

// sizePath names a size in messages, by its name or by its number.
func sizePath(name string, i int) string {
	if name == "" {
		return fmt.Sprintf("size number %d", i+1)
	}
	return "size " + name
}
