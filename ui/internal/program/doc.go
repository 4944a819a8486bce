// Package program runs the real program in real terminals, for tests: it types, waits
// for what is written, and looks whether the terminal was given back.
//
// It builds the program once for each package of tests. Go knows that their results
// depend on the program only if they import it, so those that run all of it import
// capscye/ui.
package program

import "os"

// binaryFolder is where the program was built, "" where it was not.
var binaryFolder string

// Remove takes away what was built; it belongs at the end of a TestMain.
func Remove() { os.RemoveAll(binaryFolder) }
