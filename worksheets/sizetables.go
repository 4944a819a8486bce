package worksheets

import (
	"bytes"
	"maps"
	"slices"
	"strings"
)

// How the [[size]] tables of a file are made those of the sheet: which table is of which
// size, where one is cut out and another put in. What a table says besides our answers,
// comments and keys of the person's own, stays with the size of that name.

// keptSize is the table of a size that a save has taken out of the file, so that the
// size has it again when it comes back.
type keptSize struct {
	text string // whole lines, with the empty one above
	next string // the path of what stood behind it, "" for nothing
}

// read is what the table says, and the size in it.
func (t keptSize) read() (table map[string]any, z Size) {
	d, tree, err := decodeAny("", []byte(t.text))
	list, _ := tablesOf(tree["size"])
	if err != nil || len(list) != 1 {
		return map[string]any{}, Size{}
	}
	return list[0], d.Sheet.Sizes[0]
}

// sizesFrom tells of each size of the sheet which of those that were read it is, -1 for
// none: the one of its name, or else the one in its place that says the same but for a
// name that no size has any more. A size that was taken in hand is not in the list under
// another name, and one that was measured otherwise too is another size.
func (d *Document) sizesFrom() []int {
	now, was := d.Sheet.Sizes, d.read.Sizes
	from, found := make([]int, len(now)), make([]bool, len(was))
	pair := func(is func(i, j int) bool) {
		for i := range now {
			for j := 0; j < len(was) && from[i] < 0; j++ {
				if !found[j] && is(i, j) {
					from[i], found[j] = j, true
				}
			}
		}
	}
	for i := range from {
		from[i] = -1
	}
	pair(func(i, j int) bool { return now[i] == was[j] }) // of two with one name, the same
	pair(func(i, j int) bool { return now[i].Name() == was[j].Name() })
	pair(func(i, j int) bool {
		_, kept := d.kept[now[i].Name()]
		return i == j && len(now) >= len(was) && !kept && now[i] == was[j].With(PatternSize, now[i].Name()) &&
			was[j].Name() != d.Sheet.answers[PatternSize] && now[i].Name() != d.read.answers[PatternSize]
	})
	return from
}

// inPlace tells that each of so many is what it was.
func inPlace(from []int, count int) bool {
	for i, j := range from {
		if i != j {
			return false
		}
	}
	return len(from) == count
}

// withSizeTables is the document of a file whose [[size]] tables are, one by one, those
// of the sheet; their answers may be other ones still.
func (d *Document) withSizeTables(from []int) (laid *Document, ok bool) {
	for j := range d.read.Sizes {
		if len(d.sizeBlocks(j)) == 0 { // a list on one line
			return nil, false
		}
	}
	var stays []int // those of the file that stand where they are
	for _, j := range from {
		if j >= 0 && (len(stays) == 0 || j > last(stays)) {
			stays = append(stays, j)
		}
	}
	eol, at, names := d.lineBreak(), d.sizesBegin(stays), []string{}
	var splices []splice
	for i, j := range from {
		z := d.Sheet.Sizes[i]
		names = append(names, z.Name())
		text := eol + strings.ReplaceAll(tomlSize(z), "\n", eol)
		if j >= 0 {
			text, names[i] = d.sizeText(j), d.read.Sizes[j].Name()
		} else if t, ok := d.kept[z.Name()]; ok {
			text = t.text
		}
		if slices.Contains(stays, j) {
			at = last(d.sizeBlocks(j)).end
			continue
		}
		if at > 0 && d.source[at-1] != '\n' {
			text = eol + text
		}
		splices = append(splices, splice{at, at, text})
	}
	for j := range d.read.Sizes { // behind what is put in, which may stand at the same place
		if !slices.Contains(stays, j) {
			for _, b := range d.sizeBlocks(j) {
				splices = append(splices, splice{b.start, b.end, ""})
			}
		}
	}
	laid, _, err := decodeAny(d.name, apply(d.source, splices))
	if err != nil || !slices.EqualFunc(laid.Sheet.Sizes, names, func(z Size, name string) bool { return z.Name() == name }) {
		return nil, false
	}
	laid.Sheet = d.Sheet
	return laid, true
}

// sizesBegin is where a table goes that comes before any that stays: where the first is or
// was, else before what the last that were taken out stood before, else at the end.
func (d *Document) sizesBegin(stays []int) int {
	if len(d.read.Sizes) > 0 {
		return d.sizeBlocks(append(stays, 0)[0])[0].start
	}
	for _, z := range d.Sheet.Sizes {
		if s, ok := d.layout().tables[d.kept[z.Name()].next]; ok {
			return d.above(s.header)
		}
	}
	return len(d.source)
}

func last[T any](list []T) T { return list[len(list)-1] }

