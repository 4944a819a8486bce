package worksheets

// For the tests: the reader of all TOML, whether a file is read without it, and
// whether bytes say all that a document says.

func DecodeAny(name string, source []byte) (*Document, error) {
	d, _, err := decodeAny(name, source)
	return d, err
}

func ReadsPlainly(source []byte) bool {
	_, _, ok := readPlain(source)
	return ok
}

func (d *Document) Proves(out []byte) bool { return d.proves(out, false) }
