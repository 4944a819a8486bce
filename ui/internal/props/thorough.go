package props

import "os"

// Thorough tells that everything is to be tried, as CI does, and not the part of it that
// whoever changes a line waits for. The part is the same every time.
func Thorough() bool { return os.Getenv("CAPSCYE_TEST_ALL") != "" }

// OfMany is how many of one kind are tried, such as random sheets: all, or a few.
func OfMany(few, all int) int {
	if Thorough() {
		return all
	}
	return few
}
