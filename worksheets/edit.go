package worksheets

import (
	"bytes"
	"cmp"
	"slices"
	"strings"
)

// edit is a change of a file in place: what is replaced, and what is added where.
type edit struct {
	doc     *Document
	eol     string // as the file ends its lines
	splices []splice
	added   map[string]string // lines for tables, by table
	tail    string            // what comes behind everything
}

// splice replaces source[start:end].
type splice struct {
	start, end int
	text       string
}

// edited is the source with the changed values replaced in place and new ones
// added to their tables. ok is false where that cannot be done. Where the tables of
// sizes are not those of the sheet, they are first made so.
func (d *Document) edited() (out []byte, ok bool) {
	if from := d.sizesFrom(); !inPlace(from, len(d.read.Sizes)) {
		if d, ok = d.withSizeTables(from); !ok {
			return nil, false
		}
	}
	e := edit{doc: d, eol: d.lineBreak(), added: map[string]string{}}
	e.setAnswers()
	e.addToTables()
	if !e.changeSizes() || !e.cutFittings() {
		return nil, false
	}
	e.addFittings()
	e.addTail()
	return apply(d.source, e.splices), true
}

// setAnswers changes the answers that are not what was read.
func (e *edit) setAnswers() {
	now, was := &e.doc.Sheet, &e.doc.read
	for _, k := range Keys() {
		if now.answers[k] != was.answers[k] {
			e.set(k.table(), k.name(), tomlValue(k, now.answers[k]))
		}
	}
	if !slices.Equal(now.Done, was.Done) {
		e.set("progress", "done", tomlList(now.Done))
	}
}

// set replaces a value where it stands, or else adds a line for it.
func (e *edit) set(table, name, value string) {
	if v, ok := e.doc.layout().values[table+"."+name]; ok {
		e.splices = append(e.splices, splice{v.start, v.end, value})
		return
	}
	e.added[table] += name + " = " + value + e.eol
}

// addToTables puts every line that was added behind the last of its table, and a
// table that the file has not behind everything.
func (e *edit) addToTables() {
	source := e.doc.source
	for _, table := range tables() {
		lines, ok := e.added[table]
		if !ok {
			continue
		}
		places := e.doc.layout()
		if end, ok := places.dotted[table]; ok { // a table that was begun with dotted keys takes no header
			e.insert(lineEnd(source, end), table+".", lines)
		} else if s, ok := places.tables[table]; ok {
			e.insert(lineEnd(source, s.end), "", lines)
		} else {
			e.tail += e.eol + "[" + table + "]" + e.eol + lines
		}
	}
}

// insert puts lines behind the one that ends there, with something before each.
func (e *edit) insert(end int, before, lines string) {
	var text strings.Builder
	for _, line := range strings.SplitAfter(strings.TrimSuffix(lines, e.eol), e.eol) {
		text.WriteString(e.eol + before + strings.TrimSuffix(line, e.eol))
	}
	e.splices = append(e.splices, splice{end, end, text.String()})
}

// cutFittings takes away those at the end that the sheet has not any more; ok is
// false where others changed, or they cannot be cut.
func (e *edit) cutFittings() (ok bool) {
	now, was := e.doc.Sheet.Fittings, e.doc.read.Fittings
	same := min(len(now), len(was))
	if !slices.Equal(now[:same], was[:same]) {
		return false
	}
	if same == len(was) {
		return true
	}
	start, ok := e.doc.endBeforeFitting(same, e.eol)
	e.splices = append(e.splices, splice{start, len(e.doc.source), ""})
	return ok
}

// addFittings puts those that are new behind everything.
func (e *edit) addFittings() {
	now, was := e.doc.Sheet.Fittings, e.doc.read.Fittings
	for _, f := range now[min(len(now), len(was)):] {
		e.tail += e.eol + strings.ReplaceAll(tomlFitting(f), "\n", e.eol)
	}
}

// addTail puts the tail on a line of its own.
func (e *edit) addTail() {
	source := e.doc.source
	if e.tail == "" {
		return
	}
	if len(source) > 0 && !bytes.HasSuffix(source, []byte("\n")) {
		e.tail = e.eol + e.tail
	}
	e.splices = append(e.splices, splice{len(source), len(source), e.tail})
}

// endBeforeFitting is where the file ends without that fitting and those behind
// it; ok is false where they are not the end of the file, or a comment, perhaps,
// would go with them.
func (d *Document) endBeforeFitting(i int, eol string) (end int, ok bool) {
	places := d.layout().fittings
	if len(places) != len(d.read.Fittings) || d.layout().last != places[len(places)-1] {
		return 0, false
	}
	end = places[i]
	if before, found := bytes.CutSuffix(d.source[:end], []byte(eol+eol)); found { // the empty line above goes too
		end = len(before) + len(eol)
	}
	return end, !bytes.ContainsRune(d.source[end:], '#')
}

// apply does the splices, which do not overlap.
func apply(source []byte, splices []splice) []byte {
	slices.SortStableFunc(splices, func(a, b splice) int { return cmp.Compare(a.start, b.start) })
	var out bytes.Buffer
	at := 0
	for _, s := range splices {
		out.Write(source[at:s.start])
		out.WriteString(s.text)
		at = s.end
	}
	out.Write(source[at:])
	return out.Bytes()
}
