package worksheets

// For the tests: the reader of all TOML, and whether a file is read without it.

func DecodeAny(name string, source []byte) (*Document, error) {
	d, _, err := decodeAny(name, source)
	return d, err
}

func ReadsPlainly(source []byte) bool {
	_, _, ok := readPlain(source)
	return ok
}
