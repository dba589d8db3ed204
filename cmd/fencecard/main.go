// Command fencecard reads a plan of pieces and cuts and prints the cards by
// which the cuts are made at a router table.
package main

import (
	"context"
	"io"
	"os"
)

func main() {
	os.Exit(run(context.Background(), os.Args[1:], streams{os.Stdin, os.Stdout, os.Stderr}))
}

// streams are the three standard streams, handed in so that commands never
// touch os.Stdout and its like themselves.
type streams struct {
	in       io.Reader
	out, err io.Writer
}
