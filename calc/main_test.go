package calc_test

import "flag"

// The random sheets are the same in every run, and a failure leaves no file
// behind; -rapid.seed on the command line still draws others.
func init() {
	for name, value := range map[string]string{"rapid.seed": "20261125", "rapid.nofailfile": "true"} {
		if err := flag.Set(name, value); err != nil {
			panic(err)
		}
	}
}
