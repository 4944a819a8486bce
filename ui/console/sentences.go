package console

import (
	"fmt"

	"github.com/spf13/cobra"
)

// sentencesFlag is what results are said with instead of shown.
const sentencesFlag = "sentences"

// Sentences gives a command the flag that says its results as sentences, one thought a
// line. It goes with none of the other forms of output that the command has.
func Sentences(c *cobra.Command, wanted *bool) {
	c.Flags().BoolVar(wanted, sentencesFlag, false, "say it in sentences, one a line, without columns or signs")
	args := c.Args
	c.Args = func(c *cobra.Command, given []string) error {
		for _, other := range []string{"json", "csv", "paper"} {
			if f := c.Flags().Lookup(other); *wanted && f != nil && f.Changed {
				return NotBoth(sentencesFlag, other)
			}
		}
		return args(c, given)
	}
}

// NotBoth refuses two flags that ask for the result in two forms.
func NotBoth(one, other string) error {
	return fmt.Errorf("choose --%s or --%s, not both", one, other)
}
