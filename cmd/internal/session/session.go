// Package session is what every command shares: the streams and what is said on
// them, files read and written, and what commands mean by their words: a plan, a
// shop, a deck as it was printed, the setup book; with the flags that name them and
// what a shell offers for them.
package session

import (
	"fmt"
	"io"
	"io/fs"
	"time"

	"fencecard/joinery/plantext"
)

// Session is what every command shares: the streams, whether it may speak, and
// what it read.
type Session struct {
	In       io.Reader
	Out, Err io.Writer
	Watched  bool          // somebody reads the messages on a terminal
	Quiet    bool          // only what is wrong is told
	sources  []fs.FileInfo // the files read so far, which nothing is written over
}

// Silently is a session that says nothing: a shell would print it into the line.
func (s *Session) Silently() *Session {
	return &Session{In: s.In, Out: io.Discard, Err: io.Discard, Quiet: true}
}

// Note says on standard error what is neither a result nor wrong.
func (s *Session) Note(format string, args ...any) {
	if !s.Quiet {
		fmt.Fprintf(s.Err, format+"\n", args...)
	}
}

// Wrote says that a file was written or changed, unless asked to be quiet.
func (s *Session) Wrote(format string, args ...any) error {
	if s.Quiet {
		return nil
	}
	return s.Tell(format, args...)
}

// Tell says something on standard output. The names in it come from the
// command line, or from a book of somebody else's.
func (s *Session) Tell(format string, args ...any) error {
	for i, arg := range args {
		if name, ok := arg.(string); ok {
			args[i] = plantext.Printable(name)
		}
	}
	_, err := fmt.Fprintf(s.Out, format, args...)
	return err
}

// patience is how long nobody wonders what a program does.
const patience = time.Second

// Busy tells what goes on, in one line, where it takes longer than that and
// somebody sits before it. Nothing is told after done returns.
func (s *Session) Busy(what string) (done func()) {
	if !s.Watched || s.Quiet {
		return func() {}
	}
	end, ended := make(chan struct{}), make(chan struct{})
	go func() {
		defer close(ended)
		select {
		case <-end:
		case <-time.After(patience):
			s.Note("%s", what)
		}
	}()
	return func() {
		close(end)
		<-ended
	}
}
