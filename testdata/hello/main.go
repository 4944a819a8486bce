// Hello is the least that a Go program can do: what --version and show are
// measured beside, by ui/harness_test.go.
package main

import "fmt"

func main() { fmt.Println("hello") }
