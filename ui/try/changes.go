package try

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"capscye/ui/forms"
	"capscye/ui/typeset"
	"capscye/units"
	"capscye/worksheets"
)

// What KEY=VALUE says: an answer, a change of one (+1/4), or a range of them.

// trial is a sheet with some answers changed.
type trial struct {
	key   worksheets.Key // that the range is of
	value string         // the value of the range, "" where there is none
	doc   worksheets.Document
}

// mostTrials bounds a range.
const mostTrials = 1000

// trials are the sheets that KEY=VALUE arguments ask for: one, or one for each
// value of a range, of which there may be one.
func trials(d *worksheets.Document, args []string) ([]trial, error) {
	list, given := []trial{{doc: *d}}, map[worksheets.Key]bool{}
	for _, arg := range args {
		path, text, ok := strings.Cut(arg, "=")
		if !ok {
			return nil, fmt.Errorf("%q is not a change; write KEY=VALUE, as in ease.bicep=2", arg)
		}
		k, err := keyNamed(strings.TrimSpace(path))
		if err != nil {
			return nil, err
		}
		if given[k] {
			return nil, fmt.Errorf("%s is given twice; give it once", k)
		}
		given[k] = true
		values, err := valuesOf(k, strings.TrimSpace(text), &list[0].doc.Sheet)
		switch {
		case err != nil:
			return nil, err
		case values == nil:
			list, err = spread(list, k, []string{text}, false)
		case len(list) > 1:
			return nil, errors.New("only one range can be tried at a time")
		default:
			list, err = spread(list, k, values, true)
		}
		if err != nil {
			return nil, err
		}
	}
	return list, nil
}

// keyNamed is the key with that path. Where there is none, those are offered that are
// called so in some table.
func keyNamed(path string) (worksheets.Key, error) {
	if k, ok := worksheets.KeyNamed(path); ok {
		return k, nil
	}
	_, name, _ := strings.Cut("."+path, ".")
	name = name[strings.LastIndex(name, ".")+1:]
	var meant []string
	for _, k := range worksheets.Keys() {
		if name != "" && strings.HasSuffix(k.Path(), "."+strings.ToLower(name)) {
			meant = append(meant, k.Path())
		}
	}
	if len(meant) == 0 {
		return 0, fmt.Errorf("%q is not a key; write it as in the file: ease.bicep or method.slide", path)
	}
	return 0, fmt.Errorf("%q is not a key; did you mean %s?", path, strings.Join(meant, " or "))
}

// spread makes a trial of every value for every trial so far.
func spread(list []trial, k worksheets.Key, values []string, named bool) ([]trial, error) {
	var out []trial
	for _, t := range list {
		for _, v := range values {
			one := t
			if named {
				one.key, one.value = k, strings.TrimPrefix(v, "=")
			}
			text, err := changedBy(k, v, &one.doc.Sheet)
			if err == nil {
				err = change(&one.doc.Sheet, k, text)
			}
			if err != nil {
				return nil, fmt.Errorf("%s: %w", k, err)
			}
			out = append(out, one)
		}
	}
	return out, nil
}

// change changes an answer of a sheet. Another size in hand is another measured size of
// the pattern, with all that was measured of it.
func change(s *worksheets.Sheet, k worksheets.Key, text string) error {
	name := strings.TrimSpace(text)
	if k != worksheets.PatternSize || name == s.Text(k) {
		return s.Set(k, text)
	}
	i, ok := s.SizeNamed(name)
	if ok {
		*s = s.TakeInHand(i)
		return nil
	}
	if len(s.Sizes) == 0 {
		return fmt.Errorf("no other size of this pattern was measured, so %q cannot be tried", name)
	}
	var measured []string
	for _, z := range s.Sizes {
		measured = append(measured, z.Name())
	}
	return fmt.Errorf("no size %q was measured; choose %s", name, typeset.OrList(measured))
}

