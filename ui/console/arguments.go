package console

import (
	"errors"

	"github.com/spf13/cobra"
)

// AtMostOneFile refuses a call with more than one worksheet.
func AtMostOneFile(_ *cobra.Command, args []string) error {
	if len(args) > 1 {
		return errors.New("open one worksheet at a time; show takes several")
	}
	return nil
}

// ExactlyOneFile refuses a call with none or several.
func ExactlyOneFile(_ *cobra.Command, args []string) error {
	if len(args) != 1 {
		return errors.New(`name one file, or "-" for standard input`)
	}
	return nil
}
