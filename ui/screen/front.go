package screen

import (
	"capscye/ui/desk"
	"capscye/ui/parts"
	"capscye/worksheets"
)

// over is what lies over the worksheet.
type over struct {
	front  parts.Part // nil for nothing
	behind parts.Part // what a question lies over, and that is in front again behind it; nil for the desk
	drill  *drillPage // in front or not, as it was left; nil before the first
}

// resizer is a part that has to know the window between two frames, since it scrolls.
type resizer interface {
	Resize(width, height int)
}

// complainer is a part with a line of its own for what went wrong. In front of any
// other it is said on the desk, where it is read after going back.
type complainer interface {
	Complain(text string)
}

// leaver is a part with a text that is being typed. It takes it before the program ends,
// and until then says what it is, so that a crash does not cost it.
type leaver interface {
	leave()
	follow() // what lies on the desk was changed elsewhere
	halfTyped() (one worksheets.Draft, ok bool)
}

// cover lays a part over what is in front, which comes back once the part is answered, with
// what is typed in it.
func (m *root) cover(p parts.Part) {
	if m.behind == nil {
		m.behind = m.front
	}
	m.front = p
}

// uncover takes away what is in front.
func (m *root) uncover() { m.front, m.behind = m.behind, nil }

// leavers are the parts with a text that is being typed.
func (m *root) leavers() (list []leaver) {
	for _, p := range []parts.Part{m.front, m.behind} {
		if l, ok := p.(leaver); ok {
			list = append(list, l)
		}
	}
	return list
}

// Who is what: a part that lost such a method would go without it in silence.
var (
	_ = []parts.Part{(*list)(nil), (*parts.Naming)(nil), (*parts.Question)(nil), (*start)(nil), (*parts.ScrollPage)(nil), (*copyPage)(nil), (*offerPage)(nil), (*sizesPage)(nil), (*drillPage)(nil), desk.TableView{}}
	_ = []resizer{(*parts.ScrollPage)(nil), (*copyPage)(nil), (*drillPage)(nil)}
	_ = []complainer{(*list)(nil), (*parts.Naming)(nil), (*parts.Question)(nil), (*start)(nil), (*sizesPage)(nil)}
	_ = []leaver{(*sizesPage)(nil)}
)
