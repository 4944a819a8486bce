package ui

import (
	"io"
	"strings"

	"github.com/spf13/cobra"
)

// The commands that need no worksheet, or none yet.

func (s *session) askCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "ask [FILE]",
		Short: "Ask for the worksheet, a line at a time, without a screen",
		Long: `Ask every question of the worksheet, one line each, and end with the answer in
sentences: for screen readers, slow lines and pipes. Every answer is saved at once.
Without FILE a new worksheet is asked for, and at the end a name to keep it under.

` + strings.Join(wrap(commandWords, printWidth), "\n") + `

Exit status as for show, and 1 too where something could not be saved.`,
		Args: atMostOneFile,
		RunE: func(_ *cobra.Command, args []string) error { return s.ask(args) },
	}
}

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
