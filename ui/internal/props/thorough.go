package props

import "os"

// Thorough tells that everything is to be tried, as CI does, and not the part of it that
// whoever changes a line waits for. The part is the same every time.
func Thorough() bool { return os.Getenv("CAPSCYE_TEST_ALL") != "" }