// changedBy is the answer that a change leaves: +1/4 and -1/4 change a length or a share
// by so much, and = before a text takes it as it stands, a negative ease say.
func changedBy(k worksheets.Key, text string, s *worksheets.Sheet) (string, error) {
	text = strings.TrimSpace(text)
	if rest, ok := strings.CutPrefix(text, "="); ok {
		return rest, nil
	}
	sign := units.Length(1)
	by, more := strings.CutPrefix(text, "+")
	if !more {
		var less bool
		if by, less = strings.CutPrefix(strings.Replace(text, "−", "-", 1), "-"); !less { // a true minus sign is one too
			return text, nil
		}
		sign = -1
	}
	switch kind := k.Kind(); {
	case kind == worksheets.Part:
		share, err := units.ParseShare(by)
		if err != nil {
			return "", err
		}
		return sharePlus(k, s, share, strings.TrimSpace(by), sign > 0)
	case k.IsLength() && kind != worksheets.Scale:
		change, err := units.Parse(by, s.Unit())
		if err != nil {
			return "", err
		}
		now := s.Reading(k)
		switch rule := cmp.Or(s.Text(k), k.Usual()); {
		case now.Known:
		case kind == worksheets.Slid:
			return "", fmt.Errorf("it is %s, which is no length to change; write one, such as %s=1/2", rule, k)
		default:
			return "", fmt.Errorf("there is no answer yet that %q could change; to give one write %s==%s", text, k, text)
		}
		return forms.Exactly(now.Length+sign*change, s.Scale()), nil
	}
	return text, nil
}

// sharePlus is a share with another added, or taken off, that was typed.
func sharePlus(k worksheets.Key, s *worksheets.Sheet, change units.Share, typed string, more bool) (string, error) {
	is, now := s.Share(k), s.Text(k)
	if _, err := units.ParseShare(now); err != nil {
		now = is.String()
	}
	n, by, whole := is.Numerator*change.Denominator, change.Numerator*is.Denominator, is.Denominator*change.Denominator
	switch {
	case more && n+by > whole:
		return "", fmt.Errorf("%s and %s together are more than 1", now, typed)
	case !more && by > n:
		return "", fmt.Errorf("%s less %s is below 0", now, typed)
	case !more:
		by = -by
	}
	text, ok := shareText(n+by, whole, strings.Contains(typed, "%"))
	if !ok {
		return "", fmt.Errorf("%s and %s make a share with too many digits; write it out, such as 0.55", now, typed)
	}
	return text, nil
}

// shareText writes a part: in hundredths where that is how it was asked for and comes out
// even, else as a fraction, or as a decimal where a fraction has too many digits to be read.
func shareText(numerator, denominator int64, percent bool) (text string, ok bool) {
	if percent && denominator < 1e12 && numerator*100%denominator == 0 {
		return fmt.Sprintf("%d %%", numerator*100/denominator), true
	}
	share := units.Share{Numerator: numerator, Denominator: denominator}.String()
	if _, err := units.ParseShare(share); err == nil {
		return share, true
	}
	text = strconv.FormatFloat(float64(numerator)/float64(denominator), 'f', -1, 64)
	read, err := units.ParseShare(text)
	return text, err == nil && read.String() == share
}

// valuesOf are the values of a range: start..end/step of a length or a share, and
// first..last of the words of a choice; nil where the text is no range. They are answers,
// and no changes of one, with = before them or not: a sign that is a minus cannot be a less.
func valuesOf(k worksheets.Key, text string, s *worksheets.Sheet) ([]string, error) {
	words := k.Options()
	if k.Kind() == worksheets.Slid {
		words = []string{"least", "even"}
	}
	text = strings.TrimSpace(strings.TrimPrefix(text, "="))
	from, to, ok := strings.Cut(text, "..")
	first, last := slices.Index(words, strings.TrimSpace(from)), slices.Index(words, strings.TrimSpace(to))
	switch {
	case !ok:
		return nil, nil
	case first >= 0 && last >= first:
		return words[first : last+1], nil
	case first >= 0 && last >= 0:
		return nil, fmt.Errorf("%s=%s: the words go the other way: %s..%s", k, text, strings.TrimSpace(to), strings.TrimSpace(from))
	case k.Kind() == worksheets.Part:
		return shares(k, text)
	case k.IsLength():
		return lengths(k, text, s)
	}
	return nil, nil
}

