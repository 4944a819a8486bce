package console

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"
)

func AtMostOneFile(_ *cobra.Command, args []string) error {
	if len(args) > 1 {
		return fmt.Errorf("one worksheet is opened at a time, and %d were named; show prints several", len(args))
	}
	return nil
}

func AtLeastOneFile(_ *cobra.Command, args []string) error {
	if len(args) == 0 {
		return errors.New(`show needs a file, or "-" for standard input`)
	}
	return nil
}

func AtLeastOneChange(_ *cobra.Command, args []string) error {
	if len(args) < 2 {
		return errors.New("try needs a file and a change, such as ease.bicep=2")
	}
	return nil
}

func ExactlyOneFile(_ *cobra.Command, args []string) error {
	if len(args) != 1 {
		return errors.New(`one file is needed, or "-" for standard input`)
	}
	return nil
}
