package worksheets

import (
	"bytes"
	"cmp"
	"fmt"
	"maps"
	"slices"
	"sort"
	"strconv"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// layout tells where things stand in the bytes of a file, so that saving can
// change a value and leave every other byte as the person wrote it.
type layout struct {
	values   map[string]span    // by path: the value, its key's start
	tables   map[string]section // by path: the sections with a header of their own
	dotted   map[string]int     // by path: the end of the last name.key, for a table that was begun so
	fittings []int              // where each [[fitting]] begins
	last     int                // where the last table of any name begins
	newlines
}

type span struct{ keyStart, start, end int }

// section is a table that was opened by a header of its own.
type section struct{ header, end int } // end: behind its last line that says something

// newlines are the offsets of the line breaks, to tell the line of a place.
type newlines []int

// line is the line of a key or a table, from 1; 0 where it is not in the file.
func (l *layout) line(path string) int {
	if v, ok := l.values[path]; ok {
		return l.at(v.keyStart)
	}
	if s, ok := l.tables[path]; ok {
		return l.at(s.header)
	}
	return 0
}

func (n newlines) at(offset int) int { return sort.SearchInts(n, offset) + 1 }

// locate walks the expressions of a file that is known to be sound TOML. Where
// the two readers of TOML disagree on that, what stands behind the place is
// taken as not being there, and saving will notice.
func locate(source []byte) *layout {
	l := &layout{values: map[string]span{}, tables: map[string]section{}, dotted: map[string]int{}}
	for i, b := range source {
		if b == '\n' {
			l.newlines = append(l.newlines, i)
		}
	}
	skipped := 0 // a byte order mark is no part of the document
	if bytes.HasPrefix(source, []byte("\ufeff")) {
		skipped = 3
	}
	var p unstable.Parser
	p.Reset(source[skipped:])
	table, counts := "", map[string]int{}
	for p.NextExpression() {
		e := p.Expression()
		switch e.Kind {
		case unstable.KeyValue:
			start := int(e.Raw.Offset) + skipped
			end := start + int(e.Raw.Length)
			parts, keyEnd := dotted(e.Key())
			path := joined(table, parts...)
			l.values[path] = span{start, valueStart(source, keyEnd+skipped), end}
			if strings.HasPrefix(path, "size") {
				l.inline(path, e.Value(), skipped)
			}
			if len(parts) > 1 {
				l.dotted[joined(table, parts[0])] = end
			}
			if s, ok := l.tables[table]; ok {
				s.end = end
				l.tables[table] = s
			}
		case unstable.Table, unstable.ArrayTable:
			parts, end := dotted(e.Key())
			start := bytes.LastIndexByte(source[:end+skipped], '\n') + 1
			table = ""
			for i, part := range parts { // a table within one of several is within the last of them
				if table = joined(table, part); i < len(parts)-1 && counts[table] > 0 {
					table = nth(table, counts[table]-1)
				}
			}
			l.last = start
			if table == "fitting" && e.Kind == unstable.ArrayTable {
				l.fittings = append(l.fittings, start)
			}
			if e.Kind == unstable.ArrayTable {
				name := table
				table = nth(name, counts[name])
				counts[name]++
			}
			if _, again := l.tables[table]; !again {
				l.tables[table] = section{start, lineEnd(source, end+skipped)}
			}
		}
	}
	return l
}

// inline adds the texts that stand in a table on one line, or in a list of such: sizes are
// written so, other tables hardly.
func (l *layout) inline(path string, value *unstable.Node, skipped int) {
	children := value.Children()
	for i := 0; children.Next(); i++ {
		child := children.Node()
		switch {
		case value.Kind == unstable.Array && child.Kind == unstable.InlineTable:
			l.inline(nth(path, i), child, skipped)
		case value.Kind == unstable.InlineTable && child.Kind == unstable.KeyValue:
			keys, within := child.Key(), child.Value()
			keys.Next()
			start := int(keys.Node().Raw.Offset) + skipped
			parts, _ := dotted(child.Key())
			inner := joined(path, parts...)
			if text := within.Raw; within.Kind == unstable.String {
				l.values[inner] = span{start, int(text.Offset) + skipped, int(text.Offset+text.Length) + skipped}
			}
			l.inline(inner, within, skipped)
		}
	}
}

// nth names one of several tables of the same name; the first goes by the name
// alone.
func nth(name string, i int) string {
	if i == 0 {
		return name
	}
	return fmt.Sprintf("%s[%d]", name, i)
}

// inOrder are the paths of the sections, in the order of the file.
func (l *layout) inOrder() []string {
	return slices.SortedFunc(maps.Keys(l.tables), func(a, b string) int { return cmp.Compare(l.tables[a].header, l.tables[b].header) })
}

// within are the sections of a table and of those in it, in the order of the file.
func (l *layout) within(table string) []section {
	var list []section
	for path, s := range l.tables {
		if path == table || strings.HasPrefix(path, table+".") {
			list = append(list, s)
		}
	}
	slices.SortFunc(list, func(a, b section) int { return cmp.Compare(a.header, b.header) })
	return list
}

// joined is the path of something in a table, "" for the top level.
func joined(table string, parts ...string) string {
	return strings.TrimPrefix(table+"."+strings.Join(parts, "."), ".")
}

// dotted is the parts of a key, and where the last one ends. A part that holds a
// point itself is quoted, so that it is not taken for two.
func dotted(parts unstable.Iterator) (names []string, end int) {
	for parts.Next() {
		n := parts.Node()
		part := string(n.Data)
		if strings.Contains(part, ".") {
			part = strconv.Quote(part)
		}
		names = append(names, part)
		end = int(n.Raw.Offset + n.Raw.Length)
	}
	return names, end
}

// valueStart is the first byte of the value behind the key that ends at i.
func valueStart(source []byte, i int) int {
	for i < len(source) && source[i] != '=' {
		i++
	}
	for i++; i < len(source) && (source[i] == ' ' || source[i] == '\t'); i++ {
	}
	return i
}

// lineEnd is the offset of the line break, or the end of the file.
func lineEnd(source []byte, i int) int {
	if n := bytes.IndexByte(source[i:], '\n'); n >= 0 {
		i += n
		if i > 0 && source[i-1] == '\r' {
			i--
		}
		return i
	}
	return len(source)
}
