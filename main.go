// Capscye is a fitting worksheet for the terminal: from body measurements, ease
// and a pattern measured flat it works out how much each seam edge of a sleeve
// and a bodice pivots and slides, so that they still sew together.
package main

import (
	"os"

	"capscye/ui"
)

func main() {
	os.Exit(ui.Run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}
