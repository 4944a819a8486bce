package parts

import (
	"fmt"

	"capscye/ui/typeset"
)

// The smallest window that the worksheet can be used in.
const (
	SmallestWidth  = 60
	SmallestHeight = 16
)

// TooSmall tells that a window is.
func TooSmall(width, height int) bool { return width < SmallestWidth || height < SmallestHeight }

// SmallWindow asks for more room.
func SmallWindow(width, height int) string {
	text := fmt.Sprintf("This window has %d x %d cells; the worksheet needs %d x %d. Nothing is lost: make it larger.",
		width, height, SmallestWidth, SmallestHeight)
	return typeset.Block(typeset.Wrap(text, width), width, height)
}