// lengths are those from start to end.
func lengths(k worksheets.Key, text string, s *worksheets.Sheet) ([]string, error) {
	parts, err := rangeParts(k, text, "ease.bicep=1..3/0.5", func(part string) error { _, err := units.Parse(part, s.Unit()); return err })
	if err != nil {
		return nil, err
	}
	var bounds [3]units.Length
	for i, part := range parts {
		bounds[i], _ = units.Parse(part, s.Unit()) // it was read already
	}
	low, high, step := bounds[0], bounds[1], bounds[2]
	if step <= 0 || high < low || (high-low)/step >= mostTrials {
		return nil, rangeError(k, text)
	}
	var values []string
	for l := low; l <= high; l += step {
		values = append(values, "="+forms.Exactly(l, s.Scale()))
	}
	return values, nil
}

// shares are those from start to end.
func shares(k worksheets.Key, text string) ([]string, error) {
	const example = "method.front_share_bust=40%..60%/5%"
	parts, err := rangeParts(k, text, example, func(part string) error { _, err := units.ParseShare(part); return err })
	if err != nil {
		return nil, err
	}
	var bounds [3]units.Share
	for i, part := range parts {
		bounds[i], _ = units.ParseShare(part)
	}
	low, high, step := bounds[0], bounds[1], bounds[2]
	over := func(s units.Share) float64 { return float64(s.Numerator) / float64(s.Denominator) }
	if step.Numerator <= 0 || over(high) < over(low) || (over(high)-over(low))/over(step) >= mostTrials {
		return nil, rangeError(k, text)
	}
	var values []string
	for at := int64(0); ; at++ {
		n, d := low.Numerator*step.Denominator+at*step.Numerator*low.Denominator, low.Denominator*step.Denominator
		if float64(n)/float64(d) > over(high)+1e-12 {
			return values, nil
		}
		value, ok := shareText(n, d, strings.Contains(text, "%"))
		if !ok {
			return nil, fmt.Errorf("%s=%s: the steps have too many digits; write them like %s", k, text, example)
		}
		values = append(values, value)
	}
}

func rangeError(k worksheets.Key, text string) error {
	return fmt.Errorf("%s=%s: a range must rise, in steps above 0, to at most %d values", k, text, mostTrials)
}

// rangeParts are start, end and step, split at the one slash where both sides can be read.
func rangeParts(k worksheets.Key, text, example string, read func(string) error) (parts [3]string, err error) {
	from, rest, _ := strings.Cut(text, "..")
	to, by, ok := strings.Cut(rest, "/")
	if !ok {
		return parts, fmt.Errorf("%s=%s: a range is written as start..end/step: %s", k, text, example)
	}
	if end, step, found := lastSlash(rest, read); found { // the end may be a fraction
		to, by = end, step
	}
	parts = [3]string{from, to, by}
	for _, part := range parts {
		if strings.HasPrefix(strings.TrimSpace(part), "+") {
			return parts, fmt.Errorf("%s=%s: a range takes the values themselves, without +: %s", k, text, example)
		}
		if err := read(part); err != nil {
			return parts, fmt.Errorf("%s=%s: %w", k, text, err)
		}
	}
	return parts, nil
}

// lastSlash splits end/step at the one slash where both parts read, for either can be a
// fraction: 2 1/2/1/4 is 2 1/2 by 1/4.
func lastSlash(text string, read func(string) error) (end, step string, ok bool) {
	for i, c := range text {
		if c != '/' || read(text[:i]) != nil || read(text[i+1:]) != nil {
			continue
		}
		if ok && strings.Count(text, "/") == 2 { // 2/1/4 could be 2/1 by 4: the whole number is meant
			continue
		}
		end, step, ok = text[:i], text[i+1:], true
	}
	return end, step, ok
}
