package console

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"
)

// AtMostOneFile refuses a call with more than one worksheet.
func AtMostOneFile(_ *cobra.Command, args []string) error {
	if len(args) > 1 {
		return fmt.Errorf("one worksheet is opened at a time, and %d were named; show prints several", len(args))
	}
	return nil
}

// ExactlyOneFile refuses a call with none or several.
func ExactlyOneFile(_ *cobra.Command, args []string) error {
	if len(args) != 1 {
		return errors.New(`one file is needed, or "-" for standard input`)
	}
	return nil
}
