package worksheets

import (
	"fmt"
	"maps"
	"slices"
	"strings"
)

// How sizes are read from [[size]] tables, and how a change of one is made in the file.

// sizeTables are the tables that a [[size]] may have within it.
func sizeTables() []string { return []string{"sleeve", "bodice"} }

// readSizes takes [[size]] tables, or the same as a list on one line.
func (d *Document) readSizes(value any) {
	list, ok := tablesOf(value)
	if !ok {
		d.refuse("size", d.asWritten("size", value), "is not a list of tables", "Write [[size]] on a line of its own")
		return
	}
	for i, table := range list {
		d.Sheet.Sizes = append(d.Sheet.Sizes, d.readSize(i, table))
	}
}

// readSize takes one of them, with its tables.
func (d *Document) readSize(i int, table map[string]any) (z Size) {
	name, _ := table["name"].(string)
	var read func(within string, table map[string]any)
	read = func(within string, table map[string]any) {
		for _, key := range slices.Sorted(maps.Keys(table)) {
			path := within + key
			place := nth("size", i) + "." + path
			k, known := keyInSize(path)
			inner, isTable := table[key].(map[string]any)
			text, isText := table[key].(string)
			problem := func(reason, want string) {
				raw := d.asWritten(place, table[key])
				d.mistyped = append(d.mistyped, Problem{d.name, d.line(place), sizePath(name, i) + ": " + path, &ValueError{raw, reason, want}})
			}
			switch {
			case known && isText:
				z.answers[k] = strings.TrimSpace(text)
			case known:
				problem(notQuoted, writeLike(k, key, d.asWritten(place, table[key])))
			case within == "" && slices.Contains(sizeTables(), key) && isTable:
				read(key+".", inner)
			case within == "" && slices.Contains(sizeTables(), key):
				problem("is not a table", fmt.Sprintf("Write [size.%s] on a line of its own", key))
			default:
				d.noteAt(place, "size."+path, key, namesInSize(within))
			}
		}
	}
	read("", table)
	return z
}

// namesInSize are the keys that a [[size]], or a table within it, may have.
func namesInSize(within string) (names []string) {
	if within == "" {
		names = sizeTables()
	}
	for _, k := range sizeKeys {
		if table, name := k.inSize(); strings.TrimSuffix(within, ".") == table {
			names = append(names, name)
		}
	}
	return names
}

// changeSizes changes the answers of sizes that each have their table; ok is false where
// that cannot be done.
func (e *edit) changeSizes() (ok bool) {
	for i, z := range e.doc.Sheet.Sizes {
		if !e.changeSize(i, z, e.doc.read.Sizes[i]) {
			return false
		}
	}
	return true
}

// changeSize changes the answers of the i-th size of the file: where they stand, or else
// behind the last of their table, or in a table behind the last of the size.
func (e *edit) changeSize(i int, now, was Size) (ok bool) {
	own, added, places := nth("size", i), map[string]string{}, e.doc.layout()
	for _, k := range sizeKeys {
		if now.answers[k] == was.answers[k] {
			continue
		}
		table, name := k.inSize()
		if v, ok := places.values[own+"."+k.pathInSize()]; ok {
			e.splices = append(e.splices, splice{v.start, v.end, tomlString(now.answers[k])})
		} else {
			added[table] += name + " = " + tomlString(now.answers[k]) + e.eol
		}
	}
	last := ""
	for _, table := range append([]string{""}, sizeTables()...) {
		lines, within := added[table], strings.TrimSuffix(own+"."+table, ".")
		if lines == "" {
			continue
		}
		if _, inline := places.values[within]; inline || len(places.within(own)) == 0 { // on one line
			return false
		}
		if end, ok := places.dotted[within]; ok && table != "" {
			e.insert(lineEnd(e.doc.source, end), table+".", lines)
		} else if s, ok := places.tables[within]; ok {
			e.insert(lineEnd(e.doc.source, s.end), "", lines)
		} else {
			last += e.eol + "[size." + table + "]" + e.eol + lines
		}
	}
	if last != "" { // behind what was added to the tables that are there
		end := 0
		for _, s := range places.within(own) {
			end = max(end, lineEnd(e.doc.source, s.end))
		}
		e.insert(end, "", last)
	}
	return true
}

// tomlSize is a size as a new file has it: what was measured of it.
func tomlSize(z Size) string {
	var b strings.Builder
	b.WriteString("[[size]]\n")
	open := ""
	for _, k := range sizeKeys {
		table, name := k.inSize()
		if z.answers[k] == "" && k != PatternSize {
			continue
		}
		if table != open {
			open = table
			fmt.Fprintf(&b, "[size.%s]\n", table)
		}
		fmt.Fprintf(&b, "%s = %s\n", name, tomlString(z.answers[k]))
	}
	return b.String()
}

// sizesAnew are the tables of the sizes for a file that is made anew. Keys that are not
// ours stay with their size.
func (d *Document) sizesAnew(value any) []map[string]any {
	old, _ := tablesOf(value)
	list := []map[string]any{}
	for i, j := range d.sizesFrom() {
		z, table, before := d.Sheet.Sizes[i], map[string]any{}, Size{}
		if kept, ok := d.kept[z.Name()]; j < 0 && ok {
			table, before = kept.read()
		} else if j >= 0 && j < len(old) {
			table, before = maps.Clone(old[j]), d.read.Sizes[j]
		}
		for _, k := range sizeKeys {
			if z.answers[k] == before.answers[k] {
				continue
			}
			within, name := k.inSize()
			if within == "" {
				table[name] = z.answers[k]
				continue
			}
			inner, _ := table[within].(map[string]any)
			inner = maps.Clone(inner)
			if inner == nil {
				inner = map[string]any{}
			}
			inner[name] = z.answers[k]
			table[within] = inner
		}
		list = append(list, table)
	}
	return list
}

// restOfSizes is what each size says besides our answers, printed; "" where it says
// nothing else.
func restOfSizes(value any) []string {
	list, _ := tablesOf(value)
	rest := make([]string, len(list))
	for i, table := range list {
		for _, k := range sizeKeys {
			within, name := k.inSize()
			if within == "" {
				delete(table, name)
			}
		}
		for _, within := range sizeTables() {
			inner, ok := table[within].(map[string]any)
			for _, k := range sizeKeys {
				if t, name := k.inSize(); t == within {
					delete(inner, name)
				}
			}
			if !ok || len(inner) == 0 {
				delete(table, within)
			}
		}
		if len(table) > 0 {
			rest[i] = fmt.Sprint(table)
		}
	}
	return rest
}

// byPath are the answers of a size that was measured, by their paths in it.
func (z Size) byPath() map[string]string {
	answers := map[string]string{}
	for _, k := range sizeKeys {
		if z.answers[k] != "" {
			answers[k.pathInSize()] = z.answers[k]
		}
	}
	return answers
}

// sizeByPath is the reverse; what is no answer of a size is left out.
func sizeByPath(answers map[string]string) (z Size) {
	for path, text := range answers {
		if k, ok := keyInSize(path); ok {
			z.answers[k] = tidy(text)
		}
	}
	return z
}
