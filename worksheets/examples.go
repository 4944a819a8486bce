package worksheets

import "embed"

//go:embed examples/*.toml
var exampleFiles embed.FS

// Examples lists the built-in worksheets by name; the first is the one that the
// program shows when it has no other. All wearers are invented.
func Examples() []string {
	return []string{"choir-blouse", "archive-coat", "allotment-shirt", "market-smock", "costume-tunic"}
}

// Example opens a built-in worksheet. It has no file: saving asks for one.
func Example(name string) (*Document, error) {
	source, err := exampleFiles.ReadFile("examples/" + name + Ending)
	if err != nil {
		return nil, err
	}
	d, err := Decode(name+Ending, source)
	if err != nil {
		return nil, err
	}
	return New(d.Sheet), nil
}
