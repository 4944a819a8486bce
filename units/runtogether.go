package units

import (
	"fmt"
	"regexp"
	"strconv"
)

// runTogether is a mixed number without the join between its parts: 141/2, or with one
// that joins nothing, 14.1/2, 14,1/2 and 14/1/2; a sign and a unit as they are.
var runTogether = regexp.MustCompile(`^(\s*[-−+]?\s*)([0-9]{1,6})([.,/]([0-9]{1,3}))?/\s*([0-9]{1,2})(\s*\D*)$`)

// mostWhole is as far as a tape goes: a whole number above it is no reading of digits
// that were run together. Ours.
const mostWhole = 99

// RunTogether is what may have been meant by a whole number and a fraction that were
// typed without the space between them, as they would be written: "14 1/2" for "141/2".
// There are several where the digits can be parted in several ways, and none where the
// text is nothing of the kind. [Parse] takes the digits before a slash for a
// numerator, 141/2 for 70 1/2, which nobody reads on a tape.
func RunTogether(text string) (meant []string) {
	m := runTogether.FindStringSubmatch(text)
	if m == nil {
		return nil
	}
	sign, digits, joined, fraction, below, unit := m[1], m[2], m[3] != "", m[4], m[5], m[6]
	if _, err := Parse("1"+unit, Inches); err != nil {
		return nil
	}
	mixed := func(whole, above string) {
		if isWhole(whole) && isPart(above, below) {
			meant = append(meant, fmt.Sprintf("%s%s %s/%s%s", sign, whole, above, below, unit))
		}
	}
	if joined {
		mixed(digits, fraction)
		return meant
	}
	for i := 1; i < len(digits); i++ {
		mixed(digits[:i], digits[i:])
	}
	return meant
}

func isWhole(digits string) bool {
	n, err := strconv.Atoi(digits)
	return err == nil && 0 < n && n <= mostWhole && digits[0] != '0'
}

// isPart tells the fractions of a tape: below one, of a half to a 64th, thirds with them.
func isPart(above, below string) bool {
	n, err := strconv.Atoi(above)
	m, bad := strconv.Atoi(below)
	if err != nil || bad != nil || above[0] == '0' || n >= m {
		return false
	}
	switch m {
	case 2, 3, 4, 8, 16, 32, 64:
		return true
	}
	return false
}
