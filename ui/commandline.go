package ui

import (
	"io"
	"strings"

	"github.com/spf13/cobra"
)

// The commands that need no worksheet, or none yet.

func (s *session) wordsCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "words [WORD]",
		Short: "Explain the words of the trade",
		Long: `Print each word of the trade with a sentence about it and where it is used here; with
WORD only that, or those that begin so.`,
		RunE: func(_ *cobra.Command, args []string) error {
			text, err := wordsText(strings.Join(args, " "))
			if err == nil {
				_, err = io.WriteString(s.out, text)
			}
			return err
		},
	}
}
