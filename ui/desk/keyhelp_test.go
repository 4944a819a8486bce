package desk

import "testing"

// Every key has its sentence, and no sentence is about a key that is gone.
func TestEveryKeyIsTold(t *testing.T) {
	used := map[string]bool{}
	for _, b := range bindings {
		name := b.show + " " + b.does
		if keySays[name] == "" {
			t.Errorf("nothing is said of %q", name)
		}
		used[name] = true
	}
	for name := range keySays {
		if !used[name] {
			t.Errorf("%q is told, and is no key", name)
		}
	}
	seen := map[string]bool{}
	for _, h := range Help() {
		if seen[h.Key] {
			t.Errorf("%q is told twice", h.Key)
		}
		seen[h.Key] = true
	}
}
