package screen

import "capscye/worksheets"

// resizer is a part that has to know the window between two frames, since it scrolls.
type resizer interface {
	resize(width, height int)
}

// complainer is a part with a line of its own for what went wrong. In front of any
// other it is said on the desk, where it is read after going back.
type complainer interface {
	complain(text string)
}

// leaver is a part with a text that is being typed. It takes it before the program ends,
// and until then says what it is, so that a crash does not cost it.
type leaver interface {
	leave()
	halfTyped() (one worksheets.Draft, ok bool)
}

// cover lays a part over what is in front. The page of sizes comes back once the part is
// answered, with what is typed in it.
func (m *root) cover(p part) {
	if page, ok := m.front.(*sizesPage); ok {
		m.behind = page
	}
	m.front = p
}

// uncover takes away what is in front.
func (m *root) uncover() { m.front, m.behind = m.behind, nil }

// leavers are the parts with a text that is being typed.
func (m *root) leavers() (list []leaver) {
	for _, p := range []part{m.front, m.behind} {
		if l, ok := p.(leaver); ok {
			list = append(list, l)
		}
	}
	return list
}

// Who is what: a part that lost such a method would go without it in silence.
var (
	_ = []part{(*list)(nil), (*naming)(nil), (*question)(nil), (*start)(nil), (*scrollPage)(nil), (*copyPage)(nil), (*offerPage)(nil), (*sizesPage)(nil), (*drillPage)(nil), tableView{}}
	_ = []resizer{(*scrollPage)(nil), (*copyPage)(nil), (*drillPage)(nil)}
	_ = []complainer{(*list)(nil), (*naming)(nil), (*question)(nil), (*start)(nil), (*sizesPage)(nil)}
	_ = []leaver{(*sizesPage)(nil)}
)
