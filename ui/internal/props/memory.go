package props

import (
	"os"
	"runtime/debug"
)

// The rooms make thousands of short texts and keep none: collected at every 4 MB, as is
// usual, they cost a tenth of the time of all tests. What measures the program itself has
// the usual setting, as has whoever sets it.
func init() {
	if os.Getenv("CAPSCYE_MEASURE") == "" && os.Getenv("GOGC") == "" {
		debug.SetGCPercent(400)
	}
}
