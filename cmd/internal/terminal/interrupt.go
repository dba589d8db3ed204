package terminal

import (
	"context"
	"os"
	"os/signal"
)

// CallOff returns a context that the first interrupt ends, in place of the
// program: whoever is tired of waiting gets the best that was found. A second
// interrupt ends the program, and so does the first once stop was called.
func CallOff(ctx context.Context) (called context.Context, stop func()) {
	called, stop = signal.NotifyContext(ctx, os.Interrupt)
	context.AfterFunc(called, stop)
	return called, stop
}
