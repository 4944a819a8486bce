package worksheets

import (
	"bytes"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"github.com/BurntSushi/toml"
)

// Encode is the file that says the document's sheet. Only what changed since it
// was read is changed; comments, order and unknown keys stay. Where the file is
// written in a way that does not allow it, lost is true: the result says the
// same, unknown keys included, but without comments.
func (d *Document) Encode() (out []byte, lost bool, err error) {
	switch {
	case d.source == nil:
		out = encodeNew(d.Sheet)
		return out, false, checkBounds(d.name, out)
	case d.Sheet.Equal(d.read):
		return d.source, false, nil
	case d.found.encoded != nil && d.found.encoded.read.Sheet.Equal(d.Sheet):
		return d.found.encoded.read.source, d.found.encoded.lost, nil
	}
	if out, ok := d.edited(); ok && d.proves(out, false) {
		return out, false, nil
	}
	out, err = d.rewritten()
	if err == nil && !d.proves(out, true) {
		err = &FileError{File: d.name, Reason: "it is written in a way that cannot be changed here"}
	}
	return out, true, err
}

// encoding is what a sheet was encoded to, read back. The screen asks whether
// comments would be lost before every save: what was proved for the answer is
// used again for the save, and for what is known of the file afterwards.
type encoding struct {
	read *Document
	lost bool
}

// proves tells whether the bytes read back as the document's sheet, and say
// everything else in the source as well, value for value. It is remembered.
func (d *Document) proves(out []byte, lost bool) bool {
	if checkBounds(d.name, out) != nil {
		return false
	}
	again, tree, err := decodeAny(d.name, out)
	if err != nil || !again.Sheet.Equal(d.Sheet) {
		return false
	}
	if d.found.rest == nil {
		before, _, err := parse(d.source)
		if err != nil {
			return false
		}
		rest := restOf(before)
		d.found.rest = &rest
	}
	rest := restOf(tree)
	if rest.all != d.found.rest.all || !slices.Equal(rest.sizes, d.restOfSizesNow()) {
		return false
	}
	again.found.rest = &rest
	d.found.encoded = &encoding{again, lost}
	return true
}

// rest is what a file says besides our answers, printed: so that a number that is none
// equals itself.
type rest struct {
	all   string
	sizes []string // within each [[size]]
}

// restOf takes our answers out of the tree of a file.
func restOf(tree map[string]any) rest {
	sizes := restOfSizes(tree["size"])
	delete(tree, "size")
	delete(tree, "fitting")
	if progress, ok := tree["progress"].(map[string]any); ok {
		if delete(progress, "done"); len(progress) == 0 {
			delete(tree, "progress")
		}
	}
	for _, k := range Keys() {
		table, ok := tree[k.table()].(map[string]any)
		if !ok { // not the table it should be; that was reported
			delete(tree, k.table())
			continue
		}
		delete(table, k.name())
		if len(table) == 0 {
			delete(tree, k.table())
		}
	}
	return rest{fmt.Sprint(tree), sizes}
}

// LosesComments tells whether saving now would lose the comments of the file.
func (d *Document) LosesComments() bool {
	_, lost, err := d.Encode()
	return err == nil && lost && bytes.Contains(d.source, []byte("#"))
}

// rewritten is the whole file made anew from what it says.
func (d *Document) rewritten() ([]byte, error) {
	tree, held, err := parse(d.source)
	if err == nil && held > 0 { // which the writer does not have either
		err = errors.New("it has a number that cannot be rewritten here")
	}
	if err != nil {
		return nil, err
	}
	in := func(table string) map[string]any {
		t, ok := tree[table].(map[string]any)
		if !ok {
			t = map[string]any{}
			tree[table] = t
		}
		return t
	}
	for _, k := range Keys() {
		if text := d.Sheet.answers[k]; text != d.read.answers[k] {
			in(k.table())[k.name()] = text
		}
	}
	if !slices.Equal(d.Sheet.Done, d.read.Done) {
		in("progress")["done"] = d.Sheet.Done
	}
	if !slices.Equal(d.Sheet.Sizes, d.read.Sizes) {
		tree["size"] = d.sizesAnew(tree["size"])
	}
	if !slices.Equal(d.Sheet.Fittings, d.read.Fittings) {
		old, _ := tablesOf(tree["fitting"])
		list := []map[string]any{}
		for i, f := range d.Sheet.Fittings {
			table := map[string]any{}
			if i < len(old) { // keys that are not ours stay with it
				maps.Copy(table, old[i])
			}
			if i >= len(d.read.Fittings) || f.Date != d.read.Fittings[i].Date {
				table["date"] = f.Date
			}
			if i >= len(d.read.Fittings) || f.Note != d.read.Fittings[i].Note {
				table["note"] = f.Note
			}
			list = append(list, table)
		}
		tree["fitting"] = list
	}
	return toml.Marshal(tree)
}

// tomlValue writes an answer as the file has it: dates and counts bare, the
// rest as text, for fractions must survive.
func tomlValue(k Key, text string) string {
	switch k.Kind() {
	case Date:
		return tomlDay(text)
	case Count:
		if n, ok := smallCount(text); ok && strconv.Itoa(n) == text {
			return text
		}
	}
	return tomlString(text)
}

// tomlDay writes a day bare, and what is none as text.
func tomlDay(text string) string {
	if isDay(text) {
		return text
	}
	return tomlString(text)
}

// tomlString quotes a text for TOML.
func tomlString(text string) string {
	out, err := toml.Marshal(map[string]string{"k": text})
	if err != nil { // a map of strings always encodes
		panic(err)
	}
	_, value, _ := strings.Cut(string(out), "= ")
	return strings.TrimSuffix(value, "\n")
}

func tomlList(texts []string) string {
	quoted := make([]string, len(texts))
	for i, t := range texts {
		quoted[i] = tomlString(t)
	}
	return "[" + strings.Join(quoted, ", ") + "]"
}

func tomlFitting(f Fitting) string {
	return "[[fitting]]\ndate = " + tomlDay(f.Date) + "\nnote = " + tomlString(f.Note) + "\n"
}

// encodeNew is a whole file with every key, the empty ones too, so that it can
// be filled in by hand.
func encodeNew(s Sheet) []byte {
	var b strings.Builder
	b.WriteString("# A fitting worksheet. Lengths are text: \"13 3/4\" takes the worksheet's unit, \"34.9 cm\",\n" +
		"# \"349 mm\" and \"13 3/4 in\" carry their own. \"\" means not measured.\n")
	fmt.Fprintf(&b, "version = %d\n", Version)
	table := ""
	for _, k := range Keys() {
		if k.table() != table {
			table = k.table()
			fmt.Fprintf(&b, "\n[%s]\n", table)
		}
		text := s.answers[k]
		if k == MeasuredOn && text == "" { // an empty day is no TOML date
			continue
		}
		if text == "" {
			text = k.begun()
		}
		line := k.name() + " = " + tomlValue(k, text)
		if c := specs[k].comment; c != "" {
			line = fmt.Sprintf("%-28s # %s", line, c)
		}
		b.WriteString(line + "\n")
	}
	b.WriteString("\n[progress]\ndone = " + tomlList(s.Done) + "\n")
	for _, z := range s.Sizes {
		b.WriteString("\n" + tomlSize(z))
	}
	for _, f := range s.Fittings {
		b.WriteString("\n" + tomlFitting(f))
	}
	return []byte(b.String())
}
