package worksheets

import (
	"cmp"
	"slices"
	"strings"
)

// Drafts are what was typed and is no answer yet. They are in no file of a worksheet:
// there the answer stays until the draft reads. They are a value, never changed in
// place.
type Drafts struct {
	Texts []Draft // at most one for each key of a size, in their order
	Note  string  // of a fitting, not added yet
}

// Draft is a text that was typed for an answer and cannot be taken for one.
type Draft struct {
	Key  Key
	Size string // the name of the size that it was typed for; "" for the one in hand
	Text string
}

// Of is the draft for a key, "" for none.
func (d Drafts) Of(k Key) string { return d.OfSize("", k) }

// OfSize is the draft for a key of a size by its name, "" for none.
func (d Drafts) OfSize(size string, k Key) string {
	if i, ok := d.find(size, k); ok {
		return d.Texts[i].Text
	}
	return ""
}

// With is the drafts with another text for a key; "" takes it away.
func (d Drafts) With(k Key, text string) Drafts { return d.WithSize("", k, text) }

// WithSize is the drafts with another text for a key of a size; "" takes it away.
func (d Drafts) WithSize(size string, k Key, text string) Drafts {
	i, ok := d.find(size, k)
	switch {
	case ok && text == "":
		d.Texts = slices.Delete(slices.Clone(d.Texts), i, i+1)
	case ok:
		d.Texts = slices.Clone(d.Texts)
		d.Texts[i].Text = tidy(text)
	case text != "":
		d.Texts = slices.Insert(slices.Clone(d.Texts), i, Draft{k, size, tidy(text)})
	}
	return d
}

func (d Drafts) find(size string, k Key) (place int, ok bool) {
	return slices.BinarySearchFunc(d.Texts, Draft{Key: k, Size: size}, inOrder)
}

func inOrder(a, b Draft) int { return cmp.Or(cmp.Compare(a.Key, b.Key), cmp.Compare(a.Size, b.Size)) }

// AnotherSize stands for a size that has no name yet: a draft of it is that name, half typed.
// No size can be called so.
const AnotherSize = "\n"

// renamed moves the drafts of sizes along with what the sizes are called now.
func (d Drafts) renamed(now func(size string) (name string, gone bool)) Drafts {
	var texts []Draft
	for _, one := range d.Texts {
		name, gone := one.Size, false
		if one.Key.IsOfSize() {
			name, gone = now(one.Size)
		}
		if !gone {
			texts = append(texts, Draft{one.Key, name, one.Text})
		}
	}
	slices.SortFunc(texts, inOrder)
	d.Texts = texts
	return d
}

// Empty tells that nothing is half typed.
func (d Drafts) Empty() bool { return len(d.Texts) == 0 && d.Note == "" }

// Equal tells whether two have the same texts.
func (d Drafts) Equal(other Drafts) bool {
	return d.Note == other.Note && slices.Equal(d.Texts, other.Texts)
}

// since lays what differs between two over these.
func (d Drafts) since(earlier, later Drafts) Drafts {
	if earlier.Equal(later) {
		return d
	}
	for _, one := range slices.Concat(earlier.Texts, later.Texts) {
		if text := later.OfSize(one.Size, one.Key); text != earlier.OfSize(one.Size, one.Key) {
			d = d.WithSize(one.Size, one.Key, text)
		}
	}
	if later.Note != earlier.Note {
		d.Note = later.Note
	}
	return d
}

// path names the answer that it was typed for.
func (d Draft) path() string {
	if d.Size == "" {
		return d.Key.Path()
	}
	return "size " + d.Size + ": " + d.Key.Path()
}

// draftAt is the reverse, without a text.
func draftAt(path string) (d Draft, ok bool) {
	if sized, is := strings.CutPrefix(path, "size "); is {
		i := strings.LastIndex(sized, ": ")
		if i < 0 {
			return Draft{}, false
		}
		d.Size, path = sized[:i], sized[i+2:]
	}
	d.Key, ok = KeyNamed(path)
	return d, ok
}
