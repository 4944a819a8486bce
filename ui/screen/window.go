package screen

import (
	"fmt"

	"capscye/ui/typeset"
)

// The smallest window that the worksheet can be used in.
const (
	smallestWidth  = 60
	smallestHeight = 16
)

// tooSmall tells that a window is.
func tooSmall(width, height int) bool { return width < smallestWidth || height < smallestHeight }

// smallWindow asks for more room.
func smallWindow(width, height int) string {
	text := fmt.Sprintf("This window has %d x %d cells; the worksheet needs %d x %d. Nothing is lost: make it larger.",
		width, height, smallestWidth, smallestHeight)
	return typeset.Block(typeset.Wrap(text, width), width, height)
}
