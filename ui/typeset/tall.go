package typeset

import "strings"

// tallRows is how tall the digits of the table view are at least.
const tallRows = 5

// tallDigits are the signs of an amount, five rows each, in a sign that every
// terminal has and that is one cell wide in all of them.
var tallDigits = map[rune][tallRows]string{
	'0': {" ### ", "#   #", "#   #", "#   #", " ### "},
	'1': {"  #  ", " ##  ", "  #  ", "  #  ", " ### "},
	'2': {" ### ", "#   #", "  ## ", " #   ", "#####"},
	'3': {"#### ", "    #", " ### ", "    #", "#### "},
	'4': {"#  # ", "#  # ", "#####", "   # ", "   # "},
	'5': {"#####", "#    ", "#### ", "    #", "#### "},
	'6': {" ### ", "#    ", "#### ", "#   #", " ### "},
	'7': {"#####", "    #", "   # ", "  #  ", "  #  "},
	'8': {" ### ", "#   #", " ### ", "#   #", " ### "},
	'9': {" ### ", "#   #", " ####", "    #", " ### "},
	'/': {"    #", "   # ", "  #  ", " #   ", "#    "},
	'.': {"  ", "  ", "  ", "  ", "##"},
	'+': {"     ", "  #  ", "#####", "  #  ", "     "},
	'-': {"    ", "    ", "####", "    ", "    "},
	' ': {"  ", "  ", "  ", "  ", "  "},
}

// Tall writes an amount in digits as tall as a room allows, with its unit behind them.
// Where there is no room for any it is written as it is, which can still be read.
func Tall(amount string, width, height int) []string {
	number, unit := amount, ""
	if at := strings.LastIndexByte(amount, ' '); at > 0 && tallDigits[rune(amount[at+1])][0] == "" {
		number, unit = amount[:at], amount[at:]
	}
	base := make([]string, tallRows)
	for _, c := range number {
		for row := range base {
			base[row] += tallDigits[c][row] + " "
		}
	}
	cells := len(base[0]) - 1
	across := (width - len(unit)) / max(cells, 1)
	down := min(height/tallRows, 2*across) // a cell of a terminal is about twice as high as wide
	if cells < 1 || across < 1 || down < 1 {
		return []string{amount}
	}
	across = min(across, down)
	var rows []string
	for _, row := range base {
		var wide strings.Builder
		for _, c := range strings.TrimRight(row, " ") {
			wide.WriteString(strings.Repeat(string(c), across))
		}
		for range down {
			rows = append(rows, wide.String())
		}
	}
	last := len(rows) - 1
	rows[last] += strings.Repeat(" ", cells*across-len(rows[last])) + unit
	return rows
}
