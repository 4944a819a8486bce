package typeset

import "strings"

// tallRows is how tall the digits of the table view are.
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

// Tall writes an amount in tall digits with its unit behind them. Where there is
// no room for them it is written as it is, which can still be read.
func Tall(amount string, width, height int) []string {
	rows := make([]string, tallRows)
	unit := ""
	for i, c := range amount {
		digit, ok := tallDigits[c]
		if !ok {
			unit = strings.TrimSpace(amount[i:])
			break
		}
		for row := range rows {
			rows[row] += digit[row] + " "
		}
	}
	rows[tallRows-1] = strings.TrimRight(rows[tallRows-1], " ") + " " + unit
	for _, row := range rows {
		if len(row) > width || height < tallRows {
			return []string{amount}
		}
	}
	return rows
}
