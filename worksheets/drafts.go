package worksheets

import (
	"cmp"
	"slices"
)

// Drafts are what was typed and is no answer yet. They are in no file of a worksheet:
// there the answer stays until the draft reads. They are a value, never changed in
// place.
type Drafts struct {
	Texts []Draft // at most one for each key, in the order of the keys
	Note  string  // of a fitting, not added yet
}

// Draft is a text that was typed for an answer and cannot be taken for one.
type Draft struct {
	Key  Key
	Text string
}

// Of is the draft for a key, "" for none.
func (d Drafts) Of(k Key) string {
	if i, ok := d.find(k); ok {
		return d.Texts[i].Text
	}
	return ""
}

// With is the drafts with another text for a key; "" takes it away.
func (d Drafts) With(k Key, text string) Drafts {
	i, ok := d.find(k)
	switch {
	case ok && text == "":
		d.Texts = slices.Delete(slices.Clone(d.Texts), i, i+1)
	case ok:
		d.Texts = slices.Clone(d.Texts)
		d.Texts[i].Text = tidy(text)
	case text != "":
		d.Texts = slices.Insert(slices.Clone(d.Texts), i, Draft{k, tidy(text)})
	}
	return d
}

func (d Drafts) find(k Key) (place int, ok bool) {
	return slices.BinarySearchFunc(d.Texts, k, func(one Draft, k Key) int { return cmp.Compare(one.Key, k) })
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
	for k := range keyCount {
		if text := later.Of(k); text != earlier.Of(k) {
			d = d.With(k, text)
		}
	}
	if later.Note != earlier.Note {
		d.Note = later.Note
	}
	return d
}
