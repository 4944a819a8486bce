package worksheets

// For the tests: the reader of all TOML, and whether a file is read without it.
var DecodeAny = decodeAny

func ReadsPlainly(source []byte) bool {
	_, _, ok := readPlain(source)
	return ok
}
