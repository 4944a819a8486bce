package terminal_test

import (
	"testing"

	_ "capscye/ui" // which the program that is run here is made of
	"capscye/ui/internal/program"
	"capscye/ui/internal/props"
)

func TestMain(m *testing.M) { props.Main(m, program.Remove) }