// lineBreak is how the file ends its lines.
func (d *Document) lineBreak() string {
	if bytes.Contains(d.source, []byte("\r\n")) {
		return "\r\n"
	}
	return "\n"
}

// block are whole lines of a file, from the beginning of one to the end of one.
type block struct{ start, end int }

// sizeBlocks are the lines that are the j-th size's alone: its tables with the comments
// that stand right above or below, and the empty line above.
func (d *Document) sizeBlocks(j int) (list []block) {
	places, own, open := d.layout(), nth("size", j), false
	for _, path := range places.inOrder() {
		s := places.tables[path]
		if path != own && !strings.HasPrefix(path, own+".") {
			open = false
			continue
		}
		if !open {
			list = append(list, block{start: d.above(s.header)})
		}
		open = true
		list[len(list)-1].end = d.below(s.end)
	}
	return list
}

// above is where the comments right above a header begin, and the empty line before them.
func (d *Document) above(header int) int {
	floor := 0 // a text of several lines is no comment, whatever it looks like
	for _, v := range d.layout().values {
		if v.end <= header {
			floor = max(floor, v.end)
		}
	}
	lineBefore := func(at int) (start int, text string) {
		start = bytes.LastIndexByte(d.source[:max(0, at-1)], '\n') + 1
		return start, strings.TrimSpace(string(d.source[start:at]))
	}
	at := header
	for {
		start, text := lineBefore(at)
		if at == 0 || start < floor || !strings.HasPrefix(text, "#") {
			break
		}
		at = start
	}
	if start, text := lineBefore(at); at > 0 && start >= floor && text == "" {
		at = start
	}
	return at
}

// below is the end of the lines of a table, with the comments right below; those that
// stand right above the next header are of that.
func (d *Document) below(end int) int {
	next := func(at int) int {
		if n := bytes.IndexByte(d.source[at:], '\n'); n >= 0 {
			return at + n + 1
		}
		return len(d.source)
	}
	line := func(at int) string { return strings.TrimSpace(string(d.source[at:lineEnd(d.source, at)])) }
	first := next(end)
	at := first
	for at < len(d.source) && strings.HasPrefix(line(at), "#") {
		at = next(at)
	}
	if at < len(d.source) && strings.HasPrefix(line(at), "[") {
		return first
	}
	return at
}

// sizeText is the table of the j-th size as it stands in the file.
func (d *Document) sizeText(j int) string {
	var text strings.Builder
	for _, b := range d.sizeBlocks(j) {
		text.Write(d.source[b.start:b.end])
		if d.source[b.end-1] != '\n' {
			text.WriteString(d.lineBreak())
		}
	}
	return text.String()
}

// cut are the tables that are in the file and of no size of the sheet, by their places.
func (d *Document) cut() map[int]keptSize {
	tables, from := map[int]keptSize{}, d.sizesFrom()
	for j := range d.read.Sizes {
		if slices.Contains(from, j) || len(d.sizeBlocks(j)) == 0 {
			continue
		}
		t := keptSize{text: d.sizeText(j)}
		for _, path := range d.layout().inOrder() {
			if at := d.layout().tables[path].header; at >= last(d.sizeBlocks(j)).end && !strings.HasPrefix(path, "size") {
				t.next = path
				break
			}
		}
		tables[j] = t
	}
	return tables
}

// keptSizes are the tables that have been taken out of the file, once the sheet is saved.
func (d *Document) keptSizes() map[string]keptSize {
	cut := d.cut()
	if len(cut) == 0 {
		return d.kept
	}
	kept := maps.Clone(d.kept) // which other documents may have too
	if kept == nil {
		kept = map[string]keptSize{}
	}
	for j, t := range cut {
		kept[d.read.Sizes[j].Name()] = t
	}
	return kept
}

// cutsNotes tells that a save takes a table out that says more than our answers, and that
// was not taken out like this before.
func (d *Document) cutsNotes() bool {
	for j, t := range d.cut() {
		one, _, err := decodeAny("", []byte(t.text))
		says := err != nil || strings.Contains(t.text, "#") || len(one.unknown) > 0 || len(one.mistyped) > 0
		if says && d.kept[d.read.Sizes[j].Name()].text != t.text {
			return true
		}
	}
	return false
}

// restOfSizesNow is what the sizes of the sheet have to say besides our answers.
func (d *Document) restOfSizesNow() []string {
	want := []string{}
	for i, j := range d.sizesFrom() {
		said := ""
		if t, ok := d.kept[d.Sheet.Sizes[i].Name()]; j < 0 && ok {
			table, _ := t.read()
			said = restOfSizes([]map[string]any{table})[0]
		} else if j >= 0 && j < len(d.found.rest.sizes) {
			said = d.found.rest.sizes[j]
		}
		want = append(want, said)
	}
	return want
}
