package props

import (
	"bytes"
	"strings"
	"testing"

	"github.com/ledongthuc/pdf"
)

// ReadPDF opens a document.
func ReadPDF(t *testing.T, content []byte) *pdf.Reader {
	t.Helper()
	reader, err := pdf.NewReader(bytes.NewReader(content), int64(len(content)))
	if err != nil {
		t.Fatal(err)
	}
	return reader
}

// PageText is all text of a page, in the order in which it was written.
func PageText(t *testing.T, p pdf.Page) string {
	t.Helper()
	text, err := p.GetPlainText(nil)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// MillimetresPerPoint makes millimetres of the unit of such documents.
const MillimetresPerPoint = 25.4 / 72

// MediaBox is the paper of a page, its own or its document's.
func MediaBox(p pdf.Page) pdf.Value {
	for v := p.V; !v.IsNull(); v = v.Key("Parent") {
		if box := v.Key("MediaBox"); !box.IsNull() {
			return box
		}
	}
	return pdf.Value{}
}

// Unspaced is a text without its spaces: a page is read back without most of them.
func Unspaced(s string) string { return strings.Join(strings.Fields(s), "") }
