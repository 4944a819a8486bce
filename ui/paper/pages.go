package paper

import (
	"encoding/xml"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"capscye/ui/typeset"
	"capscye/worksheets/disk"
)

// A card whose pages are a file each. Every page has in its title which it is, and of which
// card: a page is written over by the same page of that card alone, and one that the card
// has no longer goes, for a template true to scale with the amounts of before would be cut
// out like any other.

// pageName is the file of a page; the first has the name of the card.
func pageName(card string, page int) string {
	if page == 1 {
		return card
	}
	ending := filepath.Ext(card)
	return fmt.Sprintf("%s-%d%s", strings.TrimSuffix(card, ending), page, ending)
}

// pageTitle is how a page says which it is. What a worksheet says cannot look like it: there
// a < is escaped.
func pageTitle(card string, page int) string {
	var name strings.Builder
	_ = xml.EscapeText(&name, []byte(typeset.Plain(filepath.Base(card)))) // a strings.Builder takes everything
	return fmt.Sprintf("%s%d of %s</title>", titleLead, page, name.String())
}

const titleLead = "<title>Page "

// overPage says why a page of a card may not be written over what is there, which is a card.
// The first has the name that the person gave, and any first page may have had it.
func overPage(card string, page int) func(there []byte) error {
	return func(there []byte) error {
		held := string(there)
		if strings.Contains(held, pageTitle(card, page)) || page == 1 && (strings.Contains(held, titleLead+"1 of ") || !strings.Contains(held, titleLead)) {
			return nil
		}
		return fmt.Errorf("%s is a page of another card; left alone. Name another file", pageName(card, page))
	}
}

// withoutOld removes the pages that a card had before, behind its last one. left are those
// that somebody changed or protected since, and old says of each that it is old.
func withoutOld(card string, last int) (gone []string, old []error, err error) {
	folder := filepath.Dir(card)
	entries, err := os.ReadDir(folder)
	if err != nil { // the card is written, and what lies beside it cannot be known
		return nil, nil, nil
	}
	ending := filepath.Ext(card)
	lead := strings.TrimSuffix(filepath.Base(card), ending) + "-"
	for _, e := range entries {
		number := strings.TrimSuffix(strings.TrimPrefix(e.Name(), lead), ending)
		page, _ := strconv.Atoi(number)
		name := pageName(card, page)
		if page <= last || filepath.Base(name) != e.Name() {
			continue
		}
		content, info, err := disk.Read(name, mostOfOurs)
		switch {
		case err != nil || !strings.Contains(string(content), pageTitle(card, page)):
		case !maker.Made(content) || disk.Protected(info):
			old = append(old, fmt.Errorf("%s is an old page, changed or protected since, and left alone. Do not cut from it", name))
		default:
			if err := os.Remove(name); err != nil {
				return gone, old, errors.Join(fmt.Errorf("%s is an old page and cannot be removed. Do not cut from it", name), err)
			}
			gone = append(gone, name)
		}
	}
	return gone, old, nil
}
