package worksheets

import (
	"bytes"
	"fmt"
	"sort"
	"strconv"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// layout tells where things stand in the bytes of a file, so that saving can
// change a value and leave every other byte as the person wrote it.
type layout struct {
	values   map[string]span    // by path: the value, its key's start
	tables   map[string]section // by name: the [name] sections of the top level
	dotted   map[string]int     // by name: the end of the last name.key of the top level
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
			name, keyEnd := dotted(e.Key())
			path := name
			if table != "" {
				path = table + "." + name
			}
			l.values[path] = span{start, valueStart(source, keyEnd+skipped), end}
			if outer, _, ok := strings.Cut(name, "."); ok && table == "" && name[0] != '"' {
				l.dotted[outer] = end
			}
			if s, ok := l.tables[table]; ok {
				s.end = end
				l.tables[table] = s
			}
		case unstable.Table, unstable.ArrayTable:
			name, end := dotted(e.Key())
			start := bytes.LastIndexByte(source[:end+skipped], '\n') + 1
			table = name
			l.last = start
			if name == "fitting" && e.Kind == unstable.ArrayTable {
				l.fittings = append(l.fittings, start)
			}
			if e.Kind == unstable.ArrayTable {
				table = nth(name, counts[name])
				counts[name]++
			}
			if _, again := l.tables[name]; !again {
				l.tables[name] = section{start, lineEnd(source, end+skipped)}
			}
		}
	}
	return l
}

// nth names one of several tables of the same name; the first goes by the name
// alone.
func nth(name string, i int) string {
	if i == 0 {
		return name
	}
	return fmt.Sprintf("%s[%d]", name, i)
}

// dotted joins the parts of a key, and tells where the last one ends. A part
// that holds a point itself is quoted, so that it is not taken for two.
func dotted(parts unstable.Iterator) (name string, end int) {
	var names []string
	for parts.Next() {
		n := parts.Node()
		part := string(n.Data)
		if strings.Contains(part, ".") {
			part = strconv.Quote(part)
		}
		names = append(names, part)
		end = int(n.Raw.Offset + n.Raw.Length)
	}
	return strings.Join(names, "."), end
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
